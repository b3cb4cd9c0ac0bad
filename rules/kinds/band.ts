/**
 * `band`: a value outside its limits for longer than its delay.
 *
 * Up to four limits, `low_low` < `low` < `high` < `high_high`; the doubles make severity 2.
 * A limit is abnormal beyond it (or at it, where `inclusive`), and normal again only once the
 * value has come back by the deadband. Limits are compared at twelve significant digits, so
 * that 5 + 0.3 is the 5.3 a sensor can send.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import {
  type Delayed,
  type Delays,
  delayedBegin,
  delayedDue,
  delayedGap,
  delayedSay,
  delayedShift,
} from './delay.ts';
import type { Evidence, Reading, RuleKind, Severity, Timer } from './kind.ts';
import { durationText, quantityText, type SettingsReader } from './settings.ts';

interface Limits {
  readonly low: number | null;
  readonly high: number | null;
}

export interface BandSettings extends Delays {
  /** First limits, then the doubles. */
  readonly limits: readonly [Limits, Limits];
  readonly deadband: number;
  readonly inclusive: boolean;
}

export interface BandMemory {
  readonly level: readonly [Delayed, Delayed];
  value: number | null;
  at: EpochMs | null;
  side: 'low' | 'high' | null;
}

const written = z.strictObject({
  low: z.optional(quantityText),
  low_low: z.optional(quantityText),
  high: z.optional(quantityText),
  high_high: z.optional(quantityText),
  deadband: z.optional(quantityText),
  on_delay: z.optional(durationText),
  off_delay: z.optional(durationText),
  inclusive: z.optional(z.boolean()),
});

function compile(read: SettingsReader): BandSettings {
  const low = read.limit('low');
  const high = read.limit('high');
  const lowLow = read.limit('low_low');
  const highHigh = read.limit('high_high');
  const deadband = read.difference('deadband', 0);
  const ascending = [lowLow, low, high, highHigh].filter((limit) => limit !== null);
  if (ascending.length === 0)
    read.report({
      path: [],
      problem: 'a band without a limit judges nothing',
      fix: 'give at least one of low, low_low, high, high_high',
    });
  for (let i = 1; i < ascending.length; i += 1) {
    if (ascending[i]! <= ascending[i - 1]!)
      read.report({
        path: [],
        problem: `the limits do not ascend: ${ascending.join(', ')}`,
        fix: 'order them low_low < low < high < high_high',
      });
  }
  if (deadband < 0)
    read.report({
      path: ['deadband'],
      problem: 'a deadband cannot be negative',
      fix: 'write how far the value must come back, as "1 K"',
    });
  if (low !== null && high !== null && high - low <= 2 * deadband)
    read.report({
      path: ['deadband'],
      problem: 'no value between low and high would be normal again',
      fix: `make it smaller than half the window, ${(high - low) / 2}`,
    });
  return {
    limits: [
      { low, high },
      { low: lowLow, high: highHigh },
    ],
    deadband,
    inclusive: read.flag('inclusive', false),
    onDelayMs: read.duration('on_delay', 0),
    offDelayMs: read.duration('off_delay', 0),
  };
}

const exact = (value: number): number => Number(value.toPrecision(12));

/** On which side the value is outside, given whether the answer already says so; null inside. */
function outside(
  settings: BandSettings,
  limits: Limits,
  value: number,
  held: boolean,
): 'low' | 'high' | null {
  const back = held ? settings.deadband : 0;
  const v = exact(value);
  if (limits.low !== null) {
    const limit = exact(limits.low + back);
    if (settings.inclusive ? v <= limit : v < limit) return 'low';
  }
  if (limits.high !== null) {
    const limit = exact(limits.high - back);
    if (settings.inclusive ? v >= limit : v > limit) return 'high';
  }
  return null;
}

const severity = (memory: BandMemory): Severity =>
  memory.level[1].answer ? 2 : memory.level[0].answer ? 1 : 0;

const sooner = (a: EpochMs | null, b: EpochMs | null): EpochMs | null =>
  a === null ? b : b === null ? a : Math.min(a, b);

function sample(
  settings: BandSettings,
  memory: BandMemory,
  reading: Reading,
  timer: Timer,
): Severity {
  let due: EpochMs | null = null;
  for (const i of [0, 1] as const) {
    const level = memory.level[i];
    const side = outside(settings, settings.limits[i], reading.value, level.answer);
    if (side !== null) memory.side = side;
    due = sooner(due, delayedSay(settings, level, side !== null, reading.judged));
  }
  memory.value = reading.value;
  memory.at = reading.at;
  timer.at = due;
  return severity(memory);
}

function evidence(settings: BandSettings, memory: BandMemory): Evidence {
  const i = memory.level[1].answer ? 1 : 0;
  const level = memory.level[i];
  const limits = settings.limits[i];
  const limit =
    memory.side === null ? null : (limits[memory.side] ?? settings.limits[1][memory.side]);
  return {
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(limit === null ? {} : { limit }),
    ...(memory.side === null ? {} : { side: memory.side }),
    ...(level.sinceMs === null ? {} : { sinceMs: level.sinceMs }),
  };
}

export const band: RuleKind<BandSettings, BandMemory> = {
  name: 'band',
  version: 1,
  summary: 'A value outside its limits for longer than its delay.',
  written,
  compile,
  begin: () => ({ level: [delayedBegin(), delayedBegin()], value: null, at: null, side: null }),
  sample,
  deadline(settings, memory, at, timer) {
    timer.at = sooner(
      delayedDue(settings, memory.level[0], at),
      delayedDue(settings, memory.level[1], at),
    );
    return severity(memory);
  },
  gap(_settings, memory, fromMs, toMs) {
    for (const level of memory.level) delayedGap(level, toMs - fromMs);
  },
  shift(memory, deltaMs) {
    for (const level of memory.level) delayedShift(level, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence,
  limits: ({ limits: [first, second] }) => ({
    lowLow: second.low,
    low: first.low,
    high: first.high,
    highHigh: second.high,
  }),
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} at {$value}, below {$limit}.'
      : '{$signal} at {$value}, above {$limit}.',
};
