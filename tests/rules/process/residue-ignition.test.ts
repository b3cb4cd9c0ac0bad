import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  criticalDelta,
  frankKamenetskiiDelta,
  ignitionC,
  ignitionHalfSizeM,
  loweredLimitC,
  residueActivationJPerMol,
  scaledIgnitionC,
} from '#rules/process/residue-ignition.ts';
import {
  criticalValues,
  deltaRow,
  halfSizeRows,
  ignitionRows,
  loweringRows,
  publishedKinetics,
  scalingRows,
} from '../../vectors/residue-ignition.ts';

const celsius = (kelvin: number): number => kelvin - 273.15;
const nearly = (found: number | null, expected: number, tolerance: number): void =>
  expect(Math.abs(found! - expected)).toBeLessThanOrEqual(tolerance);

describe('the law', () => {
  test(`delta of a slab (${deltaRow.source})`, () => {
    const delta = frankKamenetskiiDelta(
      publishedKinetics,
      deltaRow.halfSizeM,
      celsius(deltaRow.kelvin),
    )!;
    expect(Math.abs(delta / deltaRow.delta - 1)).toBeLessThan(deltaRow.toleranceShare);
    nearly(delta / criticalDelta.slab, deltaRow.ratioToSlab, 1e-8);
    const twice = frankKamenetskiiDelta(publishedKinetics, 0.1, celsius(deltaRow.kelvin))!;
    expect(twice / delta).toBeCloseTo(4, 9);
  });

  test.each(ignitionRows)('$shape of $halfSizeM m at $kelvin K ($flag: $source)', (row) => {
    nearly(
      ignitionC(publishedKinetics, row.shape, row.halfSizeM),
      celsius(row.kelvin),
      row.toleranceK,
    );
  });

  test.each(halfSizeRows)('slab at $kelvin K: $halfSizeM m ($flag: $source)', (row) => {
    nearly(ignitionHalfSizeM(publishedKinetics, 'slab', celsius(row.kelvin)), row.halfSizeM, 1e-6);
  });

  test.each(criticalValues)('delta_c of a $shape is $used ($source)', (row) => {
    expect(criticalDelta[row.shape]).toBe(row.used);
    nearly(row.used, row.published, 0.005);
  });

  test('trap: the cube has three values in print; the choice moves a temperature by 0.3 to 0.6 K', () => {
    const scale = (knownC: number): number => {
      // A cube of critical value 2.57 is one of 2.475 that is sqrt(2.475/2.57) as large.
      const other = scaledIgnitionC(knownC, 100, 100 * Math.sqrt(2.475 / 2.57), 90_000)!;
      return other - knownC;
    };
    expect(scale(40)).toBeGreaterThan(0.25);
    expect(scale(40)).toBeLessThan(0.4);
    expect(scale(140)).toBeGreaterThan(0.5);
    expect(scale(140)).toBeLessThan(0.65);
  });

  test('trap: a "25 mm cube" is 25 mm along the side, and r is half of it', () => {
    const side = 0.025;
    const right = ignitionC(publishedKinetics, 'cube', side / 2)!;
    expect(ignitionC(publishedKinetics, 'cube', side)!).toBeLessThan(right - 10);
  });
});

describe('from one size to another', () => {
  test.each(scalingRows)('$name: $ignitionC °C ($flag: $source)', (row) => {
    nearly(
      scaledIgnitionC(row.knownC, row.knownMm, row.wantedMm, row.activationJPerMol),
      row.ignitionC,
      row.toleranceK,
    );
  });

  test.each(loweringRows)(
    '112 °C of 10 mm is $lowC to $highC °C at $thicknessMm mm ($source)',
    ({ thicknessMm, lowC, highC }) => {
      const ends = [residueActivationJPerMol.least, residueActivationJPerMol.most]
        .map((energy) => scaledIgnitionC(112, 10, thicknessMm, energy)!)
        .sort((a, b) => a - b);
      nearly(ends[0]!, lowC, 0.5);
      nearly(ends[1]!, highC, 0.5);
    },
  );

  test('the limit of a thick layer is the worse end of what is not known; a thin one keeps its own', () => {
    const thick = loweredLimitC(112, 10, 50)!;
    expect(thick.lowered).toBe(true);
    nearly(thick.limitC, 59, 0.5);
    nearly(thick.mildestC, 86, 0.5);
    // From the first tenth of a millimetre on, and by little at first.
    const justThicker = loweredLimitC(112, 10, 10.1)!;
    expect(justThicker.lowered).toBe(true);
    expect(justThicker.limitC).toBeLessThan(112);
    expect(justThicker.limitC).toBeGreaterThan(111);
    expect(loweredLimitC(112, 10, 1)).toEqual({ limitC: 112, mildestC: 112, lowered: false });
    expect(loweredLimitC(112, 10, 10)).toEqual({ limitC: 112, mildestC: 112, lowered: false });
  });
});

