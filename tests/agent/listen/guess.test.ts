import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessOf, type Seen } from '#agent/listen/guess.ts';
import { quantities, temperaturesAt } from '#agent/listen/quantities.ts';
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

describe('a unit only where the evidence leaves one; else the question with all that fit', () => {
  test.each<[topic: string, least: number, most: number, left: string[]]>([
    // One is left: no room is at 62 Cel, nor any booth below freezing, nor a mould at 318 Cel.
    ['line/store/temp', 62, 66, ['[degF]']],
    ['line/booth/temp', 12, 19, ['Cel']],
    ['line/hall/temp', 293, 296, ['K']],
    ['line/press/mould/temp', 318, 325, ['[degF]', 'K']],
    ['line/press/mould/temp', 265, 270, ['[degF]']],
    ['line/booth/rh', 40, 55, ['%']],
    ['line/booth/humidity', 0.41, 0.52, ['Pa/Pa']],
    ['line/booth/humidity', 0, 1, ['Pa/Pa']],
    ['line/tank/solids', 22, 25, ['%']],
    ['line/tank/density', 1.02, 1.04, ['g/mL']],
    ['line/tank/density', 1_020, 1_040, ['kg/m3']],
    ['line/booth/filter-dp', 2_500, 3_100, ['Pa']],
    // Two or more are left.
    ['line/store/temp', 12, 19, ['Cel', '[degF]']],
    ['line/press/mould/temp', 161, 163, ['Cel', '[degF]']],
    ['line/oven-1/temp', 70, 95, ['Cel', '[degF]']],
    ['line/oven-1/temperature', 190, 205, ['Cel', '[degF]']],
    ['line/bath/temp', 20, 22, ['Cel', '[degF]']],
    ['line/air/pdp', -4, -3, ['Cel', '[degF]']],
    ['line/booth/filter-dp', 3, 4, ['Pa', 'mbar', 'kPa', '[psi]', "[in_i'H2O]", 'mm[H2O]']],
    ['line/booth/filter_dp', 90, 110, ['Pa', 'mbar', 'mm[H2O]']],
    ['line/air/pressure', 6.8, 7, ['bar', '[psi]', 'kPa', 'mbar']],
    ['line/air/pressure', 98, 101, ['[psi]', 'kPa', 'mbar']],
    ['line/tank/flow', 40, 44, ['L/min', 'm3/h', '[gal_us]/min', '[cft_i]/min']],
    ['line/prep/conductivity', 8, 9, ['uS/cm', 'mS/cm', 'mS/m']],
    ['line/mixer/speed', 24, 26, ['/min', 'Hz', 'm/min', 'm/s', '%']],
    ['line/booth/velocity', 0.4, 0.5, ['m/s', 'm/min', '[ft_i]/min']],
    ['line/tank/level', 40, 60, ['mm', '%', 'cm', '[in_i]']],
    ['line/dip/thickness', 18, 22, ['um', '[mil_i]']],
    ['humidity/booth', 40, 55, ['%']],
  ])('%s, %d to %d', (topic, least, most, left) => {
    const guess = guessOf(seen(topic, least, most));
    expect(guess?.candidates).toEqual(left);
    expect(guess?.unit).toBe(left.length === 1 ? left[0] : null);
    expect(guess?.sure).toBe(left.length === 1 ? 'likely' : 'open');
  });
});

