/**
 * A slope that one wild point cannot bend: Theil-Sen, with Sen's confidence interval.
 *
 * Cost: n(n-1)/2 slopes are computed and searched; 32 points are 496 slopes, some microseconds.
 * Up to 64 points nothing is allocated but the answer. Points must ascend strictly in time and
 * be finite; a function that is given something else answers null, never NaN.
 *
 * Sources: P. K. Sen, Estimates of the regression coefficient based on Kendall's tau, J. Am.
 * Stat. Assoc. 63 (1968) 1379-1389; interval with interpolated ranks as in R. O. Gilbert,
 * Statistical Methods for Environmental Pollution Monitoring (1987), section 16.5.
 */
import { orderStatistic } from './order-statistic.ts';
import type { Subject } from './subject.ts';

export interface SenSlope {
  /** Median of all pairwise slopes, units of value per unit of time. */
  slope: number;
  /** Bounds of the interval; -Infinity and Infinity where so few points cannot bound it. */
  low: number;
  high: number;
}

/** Two-sided standard normal quantiles. */
export const confidenceZ = {
  p80: 1.2815515655446004,
  p90: 1.6448536269514722,
  p95: 1.959963984540054,
  p99: 2.5758293035489004,
} as const;

const pointsWithoutAllocation = 64;
const slopeScratch = new Float64Array(
  (pointsWithoutAllocation * (pointsWithoutAllocation - 1)) / 2,
);
const pointScratch = new Float64Array(pointsWithoutAllocation);

/**
 * Slope of the first `count` points with its confidence interval by `z`, into `into` if given.
 * At least 2 points; null for fewer, for times that do not ascend and for what is not finite.
 * The interval is Sen's, by the normal approximation with ties corrected: fair from about 10 points.
 */
export function senSlope(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  count: number,
  z: number,
  into: SenSlope = { slope: 0, low: 0, high: 0 },
): SenSlope | null {
  if (!wellFormed(times, values, count) || !(z > 0)) return null;
  const pairs = (count * (count - 1)) / 2;
  const slopes = count <= pointsWithoutAllocation ? slopeScratch : new Float64Array(pairs);
  let k = 0;
  for (let i = 1; i < count; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const slope = (values[i]! - values[j]!) / (times[i]! - times[j]!);
      if (!Number.isFinite(slope)) return null;
      slopes[k] = slope;
      k += 1;
    }
  }
  const half = z * Math.sqrt(scoreVariance(values, count));
  into.slope = atRank(slopes, pairs, (pairs + 1) / 2);
  into.low = atRank(slopes, pairs, (pairs - half) / 2);
  into.high = atRank(slopes, pairs, (pairs + half) / 2 + 1);
  return into;
}

/**
 * Conover's intercept for a slope: median of values minus slope times median of times, so the
 * line passes through the point of medians. Null as for `senSlope`.
 */
export function senIntercept(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  count: number,
  slope: number,
): number | null {
  if (!wellFormed(times, values, count) || !Number.isFinite(slope)) return null;
  const intercept = median(values, count) - slope * median(times, count);
  return Number.isFinite(intercept) ? intercept : null;
}

/** Variance of Kendall's S with ties among the values: (n(n-1)(2n+5) - sum t(t-1)(2t+5)) / 18. */
export function scoreVariance(values: ArrayLike<number>, count: number): number {
  const sorted = copied(values, count).subarray(0, count).sort();
  let eighteenfold = count * (count - 1) * (2 * count + 5);
  for (let i = 0; i < count; ) {
    let tied = 1;
    while (i + tied < count && sorted[i + tied] === sorted[i]) tied += 1;
    eighteenfold -= tied * (tied - 1) * (2 * tied + 5);
    i += tied;
  }
  return eighteenfold / 18;
}

/** At least 2 points, all finite, times strictly ascending. */
export function wellFormed(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  count: number,
): boolean {
  if (count < 2 || count > times.length || count > values.length) return false;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i += 1) {
    const at = times[i]!;
    if (!(at > before) || !Number.isFinite(at) || !Number.isFinite(values[i]!)) return false;
    before = at;
  }
  return true;
}

function copied(values: ArrayLike<number>, count: number): Float64Array {
  const scratch = count <= pointsWithoutAllocation ? pointScratch : new Float64Array(count);
  for (let i = 0; i < count; i += 1) scratch[i] = values[i]!;
  return scratch;
}

function median(values: ArrayLike<number>, count: number): number {
  return atRank(copied(values, count), count, (count + 1) / 2);
}

/** The value at a rank counted from 1, between two ranks in proportion; unbounded outside. */
function atRank(numbers: Float64Array, count: number, rank: number): number {
  if (rank < 1) return Number.NEGATIVE_INFINITY;
  if (rank > count) return Number.POSITIVE_INFINITY;
  const index = Math.floor(rank) - 1;
  const lower = orderStatistic(numbers, 0, count - 1, index);
  const part = rank - 1 - index;
  if (part === 0) return lower;
  let upper = numbers[index + 1]!;
  for (let i = index + 2; i < count; i += 1) upper = Math.min(upper, numbers[i]!);
  return lower + part * (upper - lower);
}

export const subject: Subject = {
  title: 'Robust slope',
  about: 'The slope of readings over time that one wild point cannot bend, with an interval.',
  symbols: {
    Q: 'slope, unit of the value per unit of time',
    n: 'points',
    C: 'half the interval in ranks, z sqrt(Var S)',
    z: 'standard normal quantile, two-sided',
    t: 'sizes of groups of equal values',
    S: "Kendall's score",
  },
  source:
    'P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379-1389; interval as in R. O. Gilbert (1987), 16.5; intercept after Conover.',
  uncertainty: 'The interval is by the normal approximation, fair from about 10 points.',
  functions: {
    senSlope: {
      formula:
        'Q = median of (x_j - x_i)/(t_j - t_i); interval at ranks (N -+ C)/2 of the N slopes',
      range: '2 points or more, finite, times strictly ascending; nothing else.',
    },
    senIntercept: {
      formula: 'median of values - Q times median of times',
      range: 'As above; nothing else.',
    },
    scoreVariance: {
      formula: 'Var S = (n(n-1)(2n+5) - sum t(t-1)(2t+5))/18',
      range: 'Finite values.',
    },
    wellFormed: {
      formula: 'at least 2 points, finite, times strictly ascending',
      range: 'Any.',
    },
  },
};
