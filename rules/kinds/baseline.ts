/**
 * A signal's own baseline: where it usually is and how much it scatters, given or learned.
 *
 * Readings are taken in points, each the mean of a stated time or, without one, each reading by
 * itself; the scatter is that of points. What is not given is learned from the first points, over
 * so much time in which the signal was seen, and stays as learned until the rule's settings change:
 * nothing is judged meanwhile. A scatter smaller than the sensor's resolution can show is not
 * believed. Readings of a process depend on those before; points should be longer than that lasts.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import { durationSetting, quantitySetting, type SettingsReader } from './settings.ts';

/** A standard deviation of fewer is known to no better than a sixth. */
const pointsMin = 20;

export interface BaselineSettings {
  readonly reference: number | null;
  readonly sigma: number | null;
  /** null where both are given. */
  readonly learnMs: number | null;
  /** 0 makes a point of each reading. */
  readonly everyMs: number;
  /** That of a reading rounded to the resolution: its 12th root, as of any value spread evenly. */
  readonly sigmaLeast: number;
  readonly baseline: string | null;
}

export interface Baseline {
  reference: number | null;
  sigma: number | null;
  /** For how long it has been learned, and from how many points: their mean and sum of squares about it. */
  learnedMs: number;
  learned: number;
  mean: number;
  squares: number;
  /** When the last reading was judged; null before the first and across a gap. */
  seenAt: EpochMs | null;
  /** The open point. */
  openAt: EpochMs | null;
  sum: number;
  count: number;
}

export const baselineWritten = {
  reference: z.optional(quantitySetting('Where the value usually is; learned unless given.')),
  sigma: z.optional(
    quantitySetting(
      'How much it scatters when all is well: the standard deviation of its points; learned unless given.',
    ),
  ),
  learn_for: z.optional(
    durationSetting(
      'Learn what is not given from the first so much time, once after each change of these settings.',
    ),
  ),
  every: z.optional(
    durationSetting(
      'One point for so much time, the mean of its readings; without it each reading is a point.',
    ),
  ),
  baseline: z.optional(
    z.string().check(
      z.minLength(1),
      z.maxLength(100),
      z.meta({
        description:
          'What the baseline belongs to, in your words, as “probe 7, fitted 2 Nov”: change it, and it is learned anew.',
      }),
    ),
  ),
} as const;

export function compileBaseline(read: SettingsReader): BaselineSettings {
  const reference = read.limit('reference');
  const sigma = read.has('sigma') ? read.difference('sigma', 0) : null;
  const learnMs = read.has('learn_for') ? read.duration('learn_for', 0) : null;
  const everyMs = read.duration('every', 0);
  const pointMs = Math.max(everyMs, read.expectEveryMs ?? 0);
  const given = read.has('reference') && read.has('sigma');
  if (sigma === 0)
    read.report({
      path: ['sigma'],
      problem: 'without any scatter every reading would be far away',
      fix: 'give the standard deviation of its points, or leave it to be learned',
    });
  if (given === read.has('learn_for'))
    read.report({
      path: ['learn_for'],
      problem: given ? 'there is nothing left to learn' : 'nobody says where the value usually is',
      fix: given
        ? 'take it out, or leave reference or sigma to be learned'
        : 'give reference and sigma, or learn_for',
    });
  else if (learnMs !== null && learnMs < pointsMin * Math.max(pointMs, 1))
    read.report({
      path: ['learn_for'],
      problem: `it would learn from fewer than ${pointsMin} points`,
      fix: `make it at least ${(pointsMin * Math.max(pointMs, 1)) / 1_000} s`,
    });
  return {
    reference,
    sigma,
    learnMs: given ? null : learnMs,
    everyMs,
    sigmaLeast: read.resolution / Math.sqrt(12),
    baseline: read.text('baseline'),
  };
}

export const baselineBegin = ({ reference, sigma }: BaselineSettings): Baseline => ({
  reference,
  sigma,
  learnedMs: 0,
  learned: 0,
  mean: 0,
  squares: 0,
  seenAt: null,
  openAt: null,
  sum: 0,
  count: 0,
});

/** Takes a reading; the point it closed, once the baseline is known, else null. */
export function baselinePoint(
  settings: BaselineSettings,
  memory: Baseline,
  value: number,
  judged: EpochMs,
): number | null {
  const known = memory.reference !== null && memory.sigma !== null;
  if (!known && memory.seenAt !== null) memory.learnedMs += judged - memory.seenAt;
  memory.seenAt = judged;
  const point = closedPoint(settings, memory, value, judged);
  if (point === null || known) return point;
  learn(settings, memory, point);
  return null;
}

/** A reading by itself, or the mean of a time that is over: this reading is then the first of the next. */
function closedPoint(
  { everyMs }: BaselineSettings,
  memory: Baseline,
  value: number,
  judged: EpochMs,
): number | null {
  if (everyMs === 0) return value;
  const over = memory.openAt !== null && judged - memory.openAt >= everyMs;
  const point = over ? memory.sum / memory.count : null;
  if (over) dropPoint(memory);
  memory.openAt ??= judged;
  memory.sum += value;
  memory.count += 1;
  return point;
}

function dropPoint(memory: Baseline): void {
  memory.openAt = null;
  memory.sum = 0;
  memory.count = 0;
}

/** Mean and squares by B. P. Welford, Technometrics 4 (1962) 419-420: no digits are lost. */
function learn(settings: BaselineSettings, memory: Baseline, point: number): void {
  memory.learned += 1;
  const before = point - memory.mean;
  memory.mean += before / memory.learned;
  memory.squares += before * (point - memory.mean);
  if (memory.learned < pointsMin || memory.learnedMs < (settings.learnMs ?? 0)) return;
  const scatter = Math.sqrt(memory.squares / (memory.learned - 1));
  const sigma = settings.sigma ?? Math.max(scatter, settings.sigmaLeast);
  // A value that never moved, of a sensor without a resolution, has taught nothing yet.
  if (!(sigma > 0)) return;
  memory.reference = settings.reference ?? memory.mean;
  memory.sigma = sigma;
}

/** A point across time nobody saw would be invented. */
export function baselineGap(memory: Baseline): void {
  memory.seenAt = null;
  dropPoint(memory);
}

export function baselineShift(memory: Baseline, deltaMs: number): void {
  if (memory.seenAt !== null) memory.seenAt += deltaMs;
  if (memory.openAt !== null) memory.openAt += deltaMs;
}
