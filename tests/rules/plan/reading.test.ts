/** From what a sensor sends to the canonical unit: units, calibration, range, rate, resolution, times. */
import { describe, expect, test } from 'vitest';
import { canonicalReading } from '#rules/plan/binding.ts';
import { canonicalText } from '#rules/plan/canonical-text.ts';
import { topicProblem } from '#rules/plan/topic.ts';
import { compiled } from './site.ts';

const one = (signal: string) => {
  const site = compiled(`
l: { s: { kind: custom, signals: { x: ${signal} } } }
`);
  return { ...site, binding: site.bindings[0]! };
};

test('the calibration of the site file example: 32.4 read is 32 true, which is 0 Cel', () => {
  const { binding } = one(
    '{ topic: a, payload: { kind: plain }, unit: "[degF]", calibration: [[32.0, 32.4], [77.0, 76.8]] }',
  );
  // Zero within the rounding of three operations on numbers near 30.
  expect(canonicalReading(binding, 32.4)).toBeCloseTo(0, 10);
  expect(canonicalReading(binding, 76.8)).toBeCloseTo(25, 10);
});

test('range and rate are canonical', () => {
  const { binding } = one(
    '{ topic: a, payload: { kind: plain }, unit: "[degF]", range: ["14 [degF]", 100 Cel], max_rate: { change: "9 [degF]", per: 1 min } }',
  );
  expect([binding.low, binding.high]).toEqual([-10, 100]);
  // 9 degF a minute is a difference of 5 K in 60 s.
  expect(binding.maxRatePerS).toBeCloseTo(5 / 60, 12);
});

test('a difference in kelvin has ranges in kelvin', () => {
  const { binding, plan, problems } = one(
    '{ topic: a, payload: { kind: plain }, unit: "K{difference}", range: [-5 K, 20 K] }',
  );
  expect(problems).toEqual([]);
  expect(plan.signals[0]?.unit).toBe('K');
  expect([binding.low, binding.high]).toEqual([-5, 20]);
});

describe('times', () => {
  test.each([
    ['{ kind: plain }', '', 0, false],
    ['{ kind: json, value: /v }', '', 0, false],
    ['{ kind: json, value: /v, time: /t }', '', 2_000, true],
    ['{ kind: json, value: /v, time: /t }', ', hold: 0 s', 0, true],
  ])('%s %s: held %i ms', (payload, more, holdMs, own) => {
    const { binding, plan } = one(`{ topic: a, payload: ${payload}, unit: Cel${more} }`);
    expect(binding).toMatchObject({ holdMs, hasOwnTime: own, latenessMs: 600_000 });
    expect(plan.signals[0]).toMatchObject({ holdMs, latenessMs: 600_000 });
  });
});

describe('resolution', () => {
  test.each([
    ['1', 0],
    ['0.1', 1],
    ['0.001', 3],
    ['0.000001', 6],
    ['none', null],
  ])('%s keeps %s decimals', (resolution, digits) => {
    const signal = `{ topic: a, payload: { kind: plain }, unit: Cel, resolution: ${resolution} }`;
    expect(one(signal).plan.signals[0]?.digits).toBe(digits);
  });
  test.each(['0.5', '0', '-0.1', '10', '0.0000001', '0.10000001'])(
    '%s is refused',
    (resolution) => {
      const signal = `{ topic: a, payload: { kind: plain }, unit: Cel, resolution: ${resolution} }`;
      expect(one(signal).problems.map((p) => p.path.at(-1))).toEqual(['resolution']);
    },
  );
});

/** MQTT 3.1.1, 4.7.1.2 and 4.7.1.3; the rest are the site file's own rules. */
test.each([
  ['a', true],
  ['a/+/b', true],
  ['/a', true],
  ['a/', true],
  ['a//b', true],
  ['#', false],
  ['a/#', false],
  ['a#', false],
  ['a+', false],
  ['+a/b', false],
  ['a/b+/c', false],
  ['+/a', false],
  ['$SYS/x', false],
  ['forebond/x', false],
  ['forebondage/x', true],
  ['a\u0000b', false],
])('topic %j may be bound: %s', (topic, may) => {
  expect(topicProblem(topic) === null).toBe(may);
});

test('canonical text does not know the order of keys', () => {
  expect(canonicalText({ b: [1, { d: null, c: 'x' }], a: true })).toBe(
    '{"a":true,"b":[1,{"c":"x","d":null}]}',
  );
  expect(canonicalText({ a: undefined, b: 1 })).toBe('{"b":1}');
  const texts = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, null].map(canonicalText);
  expect(new Set(texts).size).toBe(3);
});
