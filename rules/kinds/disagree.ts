/**
 * `disagree`: sensors of the same thing read apart although the process is steady.
 *
 * While a process moves, sensors of different sluggishness read apart by right; so they are compared
 * only once each has moved by less than `steady` for all of `steady_for`. The highest and the lowest
 * are named, and of the two the one to go by: the higher, or the lower where cold is the hazard.
 * They are never averaged. While the process moves, or fewer than two can be used, nobody can tell:
 * what was on its way begins anew, and an answer stays.
 */
import { z } from 'zod/mini';
import { withoutDust } from '../quantity/quantity.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  answerDue,
  answerSay,
  answerStand,
  compileDelays,
  type Delayed,
  type Delays,
  delayedBegin,
  delayedGap,
  delayedShift,
} from './delay.ts';
import type { Evidence, RuleKind } from './kind.ts';
import { deadbandSetting, delaySettings, durationSetting, quantitySetting } from './settings.ts';
import {
  extremesBegin,
  extremesRange,
  extremesShift,
  extremesTake,
  extremesTo,
  type SpanExtremes,
} from './span-extremes.ts';

/** What binary fractions may add to a difference; far below any resolution. */
const dust = 1e-9;

export interface DisagreeSettings extends Delays {
  readonly allowed: number;
  readonly deadband: number;
  /** Moved by no more than this counts as steady. */
  readonly steady: number;
  readonly steadyMs: number;
  /** Which of the two to go by. */
  readonly goBy: 'low' | 'high';
}

export interface DisagreeMemory {
  readonly answer: Delayed;
  /** How each input moved lately; null where it cannot be used. */
  readings: (SpanExtremes | null)[];
  at: EpochMs | null;
  /** Of the last comparison. */
  lowest: number | null;
  highest: number | null;
  low: number;
  high: number;
}

/** Compares what is steady; whether they are further apart than that, null where nobody can tell. */
function apart(settings: DisagreeSettings, memory: DisagreeMemory, now: EpochMs): boolean | null {
  const { steady, steadyMs, allowed, deadband } = settings;
  const { readings } = memory;
  let lowest = -1;
  let highest = -1;
  for (let input = 0; input < readings.length; input += 1) {
    const of = readings[input]!;
    if (of === null) continue;
    extremesTo(of, steadyMs, now);
    if (now - of.beganAt < steadyMs || extremesRange(of) > steady + dust) return null;
    if (lowest < 0 || of.value < readings[lowest]!.value) lowest = input;
    if (highest < 0 || of.value >= readings[highest]!.value) highest = input;
  }
  if (lowest === highest) return null;
  memory.lowest = lowest;
  memory.highest = highest;
  memory.low = memory.readings[lowest]!.value;
  memory.high = memory.readings[highest]!.value;
  const limit = memory.answer.answer ? allowed - deadband : allowed;
  return memory.high - memory.low > limit + dust;
}

function evidence(settings: DisagreeSettings, memory: DisagreeMemory): Evidence {
  const { lowest, highest, low, high, answer } = memory;
  const about = {
    allowed: settings.allowed,
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(answer.sinceMs === null ? {} : { sinceMs: answer.sinceMs }),
  };
  if (lowest === null || highest === null) return about;
  const difference = withoutDust(high - low);
  return settings.goBy === 'high'
    ? { ...about, difference, input: highest, value: high, other: lowest, reference: low }
    : { ...about, difference, input: lowest, value: low, other: highest, reference: high };
}

export const disagree: RuleKind<DisagreeSettings, DisagreeMemory> = {
  name: 'disagree',
  version: 1,
  summary: 'Sensors of the same thing read apart although the process has been steady.',
  written: z.strictObject({
    allowed: quantitySetting('How far apart they may read once the process is steady.'),
    deadband: deadbandSetting,
    steady: quantitySetting('Steady means that each has moved by no more than this.'),
    steady_for: durationSetting(
      'For how long they must have been steady before they are compared.',
    ),
    go_by: z.optional(
      z.enum(['low', 'high']).check(
        z.meta({
          description:
            'Which to go by until it is known which is right: high, the hotter one, unless given; low where cold is the hazard.',
        }),
      ),
    ),
    ...delaySettings,
  }),
  takes: { least: 2, most: 8, units: 'same' },
  compile(read) {
    const allowed = read.difference('allowed', Number.POSITIVE_INFINITY);
    const deadband = read.difference('deadband', 0);
    const steadyMs = read.duration('steady_for', 1);
    if (allowed <= 0)
      read.report({
        path: ['allowed'],
        problem: 'two sensors never read quite the same',
        fix: 'give how far apart they may be, as "5 K"',
      });
    else if (deadband >= allowed)
      read.report({
        path: ['deadband'],
        problem: 'no difference would be well again',
        fix: `make it less than allowed, ${allowed}`,
      });
    if (steadyMs === 0)
      read.report({
        path: ['steady_for'],
        problem: 'every process is steady for a moment',
        fix: 'give the time the slower sensor needs to settle, as "10 min"',
      });
    return {
      allowed,
      deadband,
      steady: read.difference('steady', 0),
      steadyMs: Math.max(1, steadyMs),
      goBy: read.text('go_by') === 'low' ? 'low' : 'high',
      ...compileDelays(read),
    };
  },
  begin: () => ({
    answer: delayedBegin(),
    readings: [],
    at: null,
    lowest: null,
    highest: null,
    low: 0,
    high: 0,
  }),
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    const { readings } = memory;
    const { input, value, judged } = reading;
    while (readings.length <= input) readings.push(null);
    const of = readings[input];
    if (of == null) readings[input] = extremesBegin(settings.steadyMs, value, judged);
    else extremesTake(of, settings.steadyMs, value, judged);
    memory.at = reading.at;
    return answerSay(settings, memory, apart(settings, memory, judged), judged, timer);
  },
  without(memory, input, timer) {
    if (input < memory.readings.length) memory.readings[input] = null;
    memory.answer.changeAt = null;
    timer.at = null;
  },
  deadline: answerDue,
  /** Nobody saw whether it stayed steady. */
  gap(settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    memory.readings = memory.readings.map((of) =>
      of === null ? null : extremesBegin(settings.steadyMs, of.value, toMs),
    );
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    for (const of of memory.readings) if (of !== null) extremesShift(of, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence,
  sentence: (evidence) =>
    evidence.other === undefined
      ? '{$signals} read apart, more than {$allowed}.'
      : '{$which} at {$value} and {$other} at {$reference}, {$difference} apart although steady; {$allowed} is allowed. Go by {$which} until a third probe has told which is right.',
};
