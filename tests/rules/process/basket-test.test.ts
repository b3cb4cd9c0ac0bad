import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Basket,
  type BasketFit,
  basketIgnitionC,
  fitBaskets,
} from '#rules/process/basket-test.ts';
import { criticalDelta, ignitionC } from '#rules/process/residue-ignition.ts';
import { carbonBaskets, illustrativeBaskets } from '../../vectors/basket-test.ts';

const cubes = (halfSizesM: readonly number[], ignitionsC: readonly number[]): Basket[] =>
  halfSizesM.map((halfSizeM, i) => ({ shape: 'cube', halfSizeM, ignitionC: ignitionsC[i]! }));

const fitted = (baskets: readonly Basket[]): BasketFit => {
  const fit = fitBaskets(baskets);
  if ('refused' in fit) throw new Error(fit.refused);
  return fit;
};
const share = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('published reports', () => {
  test(`three cubes (${illustrativeBaskets.source})`, () => {
    const { halfSizesM, ignitionC: ignitionsC } = illustrativeBaskets;
    const fit = fitted(cubes(halfSizesM, ignitionsC));
    expect(share(fit.slopeK, illustrativeBaskets.slopeK)).toBeLessThan(1e-6);
    expect(share(fit.intercept, illustrativeBaskets.intercept)).toBeLessThan(1e-6);
    expect(share(fit.activationJPerMol, illustrativeBaskets.activationJPerMol)).toBeLessThan(1e-6);
    expect(share(fit.rSquared, illustrativeBaskets.rSquared)).toBeLessThan(1e-6);
    const large = basketIgnitionC(fit, 'cube', illustrativeBaskets.largeHalfSizeM)!;
    expect(Math.abs(large.ignitionC - illustrativeBaskets.largeC)).toBeLessThan(1e-3);
    expect(large.uncertain).toBe(true);
    // P = lambda R/E exp(M), and with it the law gives the same temperature.
    const { conductivityWPerMK } = illustrativeBaskets;
    const heatReleaseWPerM3 =
      ((conductivityWPerMK * 8.314462618) / fit.activationJPerMol) * Math.exp(fit.intercept);
    expect(share(heatReleaseWPerM3, illustrativeBaskets.heatReleaseWPerM3)).toBeLessThan(1e-5);
    const kinetics = {
      activationJPerMol: fit.activationJPerMol,
      heatReleaseWPerM3,
      conductivityWPerMK,
    };
    expect(ignitionC(kinetics, 'slab', 0.02)).toBeCloseTo(
      basketIgnitionC(fit, 'slab', 0.02)!.ignitionC,
      6,
    );
  });

  test(`trap: a large heap lights cooler than foretold (${carbonBaskets.source})`, () => {
    const { sidesMm, ignitionC: ignitionsC } = carbonBaskets;
    const halfSizes = sidesMm.map((side) => side / 2_000);
    const all = fitted(cubes(halfSizes, ignitionsC));
    expect(Math.abs(all.activationJPerMol - carbonBaskets.activationJPerMol)).toBeLessThan(
      carbonBaskets.toleranceJPerMol,
    );
    expect(all.intercept).toBeCloseTo(carbonBaskets.intercept, 2);
    const small = fitted(cubes(halfSizes.slice(0, -1), ignitionsC.slice(0, -1)));
    const large = basketIgnitionC(small, 'cube', halfSizes.at(-1)!)!;
    expect(Math.abs(large.ignitionC - carbonBaskets.foretoldC)).toBeLessThan(0.5);
    expect(large.uncertain).toBe(true);
    // What was seen lies within the interval, below the line.
    expect(large.lowC).toBeLessThan(carbonBaskets.observedC);
    expect(large.ignitionC).toBeGreaterThan(carbonBaskets.observedC);
  });
});

