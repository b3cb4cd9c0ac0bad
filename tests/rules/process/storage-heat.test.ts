import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  comparisonActivationKJPerMol,
  degreeHours,
  meanKineticTemperature,
  meanKineticTemperatureOverTime,
  shortenedDueMs,
} from '#rules/process/storage-heat.ts';
import { coldStore, degreeHourRow, kineticRows, unevenRow } from '../../vectors/storage-heat.ts';

const ones = (values: readonly number[]): number[] => values.map(() => 1);
function kinetic(answer: ReturnType<typeof meanKineticTemperature>): number {
  if ('refused' in answer) throw new Error(answer.refused);
  return answer.kineticMeanC;
}

describe('mean kinetic temperature', () => {
  test.each(kineticRows)('$name: $kineticMeanC °C ($flag: $source)', (row) => {
    const found = kinetic(meanKineticTemperature(row.temperaturesC, row.weights));
    expect(Math.abs(found - row.kineticMeanC)).toBeLessThanOrEqual(row.toleranceK);
  });

  test(`a warm day counts for more than its share (${coldStore.source})`, () => {
    const { temperaturesC, mean, least } = coldStore;
    const found = kinetic(meanKineticTemperature(temperaturesC, ones(temperaturesC)));
    expect(found).toBeGreaterThan(mean);
    expect(Math.round(found * 10) / 10).toBeGreaterThanOrEqual(least);
  });

  test(`uneven readings: straight lines and steps differ (${unevenRow.source})`, () => {
    const { timesH, temperaturesC, trapezoidC, stepsC, toleranceK } = unevenRow;
    const lines = kinetic(meanKineticTemperatureOverTime(timesH, temperaturesC));
    expect(Math.abs(lines - trapezoidC)).toBeLessThanOrEqual(toleranceK);
    const weights = timesH.slice(1).map((at, i) => at - timesH[i]!);
    const steps = kinetic(meanKineticTemperature(temperaturesC.slice(0, -1), weights));
    expect(Math.abs(steps - stepsC)).toBeLessThanOrEqual(toleranceK);
  });

  test('trap: 83.144 kJ/mol is chosen so that E/R is 10 000 K, and is for comparison only', () => {
    expect(comparisonActivationKJPerMol).toBe(83.144);
    const steady = meanKineticTemperature([25], [1]);
    expect(steady).toMatchObject({ comparisonOnly: true });
    expect(meanKineticTemperature([25], [1], 95)).toMatchObject({ comparisonOnly: false });
  });

  test('trap: it is not to be quoted of goods that were frozen', () => {
    expect(meanKineticTemperature([5, -0.1, 5], [1, 1, 1])).toEqual({ refused: 'frozen' });
    expect(meanKineticTemperatureOverTime([0, 1], [-18, -18])).toEqual({ refused: 'frozen' });
    expect(shortenedDueMs(0, 0, -1, 20, 90)).toEqual({ refused: 'frozen' });
  });

  test('never under the plain mean, never over the warmest; a higher energy goes higher', () => {
    const temperatures = fc.array(fc.double({ min: 0, max: 80, noNaN: true }), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(temperatures, (drawn) => {
        const mean = drawn.reduce((sum, each) => sum + each, 0) / drawn.length;
        const found = kinetic(meanKineticTemperature(drawn, ones(drawn)));
        // E/R is far over 2 T_K, so ageing is convex and the mean of it lies above.
        expect(found).toBeGreaterThanOrEqual(mean - 1e-7);
        expect(found).toBeLessThanOrEqual(Math.max(...drawn) + 1e-7);
        expect(kinetic(meanKineticTemperature(drawn, ones(drawn), 150))).toBeGreaterThanOrEqual(
          found - 1e-7,
        );
      }),
    );
  });

  test('nothing from nothing, or outside the range', () => {
    expect(meanKineticTemperature([], [])).toEqual({ refused: 'too-few' });
    expect(meanKineticTemperature([20], [0])).toEqual({ refused: 'too-few' });
    expect(meanKineticTemperatureOverTime([0], [20])).toEqual({ refused: 'too-few' });
    for (const answer of [
      meanKineticTemperature([81], [1]),
      meanKineticTemperature([Number.NaN], [1]),
      meanKineticTemperature([20], [1, 1]),
      meanKineticTemperature([20], [-1]),
      meanKineticTemperature([20], [1], 39),
      meanKineticTemperature([20], [1], Number.NaN),
      meanKineticTemperatureOverTime([0, 0], [20, 20]),
      meanKineticTemperatureOverTime([0, 1, 2], [20, 20]),
    ]) {
      expect(answer).toEqual({ refused: 'out-of-range' });
    }
  });
});

