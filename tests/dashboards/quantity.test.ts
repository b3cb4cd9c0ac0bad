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
    expect(spaced(plainQuantity(0.25, 'kPa'))).toBe('2.5 mbar');
    choose({ pressure: '[psi]' });
    // 1 psi is 6.894757 kPa (NIST SP 811, B.8).
    expect(spaced(plainQuantity(689.4757, 'kPa'))).toBe('100 psi');
    choose({ pressure: 'kPa' });
    expect(spaced(plainQuantity(0.25, 'kPa'))).toBe('250 Pa');
  });
  test('film in micrometres or mil', () => {
    expect(spaced(plainQuantity(0.0254, 'mm'))).toBe('25.4 µm');
    choose({ smallLength: '[mil_i]' });
    expect(spaced(plainQuantity(0.0254, 'mm'))).toBe('1 mil');
    expect(spaced(plainQuantity(260, 'mm'))).toBe('260 mm');
  });
  test('what the trade says otherwise: rpm, m/min, g/mL', () => {
    expect(spaced(plainQuantity(25, '/min'))).toBe('25 rpm');
    expect(spaced(plainQuantity(1 / 60, 'm/s'))).toBe('1 m/min');
    expect(spaced(plainQuantity(0.51, 'm/s'))).toBe('0.51 m/s');
    expect(spaced(plainQuantity(1085, 'kg/m3'))).toBe('1.085 g/mL');
  });
});

test('settings as written: readings converted, differences as differences, the rest left alone', () => {
  choose({ temperature: '[degF]' });
  expect(spaced(writtenQuantity('high', '112 Cel'))).toBe('233.6 °F');
  expect(spaced(writtenQuantity('deadband', '1 K'))).toBe('1.8 °F');
  expect(writtenQuantity('on_delay', '5 min')).toBe('5 min');
  expect(writtenQuantity('gate', 'none')).toBe('none');
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
