import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  massShareOfSolids,
  mixedDensityAsGiven,
  tellApart,
  volumeShareOfSolids,
} from '#rules/process/ideal-mixing.ts';
import { illConditioned, mixingRows } from '../../vectors/solids.ts';

test.each(mixingRows)(
  '$massShare of $solids in $liquid makes $mixed ($flag: $source)',
  ({ massShare, solids, liquid, mixed, tolerance, volumeShare }) => {
    const found = mixedDensityAsGiven(massShare, solids, liquid)!;
    expect(Math.abs(found - mixed)).toBeLessThanOrEqual(tolerance);
    expect(massShareOfSolids(found, solids, liquid)!).toBeCloseTo(massShare, 8);
    if (volumeShare !== undefined)
      expect(volumeShareOfSolids(massShare, solids, liquid)!).toBeCloseTo(volumeShare, 6);
  },
);

test('solids that weigh nearly what water does: one kg/m3 is 0.7 %', () => {
  const { solidsKgPerM3, liquidKgPerM3, pctPerKgPerM3, tolerancePct } = illConditioned;
  const share = (mixed: number) => massShareOfSolids(mixed, solidsKgPerM3, liquidKgPerM3)!;
  const pct = 100 * (share(1031) - share(1030));
  expect(Math.abs(pct - pctPerKgPerM3)).toBeLessThanOrEqual(tolerancePct);
  expect(massShareOfSolids(1010, 1040, liquidKgPerM3)).toBeNull();
  expect(tellApart(1040, liquidKgPerM3)).toBe(false);
  expect(tellApart(1150, liquidKgPerM3)).toBe(true);
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const heavy = fc.double({ min: 1100, max: 5000, noNaN: true });

test('the way back from the way there, and volumes that add up', () => {
  fc.assert(
    fc.property(share, heavy, (w, solids) => {
      const mixed = mixedDensityAsGiven(w, solids, 998)!;
      expect(massShareOfSolids(mixed, solids, 998)!).toBeCloseTo(w, 9);
      const phi = volumeShareOfSolids(w, solids, 998)!;
      expect(phi * solids + (1 - phi) * 998).toBeCloseTo(mixed, 6);
    }),
  );
});

test('more solids that are heavier than water make it denser', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.99, noNaN: true }), heavy, (w, solids) => {
      expect(mixedDensityAsGiven(w + 0.01, solids, 998)!).toBeGreaterThan(
        mixedDensityAsGiven(w, solids, 998)!,
      );
    }),
  );
});

test('a mixture that cannot be is refused, and no number makes NaN', () => {
  expect(massShareOfSolids(990, 1350, 998)).toBeNull();
  expect(massShareOfSolids(1360, 1350, 998)).toBeNull();
  expect(mixedDensityAsGiven(1.1, 1350, 998)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
      for (const answer of [
        mixedDensityAsGiven(a, b, c),
        massShareOfSolids(a, b, c),
        volumeShareOfSolids(a, b, c),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
