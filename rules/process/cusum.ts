/**
 * Tabular cumulative sum: how much a value has strayed from its target, beyond an allowance, in all.
 *
 * C+ = max(0, C+ + x - target - k), C- = max(0, C- + target - k - x); a shift is signalled where
 * one of them passes the decision interval h. k and h are in the unit of the value: half the shift
 * worth finding, and 4 to 5 sigma, are usual. Times are not looked at, so points should be evenly
 * spaced. Outside its range a function answers null, never NaN.
 *
 * Sources: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; D. C. Montgomery, Introduction
 * to Statistical Quality Control (counters and estimate of the new mean).
 */

import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Cumulative sum',
  about:
    'Adds up how far readings stray from a target beyond an allowance, and tells when that is more than chance, and since when. Readings should be evenly spaced.',
  symbols: {
    'C+, C-': 'sums above and below, unit of the reading',
    x: 'reading',
    T: 'target',
    k: 'allowance, half the shift worth finding',
    h: 'decision interval, usually 4 to 5 sigma',
    'N+, N-': 'points since that sum was last 0',
  },
  source:
    'NIST/SEMATECH e-Handbook 6.3.2.3; D. C. Montgomery, Introduction to Statistical Quality Control',
  uncertainty:
    'exact arithmetic; with k = 0.5 and h = 5 sigma a sound process is accused every 465 points, and a shift of 1 sigma found after 10 (from memory of the tables, recomputed)',
  functions: {
    emptyCusum: { formula: 'C+ = C- = 0', range: 'takes nothing' },
    addToCusum: {
      formula: 'C+ = max(0, C+ + x - T - k), C- = max(0, C- + T - k - x)',
      range: 'k 0 or more, all finite; nothing outside, and the sums stay',
    },
    cusumSide: { formula: 'C+ > h or C- > h', range: 'h over 0; nothing outside' },
    shiftedMean: {
      formula: 'T + k + C+/N+, or T - k - C-/N-',
      range: 'a sum over 0; nothing where it is 0',
      uncertainty: 'a rough estimate of where the mean has gone',
    },
  },
};

export interface Cusum {
  /** C+ and C-, never negative, unit of the value. */
  high: number;
  low: number;
  /** Points since each was last 0: the shift began before so many. */
  highPoints: number;
  lowPoints: number;
}

export const emptyCusum = (): Cusum => ({ high: 0, low: 0, highPoints: 0, lowPoints: 0 });

/**
 * Takes one value into `sums`, which it changes and returns. Allowance 0 or more, all finite; null
 * outside, with `sums` left as they were.
 */
export function addToCusum(
  sums: Cusum,
  value: number,
  target: number,
  allowance: number,
): Cusum | null {
  if (!(allowance >= 0)) return null;
  const high = Math.max(0, sums.high + (value - target - allowance));
  const low = Math.max(0, sums.low + (target - allowance - value));
  if (!Number.isFinite(high) || !Number.isFinite(low)) return null;
  sums.high = high;
  sums.low = low;
  sums.highPoints = high > 0 ? sums.highPoints + 1 : 0;
  sums.lowPoints = low > 0 ? sums.lowPoints + 1 : 0;
  return sums;
}

/** Which way it has shifted: past h, not at it. Null for none, and unless h is over 0. */
export function cusumSide(sums: Cusum, decisionLimit: number): 'low' | 'high' | null {
  if (!(decisionLimit > 0)) return null;
  const high = sums.high > decisionLimit;
  const low = sums.low > decisionLimit;
  if (high && low) return sums.high >= sums.low ? 'high' : 'low';
  if (high) return 'high';
  return low ? 'low' : null;
}

/**
 * Where the mean has probably gone, unit of the value: target + k + C+/N+, or target - k - C-/N-.
 * Null where that side's sum is 0.
 */
export function shiftedMean(
  sums: Cusum,
  side: 'low' | 'high',
  target: number,
  allowance: number,
): number | null {
  const points = side === 'high' ? sums.highPoints : sums.lowPoints;
  if (points === 0 || !(allowance >= 0)) return null;
  const mean =
    side === 'high'
      ? target + allowance + sums.high / points
      : target - allowance - sums.low / points;
  return Number.isFinite(mean) ? mean : null;
}
