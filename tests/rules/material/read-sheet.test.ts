import { expect, test } from 'vitest';
import { readSheet } from '#rules/material/read-sheet.ts';

const named = { name: 'A', source: 'made for this test' };

test('a sheet in canonical numbers; what it does not say is unknown', () => {
  const { sheet, problems } = readSheet({
    ...named,
    storage_low: '41 [degF]',
    storage_high: '308.15 K',
    max_rest: '2 h',
    agitator_high: '0.5 Hz',
    target_solids: '350 g/kg',
    dry_above: '149 [degF]',
    dry_for: '10 min',
    bake_peak: '100 Cel',
    residue_limit: '105 Cel',
  });
  expect(problems).toEqual([]);
  expect(sheet).toMatchObject({
    ...named,
    storageLowC: 5,
    storageHighC: 35,
    shelfLifeMs: null,
    maxRestMs: 7_200_000,
    stirTimeMs: null,
    targetSolidsPercent: 35,
    dryAboveC: 65,
    dryForMs: 600_000,
    bakePeakC: 100,
    bakeUpperC: null,
    bakeUpperForMs: null,
    residueKind: 'unknown',
    residueLimitC: 105,
    agitatorLowPerMin: null,
    agitatorHighPerMin: 30,
  });
});

test.each([
  [{ storage_low: '5 bar' }, 'storage_low'],
  [{ storage_low: '5 Celsius' }, 'storage_low'],
  [{ max_rest: '200000 d' }, 'max_rest'],
  [{ storage_low: '30 Cel', storage_high: '5 Cel' }, 'storage_low'],
  [{ agitator_low: '30 /min', agitator_high: '30 /min' }, 'agitator_low'],
  [{ film_low: '25 um', film_high: '12 um' }, 'film_low'],
  [{ cover_after: '8 h', cover_within: '4 h' }, 'cover_after'],
  // Cure belongs to the press: no oven heat is that high.
  [{ dry_above: '140 Cel' }, 'dry_above'],
  [{ prebake_above: '155 Cel' }, 'prebake_above'],
  [{ prebake_above: '311 [degF]' }, 'prebake_above'],
])('%j: the problem stands at %s', (written, key) => {
  const { problems } = readSheet({ ...named, ...written });
  expect(problems.map((problem) => problem.path)).toEqual([[key]]);
});

test('the heats of oven and press are kept apart, each in its own unit', () => {
  const { sheet, problems } = readSheet({
    ...named,
    prebake_above: '65 Cel',
    prebake_for: '10 min',
    cover_within: '8 h',
    dose_z: '30 K',
    cure_above: '155 Cel',
    cure_pressure: '10 MPa',
    film_low: '12.7 um',
  });
  expect(problems).toEqual([]);
  expect(sheet).toMatchObject({
    dryAboveC: null,
    prebakeAboveC: 65,
    prebakeForMs: 600_000,
    coverWithinMs: 28_800_000,
    doseZK: 30,
    cureAboveC: 155,
    curePressureKPa: 10_000,
    filmLowMm: 0.0127,
  });
});

test('coating: metal under the gun, film in all, clocks from preparation, each in its own unit', () => {
  const { sheet, problems } = readSheet({
    ...named,
    volume_solids: '29 %',
    film_total_high: '1.4 [mil_i]',
    part_low: '104 [degF]',
    idle_tip: '15 min',
    coat_after_conversion: '48 h',
    phosphate_high: '4.5 g/m2',
  });
  expect(problems).toEqual([]);
  expect(sheet).toMatchObject({
    volumeSolidsPercent: 29,
    filmTotalLowMm: null,
    filmTotalHighMm: 0.03556,
    partLowC: 40,
    idleTipMs: 900_000,
    coatAfterConversionMs: 172_800_000,
    phosphateHighGPerM2: 4.5,
  });
  const crossed = readSheet({ ...named, profile_low: '60 um', profile_high: '40 um' });
  expect(crossed.problems).toMatchObject([{ path: ['profile_low'] }]);
});

test('keeping and mixing, each container with a time of its own', () => {
  const { sheet, problems } = readSheet({
    ...named,
    opened_life: '14 d',
    layover: '30 d',
    mix_half_pint: '5 min',
    mix_drum: '8 h',
  });
  expect(problems).toEqual([]);
  expect(sheet).toMatchObject({
    openedLifeMs: 14 * 86_400_000,
    letDownLifeMs: null,
    layoverMs: 30 * 86_400_000,
    mixHalfPintMs: 300_000,
    mixGallonMs: null,
    mixFiveGallonMs: null,
    mixDrumMs: 8 * 3_600_000,
  });
});