describe('any residue', () => {
  const limits = fc.double({ min: 40, max: 300, noNaN: true });
  const thicknesses = fc.double({ min: 0.1, max: 2_000, noNaN: true });

  test('no limit is ever raised, and more residue never raises one', () => {
    fc.assert(
      fc.property(limits, thicknesses, thicknesses, thicknesses, (limitC, proven, one, other) => {
        const thin = loweredLimitC(limitC, proven, Math.min(one, other));
        const thick = loweredLimitC(limitC, proven, Math.max(one, other));
        for (const each of [thin, thick]) {
          if (each === null) continue;
          expect(each.limitC).toBeLessThanOrEqual(limitC);
          expect(each.limitC).toBeLessThanOrEqual(each.mildestC);
        }
        if (thin !== null && thick !== null)
          expect(thick.limitC).toBeLessThanOrEqual(thin.limitC + 1e-6);
      }),
    );
  });

  test('there and back is the same temperature', () => {
    const energies = fc.double({ min: 70_000, max: 150_000, noNaN: true });
    fc.assert(
      fc.property(limits, energies, fc.double({ min: 1, max: 20, noNaN: true }), (c, e, ratio) => {
        const there = scaledIgnitionC(c, 10, 10 * ratio, e)!;
        if (there < -20) return;
        nearly(scaledIgnitionC(there, 10 * ratio, 10, e), c, 1e-6);
      }),
    );
  });

  test('scaling is the law itself between two sizes', () => {
    const small = ignitionC(publishedKinetics, 'cube', 0.05)!;
    const large = ignitionC(publishedKinetics, 'cube', 0.5)!;
    nearly(scaledIgnitionC(small, 50, 500, publishedKinetics.activationJPerMol), large, 1e-6);
  });

  test('half-size and temperature are each other’s answer', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 300, noNaN: true }), (atC) => {
        const half = ignitionHalfSizeM(publishedKinetics, 'sphere', atC)!;
        nearly(ignitionC(publishedKinetics, 'sphere', half), atC, 1e-6);
      }),
    );
  });

  test('outside the range there is no figure, and no number at all makes NaN', () => {
    expect(scaledIgnitionC(401, 10, 20, 90_000)).toBeNull();
    expect(scaledIgnitionC(100, 0, 20, 90_000)).toBeNull();
    expect(scaledIgnitionC(100, 10, 20, 19_000)).toBeNull();
    expect(scaledIgnitionC(100, 10, 1e-9, 20_000)).toBeNull();
    expect(loweredLimitC(112, 10, 2_001)).toBeNull();
    expect(loweredLimitC(112, 0, 20)).toBeNull();
    expect(loweredLimitC(Number.NaN, 10, 20)).toBeNull();
    expect(ignitionC(publishedKinetics, 'slab', 0)).toBeNull();
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
        const kinetics = { activationJPerMol: a, heatReleaseWPerM3: b, conductivityWPerMK: c };
        for (const answer of [
          scaledIgnitionC(a, b, c, d),
          loweredLimitC(a, b, c)?.limitC ?? null,
          frankKamenetskiiDelta(kinetics, d, a),
          ignitionC(kinetics, 'cube', d),
          ignitionHalfSizeM(kinetics, 'cube', d),
        ]) {
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        }
      }),
    );
  });
});
