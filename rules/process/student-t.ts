/**
 * Student's t: how far a mean or a line fitted to few points may be off.
 *
 * Sources: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and
 * 26.7.4 (finite sums for whole degrees of freedom).
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Student’s t',
  about: 'How many standard errors wide an interval is that rests on few points.',
  symbols: { nu: 'degrees of freedom, points minus fitted numbers', p: 'chance of lying below' },
  source: 'Abramowitz and Stegun 26.7.3 and 26.7.4',
  uncertainty: 'about ten digits',
  functions: {
    studentTQuantile: {
      formula: 't with A(t | nu) = 2p - 1, by bisection',
      range: 'whole nu from 1 to 1000, p from 0.5 to 0.9999; nothing outside',
    },
  },
};

/** t that lies above a share `p` of the distribution; degrees 1 to 1000, p 0.5 to 0.9999; null outside. */
export function studentTQuantile(degrees: number, p: number): number | null {
  if (!Number.isInteger(degrees) || degrees < 1 || degrees > 1_000) return null;
  if (!(p >= 0.5 && p <= 0.9999)) return null;
  let low = 0;
  let high = 4_000;
  while (high - low > 1e-11 * (1 + high)) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (within(middle, degrees) < 2 * p - 1) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A(t | nu): chance of lying between -t and t. */
function within(t: number, degrees: number): number {
  const angle = Math.atan2(t, Math.sqrt(degrees));
  const sine = Math.sin(angle);
  const cosine = Math.cos(angle);
  const odd = degrees % 2 === 1;
  if (degrees === 1) return (2 * angle) / Math.PI;
  let term = odd ? cosine : 1;
  let sum = term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= ((k - 1) / k) * cosine ** 2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}
