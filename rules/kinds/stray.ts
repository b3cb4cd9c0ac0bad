/**
 * `stray`: one of a group away from the others.
 *
 * Of three or more usable readings each is held against the median of the rest, and the furthest
 * is named. Of two it can only be said that they disagree. With fewer nobody can tell, and the
 * answer stays what it was. An input that cannot be used is left out, and comes back by itself.
 */
import { z } from 'zod/mini';
import { withoutDust } from '../quantity/quantity.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  answerDue,
  answered,
  answerStand,
  compileDelays,
  type Delayed,
  type Delays,
  delayedBegin,
  delayedGap,
  delayedSay,
  delayedShift,
} from './delay.ts';
import type { Evidence, RuleKind } from './kind.ts';
import { medianOf } from './means-window.ts';
import { deadbandSetting, delaySettings, quantitySetting } from './settings.ts';

/** What binary fractions may add to a difference; far below any resolution. */
const dust = 1e-9;

export interface StraySettings extends Delays {
  readonly limit: number;
  readonly deadband: number;
}

export interface StrayMemory {
  readonly answer: Delayed;
  /** Latest reading of each input; null where it cannot be used. */
  values: (number | null)[];
  at: EpochMs | null;
  /** The furthest of three or more; null where two disagree, or nothing was compared. */
  furthest: number | null;
  value: number | null;
  reference: number | null;
  difference: number;
}

/** Compares all usable readings; false where there are fewer than two. */
function compare(memory: StrayMemory): boolean {
  const usable = memory.values.flatMap((value, input) =>
    value === null ? [] : [{ input, value }],
  );
  if (usable.length < 2) return false;
  const [first, second] = usable;
  if (usable.length === 2) {
    memory.furthest = null;
    memory.value = first!.value;
    memory.reference = second!.value;
    memory.difference = Math.abs(first!.value - second!.value);
    return true;
  }
  memory.difference = -1;
  for (const each of usable) {
    const reference = medianOf(usable.filter((other) => other !== each).map(({ value }) => value));
    const difference = Math.abs(each.value - reference);
    if (difference <= memory.difference) continue;
    memory.furthest = each.input;
    memory.value = each.value;
    memory.reference = reference;
    memory.difference = difference;
  }
  return true;
}

function evidence(settings: StraySettings, memory: StrayMemory): Evidence {
  return {
    allowed: settings.limit,
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.reference === null
      ? {}
      : { reference: memory.reference, difference: withoutDust(memory.difference) }),
    ...(memory.furthest === null ? {} : { input: memory.furthest }),
    ...(memory.answer.sinceMs === null ? {} : { sinceMs: memory.answer.sinceMs }),
  };
}

export const stray: RuleKind<StraySettings, StrayMemory> = {
  name: 'stray',
  version: 1,
  summary: 'One of several like sensors reads away from the others; of two, that they disagree.',
  written: z.strictObject({
    limit: quantitySetting('How far one may be from the others; of two, from each other.'),
    deadband: deadbandSetting,
    ...delaySettings,
  }),
  takes: { least: 2, most: 8, units: 'same' },
  compile(read) {
    const limit = read.difference('limit', Number.POSITIVE_INFINITY);
    const deadband = read.difference('deadband', 0);
    if (limit <= 0)
      read.report({
        path: ['limit'],
        problem: 'two sensors never read quite the same',
        fix: 'give how far apart they may be, as "5 K"',
      });
    else if (deadband >= limit)
      read.report({
        path: ['deadband'],
        problem: 'no difference would be normal again',
        fix: `make it less than the limit, ${limit}`,
      });
    return {
      limit,
      deadband,
      ...compileDelays(read),
    };
  },
  begin: () => ({
    answer: delayedBegin(),
    values: [],
    at: null,
    furthest: null,
    value: null,
    reference: null,
    difference: 0,
  }),
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    const { values, answer } = memory;
    while (values.length <= reading.input) values.push(null);
    values[reading.input] = reading.value;
    if (compare(memory)) {
      memory.at = reading.at;
      const limit = answer.answer ? settings.limit - settings.deadband : settings.limit;
      timer.at = delayedSay(settings, answer, memory.difference > limit + dust, reading.judged);
    }
    return answered(memory);
  },
  without(memory, input, timer) {
    if (input < memory.values.length) memory.values[input] = null;
    memory.answer.changeAt = null;
    timer.at = null;
  },
  deadline: answerDue,
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence,
  sentence: (evidence) =>
    evidence.input === undefined
      ? '{$signals} differ by {$difference}, more than {$allowed}.'
      : '{$which} at {$value}, {$difference} away from the others at {$reference}.',
};
