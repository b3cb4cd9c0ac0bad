import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  densityAtReadingGPerMl,
  hydrometerUGPerMl,
  waterLikeGravityAtCalibration,
} from '#rules/process/hydrometer.ts';
import { waterDensityKgPerM3 } from '#rules/process/water-density.ts';
import {
  coarseDivision,
  droppedPowers,
  glassShare,
  gravityRows,
} from '../../vectors/hydrometer.ts';

const celsius = (f: number): number => (f - 32) / 1.8;

describe('water-like liquids brought to the calibration temperature', () => {
  test.each(gravityRows)(
    '$gravity at $f °F on a float of $calibratedF °F is $corrected ($flag: $source)',
    ({ gravity, f, calibratedF, corrected }) => {
      const found = waterLikeGravityAtCalibration(gravity, celsius(f), celsius(calibratedF))!;
      expect(Math.abs(found - corrected)).toBeLessThanOrEqual(5e-7);
    },
  );
  test('the correction is that of water less what glass grows', () => {
    const found = waterLikeGravityAtCalibration(1, 25, 20)!;
    expect(Math.abs(found - glassShare.ratio)).toBeLessThanOrEqual(glassShare.tolerance);
    const water = waterDensityKgPerM3(20)! / waterDensityKgPerM3(25)!;
    expect(Math.abs(water - glassShare.water)).toBeLessThanOrEqual(glassShare.waterTolerance);
    expect(water - found).toBeGreaterThan(0);
    expect(water - found).toBeLessThan(glassShare.mostByGlass);
  });
  test('over its range it follows water and a glass float', () => {
    for (let t = 0; t <= 60; t += 1) {
      const water = waterDensityKgPerM3(20)! / waterDensityKgPerM3(t)!;
      const glass = water / (1 + 25e-6 * (t - 20));
      const apart = waterLikeGravityAtCalibration(1, t, 20)! / glass - 1;
      expect(Math.abs(apart), `${t} °C`).toBeLessThan(t >= 10 && t <= 30 ? 3e-4 : 1e-3);
    }
  });
  test('trap: the polynomial without its powers is far off', () => {
    const { gravity, f, calibratedF } = droppedPowers;
    const h = (x: number) => 1.00130346 - 1.34722124e-4 * x + 2.04052596e-6 * x - 2.32820948e-9 * x;
    const wrong = (gravity * h(f)) / h(calibratedF);
    const right = waterLikeGravityAtCalibration(gravity, celsius(f), celsius(calibratedF))!;
    // It even corrects the wrong way.
    expect(wrong).toBeLessThan(gravity);
    expect(right).toBeGreaterThan(gravity);
  });
});

describe('density at the temperature of the reading', () => {
  test('glass hardly matters, plastic does', () => {
    expect(densityAtReadingGPerMl(1.1, 20, 20, 'glass')).toBe(1.1);
    expect(1.1 - densityAtReadingGPerMl(1.1, 30, 20, 'glass')!).toBeCloseTo(0.000275, 6);
    expect(1.1 - densityAtReadingGPerMl(1.1, 30, 20, 'plastic')!).toBeCloseTo(0.0022, 5);
  });
  test('there and back', () => {
    const t = fc.double({ min: 0, max: 60, noNaN: true });
    const reading = fc.double({ min: 0.7, max: 1.9, noNaN: true });
    fc.assert(
      fc.property(reading, t, t, (r, at, calibrated) => {
        const there = densityAtReadingGPerMl(r, at, calibrated, 'plastic')!;
        // Floats of one body: reading at one and calibrated at the other, changed about.
        const ratio = densityAtReadingGPerMl(there, calibrated, at, 'plastic')! / r;
        expect(Math.abs(ratio - 1)).toBeLessThan(2e-4);
        if (at > calibrated + 0.01) expect(there).toBeLessThan(r);
      }),
    );
  });
});

describe('how sure', () => {
  test('a 0.002 division is 0.3 to 0.6 % solids at 35 %', () => {
    const { divisionGPerMl, solidsPerMilligram, leastPct, mostPct } = coarseDivision;
    const u = hydrometerUGPerMl(1.1, 20, 20, 'glass', divisionGPerMl)!;
    expect(u).toBeCloseTo(0.00129, 5);
    const pct = u * 1_000 * solidsPerMilligram;
    expect(pct).toBeGreaterThan(leastPct);
    expect(pct).toBeLessThan(mostPct);
  });
  test('a certificate makes it surer, a warm plastic float less sure', () => {
    const plain = hydrometerUGPerMl(1.1, 20, 20, 'plastic', 0.001)!;
    expect(hydrometerUGPerMl(1.1, 20, 20, 'plastic', 0.001, 0.0002)!).toBeLessThan(plain);
    expect(hydrometerUGPerMl(1.1, 35, 20, 'plastic', 0.001)!).toBeGreaterThan(plain);
  });
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  expect(densityAtReadingGPerMl(1.1, 61, 20, 'glass')).toBeNull();
  expect(densityAtReadingGPerMl(0.5, 20, 20, 'glass')).toBeNull();
  expect(hydrometerUGPerMl(1.1, 20, 20, 'glass', 0)).toBeNull();
  expect(hydrometerUGPerMl(1.1, 20, 20, 'glass', 0.001, -1)).toBeNull();
  expect(waterLikeGravityAtCalibration(1.3, 20, 20)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
      for (const answer of [
        densityAtReadingGPerMl(a, b, c, 'glass'),
        hydrometerUGPerMl(a, b, c, 'plastic', d),
        waterLikeGravityAtCalibration(a, b, c),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
