/**
 * Shewhart charts: limits of mean and range of small groups, and of single values.
 *
 * Limits are three standard errors wide, the spread found from ranges: within a group, or from one
 * value to the next. Factors to the digits they are published with, so that limits agree with
 * charts drawn by hand. Outside its range a function answers null, never NaN.
 *
 * Sources: published tables of control chart factors (ASTM, ISO 7870-2), each recomputed;
 * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2.
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Shewhart charts',
  about:
    'Limits within which a steady process stays, of the film on groups of 2 to 10 parts or of single readings. They say that something changed, not whether parts are good; and they hold for a process that was steady when they were taken.',
  symbols: {
    n: 'values in a group',
    'd2, d3': 'mean and spread of the range of n normal values, in sigma',
    'A2, D3, D4': 'factors of the mean range, 3/(d2 sqrt n), max(0, 1 - 3 d3/d2), 1 + 3 d3/d2',
    c4: 'mean of the standard deviation of n normal values, in sigma',
  },
  source: 'published tables (ASTM, ISO 7870-2), recomputed; NIST/SEMATECH e-Handbook 6.3.2.2',
  uncertainty:
    'factors of three decimals; with under some 20 groups the limits themselves are rough (common practice, no published source)',
  functions: {
    chartFactors: { formula: 'table', range: 'n 2 to 10; nothing outside' },
    meanRangeLimits: {
      formula: 'mean -+ A2 range; D3 range to D4 range',
      range: 'at least 2 groups of one size, 2 to 10, all finite; nothing outside',
    },
    individualsLimits: {
      formula: 'mean -+ 3 moving range/1.128; 0 to 3.267 moving range',
      range: 'at least 2 values, all finite; nothing outside',
    },
  },
};

export interface ChartFactors {
  readonly d2: number;
  readonly d3: number;
  readonly a2: number;
  /** Of the range; 0 where there is no lower limit. */
  readonly rangeLow: number;
  readonly rangeHigh: number;
  readonly c4: number;
}

const row = (
  d2: number,
  d3: number,
  a2: number,
  rangeLow: number,
  rangeHigh: number,
  c4: number,
): ChartFactors => ({ d2, d3, a2, rangeLow, rangeHigh, c4 });

/** By group size, from 2. */
const factors: readonly ChartFactors[] = [
  row(1.128, 0.853, 1.88, 0, 3.267, 0.7979),
  row(1.693, 0.888, 1.023, 0, 2.574, 0.8862),
  row(2.059, 0.88, 0.729, 0, 2.282, 0.9213),
  row(2.326, 0.864, 0.577, 0, 2.114, 0.94),
  row(2.534, 0.848, 0.483, 0, 2.004, 0.9515),
  row(2.704, 0.833, 0.419, 0.076, 1.924, 0.9594),
  row(2.847, 0.82, 0.373, 0.136, 1.864, 0.965),
  row(2.97, 0.808, 0.337, 0.184, 1.816, 0.9693),
  row(3.078, 0.797, 0.308, 0.223, 1.777, 0.9727),
];

/** Null unless the size is a whole number from 2 to 10. */
export const chartFactors = (groupSize: number): ChartFactors | null =>
  factors[groupSize - 2] ?? null;

export interface ChartLimits {
  readonly low: number;
  readonly centre: number;
  readonly high: number;
}

export interface MeanRangeLimits {
  readonly mean: ChartLimits;
  readonly range: ChartLimits;
  /** Spread within a group: mean range / d2. */
  readonly sigma: number;
}

/** Of groups of one size, 2 to 10; at least 2 groups, all finite, unit of the values; null outside. */
export function meanRangeLimits(groups: readonly (readonly number[])[]): MeanRangeLimits | null {
  const size = groups[0]?.length ?? 0;
  const factor = chartFactors(size);
  if (factor === null || groups.length < 2) return null;
  if (groups.some((group) => group.length !== size)) return null;
  return limitsOf(
    average(groups.map(average)),
    average(groups.map((group) => Math.max(...group) - Math.min(...group))),
    factor,
    factor.a2,
  );
}

/** Of single values in the order they came, at least 2, all finite, in their unit; null outside. */
export function individualsLimits(values: readonly number[]): MeanRangeLimits | null {
  if (values.length < 2) return null;
  const steps = values.slice(1).map((value, i) => Math.abs(value - values[i]!));
  const pair = factors[0]!;
  return limitsOf(average(values), average(steps), pair, 3 / pair.d2);
}

function limitsOf(
  mean: number,
  range: number,
  factor: ChartFactors,
  meanFactor: number,
): MeanRangeLimits | null {
  const half = meanFactor * range;
  if (!Number.isFinite(mean) || !Number.isFinite(half)) return null;
  return {
    mean: { low: mean - half, centre: mean, high: mean + half },
    range: { low: factor.rangeLow * range, centre: range, high: factor.rangeHigh * range },
    sigma: range / factor.d2,
  };
}

const average = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
