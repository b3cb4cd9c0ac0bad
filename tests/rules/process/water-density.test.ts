import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { waterDensityKgPerM3 } from '#rules/process/water-density.ts';
import {
  densestWater,
  relativeRows,
  swappedDigits,
  waterDensityRows,
} from '../../vectors/water-density.ts';

test.each(waterDensityRows)(
  '$kgPerM3 kg/m3 at $temperatureC °C ($flag: $source)',
  ({ temperatureC, kgPerM3, toleranceKgPerM3 }) => {
    const found = waterDensityKgPerM3(temperatureC)!;
    expect(Math.abs(found - kgPerM3)).toBeLessThanOrEqual(toleranceKgPerM3);
  },
);

const densest = (): { atC: number; kgPerM3: number } => {
  let best = { atC: 0, kgPerM3: 0 };
  for (let step = 0; step <= 1_000; step += 1) {
    const kgPerM3 = waterDensityKgPerM3(step / 100)!;
    if (kgPerM3 > best.kgPerM3) best = { atC: step / 100, kgPerM3 };
  }
  return best;
};

test.each(relativeRows)(
  '$relative of the densest at $temperatureC °C ($flag: $source)',
  ({ temperatureC, relative, tolerance }) => {
    const found = waterDensityKgPerM3(temperatureC)! / densest().kgPerM3;
    expect(Math.abs(found - relative)).toBeLessThanOrEqual(tolerance);
  },
);

test('water is densest near 4 °C', () => {
  expect(Math.abs(densest().atC - densestWater.temperatureC)).toBeLessThanOrEqual(
    densestWater.toleranceK,
  );
});

test('trap: the denominator with its digits swapped is 0.27 kg/m3 wrong at 20 °C', () => {
  const { denominatorPerC, temperatureC, errorKgPerM3, toleranceKgPerM3 } = swappedDigits;
  const right = waterDensityKgPerM3(temperatureC)!;
  const swapped = (right * (1 + 16.87985e-3 * temperatureC)) / (1 + denominatorPerC * temperatureC);
  expect(Math.abs(swapped - right - errorKgPerM3)).toBeLessThanOrEqual(toleranceKgPerM3);
  // Far beyond the rows above, so they would have shown it.
  const shown = waterDensityRows.filter((row) => row.temperatureC === temperatureC);
  expect(shown.length).toBeGreaterThan(1);
  for (const row of shown)
    expect(Math.abs(swapped - row.kgPerM3)).toBeGreaterThan(20 * row.toleranceKgPerM3);
});

describe('everywhere', () => {
  test('from 4 °C on, warmer is lighter', () => {
    const warm = fc.double({ min: 4, max: 99.9, noNaN: true });
    fc.assert(
      fc.property(warm, (t) => {
        expect(waterDensityKgPerM3(t + 0.1)!).toBeLessThan(waterDensityKgPerM3(t)!);
      }),
    );
  });
  test.each([-0.1, 100.1, Number.NaN, Number.POSITIVE_INFINITY])('nothing at %d °C', (t) =>
    expect(waterDensityKgPerM3(t)).toBeNull(),
  );
});
