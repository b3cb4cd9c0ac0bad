/**
 * `held`: something that is on hold is used.
 *
 * A mark says that a thing is used, and perhaps another that its use ended. It is raised where the
 * thing was on hold when its use was said, or is put on hold by a person meanwhile (`while_used`); it
 * ends when the hold is lifted or the use ends. What a rule holds while the thing is used is that
 * rule's own matter, and has its own alarm. Nothing is refused: what was used was used.
 */

import { z } from 'zod/mini';
import type { Hold, HoldWhat } from '../hold/hold.ts';
import { sameItem } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';
import { itemsMax } from './clocks.ts';
import type { Evidence, Marking, RuleKind, Severity } from './kind.ts';
import type { SettingsReader } from './settings.ts';

export interface HeldSettings {
  readonly what: HoldWhat | null;
  /** Another one named by the first mark takes its place. */
  readonly lastOnly: boolean;
  /** What a person puts on hold while it is used counts too. */
  readonly whileUsed: boolean;
}

type Standing = Pick<Hold, 'id' | 'item' | 'by' | 'reason'>;

interface Used {
  readonly item: string;
  sinceMs: EpochMs;
  /** Since when it is used although it is on hold. */
  heldSinceMs: EpochMs;
  /** The holds that count of it, by id. */
  holds: string[];
}

export interface HeldMemory {
  /** The first to be used first. */
  used: Used[];
  /** Of what it is about, the oldest first. */
  standing: Standing[];
}

function compile(read: SettingsReader): HeldSettings {
  const [what, ...ends] = read.marks;
  if (what == null || ends.some((end) => end !== what))
    read.report({
      path: [],
      problem: 'only racks, containers, lots and shots are put on hold',
      fix: 'name marks of the same one of these',
    });
  return {
    what: what ?? null,
    lastOnly: read.flag('last_only', false),
    whileUsed: read.flag('while_used', false),
  };
}

const answer = ({ used }: HeldMemory): Severity =>
  used.some(({ holds }) => holds.length > 0) ? 1 : 0;

function mark(
  { lastOnly }: HeldSettings,
  memory: HeldMemory,
  { item, at, input }: Marking,
): Severity {
  if (item === null) return answer(memory);
  if (input !== 0) {
    memory.used = memory.used.filter((each) => !sameItem(each.item, item) || each.sinceMs > at);
    return answer(memory);
  }
  const known = memory.used.find((each) => sameItem(each.item, item));
  const rest = lastOnly ? [] : memory.used.filter((each) => each !== known);
  const holds = memory.standing.filter((hold) => sameItem(hold.item, item)).map(({ id }) => id);
  memory.used = [...rest, { item, sinceMs: at, heldSinceMs: at, holds }];
  if (memory.used.length > itemsMax) forgetOne(memory);
  return answer(memory);
}

/** The one used first of which nothing is to be said. */
function forgetOne(memory: HeldMemory): void {
  const quiet = memory.used.findIndex(({ holds }) => holds.length === 0);
  memory.used.splice(Math.max(0, quiet), 1);
}

/** All that stands, as it is from now on. */
function holds(
  { what, whileUsed }: HeldSettings,
  memory: HeldMemory,
  standing: readonly Hold[],
  at: EpochMs,
): Severity {
  const known = new Set(memory.standing.map(({ id }) => id));
  memory.standing = standing
    .filter((hold) => hold.what === what)
    .map(({ id, item, by, reason }) => ({ id, item, by, reason }));
  const now = new Set(memory.standing.map(({ id }) => id));
  const fresh = memory.standing.filter(
    ({ id, by }) => whileUsed && !known.has(id) && !by.startsWith('rule:'),
  );
  for (const each of memory.used) {
    const came = fresh.filter(({ item }) => sameItem(item, each.item)).map(({ id }) => id);
    const stay = each.holds.filter((id) => now.has(id));
    if (stay.length === 0 && came.length > 0) each.heldSinceMs = at;
    each.holds = [...stay, ...came];
  }
  return answer(memory);
}

function evidence(_settings: HeldSettings, { used, standing }: HeldMemory): Evidence {
  const wrong = used.filter((each) => each.holds.length > 0);
  const [first] = wrong;
  const hold = standing.find(({ id }) => id === first?.holds[0]);
  if (first === undefined || hold === undefined) return {};
  return {
    item: first.item,
    items: wrong.length,
    sinceMs: first.heldSinceMs,
    heldBy: hold.by,
    // A rule gives its own name for a reason.
    ...(hold.by.startsWith('rule:') ? {} : { heldFor: hold.reason }),
  };
}

export const held: RuleKind<HeldSettings, HeldMemory> = {
  name: 'held',
  version: 1,
  summary:
    'Something that is on hold is used: a container connected, a rack coated, a lot loaded, until its hold is lifted or its use ends.',
  written: z.strictObject({
    last_only: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'true: one is used at a time; another one that is named takes its place, as at a mixer.',
        }),
      ),
    ),
    while_used: z.optional(
      z.boolean().check(
        z.meta({
          description: 'true: what a person puts on hold while it is used is told too.',
        }),
      ),
    ),
  }),
  takes: { least: 0, most: 0, units: 'any' },
  marks: {
    least: 1,
    most: 3,
    roles: ['what says that it is used', 'what ends its use', 'what ends its use too'],
  },
  compile,
  begin: () => ({ used: [], standing: [] }),
  sample: (_settings, memory) => answer(memory),
  mark,
  holds,
  gap: () => undefined,
  shift(memory, deltaMs) {
    for (const each of memory.used) {
      each.sinceMs += deltaMs;
      each.heldSinceMs += deltaMs;
    }
  },
  evidence,
  sentence: () => '{$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.',
};
