import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  biotNumber,
  carbonSteel,
  evaporationDelayS,
  evaporationLoadJPerM2,
  loadAsRiseK,
  lumpedQuality,
  partAfterStepC,
  partTemperatureC,
  timeConstantS,
  timeToReachS,
  transferFromTimeConstantWPerM2K,
} from '#rules/process/heating.ts';
import {
  cengelBall,
  cengelCylinder,
  incroperaJunction,
  lienhardBead,
  steelRows,
  wetFilm,
} from '../../vectors/heating.ts';

describe('worked examples of the textbooks', () => {
  test(`a ball of 1 mm (${cengelBall.flag}: ${cengelBall.source})`, () => {
    const { diameterM, transferWPerM2K: h, conductivityWPerMK, ...row } = cengelBall;
    expect(biotNumber(h, diameterM / 6, conductivityWPerMK)!).toBeCloseTo(row.biot, 9);
    const tau = timeConstantS(row, diameterM / 6, h)!;
    expect(1 / tau).toBeCloseTo(row.ratePerS, 6);
    const reachS = timeToReachS(0, 100, 99, tau)!;
    expect(Number(reachS)).toBeCloseTo(row.computedS, 5);
    expect(Math.abs(Number(reachS) - row.ninetyNineS)).toBeLessThanOrEqual(row.toleranceS);
  });
  test(`a bead of solder (${lienhardBead.flag}: ${lienhardBead.source})`, () => {
    const { diameterM, transferWPerM2K, timeConstantS: tauS, toleranceS } = lienhardBead;
    const tau = timeConstantS(lienhardBead, diameterM / 6, transferWPerM2K)!;
    expect(Math.abs(tau - tauS)).toBeLessThanOrEqual(toleranceS);
  });
  test(`a thermocouple junction (${incroperaJunction.flag}: ${incroperaJunction.source})`, () => {
    const row = incroperaJunction;
    const tau = timeConstantS(row, row.diameterM / 6, row.transferWPerM2K)!;
    expect(Math.abs(tau / row.timeConstantS - 1)).toBeLessThanOrEqual(row.toleranceShare);
    const reachS = Number(timeToReachS(row.startC, row.airC, row.targetC, row.timeConstantS));
    expect(reachS).toBeCloseTo(row.computedS, 5);
    expect(Math.abs(reachS / row.reachS - 1)).toBeLessThanOrEqual(row.toleranceShare);
    const biot = biotNumber(row.transferWPerM2K, row.diameterM / 6, row.conductivityWPerMK)!;
    expect(Math.abs(biot / row.biot - 1)).toBeLessThanOrEqual(row.toleranceShare);
  });
  test(`a cylinder too thick for the method (${cengelCylinder.flag}: ${cengelCylinder.source})`, () => {
    const { radiusM: r, lengthM: l, transferWPerM2K: h, toleranceShare, ...row } = cengelCylinder;
    const volumePerAreaM = (r * l) / (2 * (l + r));
    expect(volumePerAreaM).toBeCloseTo(row.volumePerAreaM, 6);
    const biot = biotNumber(h, volumePerAreaM, row.conductivityWPerMK)!;
    expect(biot).toBeCloseTo(row.biot, 3);
    const tau = timeConstantS(row, volumePerAreaM, h)!;
    const hours = Number(timeToReachS(row.startC, row.airC, row.targetC, tau)) / 3_600;
    expect(Math.abs(hours / row.hours - 1)).toBeLessThanOrEqual(toleranceShare);
    // A number, but one that says of itself that it is rough.
    expect(lumpedQuality(biot, 'trial-run')).toBe('uncertain');
  });
});

test.each(steelRows)(
  'steel of V/A $volumePerAreaMm mm follows in $shortestMin to $longestMin min',
  ({ volumePerAreaMm, shortestMin, longestMin }) => {
    const minutes = (h: number) => timeConstantS(carbonSteel, volumePerAreaMm / 1_000, h)! / 60;
    // Printed in whole minutes; the specific heat of steels differs by a percent or two.
    expect(Math.abs(minutes(30) - shortestMin)).toBeLessThanOrEqual(
      Math.max(0.5, 0.02 * shortestMin),
    );
    expect(Math.abs(minutes(15) - longestMin)).toBeLessThanOrEqual(
      Math.max(0.5, 0.02 * longestMin),
    );
  },
);

describe('the water of a wet film', () => {
  const load = evaporationLoadJPerM2(
    wetFilm.wetUm,
    wetFilm.densityGPerMl,
    wetFilm.massSolidsPct,
    45,
  )!;
  test('67 µm take 115 kJ/m2, as much as 60 K of the sheet under it', () => {
    expect(Math.abs(load / 1_000 - wetFilm.kJPerM2)).toBeLessThanOrEqual(wetFilm.toleranceKJPerM2);
    // Coated on both sides: each side has half the sheet.
    const rise = loadAsRiseK(load, carbonSteel, wetFilm.sheetMm / 2 / 1_000)!;
    expect(Math.abs(rise - wetFilm.riseK)).toBeLessThanOrEqual(wetFilm.toleranceK);
  });
  test('in air 40 K above the wet part and at 20 W/m2K they cost two and a half minutes', () => {
    expect(evaporationDelayS(load, 20, 85, 45)!).toBeCloseTo(load / 800, 9);
    expect(evaporationDelayS(load, 20, 85, 45)! / 60).toBeCloseTo(2.4, 1);
    expect(evaporationDelayS(load, 20, 45, 45)).toBeNull();
  });
  test('no water, no load; refused outside', () => {
    expect(evaporationLoadJPerM2(67, 1.1, 100, 45)).toBe(0);
    expect(evaporationLoadJPerM2(67, 1.1, 101, 45)).toBeNull();
    expect(evaporationLoadJPerM2(67, 1.1, 35, 101)).toBeNull();
  });
});

