import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chartFactors, individualsLimits, meanRangeLimits } from '#rules/process/chart-factors.ts';
import { upperNormalTail } from '#rules/process/normal-tail.ts';
import { factorRows, nistIndividuals } from '../../vectors/control-charts.ts';

const below = (z: number): number => (z > 0 ? 1 - upperNormalTail(z) : upperNormalTail(-z));

/** Mean and spread of the range of n standard normal values, by quadrature. */
function rangeMoments(n: number): { mean: number; spread: number } {
  const step = 0.02;
  const grid = Array.from({ length: 701 }, (_, i) => below(-7 + i * step));
  let mean = 0;
  let square = 0;
  grid.forEach((low, i) => {
    mean += (1 - (1 - low) ** n - low ** n) * step;
    // E W^2 is twice the integral over y > x of 1 - F(y)^n - (1 - F(x))^n + (F(y) - F(x))^n.
    for (let j = i; j < grid.length; j += 1) {
      const high = grid[j]!;
      const inner = 1 - high ** n - (1 - low) ** n + (high - low) ** n;
      square += (j === i ? 1 : 2) * inner * step * step;
    }
  });
  return { mean, spread: Math.sqrt(square - mean ** 2) };
}

/** c4 = sqrt(2/(n-1)) Gamma(n/2)/Gamma((n-1)/2). */
function spreadFactor(n: number): number {
  const gammaOfHalf = (twice: number): number => {
    if (twice === 1) return Math.sqrt(Math.PI);
    return twice === 2 ? 1 : (twice / 2 - 1) * gammaOfHalf(twice - 2);
  };
  return Math.sqrt(2 / (n - 1)) * (gammaOfHalf(n) / gammaOfHalf(n - 1));
}

describe('published factors', () => {
  test.each(factorRows)('groups of $n ($source)', ({ n, source, flag, ...expected }) => {
    expect(chartFactors(n)).toEqual(expected);
  });

  test.each(factorRows)('groups of $n recomputed', ({ n, d2, d3, a2, rangeLow, rangeHigh, c4 }) => {
    const { mean, spread } = rangeMoments(n);
    const half = 0.5005e-3;
    expect(Math.abs(mean - d2)).toBeLessThan(half);
    expect(Math.abs(spread - d3)).toBeLessThan(half);
    expect(Math.abs(3 / (mean * Math.sqrt(n)) - a2)).toBeLessThan(half);
    // These were computed from rounded d2 and d3: 2.574 stands for 2.5746.
    expect(Math.abs(Math.max(0, 1 - (3 * spread) / mean) - rangeLow)).toBeLessThan(1e-3);
    expect(Math.abs(1 + (3 * spread) / mean - rangeHigh)).toBeLessThan(1e-3);
    expect(Math.abs(spreadFactor(n) - c4)).toBeLessThan(0.5005e-4);
  });

  test('no group of another size', () => {
    for (const n of [0, 1, 11, 2.5, -1, Number.NaN]) expect(chartFactors(n)).toBeNull();
  });
});

describe('limits', () => {
  test(`single values (${nistIndividuals.source})`, () => {
    const { values, mean, movingRange, high, low, rangeHigh, tolerance } = nistIndividuals;
    const found = individualsLimits(values)!;
    for (const [one, other] of [
      [found.mean.centre, mean],
      [found.range.centre, movingRange],
      [found.mean.high, high],
      [found.mean.low, low],
      [found.range.high, rangeHigh],
    ] as const) {
      expect(Math.abs(one - other)).toBeLessThanOrEqual(tolerance);
    }
    expect(found.range.low).toBe(0);
  });

  test('groups: the formula by hand', () => {
    const found = meanRangeLimits([
      [10, 12, 14],
      [11, 11, 17],
    ])!;
    expect(found.mean).toEqual({ low: 12.5 - 1.023 * 5, centre: 12.5, high: 12.5 + 1.023 * 5 });
    expect(found.range).toEqual({ low: 0, centre: 5, high: 2.574 * 5 });
    expect(found.sigma).toBeCloseTo(5 / 1.693, 12);
  });

  test('shifted and stretched values shift and stretch the limits', () => {
    const values = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(values, fc.integer({ min: -50, max: 50 }), (drawn, shift) => {
        const one = individualsLimits(drawn)!;
        const other = individualsLimits(drawn.map((value) => 2 * value + shift))!;
        expect(other.mean.high).toBeCloseTo(2 * one.mean.high + shift, 8);
        expect(other.range.high).toBeCloseTo(2 * one.range.high, 8);
        expect(one.mean.low).toBeLessThanOrEqual(one.mean.high);
      }),
    );
  });

  test('nothing from too little, from uneven groups, from what is no number', () => {
    expect(individualsLimits([5])).toBeNull();
    expect(individualsLimits([5, Number.NaN])).toBeNull();
    expect(meanRangeLimits([])).toBeNull();
    expect(meanRangeLimits([[1, 2]])).toBeNull();
    expect(
      meanRangeLimits([
        [1, 2],
        [1, 2, 3],
      ]),
    ).toBeNull();
    expect(meanRangeLimits([[1], [2]])).toBeNull();
    expect(
      meanRangeLimits([
        [1, 2],
        [1, Number.POSITIVE_INFINITY],
      ]),
    ).toBeNull();
  });
});
