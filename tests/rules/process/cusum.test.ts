import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addToCusum,
  type Cusum,
  cusumSide,
  emptyCusum,
  shiftedMean,
} from '#rules/process/cusum.ts';
import { upperNormalTail } from '#rules/process/normal-tail.ts';
import {
  cusumRunLengths,
  montgomeryCusum,
  montgomeryData,
  nistCusum,
} from '../../vectors/control-charts.ts';

function summed(values: readonly number[], target: number, allowance: number): Cusum[] {
  const sums = emptyCusum();
  return values.map((value) => ({ ...addToCusum(sums, value, target, allowance)! }));
}

const signalled = (series: readonly Cusum[], interval: number): number[] =>
  series.map((sums, i) => (cusumSide(sums, interval) === null ? 0 : i + 1)).filter(Boolean);

describe('published series', () => {
  test(`first signal at 14, out from there on (${nistCusum.source})`, () => {
    const { values, target, allowance, decisionInterval } = nistCusum;
    const series = summed(values, target, allowance);
    series.forEach((sums, i) => {
      expect(Math.abs(sums.high - nistCusum.high[i]!)).toBeLessThan(1e-9);
      expect(Math.abs(sums.low - nistCusum.low[i]!)).toBeLessThan(1e-9);
    });
    expect(signalled(series, decisionInterval)).toEqual(nistCusum.signals);
    const plain = values.reduce((sum, value) => sum + value - target, 0);
    expect(plain).toBeCloseTo(nistCusum.plainEnd, 9);
  });

  test(`signals at 29 and 30 (${montgomeryCusum.source})`, () => {
    const { allowance, decisionInterval } = montgomeryCusum;
    const series = summed(montgomeryData.values, montgomeryData.target, allowance);
    expect(series[28]!.high).toBeCloseTo(montgomeryCusum.high29, 9);
    expect(series[29]!.high).toBeCloseTo(montgomeryCusum.high30, 9);
    expect(signalled(series, decisionInterval)).toEqual(montgomeryCusum.signals);
    // It has been away from zero for 7 points: the shift lies at about the 23rd.
    expect(series[28]!.highPoints).toBe(7);
    expect(shiftedMean(series[28]!, 'high', 10, allowance)).toBeCloseTo(10.5 + 5.28 / 7, 9);
    expect(shiftedMean(series[28]!, 'low', 10, allowance)).toBeNull();
  });

  test.each(cusumRunLengths)(
    'h $decisionSigmas sigma, shift $shiftSigmas: $points points to a signal ($flag: $source)',
    ({ decisionSigmas, shiftSigmas, points, tolerance }) => {
      const high = sideRunLength(decisionSigmas, shiftSigmas);
      const low = sideRunLength(decisionSigmas, -shiftSigmas);
      // Two sides at once: 1/ARL = 1/ARL+ + 1/ARL-.
      expect(Math.abs(1 / (1 / high + 1 / low) - points)).toBeLessThanOrEqual(tolerance);
    },
  );
});

/** Mean points to a signal of C+ alone, k 0.5 sigma, by the chain of Brook and Evans (1972). */
function sideRunLength(decisionSigmas: number, shiftSigmas: number): number {
  const cells = 120;
  const width = (2 * decisionSigmas) / (2 * cells - 1);
  const below = (z: number): number => (z > 0 ? 1 - upperNormalTail(z) : upperNormalTail(-z));
  // Cell j stands for sums of j width; one step from i to j by the increment between.
  const chance = Array.from({ length: 2 * cells }, (_, i) => {
    const step = (i - cells) * width + 0.5 - shiftSigmas;
    return [below(step + width / 2), below(step + width / 2) - below(step - width / 2)] as const;
  });
  // (I - P) L = 1, solved by elimination; the matrix is diagonally dominant.
  const rows = Array.from({ length: cells }, (_, i) =>
    Array.from({ length: cells + 1 }, (__, j) => {
      if (j === cells) return 1;
      const to = j === 0 ? chance[cells - i]![0] : chance[cells + j - i]![1];
      return (i === j ? 1 : 0) - to;
    }),
  );
  for (let k = cells - 1; k > 0; k -= 1) {
    for (let i = 0; i < k; i += 1) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = 0; j < k; j += 1) rows[i]![j]! -= factor * rows[k]![j]!;
      rows[i]![cells]! -= factor * rows[k]![cells]!;
    }
  }
  return rows[0]![cells]! / rows[0]![0]!;
}

describe('any series', () => {
  const values = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 60 });

  test('each sum is the largest of what any stretch up to now has strayed', () => {
    fc.assert(
      fc.property(values, (drawn) => {
        const sums = summed(drawn, 3, 2).at(-1)!;
        let high = 0;
        let low = 0;
        for (let from = 0; from < drawn.length; from += 1) {
          const stretch = drawn.slice(from);
          high = Math.max(
            high,
            stretch.reduce((sum, value) => sum + value - 5, 0),
          );
          low = Math.max(
            low,
            stretch.reduce((sum, value) => sum + 1 - value, 0),
          );
        }
        expect(sums.high).toBe(high);
        expect(sums.low).toBe(low);
      }),
    );
  });

  test('upside down the sides change places', () => {
    fc.assert(
      fc.property(values, (drawn) => {
        const one = summed(drawn, 0, 1).at(-1)!;
        const other = summed(
          drawn.map((value) => -value),
          0,
          1,
        ).at(-1)!;
        expect(other).toEqual({
          high: one.low,
          low: one.high,
          highPoints: one.lowPoints,
          lowPoints: one.highPoints,
        });
        expect(one.highPoints === 0).toBe(one.high === 0);
      }),
    );
  });

  test('at the interval is no signal, past it is', () => {
    const at = { ...emptyCusum(), high: 5, highPoints: 3 };
    expect(cusumSide(at, 5)).toBeNull();
    expect(cusumSide({ ...at, high: 5.0001 }, 5)).toBe('high');
    expect(cusumSide({ ...at, low: 9 }, 5)).toBe('low');
    expect(cusumSide({ ...at, high: 12, low: 9 }, 5)).toBe('high');
    expect(cusumSide({ ...at, high: 8, low: 9 }, 5)).toBe('low');
  });

  test('nothing outside the range, and the sums stay as they were', () => {
    const sums = { high: 2, low: 0, highPoints: 1, lowPoints: 0 };
    for (const [value, target, allowance] of [
      [Number.NaN, 0, 1],
      [Number.POSITIVE_INFINITY, 0, 1],
      [1, Number.NaN, 1],
      [1, 0, -1],
      [1, 0, Number.NaN],
    ] as const) {
      expect(addToCusum(sums, value, target, allowance)).toBeNull();
      expect(sums).toEqual({ high: 2, low: 0, highPoints: 1, lowPoints: 0 });
    }
    expect(cusumSide(sums, 0)).toBeNull();
    expect(cusumSide(sums, Number.NaN)).toBeNull();
    expect(shiftedMean(sums, 'high', 0, -1)).toBeNull();
  });
});
