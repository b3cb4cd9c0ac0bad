/**
 * `drift`: a value that has slowly left its own baseline.
 *
 * By an exponentially weighted average past its steady limits, or by a cumulative sum past its
 * decision interval (rules/process/ewma.ts, cusum.ts), in standard deviations of the baseline. A
 * departure smaller than `least` is not told, however sure it is. Sums are kept to twice the
 * interval, so that a return is seen in time. The level told is the weighted average, in either
 * case. A gate that closes ends the answer and not what was learned.
 */
import { z } from 'zod/mini';
import { addToCusum, type Cusum, cusumSide, emptyCusum } from '../process/cusum.ts';
import { ewmaSteadyHalfWidth, nextEwma } from '../process/ewma.ts';
import { withoutDust } from '../quantity/quantity.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  type Baseline,
  type BaselineSettings,
  baselineBegin,
  baselineGap,
  baselinePoint,
  baselineShift,
  baselineWritten,
  compileBaseline,
} from './baseline.ts';
import {
  answerDue,
  answered,
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
import { delaySettings, quantitySetting, type SettingsReader } from './settings.ts';

type Side = 'low' | 'high';

export interface DriftSettings extends Delays, BaselineSettings {
  readonly by: 'ewma' | 'cusum';
  readonly side: Side | null;
  readonly least: number;
  readonly weightShare: number;
  readonly widthSigmas: number;
  readonly allowanceSigmas: number;
  readonly intervalSigmas: number;
}

export interface DriftMemory {
  readonly answer: Delayed;
  readonly baseline: Baseline;
  /** Weighted average of the points; null before the first. */
  level: number | null;
  readonly sums: Cusum;
  /** Since when it has been on that side, as its method sees it. */
  lowSince: EpochMs | null;
  highSince: EpochMs | null;
  /** On which side it was last told, or would be. */
  side: Side | null;
  at: EpochMs | null;
}

const bare = (description: string) => z.optional(z.number().check(z.meta({ description })));

const written = z.strictObject({
  ...baselineWritten,
  by: z.optional(
    z.enum(['ewma', 'cusum']).check(
      z.meta({
        description:
          'ewma, a weighted average of the points, unless given; or cusum, a sum of how far they stray.',
      }),
    ),
  ),
  side: z.optional(
    z.enum(['low', 'high']).check(z.meta({ description: 'Tell only a drift to this side.' })),
  ),
  least: z.optional(quantitySetting('A departure smaller than this does not matter.')),
  weight: bare('Of the newest point in the average, over 0 and up to 1; 0.2 unless given.'),
  width: bare('ewma: how far its limits lie, in standard deviations; 3 unless given.'),
  allowance: bare(
    'cusum: how far a point may stray and not count, in standard deviations; 0.5 unless given.',
  ),
  interval: bare('cusum: the sum at which it is told, in standard deviations; 5 unless given.'),
  ...delaySettings,
});

function compile(read: SettingsReader): DriftSettings {
  const by = read.text('by') === 'cusum' ? 'cusum' : 'ewma';
  const side = read.text('side');
  const weightShare = read.number('weight', 0.2);
  if (!(weightShare > 0 && weightShare <= 1))
    read.report({
      path: ['weight'],
      problem: `${weightShare} is no share of an average`,
      fix: 'write more than 0 and at most 1, as 0.2',
    });
  const theirs = { ewma: ['width'], cusum: ['allowance', 'interval'] } as const;
  for (const other of by === 'ewma' ? theirs.cusum : theirs.ewma)
    if (read.has(other))
      read.report({
        path: [other],
        problem: `by ${by} it means nothing`,
        fix: `take it out, or write by: ${by === 'ewma' ? 'cusum' : 'ewma'}`,
      });
  const sigmas = (key: 'width' | 'allowance' | 'interval', usual: number): number => {
    const value = read.number(key, usual);
    if (value < 0 || (value === 0 && key !== 'allowance'))
      read.report({
        path: [key],
        problem: 'every point would be a drift',
        fix: `make it more than nothing, as ${usual}`,
      });
    return value;
  };
  return {
    ...compileBaseline(read),
    ...compileDelays(read),
    by,
    side: side === 'low' || side === 'high' ? side : null,
    least: read.difference('least', 0),
    weightShare,
    widthSigmas: sigmas('width', 3),
    allowanceSigmas: sigmas('allowance', 0.5),
    intervalSigmas: sigmas('interval', 5),
  };
}

/**
 * How far the level may be from the baseline; by a sum only what does not matter. A reference that
 * was learned is itself uncertain, by sigma / sqrt(n), and the limits are so much wider.
 */
function allowedOf(settings: DriftSettings, { sigma, learned }: Baseline): number {
  const { by, least, weightShare, widthSigmas, reference } = settings;
  if (by === 'cusum' || sigma === null) return least;
  const half = ewmaSteadyHalfWidth(sigma, weightShare, widthSigmas) ?? 0;
  const unsure = reference === null ? (widthSigmas * sigma) / Math.sqrt(learned) : 0;
  return Math.max(least, Math.hypot(half, unsure));
}

/** Takes a point into average and sums; the side it has drifted to. */
function judge(
  settings: DriftSettings,
  memory: DriftMemory,
  point: number,
  judged: EpochMs,
): Side | null {
  const { sums, baseline } = memory;
  const [reference, sigma] = [baseline.reference!, baseline.sigma!];
  memory.level = nextEwma(memory.level ?? reference, point, settings.weightShare) ?? reference;
  addToCusum(sums, (point - reference) / sigma, 0, settings.allowanceSigmas);
  sums.high = Math.min(sums.high, 2 * settings.intervalSigmas);
  sums.low = Math.min(sums.low, 2 * settings.intervalSigmas);
  const away = withoutDust(memory.level - reference);
  const [low, high] = settings.by === 'ewma' ? [away < 0, away > 0] : [sums.low > 0, sums.high > 0];
  memory.lowSince = low ? (memory.lowSince ?? judged) : null;
  memory.highSince = high ? (memory.highSince ?? judged) : null;
  const allowed = allowedOf(settings, baseline);
  const side =
    settings.by === 'cusum'
      ? Math.abs(away) >= allowed
        ? cusumSide(sums, settings.intervalSigmas)
        : null
      : Math.abs(away) > allowed
        ? away < 0
          ? 'low'
          : 'high'
        : null;
  return settings.side === null || settings.side === side ? side : null;
}

function evidence(settings: DriftSettings, memory: DriftMemory): Evidence {
  const { level, baseline, side, answer } = memory;
  const { reference, sigma } = baseline;
  const sinceMs = (side === 'low' ? memory.lowSince : memory.highSince) ?? answer.sinceMs;
  return {
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(level === null ? {} : { value: withoutDust(level) }),
    ...(reference === null ? {} : { reference: withoutDust(reference) }),
    ...(level === null || reference === null
      ? {}
      : { difference: withoutDust(Math.abs(level - reference)) }),
    ...(sigma === null ? {} : { allowed: withoutDust(allowedOf(settings, baseline)) }),
    ...(side === null ? {} : { side, ...(sinceMs === null ? {} : { sinceMs }) }),
  };
}

export const drift: RuleKind<DriftSettings, DriftMemory> = {
  name: 'drift',
  version: 1,
  summary: 'A value that has slowly left its own baseline, given or learned.',
  written,
  compile,
  begin: (settings) => ({
    answer: delayedBegin(),
    baseline: baselineBegin(settings),
    level: null,
    sums: emptyCusum(),
    lowSince: null,
    highSince: null,
    side: null,
    at: null,
  }),
  reopen(_settings, memory) {
    baselineGap(memory.baseline);
    Object.assign(memory.answer, delayedBegin());
  },
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    // The engine lays the latest before a rule whose gate opens; it may be one it has had.
    if (reading.at === memory.at) return answered(memory);
    memory.at = reading.at;
    const { judged } = reading;
    const point = baselinePoint(settings, memory.baseline, reading.value, judged);
    if (point === null) return answered(memory);
    const side = judge(settings, memory, point, judged);
    if (side !== null) memory.side = side;
    return answerSay(settings, memory, side !== null, judged, timer);
  },
  deadline: answerDue,
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    baselineGap(memory.baseline);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    baselineShift(memory.baseline, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
    if (memory.lowSince !== null) memory.lowSince += deltaMs;
    if (memory.highSince !== null) memory.highSince += deltaMs;
  },
  evidence,
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} has drifted to {$value}, {$difference} below its usual {$reference}, since {$clock}.'
      : '{$signal} has drifted to {$value}, {$difference} above its usual {$reference}, since {$clock}.',
};
