/**
 * `band`: a value outside its limits for longer than its delay.
 *
 * Up to four limits, `low_low` < `low` < `high` < `high_high`; the doubles make severity 2.
 * A limit is abnormal beyond it (or at it, where `inclusive`), and normal again only once the
 * value has come back by the deadband. A limit with its deadband is rounded to twelve significant
 * digits, so that 5 + 0.3 is the 5.3 a sensor can send.
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
  delayedStand,
} from './delay.ts';
import type { Evidence, Reading, RuleKind, RulerLimits, Severity, Timer } from './kind.ts';
import {
  deadbandSetting,
  delaySettings,
  quantitySetting,
  type SettingsReader,
} from './settings.ts';

interface Limits {
  readonly low: number | null;
  readonly high: number | null;
  /** Where it is abnormal, and until where it stays so; infinite where there is no limit. */
  readonly lowRaise: number;
  readonly lowHold: number;
  readonly highRaise: number;
  readonly highHold: number;
}

export interface BandSettings extends Delays {
  /** First limits, then the doubles. */
  readonly limits: readonly [Limits, Limits];
  readonly inclusive: boolean;
}

export interface BandMemory {
  readonly level: readonly [Delayed, Delayed];
  value: number | null;
  at: EpochMs | null;
  side: 'low' | 'high' | null;
}

const written = z.strictObject({
  low: z.optional(quantitySetting('Alarm below this.')),
  low_low: z.optional(
    quantitySetting(
      'The second limit, further out: below this the alarm is raised again, with its second priority.',
    ),
  ),
  high: z.optional(quantitySetting('Alarm above this.')),
  high_high: z.optional(
    quantitySetting(
      'The second limit, further out: above this the alarm is raised again, with its second priority.',
    ),
  ),
  deadband: deadbandSetting,
  ...delaySettings,
  inclusive: z.optional(
    z
      .boolean()
      .check(z.meta({ description: 'true: a value exactly at the limit counts as beyond it.' })),
  ),
});

function compile(read: SettingsReader): BandSettings {
  const limits = {
    lowLow: read.limit('low_low'),
    low: read.limit('low'),
    high: read.limit('high'),
    highHigh: read.limit('high_high'),
  };
  if (Object.values(limits).every((limit) => limit === null))
    read.report({
      path: [],
      problem: 'a band without a limit judges nothing',
      fix: 'give at least one of low, low_low, high, high_high',
    });
  return bandOf(read, limits, read.difference('deadband', 0));
}

/** Limits and deadband in canonical units, with the delays as written; what does not fit is reported. */
export function bandOf(
  read: SettingsReader,
  { lowLow, low, high, highHigh }: RulerLimits,
  deadband: number,
): BandSettings {
  const ascending = [lowLow, low, high, highHigh].filter((limit) => limit !== null);
  if (ascending.some((limit, i) => i > 0 && limit <= ascending[i - 1]!))
    read.report({
      path: [],
      problem: `the limits do not ascend: ${ascending.join(', ')}`,
      fix: 'order them low_low < low < high < high_high',
    });
  else {
    reportNarrow(read, ['low', 'high'], low, high, deadband);
    reportNarrow(read, ['low_low', 'high_high'], lowLow, highHigh, deadband);
  }
  return {
    limits: [limitsOf(low, high, deadband), limitsOf(lowLow, highHigh, deadband)],
    inclusive: read.flag('inclusive', false),
    onDelayMs: read.duration('on_delay', 0),
    offDelayMs: read.duration('off_delay', 0),
  };
}

/** Between two limits of one level there must be values that are normal again. */
function reportNarrow(
  read: SettingsReader,
  [lower, upper]: readonly [string, string],
  low: number | null,
  high: number | null,
  deadband: number,
): void {
  if (low === null || high === null || exact(high - low) > exact(2 * deadband)) return;
  const unit = read.unit === 'Cel' ? 'K' : read.unit;
  read.report({
    path: ['deadband'],
    problem: `no value between ${lower} and ${upper} would be normal again`,
    fix: `make it less than half of what lies between them, ${exact((high - low) / 2)} ${unit}`,
  });
}

const exact = (value: number): number => Number(value.toPrecision(12));

function limitsOf(low: number | null, high: number | null, deadband: number): Limits {
  return {
    low,
    high,
    lowRaise: low === null ? Number.NEGATIVE_INFINITY : exact(low),
    lowHold: low === null ? Number.NEGATIVE_INFINITY : exact(low + deadband),
    highRaise: high === null ? Number.POSITIVE_INFINITY : exact(high),
    highHold: high === null ? Number.POSITIVE_INFINITY : exact(high - deadband),
  };
}

/** On which side the value is outside, given whether the answer already says so; null inside. */
function outside(
  limits: Limits,
  inclusive: boolean,
  value: number,
  held: boolean,
): 'low' | 'high' | null {
  const low = held ? limits.lowHold : limits.lowRaise;
  const high = held ? limits.highHold : limits.highRaise;
  if (inclusive ? value <= low : value < low) return 'low';
  if (inclusive ? value >= high : value > high) return 'high';
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
  const { value, judged } = reading;
  const { limits, inclusive } = settings;
  const [first, second] = memory.level;
  const side = outside(limits[0], inclusive, value, first.answer);
  const secondSide = outside(limits[1], inclusive, value, second.answer);
  if (side !== null || secondSide !== null) memory.side = secondSide ?? side;
  memory.value = value;
  memory.at = reading.at;
  timer.at = sooner(
    delayedSay(settings, first, side !== null, judged),
    delayedSay(settings, second, secondSide !== null, judged),
  );
  return severity(memory);
}

function evidence(settings: BandSettings, memory: BandMemory): Evidence {
  const i = memory.level[1].answer ? 1 : 0;
  const level = memory.level[i];
  const limits = settings.limits[i];
  const limit =
    memory.side === null
      ? null
      : (limits[memory.side] ?? settings.limits[1 - i]?.[memory.side] ?? null);
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
  stand({ limits: [first] }, memory, severity, sinceMs) {
    if (first.low === null || first.high === null)
      memory.side = first.low === null ? 'high' : 'low';
    delayedStand(memory.level[0], sinceMs);
    if (severity === 2) delayedStand(memory.level[1], sinceMs);
  },
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
  limits: ({ limits: [first, second], inclusive }) => ({
    lowLow: second.low,
    low: first.low,
    high: first.high,
    highHigh: second.high,
    ...(inclusive ? { inclusive } : {}),
  }),
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} at {$value}, below {$limit}.'
      : '{$signal} at {$value}, above {$limit}.',
};
