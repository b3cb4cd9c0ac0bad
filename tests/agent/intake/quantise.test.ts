import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantise } from '#agent/intake/quantise.ts';

test.each([
  [21.46, 1, 21.5],
  [21.44, 1, 21.4],
  [0.25, 1, 0.3],
  [-0.25, 1, -0.2],
  [0.1 + 0.2, 2, 0.3],
  [1234, -2, 1200],
  [1250, -2, 1300],
  [5.55, 0, 6],
  [0.1 + 0.2, null, 0.1 + 0.2],
])('%d to %j decimals is %d', (value, digits, kept) => {
  expect(quantise(value, digits)).toBe(kept);
});

test('what is kept is exactly k / 10^digits, and never minus zero', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
      (value, digits) => {
        const kept = quantise(value, digits);
        const k = Math.round(kept * 10 ** digits);
        expect(kept).toBe(k === 0 ? 0 : k / 10 ** digits);
        expect(Object.is(kept, -0)).toBe(false);
        expect(quantise(kept, digits)).toBe(kept);
        expect(Math.abs(kept - value)).toBeLessThanOrEqual(0.5000001 / 10 ** digits);
      },
    ),
  );
  for (const digits of [0, 3, -1, null]) expect(Object.is(quantise(-0, digits), 0)).toBe(true);
  expect(Object.is(quantise(-0.04, 1), 0)).toBe(true);
});

test('beyond what a double counts exactly there is no value', () => {
  expect(quantise(2 ** 53, 0)).toBeNaN();
  expect(quantise(1e300, 12)).toBeNaN();
  expect(quantise(1e15, 1)).toBeNaN();
  expect(quantise(Number.POSITIVE_INFINITY, null)).toBeNaN();
  expect(quantise(Number.NaN, 1)).toBeNaN();
  expect(() => quantise(1, 23)).toThrow(RangeError);
});
