import { describe, expect, test } from 'vitest';
import {
  canonicalOf,
  canonicalUnit,
  differenceFromCanonical,
  differenceToCanonical,
  dimensionWords,
  fromCanonical,
  sameDimension,
  toCanonical,
  unitCodes,
  unitOf,
} from '#rules/quantity/unit.ts';
import { dimensions, unitTable } from '#rules/quantity/unit-table.ts';
import { conversionRows, invalidCodes, validCodes } from '../../vectors/units.ts';
import { convertByReference, isUcum } from './ucum-reference.ts';

/** Read more narrowly than UCUM, on purpose; each is tested by itself below. */
const ourOwnReading = new Set(['{rpm}', 'K{difference}', 'Cel{difference}', '[degF]{difference}']);

const relativeError = (found: number, expected: number): number =>
  Math.abs(found - expected) / Math.max(Math.abs(expected), 1e-300);

describe('every code of the table', () => {
  test.each(unitCodes)('%s is UCUM', (code) => {
    expect(isUcum(code)).toBe(true);
  });

  test.each(unitCodes.filter((code) => !ourOwnReading.has(code)))(
    '%s converts as UCUM does, both ways',
    (code) => {
      const unit = unitOf(code)!;
      // The reference's own factors carry up to 13 digits; it takes temperatures through
      // kelvins, at the cost of 1e-13 of 300.
      for (const value of [1, 25.5, 1e-3, 4711, -3.7]) {
        const canonical = convertByReference(value, code, unit.canonical);
        const back = convertByReference(value, unit.canonical, code);
        const offset = unit.dimension === 'temperature' ? 1e-10 : 0;
        expect(Math.abs(toCanonical(value, unit) - canonical)).toBeLessThanOrEqual(
          Math.abs(canonical) * 1e-12 + offset,
        );
        expect(Math.abs(fromCanonical(value, unit) - back)).toBeLessThanOrEqual(
          Math.abs(back) * 1e-12 + offset,
        );
      }
    },
  );

  test.each(unitCodes)('%s comes back from its canonical unit', (code) => {
    const unit = unitOf(code)!;
    for (const value of [0, 1, -40, 98.6, 1e6, 1e-6]) {
      // One rounding a step at the size of the largest number on the way, the offset included.
      const size = Math.max(Math.abs(value), Math.abs(unit.zero));
      expect(Math.abs(fromCanonical(toCanonical(value, unit), unit) - value)).toBeLessThanOrEqual(
        size * 1e-15,
      );
      expect(
        Math.abs(differenceFromCanonical(differenceToCanonical(value, unit), unit) - value),
      ).toBeLessThanOrEqual(Math.abs(value) * 1e-15);
    }
  });

  test('no code stands twice', () => {
    const codes = Object.values(unitTable).flatMap((rows) => rows.map(([code]) => code));
    expect(new Set(codes).size).toBe(codes.length);
  });

  test('each dimension has one canonical code, and it changes nothing', () => {
    for (const { canonical } of Object.values(dimensions)) {
      const unit = canonicalUnit(canonical);
      expect([unit.times, unit.over, unit.zero, unit.canonical]).toEqual([1, 1, 0, canonical]);
      expect(isUcum(canonical)).toBe(true);
    }
  });
});

describe('published codes and conversions', () => {
  test.each(validCodes.codes)(`%s is taken (${validCodes.source})`, (code) => {
    expect(unitOf(code)).not.toBeNull();
  });
  test.each(invalidCodes.codes)(`%s is refused (${invalidCodes.source})`, (code) => {
    expect(unitOf(code)).toBeNull();
    expect(isUcum(code)).toBe(false);
  });
  test.each(conversionRows)('$value $from is $is $in ($source)', (row) => {
    const canonical = toCanonical(row.value, unitOf(row.from)!);
    const found = fromCanonical(canonical, unitOf(row.in)!);
    expect(relativeError(found, row.is)).toBeLessThanOrEqual(row.toleranceShare);
  });
});

describe('traps', () => {
  test('a US survey mil is not the mil of a coating, by 2e-6', () => {
    const survey = toCanonical(1, unitOf('[mil_us]')!);
    const international = toCanonical(1, unitOf('[mil_i]')!);
    expect(international).toBe(0.0254);
    expect(relativeError(survey, international)).toBeCloseTo(2e-6, 8);
  });

  test('{rpm} counts per minute, though UCUM sees an annotated 1', () => {
    expect(canonicalOf('{rpm}')).toBe('/min');
    expect(toCanonical(25, unitOf('{rpm}')!)).toBe(25);
    expect(convertByReference(25, '{rpm}', '1')).toBe(25);
  });

  test('annotations add nothing', () => {
    expect(canonicalOf('%{RH}')).toBe('%');
    expect(canonicalOf('{rev}/min')).toBe('/min');
    expect(canonicalOf('{strokes}')).toBe('1');
    expect(canonicalOf('kg{wet}/m3')).toBe('kg/m3');
    expect(unitOf('%{RH}')!.code).toBe('%{RH}');
  });

  test('case matters, as in UCUM', () => {
    expect(unitOf('cel')).toBeNull();
    expect(unitOf('KPA')).toBeNull();
    expect(canonicalOf('MPa')).toBe('kPa');
    expect(toCanonical(1, unitOf('mOhm')!)).toBe(0.001);
    expect(toCanonical(1, unitOf('MOhm')!)).toBe(1e6);
  });

  test('a reading in K has an offset, a difference has none', () => {
    expect(toCanonical(273.15, unitOf('K')!)).toBe(0);
    expect(differenceToCanonical(3, unitOf('K')!)).toBe(3);
    expect(differenceToCanonical(3, unitOf('[degF]')!)).toBeCloseTo(5 / 3, 15);
    expect(canonicalUnit('K').dimension).toBe('temperatureDifference');
    expect(toCanonical(3, canonicalUnit('K'))).toBe(3);
    expect(canonicalOf('K')).toBe('Cel');
    expect(canonicalOf('K{difference}')).toBe('K');
    expect(toCanonical(9, unitOf('[degF]{difference}')!)).toBe(5);
    expect(toCanonical(9, unitOf('Cel{difference}')!)).toBe(9);
  });

  test('what is exact on paper is exact here', () => {
    expect(toCanonical(3, unitOf('mbar')!)).toBe(0.3);
    expect(toCanonical(302, unitOf('[degF]')!)).toBe(150);
    expect(toCanonical(7, unitOf('um')!)).toBe(0.007);
  });

  test('50 % is no count, and a count is no ratio', () => {
    expect(sameDimension(unitOf('%')!, unitOf('1')!)).toBe(false);
    expect(sameDimension(unitOf('[ppm]')!, unitOf('%')!)).toBe(true);
    expect(sameDimension(unitOf('Hz')!, unitOf('{rpm}')!)).toBe(true);
    expect(dimensionWords(unitOf('bar')!)).toBe('a pressure');
  });

  test.each(['', ' ', 'Cel ', '{', '{}', '}', 'toString', '__proto__', 'Cel{', '{a}{', 'K{é}'])(
    'no unit: %j',
    (code) => {
      expect(unitOf(code)).toBeNull();
      expect(canonicalOf(code)).toBeNull();
    },
  );

  test('a code that is not canonical is no unit of a signal', () => {
    expect(() => canonicalUnit('[degF]')).toThrow('"[degF]" is no canonical unit');
  });
});
