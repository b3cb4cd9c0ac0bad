/**
 * Exponentially weighted moving average chart: small, lasting shifts.
 *
 * z_i = w x_i + (1 - w) z_(i-1), z_0 = target. Two sets of limits are in use and they flag
 * differently in the first points: the steady ones, which hold once the chart has run a while, and
 * the ones that grow with the number of points. Each name here says which. Values, target and sigma
 * are in one unit, any; times are not looked at, so points should be evenly spaced. Outside its
 * range a function answers null, never NaN.
 *
 * Sources: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4 (steady limits);
 * D. C. Montgomery, Introduction to Statistical Quality Control (limits that grow).
 */

import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'EWMA chart',
  about:
    'Finds a small, lasting shift that no single reading shows, as of film or of solids. Two sets of limits are in use, the steady ones and those that grow with the first points; they flag differently, and each function says which it is. Readings should be evenly spaced.',
  symbols: {
    z: 'average, unit of the reading',
    x: 'reading',
    w: 'weight of the newest reading, over 0 to 1',
    sigma: 'standard deviation of a single reading',
    L: 'width in sigma, most often 2.7 to 3',
    i: 'number of the point, from 1',
  },
  source:
    'NIST/SEMATECH e-Handbook 6.3.2.4 (steady limits); D. C. Montgomery, Introduction to Statistical Quality Control (limits that grow)',
  uncertainty:
    'exact arithmetic; how often it cries wolf depends on w, L and on readings being independent',
  functions: {
    nextEwma: { formula: 'z_i = w x_i + (1 - w) z_(i-1)', range: 'w over 0 to 1; nothing outside' },
    ewmaSteadyHalfWidth: {
      formula: 'L sigma sqrt(w/(2 - w))',
      range: 'w over 0 to 1, sigma and L over 0; nothing outside',
    },
    ewmaGrowingHalfWidth: {
      formula: 'L sigma sqrt(w/(2 - w) (1 - (1 - w)^(2i)))',
      range: 'as the steady one, i whole from 1; nothing outside',
    },
  },
};

const isShare = (newestShare: number): boolean => newestShare > 0 && newestShare <= 1;

/** The next average; weight of the newest over 0 and up to 1, both numbers finite. Null outside. */
export function nextEwma(before: number, value: number, newestShare: number): number | null {
  if (!isShare(newestShare)) return null;
  const next = newestShare * value + (1 - newestShare) * before;
  return Number.isFinite(next) ? next : null;
}

/**
 * Half the width of the steady limits, unit of sigma: L sigma sqrt(w / (2 - w)); they stand at
 * target -+ this. Sigma is that of a single value, over 0; L is `widthSigmas`, over 0, most often
 * 2.7 to 3. Null outside.
 */
export function ewmaSteadyHalfWidth(
  sigma: number,
  newestShare: number,
  widthSigmas: number,
): number | null {
  if (!isShare(newestShare) || !(sigma > 0) || !(widthSigmas > 0)) return null;
  const half = widthSigmas * sigma * Math.sqrt(newestShare / (2 - newestShare));
  return Number.isFinite(half) ? half : null;
}

/**
 * The same at the `pointNumber`-th point, counted from 1: L sigma sqrt(w / (2 - w) (1 - (1 - w)^2i)).
 * Narrower than the steady one at first, the same in the end. Null outside.
 */
export function ewmaGrowingHalfWidth(
  sigma: number,
  newestShare: number,
  widthSigmas: number,
  pointNumber: number,
): number | null {
  if (!Number.isInteger(pointNumber) || pointNumber < 1) return null;
  const steady = ewmaSteadyHalfWidth(sigma, newestShare, widthSigmas);
  if (steady === null) return null;
  // 1 - (1 - w)^(2i) without losing digits where w is small.
  return steady * Math.sqrt(-Math.expm1(2 * pointNumber * Math.log1p(-newestShare)));
}
