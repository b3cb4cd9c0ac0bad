/** How many parts have gone by since something was last done: counted by what people write down. */
import { z } from 'zod/mini';
import { quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { KeepingKind } from './derived-kind.ts';

export interface MarkCountSettings {
  readonly each: number;
}

export interface MarkCountMemory {
  /** When it began; null before anybody said. */
  since: EpochMs | null;
  /** When each happened since then, the latest of them. */
  times: EpochMs[];
  /** How many before those. */
  before: number;
}

/** A start that is said late still finds what came after it among so many. */
const timesMax = 500;

const eachMax = 100_000;

export const markCount: KeepingKind<MarkCountSettings, MarkCountMemory> = {
  name: 'mark-count',
  summary:
    'How many parts went by since a mark last started it: so many for each time that another mark was said. A mark said late counts where it happened.',
  inputs: [],
  unit: '1',
  digits: 0,
  source: 'definition',
  written: z.strictObject({
    each: z
      .union([z.number(), z.string()])
      .check(
        z.meta({ description: 'How many parts each mark stands for, as the parts on a rack.' }),
      ),
  }),
  compile(read) {
    const each = read.number('each') ?? 1;
    if (!(Number.isInteger(each) && each >= 1 && each <= eachMax))
      read.report({
        path: ['each'],
        problem: `${each} is no number of parts`,
        fix: `write a whole number from 1 to ${eachMax}`,
      });
    return { each };
  },
  version: 1,
  begin: () => ({ since: null, times: [], before: 0 }),
  step({ each }, { since, times, before }, now) {
    // What was sprayed before anybody said so is not known.
    if (since === null) now.doubt = quality.unobserved;
    return each * (before + times.length);
  },
  start(_, memory, at) {
    const { times } = memory;
    memory.since = at;
    memory.before = 0;
    memory.times = times.filter((each) => each > at);
  },
  count(_, memory, at) {
    if (memory.since !== null && at <= memory.since) return;
    memory.times.push(at);
    memory.times.sort((a, b) => a - b);
    if (memory.times.length <= timesMax) return;
    memory.times.shift();
    memory.before += 1;
  },
  // People say it later, or did: time nobody saw takes nothing from it.
  gap() {},
  shift(memory, deltaMs) {
    if (memory.since !== null) memory.since += deltaMs;
    memory.times = memory.times.map((at) => at + deltaMs);
  },
};
