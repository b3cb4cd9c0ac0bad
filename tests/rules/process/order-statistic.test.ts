import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderStatistic } from '#rules/process/order-statistic.ts';

test('is what a sort would put there, and parts the rest', () => {
  fc.assert(
    fc.property(
      // Small integers beside doubles: ties are where a selection goes wrong.
      fc.array(fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ noNaN: true })), {
        minLength: 1,
        maxLength: 60,
      }),
      fc.nat(),
      (drawn, pick) => {
        const numbers = Float64Array.from(drawn);
        const k = pick % numbers.length;
        const sorted = numbers.toSorted();
        expect(orderStatistic(numbers, 0, numbers.length - 1, k) === sorted[k]).toBe(true);
        for (let i = 0; i < numbers.length; i += 1) {
          if (i < k) expect(numbers[i]!).toBeLessThanOrEqual(numbers[k]!);
          if (i > k) expect(numbers[i]!).toBeGreaterThanOrEqual(numbers[k]!);
        }
        expect(numbers.toSorted()).toEqual(sorted);
      },
    ),
  );
});

test('leaves what lies outside its bounds alone', () => {
  const numbers = Float64Array.of(9, 3, 2, 1, -9);
  expect(orderStatistic(numbers, 1, 3, 1)).toBe(1);
  expect([numbers[0], numbers[4]]).toEqual([9, -9]);
});
