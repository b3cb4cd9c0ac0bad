/**
 * What stood before, where the engine knows nothing of it any more: an alarm that nobody follows is
 * closed and says why; a hold stands on, since only a person may lift it.
 */
import type { Command } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { KeptHold } from '../alarms/desk.ts';
import type { StoreReader } from '../store/store-types.ts';
import type { Core } from './core.ts';

/** Why an alarm that stood is closed. */
export const anewReason = 'judging began anew';
export const againReason = 'judged again from the record, it does not stand';

/** Closes each open occurrence that no alarm of the engine stands for; where none runs, none does. */
export function closeUnfollowed(core: Core, reason: string): void {
  const { desk, journal, live, clock } = core;
  const engine = live.running;
  const at = engine?.now ?? clock.now();
  const followed = new Set(
    engine?.present.alarms.list.flatMap(({ state, occurrence, lastOccurrence }) => [
      occurrence,
      ...(state === 'normal' ? [] : [lastOccurrence]),
    ]),
  );
  for (const { id, rule, state } of desk.open()) {
    if (followed.has(id)) continue;
    const row = desk.close(id, at, reason);
    if (row === null) continue;
    const ledger = {
      type: 'closed-unfollowed',
      ...{ at, occurrence: id, rule, from: state, reason },
    };
    journal.entry({ ledger, occurrences: [row], holds: [] });
  }
}

/** The holds on disk, for an engine that begins: each keeps its id, and no new one gets one of theirs. */
export function carriedHolds(read: StoreReader, judged: EpochMs): Command[] {
  const open = read.openHolds();
  if (open.length === 0) return [];
  const count = Math.max(...read.holds().map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0)));
  return open.map(({ detail }) => {
    const { id, what, item, by, reason, since, occurrence } = JSON.parse(detail) as KeptHold;
    const carried = { id, since, occurrence, count };
    return { kind: 'command', judged, verb: 'hold', what, item, by, reason, carried };
  });
}
