import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessOf, type Seen } from '#agent/listen/guess.ts';
import { unitOf } from '#rules/quantity/unit.ts';

const seen = (topic: string, least: number, most = least, more: Partial<Seen> = {}): Seen => ({
  topic,
  pointer: '',
  least,
  most,
  isBoolean: false,
  isBinary: false,
  saidUnit: null,
  ...more,
});

describe('a guess and its reason', () => {
  test.each([
    ['line/store/air', 12, 19, 'Cel', '[degF]'],
    ['line/store/room', 62, 66, '[degF]', null],
    ['line/store-1/air', 62, 66, '[degF]', null],
    ['line/press/mould/temp', 161, 163, 'Cel', '[degF]'],
    ['line/oven-1/zone-3-air', 70, 95, 'Cel', '[degF]'],
    ['line/press/mould', 318, 325, '[degF]', null],
    ['line/booth/rh', 40, 55, '%', null],
    ['line/booth/humidity', 0.41, 0.52, 'Pa/Pa', null],
    ['line/air/pdp', -4, -3, 'Cel', '[degF]'],
    ['line/air/header', 6.8, 7, 'bar', '[psi]'],
    ['line/air/header', 98, 101, '[psi]', 'kPa'],
    ['line/booth/filter_dp', 90, 110, 'Pa', 'mbar'],
    ['line/mixer/agitator', 24, 26, '/min', null],
    ['line/prep/rinse', 8, 9, 'uS/cm', 'mS/cm'],
    ['line/tank/flow', 40, 44, 'L/min', 'm3/h'],
    ['line/oven-1/temperature_F', 190, 205, '[degF]', null],
    ['line/oven-1/airTempF', 190, 205, '[degF]', null],
    ['line/oven-1/TEMP_C', 88, 96, 'Cel', null],
    ['line/air/dew_point_F', -10, 12, '[degF]', null],
    ['line/oven-1/zone-3-degF', 190, 205, '[degF]', null],
  ])('%s, %d to %d: %s', (topic, least, most, unit, or) => {
    const guess = guessOf(seen(topic, least, most));
    expect([guess?.unit, guess?.or]).toEqual([unit, or]);
  });

  test('a unit that the payload names comes first, in the way people write it', () =>
    expect(guessOf(seen('line/store/air', 70, 70, { saidUnit: '°F' }))).toEqual({
      quantity: 'temperature',
      unit: '[degF]',
      why: 'the payload names the unit "°F"',
      or: null,
      sure: 'said',
    }));
  test('a unit nobody knows is passed over', () =>
    expect(guessOf(seen('line/x', 1, 3, { saidUnit: 'wibble' }))).toBeNull());
  test('a unit at the end of the name', () =>
    expect(guessOf(seen('line/pot', 29, 29.5, { pointer: '/pot_psi' }))?.why).toBe(
      'the name ends in "psi"',
    ));
  test.each([
    ['mounts-2/store-1/door-count', 12],
    ['mounts-2/store-1/battery', 27],
    ['mounts-2/store', 21],
    ['mounts-2/oven-1/fan-hours', 120],
    ['mounts-2/drum-2/parts', 31],
    ['plant/f', 70],
    ['line/air/part-count', 31],
    ['line/oven-1/part_c', 12],
  ])('%s is no temperature for where it stands', (topic, value) =>
    expect(guessOf(seen(topic, value))).toBeNull(),
  );
  test('where it stands tells the scale once the name says temperature', () =>
    expect(guessOf(seen('line/store/temp', 62, 66))).toMatchObject({ unit: '[degF]' }));
  test('a contact', () => {
    expect(guessOf(seen('line/fan', 1, 1, { isBoolean: true, isBinary: true }))?.sure).toBe(
      'likely',
    );
    expect(guessOf(seen('line/fan', 0, 1, { isBinary: true }))?.sure).toBe('open');
  });
  test('never from the number alone', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: 2, max: 1e6 }), (value) => {
        expect(guessOf(seen('qqq/zzz', value))).toBeNull();
      }),
    );
  });
  test('outside of what would fit there is no guess', () =>
    expect(guessOf(seen('line/booth/humidity', 40, 900))).toBeNull());
  test('every unit it names is one we take', () => {
    const words = ['store', 'oven', 'rh', 'dp', 'pot', 'pdp', 'flow', 'level', 'mould', 'velocity'];
    fc.assert(
      fc.property(
        fc.constantFrom(...words),
        fc.double({ noNaN: true, min: -50, max: 2_000 }),
        (word, value) => {
          const guess = guessOf(seen(`a/${word}`, value));
          for (const unit of [guess?.unit, guess?.or])
            if (unit != null) expect(unitOf(unit)).not.toBeNull();
        },
      ),
    );
  });
});