describe('a report that carries nothing is refused', () => {
  const sizes = [0.025, 0.05, 0.1];
  test('fewer than three sizes, however many baskets', () => {
    expect(fitBaskets([])).toEqual({ refused: 'too-few-sizes' });
    expect(fitBaskets(cubes([0.05], [140]))).toEqual({ refused: 'too-few-sizes' });
    expect(fitBaskets(cubes([0.025, 0.05, 0.05], [168, 149, 148]))).toEqual({
      refused: 'too-few-sizes',
    });
  });
  test('all temperatures equal, or larger ones lit hotter', () => {
    expect(fitBaskets(cubes(sizes, [150, 150, 150]))).toEqual({ refused: 'no-line' });
    expect(fitBaskets(cubes(sizes, [130, 140, 150]))).toEqual({ refused: 'no-line' });
  });
  test('sizes less than a doubling of the volume apart', () => {
    expect(fitBaskets(cubes([0.025, 0.03, 0.1], [168, 160, 132]))).toEqual({
      refused: 'sizes-too-close',
    });
  });
  test('what no oven shows', () => {
    for (const bad of [10, 500, Number.NaN]) {
      expect(fitBaskets(cubes(sizes, [168, 149, bad]))).toEqual({ refused: 'out-of-range' });
    }
    expect(fitBaskets(cubes([0.0001, 0.05, 0.1], [168, 149, 132]))).toEqual({
      refused: 'out-of-range',
    });
  });
});

describe('any residue', () => {
  const energies = fc.double({ min: 70_000, max: 150_000, noNaN: true });
  const noise = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
    minLength: 4,
    maxLength: 4,
  });
  const sizes = [0.0125, 0.025, 0.05, 0.1];
  const report = (activationJPerMol: number, noiseK: readonly number[]): Basket[] => {
    const perK = activationJPerMol / 8.314462618;
    // Sized so that the 50 mm half-side lights itself at 140 °C.
    const intercept = Math.log((criticalDelta.cube * 413.15 ** 2) / 0.05 ** 2) + perK / 413.15;
    const heatReleaseWPerM3 = (0.1 / perK) * Math.exp(intercept);
    return sizes.map((halfSizeM, i) => ({
      shape: 'cube',
      halfSizeM,
      ignitionC:
        ignitionC(
          { activationJPerMol, heatReleaseWPerM3, conductivityWPerMK: 0.1 },
          'cube',
          halfSizeM,
        )! + noiseK[i]!,
    }));
  };

  test('an exact report gives its energy back, with no width', () => {
    fc.assert(
      fc.property(energies, (energy) => {
        const fit = fitted(report(energy, [0, 0, 0, 0]));
        expect(share(fit.activationJPerMol, energy)).toBeLessThan(1e-6);
        const back = basketIgnitionC(fit, 'cube', 0.05)!;
        expect(back.ignitionC).toBeCloseTo(140, 5);
        expect(back.uncertain).toBe(false);
      }),
    );
  });

  test('the interval holds the line, and widens away from the sizes tested', () => {
    fc.assert(
      fc.property(energies, noise, (energy, noiseK) => {
        const fit = fitBaskets(report(energy, noiseK));
        if ('refused' in fit) return;
        const inside = basketIgnitionC(fit, 'cube', 0.04);
        const outside = basketIgnitionC(fit, 'cube', 0.8);
        if (inside === null) return;
        expect(inside.lowC).toBeLessThanOrEqual(inside.ignitionC);
        expect(inside.highC).toBeGreaterThanOrEqual(inside.ignitionC);
        if (outside === null) return;
        expect(outside.ignitionC).toBeLessThan(inside.ignitionC);
        expect(outside.lowC).toBeLessThanOrEqual(outside.ignitionC);
        expect(outside.ignitionC - outside.lowC).toBeGreaterThanOrEqual(
          inside.ignitionC - inside.lowC - 1e-6,
        );
      }),
    );
  });

  test('no figure outside the range', () => {
    const fit = fitted(report(90_000, [0, 0, 0, 0]));
    for (const half of [0, -1, 6, Number.NaN]) {
      expect(basketIgnitionC(fit, 'cube', half)).toBeNull();
    }
  });
});
