import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ewmaGrowingHalfWidth, ewmaSteadyHalfWidth, nextEwma } from '#rules/process/ewma.ts';
import { montgomeryData, montgomeryEwma, nistEwma } from '../../vectors/control-charts.ts';

/** All averages of a series. */
function averaged(values: readonly number[], target: number, weight: number): number[] {
  let average = target;
  return values.map((value) => {
    average = nextEwma(average, value, weight)!;
    return average;
  });
}

describe('published charts', () => {
  test(`steady limits, no signal (${nistEwma.source})`, () => {
    const { values, target, weight, sigma, widthSigmas } = nistEwma;
    const found = averaged(values, target, weight);
    const half = ewmaSteadyHalfWidth(sigma, weight, widthSigmas)!;
    expect(target + half).toBeCloseTo(nistEwma.upperExact, 6);
    expect(target - half).toBeCloseTo(nistEwma.lowerExact, 6);
    expect(Math.abs(target + half - nistEwma.upper)).toBeLessThan(1e-4);
    expect(Math.abs(target - half - nistEwma.lower)).toBeLessThan(1e-4);
    found.forEach((average, i) => {
      expect(Math.abs(average - nistEwma.averages[i]!)).toBeLessThanOrEqual(0.005 + 1e-9);
      expect(Math.abs(average - target)).toBeLessThan(half);
    });
  });

  test(`limits that grow, signals at 29 and 30 (${montgomeryEwma.source})`, () => {
    const { values, target, sigma } = montgomeryData;
    const { weight, widthSigmas, firstLimits, lastLimits } = montgomeryEwma;
    const found = averaged(values, target, weight);
    for (const [point, average] of montgomeryEwma.averages) {
      expect(found[point - 1]).toBeCloseTo(average, 5);
    }
    const half = (point: number): number =>
      ewmaGrowingHalfWidth(sigma, weight, widthSigmas, point)!;
    expect(target - half(1)).toBeCloseTo(firstLimits[0], 4);
    expect(target + half(1)).toBeCloseTo(firstLimits[1], 4);
    expect(target - half(30)).toBeCloseTo(lastLimits[0], 4);
    expect(target + half(30)).toBeCloseTo(lastLimits[1], 4);
    const signals = found
      .map((average, i) => (Math.abs(average - target) > half(i + 1) ? i + 1 : 0))
      .filter((point) => point > 0);
    expect(signals).toEqual(montgomeryEwma.signals);
  });

  test('trap: the two kinds of limits flag differently in the first points', () => {
    // A first point 2.8 sigma off: past the grown limit of one point, well within the steady one.
    const first = nextEwma(0, 2.8, 0.1)!;
    expect(first).toBeGreaterThan(ewmaGrowingHalfWidth(1, 0.1, 2.7, 1)!);
    expect(first).toBeLessThan(ewmaSteadyHalfWidth(1, 0.1, 2.7)!);
  });
});

describe('any chart', () => {
  const weights = fc.double({ min: 0.001, max: 1, noNaN: true });

  test('the growing limits start at L sigma w, never shrink, and end in the steady ones', () => {
    fc.assert(
      fc.property(weights, fc.integer({ min: 1, max: 500 }), (weight, point) => {
        const here = ewmaGrowingHalfWidth(2, weight, 3, point)!;
        expect(ewmaGrowingHalfWidth(2, weight, 3, 1)!).toBeCloseTo(6 * weight, 10);
        expect(ewmaGrowingHalfWidth(2, weight, 3, point + 1)!).toBeGreaterThanOrEqual(here);
        expect(here).toBeLessThanOrEqual(ewmaSteadyHalfWidth(2, weight, 3)!);
        expect(ewmaGrowingHalfWidth(2, weight, 3, 1e6)!).toBeCloseTo(
          ewmaSteadyHalfWidth(2, weight, 3)!,
          10,
        );
      }),
    );
  });

  test('an average stays between what it was and the value; weight 1 is the value', () => {
    const values = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(values, values, weights, (before, value, weight) => {
        const next = nextEwma(before, value, weight)!;
        const dust = 1e-9 * (1 + Math.abs(before) + Math.abs(value));
        expect(next).toBeGreaterThanOrEqual(Math.min(before, value) - dust);
        expect(next).toBeLessThanOrEqual(Math.max(before, value) + dust);
        expect(nextEwma(before, value, 1)! + 0).toBe(value + 0);
      }),
    );
  });

  test('nothing outside the range, never NaN', () => {
    for (const weight of [0, -0.1, 1.01, Number.NaN]) {
      expect(nextEwma(1, 2, weight)).toBeNull();
      expect(ewmaSteadyHalfWidth(1, weight, 3)).toBeNull();
      expect(ewmaGrowingHalfWidth(1, weight, 3, 1)).toBeNull();
    }
    expect(nextEwma(Number.NaN, 1, 0.5)).toBeNull();
    expect(nextEwma(1, Number.POSITIVE_INFINITY, 0.5)).toBeNull();
    expect(ewmaSteadyHalfWidth(0, 0.5, 3)).toBeNull();
    expect(ewmaSteadyHalfWidth(1, 0.5, 0)).toBeNull();
    for (const point of [0, 1.5, -1, Number.NaN]) {
      expect(ewmaGrowingHalfWidth(1, 0.5, 3, point)).toBeNull();
    }
  });
});
