/** What no quantity can be: by unit and name, each bound with its source in possible.ts. */
import { describe, expect, test } from 'vitest';
import { createIntake } from '#agent/intake/intake.ts';
import { limits } from '#agent/limits.ts';
import { possibleRange } from '#rules/quantity/possible.ts';
import { fromCanonical, unitOf } from '#rules/quantity/unit.ts';
import { quality } from '#rules/signal/quality.ts';
import { SampleBatch } from '#rules/signal/sample.ts';
import { compiled } from '../plan/site.ts';

const none = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
const rangeOf = (code: string, name = 't'): readonly number[] => {
  const range = possibleRange(unitOf(code)!, code, name);
  return range === null ? none : [range.low, range.high];
};

test.each<[string, string, number, number]>([
  ['Cel', 't', -273.15, Number.POSITIVE_INFINITY],
  ['[degF]', 't', -273.15, Number.POSITIVE_INFINITY],
  ['K', 't', -273.15, Number.POSITIVE_INFINITY],
  ['%{RH}', 't', -5, 105],
  ['Pa/Pa', 't', -5, 105],
  ['%', 'humidity', -5, 105],
  ['%', 'booth-rh', -5, 105],
  ['[ppth]', 'humidity', -5, 105],
  ['[pH]', 'ph', -1, 15],
  ['kPa{abs}', 'p', -1, Number.POSITIVE_INFINITY],
  ['bar{a}', 'p', -1, Number.POSITIVE_INFINITY],
  ['kg/m3', 'd', 0, Number.POSITIVE_INFINITY],
  ['uS/cm', 'c', -1, Number.POSITIVE_INFINITY],
  ['mPa.s', 'v', -1, Number.POSITIVE_INFINITY],
  ['Ohm', 'r', -1, Number.POSITIVE_INFINITY],
])('%s of %s: %d to %d', (code, name, low, high) =>
  expect(rangeOf(code, name)).toEqual([low, high]),
);

test.each([
  ['a percentage of something', '%', 'valve'],
  ['a change of humidity', '%', 'humidity-change'],
  ['a pressure, gauge or a difference', 'bar', 'humidity'],
  ['a difference of temperatures', 'K{difference}', 't'],
  ['a length', 'mm', 'level'],
  ['a speed', 'm/s', 'v'],
])('%s is left open', (_, code, name) => expect(rangeOf(code, name)).toEqual(none));

describe('through a site and the intake', () => {
  const graded = (unit: string, name: string, values: readonly number[], more = '') => {
    const { bindings } = compiled(`
l:
  s:
    kind: custom
    signals:
      ${name}: { topic: t, payload: { kind: plain }, unit: ${JSON.stringify(unit)}, resolution: none${more} }
`);
    const intake = createIntake({ bindings, discover: () => null, limits, clock: 'wall' });
    const out = new SampleBatch();
    for (const value of values)
      intake.take('t', new TextEncoder().encode(String(value)), false, 20, 10, out);
    const codes = Array.from({ length: out.count }, (_, i) => out.quality[i]);
    return { codes, refused: intake.refused() };
  };
  const [good, bad] = [quality.good, quality.outOfRange];

  test.each<[string, string, number[], number[]]>([
    [
      '%',
      'humidity',
      [-40, -5.01, -5, 0, 55, 100, 105, 105.01, 140],
      [bad, bad, good, good, good, good, good, bad, bad],
    ],
    ['Pa/Pa', 'h', [-0.4, 0.55, 1.04, 1.06], [bad, good, good, bad]],
    ['Cel', 'air', [-300, -273.16, -273.15, -40, 900], [bad, bad, good, good, good]],
    ['[degF]', 'air', [-460, fromCanonical(-273, unitOf('[degF]')!), 70], [bad, good, good]],
    ['[pH]', 'bath', [-1.1, -1, 7, 15, 15.1], [bad, good, good, good, bad]],
    ['bar{abs}', 'vacuum', [-0.5, 0, 1], [bad, good, good]],
    ['bar', 'header', [-0.5, 0, 7], [good, good, good]],
    ['%', 'valve', [-40, 55, 140], [good, good, good]],
  ])('%s of %s: %j', (unit, name, values, codes) =>
    expect(graded(unit, name, values).codes).toEqual(codes),
  );

  test('the range of the site stays where it is narrower, and never reaches further', () => {
    const range = ', range: ["10 %", "200 %"]';
    expect(graded('%', 'humidity', [5, 50, 130], range).codes).toEqual([bad, good, bad]);
  });
  test('the refusal says what cannot be', () => {
    expect(graded('%', 'humidity', [-40]).refused).toMatchObject([
      { messages: [{ words: { why: 'it is no relative humidity: that is 0 to 100 %' } }] },
    ]);
    const sensor = ', range: ["10 %", "90 %"]';
    expect(graded('%', 'humidity', [5], sensor).refused[0]!.messages[0]!.words).toBeNull();
  });
});
