import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Growth,
  hoursUntilThick,
  residueDepositMm,
  residueGrowth,
} from '#rules/process/residue-growth.ts';
import { depositRow } from '../../vectors/residue-growth.ts';

const grown = (timesH: readonly number[], thicknessesMm: readonly number[]): Growth => {
  const answer = residueGrowth(timesH, thicknessesMm);
  if ('refused' in answer) throw new Error(answer.refused);
  return answer;
};

describe('growth between cleanings', () => {
  test('two gaugings give a slope and no bound', () => {
    const growth = grown([0, 40], [0.2, 0.6]);
    expect(growth.mmPerH).toBeCloseTo(0.01, 12);
    expect(growth).toMatchObject({ uncertain: true, lastMm: 0.6 });
    expect(growth.highMmPerH).toBeCloseTo(0.01, 12);
    expect(hoursUntilThick(growth, 1)).toBeCloseTo(40, 9);
  });

  test('one wild gauging does not bend it, and the due date goes by the upper bound', () => {
    const times = Array.from({ length: 12 }, (_, i) => i * 8);
    const thickness = times.map((at) => 0.1 + 0.005 * at);
    const wild = thickness.map((each, i) => (i === 5 ? 3 : each));
    const growth = grown(times, wild);
    expect(growth.mmPerH).toBeCloseTo(0.005, 3);
    expect(growth.uncertain).toBe(false);
    expect(growth.highMmPerH).toBeGreaterThanOrEqual(growth.mmPerH);
    expect(hoursUntilThick(growth, 1)!).toBeLessThanOrEqual((1 - growth.lastMm) / growth.mmPerH);
  });

  test('already thick is due now; no growth seen foretells nothing', () => {
    expect(hoursUntilThick(grown([0, 8], [0.5, 1]), 1)).toBe(0);
    expect(hoursUntilThick(grown([0, 8], [0.5, 0.5]), 1)).toBeNull();
    expect(hoursUntilThick(grown([0, 8], [0.5, 0.4]), 1)).toBeNull();
    expect(hoursUntilThick(grown([0, 8], [0.1, 0.4]), 0)).toBeNull();
  });

  test('refused: too few, out of order, no thickness', () => {
    expect(residueGrowth([0], [0.5])).toEqual({ refused: 'too-few' });
    for (const answer of [
      residueGrowth([0, 0], [0.1, 0.2]),
      residueGrowth([0, 1], [0.1, -0.2]),
      residueGrowth([0, 1], [0.1, 201]),
      residueGrowth([0, 1], [0.1, Number.NaN]),
      residueGrowth([0, 1, 2], [0.1, 0.2]),
    ]) {
      expect(answer).toEqual({ refused: 'out-of-range' });
    }
  });

  test('the bound is never under the slope, and a lower limit is never due later', () => {
    const gaugings = fc.array(fc.double({ min: 0, max: 5, noNaN: true }), {
      minLength: 2,
      maxLength: 20,
    });
    fc.assert(
      fc.property(gaugings, (drawn) => {
        const growth = grown(
          drawn.map((_, i) => i * 8),
          drawn,
        );
        expect(growth.highMmPerH).toBeGreaterThanOrEqual(growth.mmPerH - 1e-12);
        const sooner = hoursUntilThick(growth, 1) ?? Number.POSITIVE_INFINITY;
        const later = hoursUntilThick(growth, 2) ?? Number.POSITIVE_INFINITY;
        expect(sooner).toBeLessThanOrEqual(later);
      }),
    );
  });
});

describe('from what was sprayed', () => {
  test(`up to ${depositRow.thicknessMm} mm (${depositRow.source})`, () => {
    const { sprayedLPerH, hours, ontoPartsShare, volumeSolidsShare, areaM2, thicknessMm } =
      depositRow;
    expect(
      residueDepositMm(sprayedLPerH, hours, ontoPartsShare, volumeSolidsShare, areaM2),
    ).toBeCloseTo(thicknessMm, 9);
  });

  test('nothing outside the range', () => {
    expect(residueDepositMm(-1, 1, 0.5, 0.3, 2)).toBeNull();
    expect(residueDepositMm(1, 1, 1.1, 0.3, 2)).toBeNull();
    expect(residueDepositMm(1, 1, 0.5, 28, 2)).toBeNull();
    expect(residueDepositMm(1, 1, 0.5, 0.3, 0)).toBeNull();
    expect(residueDepositMm(Number.NaN, 1, 0.5, 0.3, 2)).toBeNull();
  });
});
