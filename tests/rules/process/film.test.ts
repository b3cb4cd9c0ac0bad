import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  coverageM2PerL,
  dilutedVolumeSolidsPct,
  dryFromWeightGainUm,
  dryFromWetUm,
  filmVerdict,
  litresForArea,
  transferEfficiencyPct,
  volumeSolidsPct,
  wetFromDryUm,
} from '#rules/process/film.ts';
import {
  coverageRow,
  dilutionRow,
  gallonRow,
  massForVolume,
  wetDryRows,
} from '../../vectors/film.ts';

test.each(wetDryRows)(
  '$dryUm µm dry of $volumeSolidsPct % is $wetUm µm wet ($flag: $source)',
  ({ dryUm, volumeSolidsPct: vs, wetUm, toleranceUm }) => {
    expect(Math.abs(wetFromDryUm(dryUm, vs)! - wetUm)).toBeLessThanOrEqual(toleranceUm);
    expect(dryFromWetUm(wetFromDryUm(dryUm, vs)!, vs)!).toBeCloseTo(dryUm, 9);
  },
);

test('a gallon at 10 mil wet', () => {
  const { wetMil, umPerMil, ft2PerGal, toleranceFt2PerGal, m2PerFt2, lPerGal } = gallonRow;
  // Wet film is what a material of 100 % solids leaves.
  const m2PerL = coverageM2PerL(wetMil * umPerMil, 100)!;
  expect(Math.abs((m2PerL * lPerGal) / m2PerFt2 - ft2PerGal)).toBeLessThanOrEqual(
    toleranceFt2PerGal,
  );
});

test('coverage and dilution', () => {
  expect(coverageM2PerL(coverageRow.dryUm, coverageRow.volumeSolidsPct)).toBe(coverageRow.m2PerL);
  const { volumeSolidsPct: vs, parts, dilutedPct, dryUm, wetUm, tolerance } = dilutionRow;
  const diluted = dilutedVolumeSolidsPct(vs, parts)!;
  expect(Math.abs(diluted - dilutedPct)).toBeLessThanOrEqual(tolerance);
  expect(Math.abs(wetFromDryUm(dryUm, diluted)! - wetUm)).toBeLessThanOrEqual(tolerance);
});

test('trap: 35 % by mass is 28 % by volume, so a film a fifth thinner', () => {
  const { massSolidsPct, solidsDensityGPerMl, tolerancePct } = massForVolume;
  const vs = volumeSolidsPct(massSolidsPct, solidsDensityGPerMl)!;
  expect(Math.abs(vs - massForVolume.volumeSolidsPct)).toBeLessThanOrEqual(tolerancePct);
  expect(dryFromWetUm(76, vs)! / dryFromWetUm(76, massSolidsPct)!).toBeLessThan(0.82);
});

test('weight gain over area: 1 g on 500 cm2 of 1.25 g/cm3 is 16 µm', () => {
  expect(dryFromWeightGainUm(1, 500, 1.25)!).toBeCloseTo(16, 9);
  expect(dryFromWeightGainUm(1, 0, 1.25)).toBeNull();
  expect(dryFromWeightGainUm(1e5, 1, 1.25)).toBeNull();
});

describe('how much is used', () => {
  test('a mass balance gives the transfer, and the transfer the litres back', () => {
    // 40 m2 at 20 µm of 30 %: 2.667 L of film; from 6 L that is 44.4 %.
    expect(transferEfficiencyPct(40, 20, 30, 6)!).toBeCloseTo(44.444, 3);
    expect(litresForArea(40, 20, 30, transferEfficiencyPct(40, 20, 30, 6)!)!).toBeCloseTo(6, 9);
  });
  test('more on the parts than was used is a wrong figure', () =>
    expect(transferEfficiencyPct(40, 20, 30, 2)).toBeNull());
});

describe('thin, within, thick: ask', () => {
  test.each([
    [12.6, 'thin'],
    [12.7, 'within'],
    [25.4, 'within'],
    [25.5, 'thick-ask'],
    [50, 'thick-ask'],
    [50.1, 'too-thick'],
  ] as const)('%d µm against 12.7 to 25.4 is %s', (dryUm, verdict) =>
    expect(filmVerdict(dryUm, 12.7, 25.4)).toBe(verdict),
  );
  test('a data sheet that allows more than 50 µm is believed', () => {
    expect(filmVerdict(70, 40, 80)).toBe('within');
    expect(filmVerdict(81, 40, 80)).toBe('too-thick');
  });
  test.each([
    [Number.NaN, 10, 20],
    [10, 20, 20],
    [10, Number.NaN, 20],
    [-1, 10, 20],
  ])('no verdict on %d against %d to %d', (dryUm, least, most) =>
    expect(filmVerdict(dryUm, least, most)).toBeNull(),
  );
});

const um = fc.double({ min: 0.1, max: 500, noNaN: true });
const solids = fc.double({ min: 10, max: 100, noNaN: true });

test('wet is never thinner than dry; back and forth is where it was; richer leaves more', () => {
  fc.assert(
    fc.property(um, solids, (dryUm, vs) => {
      const wetUm = wetFromDryUm(dryUm, vs)!;
      expect(wetUm).toBeGreaterThanOrEqual(dryUm);
      expect(dryFromWetUm(wetUm, vs)! / dryUm).toBeCloseTo(1, 12);
      expect(coverageM2PerL(dryUm, vs)! * wetUm).toBeCloseTo(1000, 6);
      if (vs < 99) expect(dryFromWetUm(wetUm, vs + 1)!).toBeGreaterThan(dryUm);
    }),
  );
});

test('no number at all makes NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
      for (const answer of [
        wetFromDryUm(a, b),
        dryFromWetUm(a, b),
        volumeSolidsPct(a, b, c),
        dilutedVolumeSolidsPct(a, b),
        coverageM2PerL(a, b),
        litresForArea(a, b, c, d),
        transferEfficiencyPct(a, b, c, d),
        dryFromWeightGainUm(a, b, c),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});

test.each([
  wetFromDryUm(10, 0),
  wetFromDryUm(-1, 50),
  wetFromDryUm(10, 101),
  dryFromWetUm(10_001, 50),
  dilutedVolumeSolidsPct(50, -0.1),
  coverageM2PerL(0, 50),
  litresForArea(1, 20, 30, 0),
])('refused outside the range', (answer) => expect(answer).toBeNull());
