import { describe, expect, test } from 'vitest';
import { unitCodes, unitOf } from '#rules/quantity/unit.ts';
import { suggestedCodes, unitFix } from '#rules/quantity/unit-fix.ts';

const nearMisses: readonly (readonly [written: string, meant: string])[] = [
  ['C', 'Cel'],
  ['°C', 'Cel'],
  ['℃', 'Cel'],
  ['cel', 'Cel'],
  ['degC', 'Cel'],
  ['F', '[degF]'],
  ['°F', '[degF]'],
  ['[DEGF]', '[degF]'],
  ['psi', '[psi]'],
  ['PSI', '[psi]'],
  ['Bar', 'bar'],
  ['barg', 'bar'],
  ['kpa', 'kPa'],
  ['rpm', '/min'],
  ['RPM', '/min'],
  ['r/min', '/min'],
  ['mils', '[mil_i]'],
  ['mil', '[mil_i]'],
  ['µm', 'um'],
  ['μm', 'um'],
  ['µS/cm', 'uS/cm'],
  ['kg/m³', 'kg/m3'],
  ['m³/h', 'm3/h'],
  ['mPa·s', 'mPa.s'],
  ['cps', 'mPa.s'],
  ['ppm', '[ppm]'],
  ['%RH', '%'],
  ['rH', '%'],
  ['ohm', 'Ohm'],
  ['Ω', 'Ohm'],
  ['Ω', 'Ohm'],
  ['hr', 'h'],
  ['pH', '[pH]'],
  ['lpm', 'L/min'],
];

describe('a unit we do not take', () => {
  test.each(nearMisses)('%s is answered with %s first', (written, meant) => {
    expect(unitOf(written)).toBeNull();
    expect(suggestedCodes(written)[0]).toBe(meant);
  });

  test('whatever is suggested is taken', () => {
    for (const [written] of nearMisses) {
      for (const code of suggestedCodes(written)) expect(unitOf(code)).not.toBeNull();
    }
  });

  test('every code of the table in small letters finds its way back', () => {
    for (const code of unitCodes) {
      const small = code.toLowerCase();
      if (small === code || unitOf(small) !== null) continue;
      expect(suggestedCodes(small), small).not.toEqual([]);
    }
  });

  test('the fix is a clause', () => {
    expect(unitFix('rpm')).toBe('write "/min" or "{rpm}"');
    expect(unitFix('psig')).toBe('write "[psi]"; gauge or absolute is no part of the unit');
    expect(unitFix('bar(a)')).toBe('write "bar"; gauge or absolute is no part of the unit');
    expect(unitFix('furlong')).toBe(
      'write a UCUM code, such as Cel, %, bar, mm, m/s, /min or kg/m3',
    );
    expect(suggestedCodes('constructor')).toEqual([]);
  });
});
