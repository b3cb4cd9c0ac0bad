/**
 * Mann-Kendall: is there a trend at all, whatever its shape.
 *
 * A step gives a "significant trend" too: look before naming it one. Exact for up to 10 points
 * without ties, as its tables are; by the normal approximation with continuity correction else.
 *
 * Sources: H. B. Mann, Econometrica 13 (1945) 245-259; R. O. Gilbert, Statistical Methods for
 * Environmental Pollution Monitoring (1987), section 16.4.
 */
import { upperNormalTail } from './normal-tail.ts';
import type { Subject } from './subject.ts';
import { scoreVariance, wellFormed } from './trend.ts';

export interface MannKendall {
  /** S: pairs that rise minus pairs that fall. */
  readonly score: number;
  readonly variance: number;
  /** With continuity correction; 0 where S is 0. */
  readonly z: number;
  /** Two-sided, by the normal approximation. */
  readonly pNormal: number;
  /** Two-sided, counted out over all orders; null over 10 points or with ties. */
  readonly pExact: number | null;
}

const exactPointsMax = 10;

/** Null for fewer than 3 points, for times that do not ascend strictly and for what is not finite. */
export function mannKendall(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  count: number,
): MannKendall | null {
  if (count < 3 || !wellFormed(times, values, count)) return null;
  let score = 0;
  let tied = false;
  for (let i = 1; i < count; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const rise = Math.sign(values[i]! - values[j]!);
      score += rise;
      if (rise === 0) tied = true;
    }
  }
  const variance = scoreVariance(values, count);
  const z = variance === 0 ? 0 : (score - Math.sign(score)) / Math.sqrt(variance);
  const pNormal = Math.min(1, 2 * upperNormalTail(Math.abs(z)));
  const exact = !tied && count <= exactPointsMax;
  return { score, variance, z, pNormal, pExact: exact ? exactP(score, count) : null };
}

/** Share of the n! equally likely orders whose |S| is at least this. */
function exactP(score: number, count: number): number {
  const orders = ordersByInversions(count);
  const pairs = orders.length - 1;
  let asExtreme = 0;
  let all = 0;
  for (let inversions = 0; inversions <= pairs; inversions += 1) {
    all += orders[inversions]!;
    if (Math.abs(pairs - 2 * inversions) >= Math.abs(score)) asExtreme += orders[inversions]!;
  }
  return asExtreme / all;
}

/** How many orders of n things have k inversions, k from 0 to n(n-1)/2 (Mahonian numbers). */
function ordersByInversions(count: number): readonly number[] {
  let orders = [1];
  for (let n = 2; n <= count; n += 1) {
    const next = new Array<number>((n * (n - 1)) / 2 + 1).fill(0);
    for (let k = 0; k < orders.length; k += 1) {
      for (let added = 0; added < n; added += 1) next[k + added]! += orders[k]!;
    }
    orders = next;
  }
  return orders;
}

export const subject: Subject = {
  title: 'Is there a trend',
  about:
    'Whether readings rise or fall over time at all, whatever the shape. A step gives a trend too: look before naming it one.',
  symbols: {
    S: 'pairs that rise less pairs that fall',
    Z: 'standard normal figure with continuity correction',
    p: 'two-sided chance without a trend',
  },
  source: 'H. B. Mann, Econometrica 13 (1945) 245-259; R. O. Gilbert (1987), 16.4.',
  uncertainty: 'Exact for up to 10 untied points; by the normal approximation else.',
  functions: {
    mannKendall: {
      formula: 'Z = (S - sign S)/sqrt(Var S)',
      range: '3 points or more, finite, times strictly ascending; nothing else.',
    },
  },
};
