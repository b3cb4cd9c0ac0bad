import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acceptAgainstNominal,
  coatFromTotalUm,
  filmFromGaugeUm,
  meanOfReadings,
  spotLimitsUm,
} from '#rules/process/film-gauge.ts';
import { nominalRule, spotRow } from '../../vectors/film.ts';

const coat = meanOfReadings([38, 40, 42])!;
const bare = meanOfReadings([21, 22, 23])!;

describe('the bare surface is subtracted', () => {
  test('mean and its uncertainty', () => {
    expect(coat.meanUm).toBe(40);
    expect(coat.uUm).toBeCloseTo(2 / Math.sqrt(3), 12);
    expect(meanOfReadings([38, 40])).toBeNull();
    expect(meanOfReadings([38, 40, Number.NaN])).toBeNull();
  });
  test('40 µm read over 22 µm of profile is 18 µm of film', () => {
    const found = filmFromGaugeUm(coat, { kind: 'read', readings: bare }, 1)!;
    expect(found.dryUm).toBe(18);
    expect(found.uUm).toBeCloseTo(Math.hypot(2 / Math.sqrt(3), 1 / Math.sqrt(3), 1), 12);
    expect(found.uncertain).toBe(false);
  });
  test('without a base reading the profile stands in, and the answer is uncertain', () => {
    const found = filmFromGaugeUm(coat, { kind: 'profile', grade: 'medium' }, 1)!;
    expect(found.dryUm).toBe(15);
    expect(found.uncertain).toBe(true);
  });
  test('a film within the noise is uncertain, even a negative one', () => {
    const noisy = meanOfReadings([20, 25, 30])!;
    expect(filmFromGaugeUm(noisy, { kind: 'read', readings: bare }, 1)!.uncertain).toBe(true);
    const below = filmFromGaugeUm(bare, { kind: 'read', readings: coat }, 1)!;
    expect(below).toMatchObject({ dryUm: -18, uncertain: true });
    expect(filmFromGaugeUm(coat, { kind: 'read', readings: bare }, Number.NaN)).toBeNull();
  });
  test('the cover coat is the total less the primer', () => {
    const total = { dryUm: 30, uUm: 1, uncertain: false };
    const primer = { dryUm: 10, uUm: 1, uncertain: false };
    expect(coatFromTotalUm(total, primer)).toEqual({
      dryUm: 20,
      uUm: Math.SQRT2,
      uncertain: false,
    });
    expect(coatFromTotalUm(total, { ...primer, uncertain: true })!.uncertain).toBe(true);
    expect(coatFromTotalUm({ ...total, dryUm: Number.NaN }, primer)).toBeNull();
  });
});

test(`one spot may read ${spotRow.spotLeastMil} to ${spotRow.spotMostMil} mil where ${spotRow.leastMil} to ${spotRow.mostMil} are asked (${spotRow.source})`, () => {
  const { leastMil, mostMil, spotLeastMil, spotMostMil, umPerMil } = spotRow;
  const limits = spotLimitsUm(leastMil * umPerMil, mostMil * umPerMil)!;
  expect(limits.leastUm / umPerMil).toBeCloseTo(spotLeastMil, 9);
  expect(limits.mostUm / umPerMil).toBeCloseTo(spotMostMil, 9);
  expect(spotLimitsUm(10, 10)).toBeNull();
});

describe(`against a nominal film (${nominalRule.flag}: ${nominalRule.source})`, () => {
  test.each([
    [[100, 100, 100, 100, 100], 'accepted'],
    [[110, 110, 110, 110, 80], 'accepted'],
    [[110, 110, 110, 110, 79], 'reading-too-low'],
    [[100, 100, 100, 100, 99], 'mean-too-low'],
    [[130, 130, 130, 90, 90], 'too-many-low'],
    [[100, 100, 100, 100, 301], 'too-thick'],
    [[100, 100, 100, 100, 300], 'accepted'],
  ] as const)('%j against 100 µm: %s', (readings, verdict) =>
    expect(acceptAgainstNominal(readings, 100)).toBe(verdict),
  );
  test('nothing read, nothing said', () => {
    expect(acceptAgainstNominal([], 100)).toBeNull();
    expect(acceptAgainstNominal([Number.NaN], 100)).toBeNull();
    expect(acceptAgainstNominal([100], 0)).toBeNull();
  });
});

test('the same base on both coats does not move the cover coat', () => {
  const um = fc.double({ min: 0, max: 200, noNaN: true });
  fc.assert(
    fc.property(um, um, um, (total, primer, base) => {
      const over = (meanUm: number) => ({ dryUm: meanUm - base, uUm: 1, uncertain: false });
      expect(coatFromTotalUm(over(total), over(primer))!.dryUm).toBeCloseTo(total - primer, 9);
    }),
  );
});