describe('degree-hours', () => {
  test(`a steady cold night (${degreeHourRow.source})`, () => {
    const { timesH, temperaturesC, baseC, kelvinHours } = degreeHourRow;
    expect(degreeHours(timesH, temperaturesC, baseC, 'below')).toBe(kelvinHours);
    expect(degreeHours(timesH, temperaturesC, baseC, 'above')).toBe(0);
  });

  test('a line through the base counts its triangle', () => {
    expect(degreeHours([0, 4], [28, 36], 30, 'above')).toBeCloseTo((6 / 8) * 4 * 3, 12);
    expect(degreeHours([0, 4], [28, 36], 30, 'below')).toBeCloseTo((2 / 8) * 4 * 1, 12);
  });

  test('above less below is what the trapezoids of the whole give', () => {
    const readings = fc.array(fc.double({ min: -20, max: 60, noNaN: true }), {
      minLength: 2,
      maxLength: 20,
    });
    fc.assert(
      fc.property(readings, fc.double({ min: -10, max: 50, noNaN: true }), (drawn, base) => {
        const times = drawn.map((_, i) => i * 2);
        const above = degreeHours(times, drawn, base, 'above') as number;
        const below = degreeHours(times, drawn, base, 'below') as number;
        const whole = drawn
          .slice(1)
          .reduce((sum, each, i) => sum + (each + drawn[i]! - 2 * base), 0);
        expect(above - below).toBeCloseTo(whole, 8);
        expect(Math.min(above, below)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('nothing from one reading, or outside the range', () => {
    expect(degreeHours([0], [20], 10, 'above')).toEqual({ refused: 'too-few' });
    for (const answer of [
      degreeHours([1, 0], [20, 20], 10, 'above'),
      degreeHours([0, 1], [20, Number.NaN], 10, 'above'),
      degreeHours([0, 1], [20, 20], Number.POSITIVE_INFINITY, 'above'),
    ]) {
      expect(answer).toEqual({ refused: 'out-of-range' });
    }
  });
});

describe('a due date', () => {
  const day = 86_400_000;

  test('warmth brings it nearer by the data sheet’s energy', () => {
    // 100 kJ/mol: 10 K up from 20 °C is 3.87 times as fast.
    const due = shortenedDueMs(100 * day, 10 * day, 30, 20, 100) as number;
    const faster = Math.exp((100_000 / 8.3144) * (1 / 293.15 - 1 / 303.15));
    expect(due).toBeCloseTo(100 * day - (faster - 1) * 10 * day, 3);
  });

  test('trap: it may come nearer and never moves away', () => {
    const temperatures = fc.double({ min: 0, max: 80, noNaN: true });
    fc.assert(
      fc.property(
        temperatures,
        temperatures,
        fc.integer({ min: 0, max: 400 }),
        (mean, ref, days) => {
          const due = shortenedDueMs(100 * day, days * day, mean, ref, 90) as number;
          expect(due).toBeLessThanOrEqual(100 * day);
          if (mean <= ref) expect(due).toBe(100 * day);
        },
      ),
    );
  });

  test('nothing without sound figures', () => {
    for (const answer of [
      shortenedDueMs(Number.NaN, 0, 20, 20, 90),
      shortenedDueMs(0, -1, 20, 20, 90),
      shortenedDueMs(0, 0, 20, 20, 0),
      shortenedDueMs(0, 0, 90, 20, 90),
    ]) {
      expect(answer).toEqual({ refused: 'out-of-range' });
    }
  });
});
