/** Formulas with settings. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { waterClasses } from '../../vectors/compressed-air.ts';
import { KindDrive } from './drive-kind.ts';

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
