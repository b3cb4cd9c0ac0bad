import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { durationText, quantityText } from '#rules/kinds/settings.ts';
import { durationMsMax, parseDuration } from '#rules/quantity/duration.ts';
import { parseQuantity, withoutDust } from '#rules/quantity/quantity.ts';
import { unitCodes } from '#rules/quantity/unit.ts';

describe('quantities', () => {
  test.each([
    ['7 Cel', 7, 'Cel'],
    ['-20.5 Cel', -20.5, 'Cel'],
    ['+3 K', 3, 'K'],
    ['.5 bar', 0.5, 'bar'],
    ['1e3 Pa', 1000, 'Pa'],
    ['30  {rev}/min', 30, '{rev}/min'],
    [' 55 % ', 55, '%'],
  ])('%j', (text, value, code) => {
    const read = parseQuantity(text);
    expect(read.ok && [read.value.value, read.value.unit.code]).toEqual([value, code]);
  });

  test.each([
    ['7 C', '"C" is no unit we take', 'write "Cel", as in "7 Cel"'],
    ['30 rpm', '"rpm" is no unit we take', 'write "/min" or "{rpm}", as in "30 /min"'],
    ['7', '7 has no unit', 'write it as "7 Cel"'],
    ['7Cel', '"7Cel" has no space before its unit', 'write it as "7 Cel"'],
    ['30/min', '"30/min" has no space before its unit', 'write it as "30 /min"'],
    ['1e400 Cel', '1e400 is too large a number', 'write it as "7 Cel"'],
    [
      'seven',
      '"seven" is no value with a unit',
      'write a number, a space and a UCUM unit, as "7 Cel"',
    ],
    [
      'NaN Cel',
      '"NaN Cel" is no value with a unit',
      'write a number, a space and a UCUM unit, as "7 Cel"',
    ],
    [
      '7 Cel Cel',
      '"7 Cel Cel" is no value with a unit',
      'write a number, a space and a UCUM unit, as "7 Cel"',
    ],
    [
      '0x10 Cel',
      '"0x10 Cel" is no value with a unit',
      'write a number, a space and a UCUM unit, as "7 Cel"',
    ],
    [
      '7,5 Cel',
      '"7,5 Cel" is no value with a unit',
      'write a number, a space and a UCUM unit, as "7 Cel"',
    ],
    ['', '"" is no value with a unit', 'write a number, a space and a UCUM unit, as "7 Cel"'],
    [
      '7 parsec',
      '"parsec" is no unit we take',
      'write a UCUM code, such as Cel, %, bar, mm, m/s, /min or kg/m3',
    ],
  ])('%j is refused with a fix', (text, problem, fix) => {
    expect(parseQuantity(text)).toEqual({ ok: false, problem, fix });
  });

  test('what the schema of settings lets through in a unit we take is read, to the digit', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.constantFrom(...unitCodes),
        (value, code) => {
          const text = `${value} ${code}`;
          expect(quantityText.safeParse(text).success).toBe(true);
          const read = parseQuantity(text);
          expect(read.ok && read.value.value).toBe(value === 0 ? Number(String(value)) : value);
        },
      ),
    );
  });

  test('no text at all makes it throw or answer a number that is not finite', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = parseQuantity(text);
        if (read.ok) expect(Number.isFinite(read.value.value)).toBe(true);
        else expect(read.fix).not.toBe('');
      }),
    );
  });

  test('conversion leaves no dust in a limit', () => {
    expect(280.3 - 273.15).not.toBe(7.15);
    expect(withoutDust(280.3 - 273.15)).toBe(7.15);
    expect(withoutDust(-0.1 - 0.2)).toBe(-0.3);
    expect(withoutDust(0)).toBe(0);
  });
});

describe('durations', () => {
  test.each([
    ['250 ms', 250],
    ['90 s', 90_000],
    ['10 min', 600_000],
    ['1.1 min', 66_000],
    ['8 h', 28_800_000],
    ['30 d', 2_592_000_000],
    ['.5 s', 500],
    ['0 s', 0],
    ['0.4 ms', 0],
    ['36525 d', durationMsMax],
  ])('%s is %d ms', (text, durationMs) => {
    expect(durationText.safeParse(text).success).toBe(true);
    expect(parseDuration(text)).toEqual({ ok: true, value: durationMs });
  });

  test.each(['10', '10min', '-5 s', '10 m', '10 M', '1e3 s', 'NaN s', '5 s s', ''])(
    '%j is refused with a fix',
    (text) => {
      expect(durationText.safeParse(text).success).toBe(false);
      expect(parseDuration(text)).toEqual({
        ok: false,
        problem: `"${text}" is no duration`,
        fix: 'write a number, a space and ms, s, min, h or d, as "90 s" or "10 min"',
      });
    },
  );

  test.each(['36526 d', `${'9'.repeat(400)} h`])('%s is longer than a hundred years', (text) => {
    expect(parseDuration(text)).toMatchObject({ ok: false, fix: 'write a shorter duration' });
  });
});
