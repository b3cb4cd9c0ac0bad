/** Formulas with settings. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { waterClasses } from '../../vectors/compressed-air.ts';
import { compiledBy, KindDrive } from './drive-kind.ts';

const of = (name: string, written: object, input: string, unit: string, value: number) =>
  new KindDrive(name, { ...written }, [input], unit).values(input, [0, value]).advance(200).last;

describe('tip speed', () => {
  test.each([
    // A 0.4 m blade at 20 to 30 turns a minute: 0.42 to 0.63 m/s (pi d n).
    [20, 0.42],
    [30, 0.63],
    [0, 0],
  ])('%d turns a minute of a 400 mm blade: %d m/s', (turns, mPerS) => {
    expect(of('tip-speed', { blade_diameter: '400 mm' }, 'speed', '/min', turns)).toMatchObject({
      value: mPerS,
      quality: quality.good,
    });
  });
  test('backwards is no speed', () => {
    expect(of('tip-speed', { blade_diameter: '0.4 m' }, 'speed', '/min', -1).quality).toBe(
      quality.outsideFormula,
    );
  });
});

test('shares of what is normal', () => {
  expect(of('filter-share', { clean: '125 Pa' }, 'drop', 'kPa', 0.25).value).toBe(200);
  expect(of('flow-share', { normal: '12 /min' }, 'flow', '/min', 6).value).toBe(50);
  expect(of('flow-share', { normal: '12 /min' }, 'flow', '/min', -1).quality).toBe(
    quality.outsideFormula,
  );
});

test.each([...waterClasses.limits, { class: null, dewPointC: 10.1 }])(
  `water class at $dewPointC °C (${waterClasses.source})`,
  ({ class: expected, dewPointC }) => {
    const told = of('pressure-water-class', {}, 'pressure-dew-point', 'Cel', dewPointC);
    if (expected === null) expect(told.quality).toBe(quality.outsideFormula);
    else expect(told.value).toBe(expected);
  },
);

describe('solids', () => {
  const anchor = {
    oven_solids: '35 %',
    oven_solids_u: '0.2 %',
    oven_density: '1.10 g/mL',
    oven_density_u: '0.0005 g/mL',
    oven_temperature: '20 Cel',
    density_u: '0.0005 g/mL',
  };
  const told = (name: string, written: object, densityKgPerM3: number, temperatureC = 20) =>
    new KindDrive(name, { ...anchor, ...written }, ['density', 'temperature'])
      .values('density', [0, densityKgPerM3])
      .values('temperature', [0, temperatureC])
      .advance(200).last;
  test('at the anchor they are the anchor’s; 0.001 g/mL is 0.31 % (calculated)', () => {
    expect(told('solids', {}, 1_100)).toMatchObject({ value: 35, quality: quality.good });
    expect(told('solids', {}, 1_110).value).toBe(38.1);
  });
  test('uncertain where twice u is more than enough', () => {
    expect(told('solids', { density_u: '0.002 g/mL' }, 1_100).quality).toBe(quality.estimated);
    expect(told('solids', { enough: '0.2 %' }, 1_100).quality).toBe(quality.estimated);
  });
  test('outside the formula', () => {
    expect(told('solids', {}, 990).quality).toBe(quality.outsideFormula);
    expect(told('solids', {}, 1_100, 50).quality).toBe(quality.outsideFormula);
  });
  test('the margin is what is allowed less the distance, and never less than the reading can tell', () => {
    const run = { target: '35 %', allowed: '1 %' };
    expect(told('solids-margin', run, 1_100).value).toBe(1);
    expect(told('solids-margin', run, 1_110).value).toBe(-2.1);
    // u of 0.002 g/mL alone is 0.62 %, so 2u allows more than the 1 %.
    expect(told('solids-margin', { ...run, density_u: '0.002 g/mL' }, 1_100).value).toBeGreaterThan(
      1.2,
    );
  });
});

test('wet to dry, by solids by volume (definition)', () => {
  // 76 µm wet at 29 % by volume are 22 µm dry.
  expect(of('wet-to-dry', { volume_solids: '29 %' }, 'wet', 'mm', 0.076).value).toBe(0.022);
  expect(of('wet-to-dry', { volume_solids: '29 %' }, 'wet', 'mm', -1).quality).toBe(
    quality.outsideFormula,
  );
});

describe('film from withdrawal', () => {
  const film = (written: object, mPerMin: number) =>
    of('film-from-withdrawal', written, 'withdrawal', 'm/s', mPerMin / 60);
  const liquid = { viscosity: '50 mPa.s', surface_tension: '30 mN/m', density: '1 g/mL' };
  test('Landau, Levich and Derjaguin: 5 mm/s, 50 mPa·s, 30 mN/m, 1 g/mL leave 67.9 µm (calculated)', () => {
    expect(film(liquid, 0.3)).toMatchObject({ value: 0.0679, quality: quality.estimated });
  });
  test('fitted to panels it is theirs, and uncertain beyond their speeds', () => {
    const panels = [0.5, 0.8, 1, 1.25, 2].map((u) => [
      `${u} m/min`,
      `${(22 * u ** 0.6).toFixed(4)} um`,
    ]);
    expect(film({ panels }, 1)).toMatchObject({ value: 0.022, quality: quality.good });
    expect(film({ panels }, 2.5)).toMatchObject({ quality: quality.estimated });
    expect(film({ panels }, 0).quality).toBe(quality.outsideFormula);
  });
  test.each([
    ['nothing to go by', {}],
    ['half a liquid', { viscosity: '20 mPa.s' }],
    ['too few panels', { panels: [['1 m/min', '22 um']] }],
    ['a panel in the wrong unit', { panels: [['1 m', '22 um']] }],
  ])('%s is refused', (_, written) => {
    const { problems } = compiledBy('film-from-withdrawal', written, ['withdrawal'], 'm/s');
    expect(problems.length).toBeGreaterThan(0);
  });
});

describe('film over a base', () => {
  const gauge = (written: object, ...readings: readonly (readonly [number, number])[]) =>
    new KindDrive('film-over-base', { ...written }, ['gauge', 'base'])
      .values('base', [0, 0.012])
      .values('gauge', ...readings)
      .advance(200_000);
  test('is the reading less that of the bare surface (definition)', () => {
    expect(gauge({}, [0, 0.031]).last).toMatchObject({ value: 0.019, quality: quality.good });
    expect(gauge({}, [0, 0.01]).last.quality).toBe(quality.outsideFormula);
  });
  test('uncertain where both may err by over a third of it', () => {
    // Each by 5 µm: 7.1 µm of 19.
    expect(gauge({ gauge_u: '5 um' }, [0, 0.031]).last.quality).toBe(quality.estimated);
  });
  test('a base read anew waits for a coat, also for one that reads the same as the last', () => {
    const drive = gauge({}, [0, 0.031], [5_000, 0.031]);
    expect(drive.last.value).toBe(0.019);
    drive.values('base', [300_000, 0.004]).advance(301_000);
    expect(drive.last.quality).toBe(quality.tooEarly);
    drive.values('gauge', [310_000, 0.031]).advance(320_000);
    expect(drive.last).toMatchObject({ value: 0.027, quality: quality.good });
  });
});