describe('how far it is to be believed', () => {
  test.each([
    [0.05, 'trial-run', 'good'],
    [0.0999, 'trial-run', 'good'],
    [0.1, 'trial-run', 'uncertain'],
    [0.05, 'estimate', 'uncertain'],
    [null, 'trial-run', 'uncertain'],
    [Number.NaN, 'trial-run', 'uncertain'],
    [-1, 'trial-run', 'uncertain'],
  ] as const)('Bi %s from %s is %s', (biot, from, quality) =>
    expect(lumpedQuality(biot, from)).toBe(quality),
  );
});

describe('when it is reached', () => {
  test('63.2 % of the way after one time constant', () => {
    expect(partTemperatureC(20, 120, 300, 300)!).toBeCloseTo(20 + 100 * (1 - Math.exp(-1)), 9);
  });
  test('never, where the air does not lead past it', () => {
    expect(timeToReachS(20, 65, 65, 300)).toBe('never');
    expect(timeToReachS(20, 60, 65, 300)).toBe('never');
    expect(timeToReachS(80, 60, 90, 300)).toBe('never');
    expect(timeToReachS(20, 120, 10, 300)).toBe('never');
  });
  test('at once, where it is there', () => expect(timeToReachS(65, 120, 65, 300)).toBe(0));
  test('cooling too', () =>
    expect(Number(timeToReachS(120, 20, 45, 300))).toBeCloseTo(300 * Math.log(4), 9));
});

const c = fc.double({ min: 0, max: 300, noNaN: true });
const seconds = fc.double({ min: 0, max: 10_000, noNaN: true });
const tau = fc.double({ min: 1, max: 10_000, noNaN: true });

test('the part stays between where it began and the air, and two half steps are one', () => {
  fc.assert(
    fc.property(c, c, seconds, tau, (start, air, t, tauS) => {
      const found = partTemperatureC(start, air, t, tauS)!;
      expect(found).toBeGreaterThanOrEqual(Math.min(start, air) - 1e-9);
      expect(found).toBeLessThanOrEqual(Math.max(start, air) + 1e-9);
      const half = partTemperatureC(start, air, t / 2, tauS)!;
      expect(partTemperatureC(half, air, t / 2, tauS)!).toBeCloseTo(found, 8);
    }),
  );
});

test('with air that rises, a step may be cut in two where the air is between', () => {
  fc.assert(
    fc.property(c, c, c, seconds, tau, (part, from, to, t, tauS) => {
      const whole = partAfterStepC(part, from, to, t, tauS)!;
      const middle = partAfterStepC(part, from, (from + to) / 2, t / 2, tauS)!;
      expect(partAfterStepC(middle, (from + to) / 2, to, t / 2, tauS)!).toBeCloseTo(whole, 6);
    }),
  );
});

test('a step agrees with ten thousand small ones of Euler', () => {
  let part = 20;
  const steps = 10_000;
  for (let i = 0; i < steps; i += 1) {
    const air = 60 + (40 * (i + 0.5)) / steps;
    part += ((air - part) / 300) * (600 / steps);
  }
  expect(partAfterStepC(20, 60, 100, 600, 300)!).toBeCloseTo(part, 2);
});

test('the time it takes is when it is there', () => {
  fc.assert(
    fc.property(
      c,
      c,
      tau,
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      (start, air, tauS, share) => {
        if (Math.abs(air - start) < 0.1) return;
        const target = start + share * (air - start);
        const reachS = timeToReachS(start, air, target, tauS);
        expect(partTemperatureC(start, air, Number(reachS), tauS)!).toBeCloseTo(target, 6);
      },
    ),
  );
});

test('heavier is slower; a time constant gives its h back', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
      fc.double({ min: 1, max: 500, noNaN: true }),
      (m, h) => {
        const tauS = timeConstantS(carbonSteel, m, h)!;
        expect(timeConstantS(carbonSteel, m * 1.1, h)!).toBeGreaterThan(tauS);
        expect(transferFromTimeConstantWPerM2K(carbonSteel, m, tauS)! / h).toBeCloseTo(1, 9);
      },
    ),
  );
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  expect(timeConstantS({ densityKgPerM3: 7_850, heatJPerKgK: 0 }, 0.001, 20)).toBeNull();
  expect(timeConstantS(carbonSteel, 0, 20)).toBeNull();
  expect(biotNumber(20, 0.001, 0)).toBeNull();
  expect(timeToReachS(20, 100, 60, 0)).toBeNull();
  expect(loadAsRiseK(-1, carbonSteel, 0.001)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, x, y) => {
      for (const answer of [
        partTemperatureC(a, b, x, y),
        partAfterStepC(a, b, x, y, 300),
        timeToReachS(a, b, x, y),
        timeConstantS(carbonSteel, a, b),
        biotNumber(a, b, x),
        evaporationLoadJPerM2(a, b, x, y),
        evaporationDelayS(a, b, x, y),
        loadAsRiseK(a, carbonSteel, b),
      ])
        if (typeof answer === 'number') expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
