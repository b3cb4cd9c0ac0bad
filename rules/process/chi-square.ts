/**
 * Chi-square: how far a scatter found from few points may be off.
 *
 * Sources: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 6.5.29 (series)
 * and 6.5.31 (continued fraction) of the incomplete gamma function; 6.1.34 and 6.1.15 (gamma of
 * halves by recurrence).
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Chi-square',
  about: 'Bounds of a standard deviation, and so of a capability index, that rests on few points.',
  symbols: { nu: 'degrees of freedom, points minus one', p: 'chance of lying below' },
  source: 'Abramowitz and Stegun 6.5.29 and 6.5.31',
  uncertainty: 'about nine digits',
  functions: {
    chiSquareQuantile: {
      formula: 'x with P(nu/2, x/2) = p, by bisection',
      range: 'whole nu from 1 to 10000, p from 0.0001 to 0.9999; nothing outside',
    },
  },
};

/** x that lies above a share `p`; degrees 1 to 10 000, p 0.0001 to 0.9999; null outside. */
export function chiSquareQuantile(degrees: number, p: number): number | null {
  if (!Number.isInteger(degrees) || degrees < 1 || degrees > 10_000) return null;
  if (!(p >= 0.0001 && p <= 0.9999)) return null;
  const logGamma = logGammaOfHalves(degrees);
  let low = 0;
  let high = degrees + 20 * Math.sqrt(2 * degrees) + 40;
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (lowerShare(degrees / 2, middle / 2, logGamma) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** ln Gamma(n/2) for a whole n of 1 or more. */
function logGammaOfHalves(n: number): number {
  let log = n % 2 === 1 ? Math.log(Math.PI) / 2 : 0;
  for (let k = n % 2 === 1 ? 1 : 2; k < n; k += 2) log += Math.log(k / 2);
  return log;
}

/** P(a, x), the regularised lower incomplete gamma function. */
function lowerShare(a: number, x: number, logGamma: number): number {
  if (x === 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma);
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; term > sum * 1e-16; k += 1) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

/** By the method of Lentz: 1/(x+1-a- 1(1-a)/(x+3-a- 2(2-a)/(x+5-a- ... */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let product = d;
  for (let k = 1; k < 100_000; k += 1) {
    const factor = -k * (k - a);
    b += 2;
    d = 1 / (b + factor * d);
    c = b + factor / c;
    product *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return product;
}
