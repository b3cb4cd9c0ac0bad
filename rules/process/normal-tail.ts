/**
 * Upper tail of the standard normal distribution.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.2.11 (series)
 * and 26.2.14 (continued fraction).
 */
import type { Subject } from './subject.ts';

/** P(Z >= z) for z from 0 to 37, to about 1e-13 of itself; 0 beyond. Throws on a negative z. */
export function upperNormalTail(z: number): number {
  if (!(z >= 0)) throw new RangeError(`the tail begins at 0, not at ${z}`);
  if (z > 37) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return z < 2.5 ? 0.5 - density * series(z) : density * fraction(z);
}

/** z + z^3/3 + z^5/(3*5) + ...: all terms positive, so nothing cancels. */
function series(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > sum * 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return sum;
}

/** 1/(z + 1/(z + 2/(z + 3/...))), from the far end. */
function fraction(z: number): number {
  let below = z;
  for (let k = 200; k >= 1; k -= 1) below = z + k / below;
  return 1 / below;
}

export const subject: Subject = {
  title: 'Tail of the normal distribution',
  about: 'The chance of so many standard deviations or more.',
  symbols: { Z: 'a standard normal figure', z: 'standard deviations' },
  source:
    'M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.2.11, 26.2.14.',
  uncertainty: 'About 1e-13 of itself.',
  functions: {
    upperNormalTail: {
      formula: 'P(Z >= z), by series below 2.5 and continued fraction above',
      range: '0 to 37; 0 beyond. A negative z is a fault of the caller and throws.',
    },
  },
};
