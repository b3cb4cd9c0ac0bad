import { afterEach, describe, expect, test, vi } from 'vitest';
import { choose, usual } from '../../dashboards/state/preferences.ts';
import {
  differenceText,
  plainQuantity,
  quantity,
  writtenQuantity,
} from '../../dashboards/text/quantity.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
afterEach(() => choose(usual));

const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');

/** Written in Pa: a filter’s drop, a draught. */
const draught = { unit: 'kPa', written_unit: 'Pa' };
const exhaust = { unit: 'm/s', written_unit: 'm/s' };
const withdrawal = { unit: 'm/s', written_unit: 'm/min' };

describe('one unit for one thing, whatever its value', () => {
  test('air is told in m/s, a withdrawal in m/min; in ft/min both', () => {
    expect(spaced(quantity(0.1, exhaust, 0.01))).toBe('0.10 m/s');
    expect(spaced(plainQuantity(0.51, exhaust))).toBe('0.51 m/s');
    expect(spaced(plainQuantity(1 / 60, withdrawal))).toBe('1 m/min');
    expect(spaced(plainQuantity(0.5, withdrawal))).toBe('30 m/min');
    choose({ speed: '[ft_i]/min' });
    // 1 ft is 0.3048 m (NIST SP 811, B.8).
    expect(spaced(plainQuantity(0.508, exhaust))).toBe('100 ft/min');
    expect(spaced(quantity(0.3048 / 60, withdrawal, 0.0001))).toBe('1.00 ft/min');
  });
  test('a drop of more than 5 kPa stays in the unit of small pressures, a header below it in the large', () => {
    expect(spaced(plainQuantity(6.8, draught))).toBe('68 mbar');
    expect(spaced(plainQuantity(2, { unit: 'kPa', written_unit: 'bar' }))).toBe('0.02 bar');
  });
  test('a residue that is gauged in millimetres stays in millimetres', () => {
    expect(spaced(plainQuantity(1.2, { unit: 'mm', written_unit: 'mm' }))).toBe('1.2 mm');
  });
  test('a level that rises, in mm an hour', () => {
    expect(spaced(quantity(1 / 3_600_000, { unit: 'm/s', written_unit: 'mm/h' }, 1e-7))).toBe(
      '1.0 mm/h',
    );
  });
});

describe('a limit is told alike in sentence, card and ruler', () => {
  test.each([
    [112, { unit: 'Cel', written_unit: 'Cel' }, '112 °C'],
    // 32 psi and 0.9 m/min, as doubles have them.
    [220.632233381, { unit: 'kPa', written_unit: '[psi]' }, '2.206 bar'],
    [0.015_000_000_000_03, withdrawal, '0.9 m/min'],
    [260, { unit: 'mm', written_unit: 'mm' }, '260 mm'],
    [1050, { unit: 'kg/m3', written_unit: 'g/mL' }, '1.05 g/mL'],
    [0.51, exhaust, '0.51 m/s'],
    [12_345, { unit: '/min' }, '12345 rpm'],
    [-40, { unit: 'Cel' }, '−40 °C'],
    [0, { unit: 'Cel' }, '0 °C'],
    [0.0005, { unit: '%' }, '0.0005 %'],
  ] as const)('%d', (limit, unit, text) => {
    expect(spaced(plainQuantity(limit, unit))).toBe(text);
  });
});

describe('in the reader’s units', () => {
  test('a temperature as a temperature, a difference as a difference', () => {
    expect(spaced(quantity(104, 'Cel', 0.1))).toBe('104.0 °C');
    expect(spaced(differenceText(3, 'Cel', 0.1))).toBe('3.0 °C');
    choose({ temperature: '[degF]' });
    // 104 °C are 219.2 °F; a margin of 3 °C is 5.4 °F, not 37.4 (NIST SP 811, B.8: t/°F = 1.8 t/°C + 32).
    expect(spaced(quantity(104, 'Cel', 0.1))).toBe('219.2 °F');
    expect(spaced(differenceText(3, 'Cel', 0.1))).toBe('5.4 °F');
    expect(spaced(quantity(3, 'K', 0.1))).toBe('5.4 °F');
    expect(spaced(plainQuantity(2, 'K/min'))).toBe('3.6 °F/min');
  });
  test('pressures, and small ones in the small unit beside it', () => {
    expect(spaced(plainQuantity(580, 'kPa'))).toBe('5.8 bar');
    expect(spaced(plainQuantity(0.25, draught))).toBe('2.5 mbar');
    choose({ pressure: '[psi]' });
    // 1 psi is 6.894757 kPa (NIST SP 811, B.8).
    expect(spaced(plainQuantity(689.4757, 'kPa'))).toBe('100 psi');
    choose({ pressure: 'kPa' });
    expect(spaced(plainQuantity(0.25, draught))).toBe('250 Pa');
  });
  test('film in micrometres or mil', () => {
    const film = { unit: 'mm', written_unit: 'um' };
    expect(spaced(plainQuantity(0.0254, film))).toBe('25.4 µm');
    choose({ smallLength: '[mil_i]' });
    expect(spaced(plainQuantity(0.0254, film))).toBe('1 mil');
    expect(spaced(plainQuantity(260, 'mm'))).toBe('260 mm');
  });
  test('what the trade says otherwise: rpm, m/min, g/mL', () => {
    expect(spaced(plainQuantity(25, '/min'))).toBe('25 rpm');
    expect(spaced(plainQuantity(1085, 'kg/m3'))).toBe('1.085 g/mL');
  });
});

test('settings as written: readings converted, differences as differences, the rest left alone', () => {
  choose({ temperature: '[degF]' });
  expect(spaced(writtenQuantity('high', '112 Cel'))).toBe('233.6 °F');
  expect(spaced(writtenQuantity('deadband', '1 K'))).toBe('1.8 °F');
  expect(writtenQuantity('on_delay', '5 min')).toBe('5 min');
  expect(writtenQuantity('gate', 'none')).toBe('none');
  expect(spaced(writtenQuantity('target', '1 m/min'))).toBe('1 m/min');
  choose({ speed: '[ft_i]/min' });
  expect(spaced(writtenQuantity('target', '3.048 m/min'))).toBe('10 ft/min');
});

describe('numbers', () => {
  test('a minus sign, and none before nothing', () => {
    expect(spaced(quantity(-2.06, 'Cel', 0.1))).toBe('−2.1 °C');
    expect(spaced(quantity(-0.04, 'Cel', 0.1))).toBe('0.0 °C');
  });
  test('as many decimals as the resolution tells', () => {
    expect(spaced(quantity(37.0412, '/min', 0.1))).toBe('37.0 rpm');
    expect(spaced(quantity(612, 'kPa', 1))).toBe('6.12 bar');
  });
  test('never broken apart from its unit', () => {
    expect(quantity(1, 'Cel', 1)).toBe('1\u00a0°C');
  });
});