describe('places and units in names', () => {
  test.each([
    ['line/store/air', 62, 'temperature'],
    ['line/oven-1/zone-3-air', 80, 'temperature'],
    ['line/press/mould', 320, 'temperature'],
    ['line/air/header', 6.9, 'pressure'],
    ['line/mixer/agitator', 25, 'speed'],
    ['line/prep/rinse', 9, 'conductivity'],
    ['line/mixer/film', 20, 'thickness'],
    ['line/prep/separator', 300, 'pressure drop'],
  ])('%s says where it stands and not what it is: a question', (topic, value, quantity) => {
    const guess = guessOf(seen(topic, value));
    expect(guess).toMatchObject({ quantity: `perhaps ${quantity}`, unit: null, sure: 'open' });
    expect(guess?.why).toMatch(/says where it stands, not what it is/);
  });

  test.each([
    ['line/oven-1/temperature_F', 190, '[degF]'],
    ['line/oven-1/airTempF', 190, '[degF]'],
    ['line/oven-1/TEMP_C', 88, 'Cel'],
    ['line/air/dew_point_F', -10, '[degF]'],
    ['line/air/dewpoint_F', -10, '[degF]'],
    ['line/oven-1/zone-3-degF', 190, '[degF]'],
    ['line/pot/pot_psi', 29, '[psi]'],
    ['line/tank/ph', 8.6, '[pH]'],
    // A pH of 40, and degrees below absolute zero: the name cannot mean that.
    ['line/tank/ph', 40, undefined],
    ['line/store/degC', -400, undefined],
  ])('a unit at the end of the name %s, %d: %s', (topic, value, unit) =>
    expect(guessOf(seen(topic, value))?.unit).toBe(unit),
  );
});

describe('what is said, what is silent, and what is never guessed', () => {
  test('a unit that the payload names comes first, in the way people write it', () =>
    expect(guessOf(seen('line/store/air', 70, 70, { saidUnit: '°F' }))).toEqual({
      quantity: 'temperature',
      unit: '[degF]',
      candidates: ['[degF]'],
      why: 'the payload names the unit "°F"',
      sure: 'said',
    }));
  test('a unit of the payload that may be two is a question; two names of one are none', () => {
    expect(guessOf(seen('line/x', 70, 70, { saidUnit: 'gal' }))).toMatchObject({
      unit: null,
      candidates: ['[gal_us]', '[gal_br]'],
    });
    expect(guessOf(seen('line/x', 70, 70, { saidUnit: 'rpm' }))).toMatchObject({ unit: '/min' });
  });
  test('a unit nobody knows is passed over', () =>
    expect(guessOf(seen('line/x', 1, 3, { saidUnit: 'wibble' }))).toBeNull());
  test.each([
    ['mounts-2/store-1/door-count', 12],
    ['mounts-2/store-1/battery', 27],
    ['mounts-2/store', 21],
    ['mounts-2/store-1', 21],
    ['warehouse/store-2/value', 21],
    ['mounts-2/racks', 21],
    ['mounts-2/oven-1/fan-hours', 120],
    ['mounts-2/drum-2/parts', 31],
    ['plant/f', 70],
    ['line/air/part-count', 31],
    ['line/oven-1/part_c', 12],
    // Two quantities in the levels above, none at the end.
    ['temperature/humidity/7', 21],
  ])('%s says nothing of what it is', (topic, value) =>
    expect(guessOf(seen(topic, value))).toBeNull(),
  );
  test('a contact: true and false, or 0 and 1 and both of them seen', () => {
    expect(guessOf(seen('line/fan', 1, 1, { isBoolean: true, isBinary: true }))?.sure).toBe(
      'likely',
    );
    expect(guessOf(seen('line/fan', 0, 1, { isBinary: true }))).toMatchObject({
      unit: '1',
      sure: 'open',
    });
    expect(guessOf(seen('line/fan', 0, 0, { isBinary: true }))).toBeNull();
    expect(guessOf(seen('line/humidity', 0, 1, { isBinary: true }))?.quantity).toBe(
      'relative humidity',
    );
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
  test('every unit it names is one we take, and one is named only where it is the one left', () => {
    const words = quantities.flatMap((quantity) => [...quantity.words, ...quantity.places]);
    const places = temperaturesAt.flatMap((each) => each.places);
    fc.assert(
      fc.property(
        fc.constantFrom(...words, ...places),
        fc.constantFrom(...words),
        fc.double({ noNaN: true, min: -100, max: 2_000 }),
        (above, word, value) => {
          const guess = guessOf(seen(`a/${above}/${word}`, value));
          if (guess === null) return;
          for (const unit of guess.candidates) expect(unitOf(unit)).not.toBeNull();
          expect(new Set(guess.candidates).size).toBe(guess.candidates.length);
          if (guess.unit !== null) expect(guess.candidates).toEqual([guess.unit]);
        },
      ),
    );
  });
});
