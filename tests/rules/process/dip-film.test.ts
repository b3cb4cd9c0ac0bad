import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  capillaryLengthMm,
  capillaryNumber,
  type DipLiquid,
  dipFilm,
  drainedFilmUm,
  meanDrainedFilmUm,
} from '#rules/process/dip-film.ts';
import { dryFromWetUm } from '#rules/process/film.ts';
import { dipRows, drainRows, scaling, tradePoint } from '../../vectors/dip-film.ts';

test.each(dipRows)(
  '$viscosityMPaS mPa s at $mmPerS mm/s leaves $wetUm µm ($flag: $source)',
  ({ mmPerS, ca, lengthMm, wetUm, ...liquid }) => {
    const mPerMin = (mmPerS * 60) / 1_000;
    expect(capillaryNumber(liquid, mPerMin)! / ca).toBeCloseTo(1, 5);
    expect(capillaryLengthMm(liquid)!).toBeCloseTo(lengthMm, 6);
    expect(dipFilm(liquid, mPerMin)!.wetUm).toBeCloseTo(wetUm, 5);
  },
);

describe('on the edge of the formula', () => {
  test('the trade: 1 m/min and 20 mPa s leave 76 µm wet, 22 dry, and it says uncertain', () => {
    const { mPerMin, ca, wetUm, volumeSolidsPct, dryUm } = tradePoint;
    const found = dipFilm(tradePoint, mPerMin)!;
    expect(found.capillaryNumber).toBeCloseTo(ca, 4);
    expect(Math.abs(found.wetUm - wetUm)).toBeLessThan(0.6);
    expect(Math.abs(dryFromWetUm(found.wetUm, volumeSolidsPct)! - dryUm)).toBeLessThan(0.5);
    expect(found.uncertain).toBe(true);
  });
  const liquid: DipLiquid = { viscosityMPaS: 6, surfaceTensionMNPerM: 60, densityGPerMl: 1 };
  test.each([
    // Ca is U/600 here, U in m/min.
    [0.59, false],
    [0.61, true],
    [59, true],
  ])('at %d m/min uncertain is %s', (u, uncertain) =>
    expect(dipFilm(liquid, u)!.uncertain).toBe(uncertain),
  );
  test('far beyond it, nothing', () => expect(dipFilm(liquid, 61)).toBeNull());
  test('a fast thin liquid is uncertain for its inertia, though its Ca is small', () => {
    const found = dipFilm({ viscosityMPaS: 0.5, surfaceTensionMNPerM: 72, densityGPerMl: 1 }, 6)!;
    expect(found.capillaryNumber).toBeLessThan(1e-3);
    expect(found.uncertain).toBe(true);
  });
});

test('eight times the speed, four times the film', () => {
  const liquid: DipLiquid = { viscosityMPaS: 5, surfaceTensionMNPerM: 40, densityGPerMl: 1.05 };
  const slow = dipFilm(liquid, 0.3)!.wetUm;
  const fast = dipFilm(liquid, 0.3 * scaling.speedTimes)!.wetUm;
  expect(fast / slow).toBeCloseTo(scaling.filmTimes, 9);
});

test.each(drainRows)(
  'after $drainS s $filmUm µm are left ($flag: $source)',
  ({ belowM, drainS, filmUm, meanUm, ...rest }) => {
    const liquid = { surfaceTensionMNPerM: 40, ...rest };
    expect(drainedFilmUm(liquid, belowM, drainS)!).toBeCloseTo(filmUm, 3);
    if (meanUm !== undefined)
      expect(meanDrainedFilmUm(liquid, belowM, drainS)!).toBeCloseTo(meanUm, 2);
  },
);

const liquids = fc.record({
  viscosityMPaS: fc.double({ min: 1, max: 50, noNaN: true }),
  surfaceTensionMNPerM: fc.double({ min: 20, max: 70, noNaN: true }),
  densityGPerMl: fc.double({ min: 0.9, max: 1.3, noNaN: true }),
});

test('thicker liquid and faster withdrawal leave more; longer draining less', () => {
  const speed = fc.double({ min: 0.05, max: 1, noNaN: true });
  fc.assert(
    fc.property(liquids, speed, (liquid, u) => {
      const film = dipFilm(liquid, u)!;
      expect(dipFilm(liquid, u * 1.1)!.wetUm).toBeGreaterThan(film.wetUm);
      const thicker = { ...liquid, viscosityMPaS: liquid.viscosityMPaS * 1.1 };
      expect(dipFilm(thicker, u)!.wetUm).toBeGreaterThan(film.wetUm);
      expect(drainedFilmUm(liquid, 0.1, 60)!).toBeGreaterThan(drainedFilmUm(liquid, 0.1, 70)!);
      expect(drainedFilmUm(liquid, 0.1, 60)!).toBeLessThan(drainedFilmUm(liquid, 0.2, 60)!);
    }),
  );
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  const water = { viscosityMPaS: 1, surfaceTensionMNPerM: 72, densityGPerMl: 1 };
  expect(dipFilm(water, 0)).toBeNull();
  expect(dipFilm({ ...water, viscosityMPaS: 0 }, 1)).toBeNull();
  expect(capillaryLengthMm({ ...water, densityGPerMl: 3 })).toBeNull();
  expect(drainedFilmUm(water, 0.1, 0)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
      const liquid = { viscosityMPaS: a, surfaceTensionMNPerM: b, densityGPerMl: c };
      for (const answer of [
        capillaryNumber(liquid, d),
        dipFilm(liquid, d)?.wetUm ?? null,
        capillaryLengthMm(liquid),
        drainedFilmUm(water, c, d),
        meanDrainedFilmUm(liquid, c, d),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
