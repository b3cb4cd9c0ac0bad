import { expect, test } from 'vitest';
import { upperNormalTail } from '#rules/process/normal-tail.ts';

// Abramowitz and Stegun, table 26.1, P(x) to 15 decimals and -log Q(x); from memory, and the
// quantiles are those every table prints.
test.each([
  [0, 0.5, 1e-15],
  [1, 0.158655253931457, 1e-14],
  [1.959963984540054, 0.025, 1e-14],
  [2, 0.022750131948179, 1e-13],
  [2.5758293035489004, 0.005, 1e-14],
  [3, 0.001349898031630095, 1e-13],
  [5, 2.866515718791939e-7, 1e-13],
  [10, 7.61985302416053e-24, 1e-12],
])('beyond %d lies %d', (z, tail, toleranceShare) => {
  expect(Math.abs(upperNormalTail(z) / tail - 1)).toBeLessThan(toleranceShare * 10);
});

test('falls everywhere, also where series and fraction meet', () => {
  for (let z = 0; z < 37; z += 0.01) {
    expect(upperNormalTail(z + 0.01)).toBeLessThan(upperNormalTail(z));
  }
  const step = upperNormalTail(2.5 - 1e-9) / upperNormalTail(2.5 + 1e-9) - 1;
  expect(step).toBeLessThan(1e-8);
});

test('ends at 0, and begins at 0', () => {
  expect(upperNormalTail(40)).toBe(0);
  expect(() => upperNormalTail(-1)).toThrow(RangeError);
  expect(() => upperNormalTail(Number.NaN)).toThrow(RangeError);
});
