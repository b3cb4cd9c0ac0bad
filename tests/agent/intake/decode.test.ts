/** What a payload says, and every way it can fail to: the stored quality and the counted cause. */
import { expect, test } from 'vitest';
import type { IntakeCause } from '#agent/intake/cause.ts';
import { limits } from '#agent/limits.ts';
import { quality } from '#rules/signal/quality.ts';
import type { PayloadWritten } from '#rules/site/signal-schema.ts';
import { binding, plain, scene, startMs, valueAndTime, valueOnly } from './scene.ts';

const full: PayloadWritten = { kind: 'json', value: '/v', time: '/t', unit: '/u', quality: '/q' };
const json = (facts: Partial<Extract<PayloadWritten, { kind: 'json' }>>): PayloadWritten => ({
  kind: 'json',
  value: '/v',
  ...facts,
});

const good: readonly (readonly [PayloadWritten, string, number])[] = [
  [plain, '21.4', 21.4],
  [plain, ' 21.4\n', 21.4],
  [plain, '-0', 0],
  [plain, '2.14e1', 21.4],
  [plain, '+00021.40000000000000000000', 21.4],
  [valueOnly, '{"v":21.4}', 21.4],
  [valueOnly, ' { "x": "}]{[", "v" : 2.14E1 } ', 21.4],
  [valueOnly, '{"v":"21.4"}', 21.4],
  [valueOnly, '{"v":true}', 1],
  [valueOnly, '{"v":false}', 0],
  [valueOnly, '{"v":1,"v":21.4}', 21.4],
  [valueOnly, '{"n":"Öl","v":21.4}', 21.4],
  [valueOnly, '{"n":"\\"","v":21.4}', 21.4],
  [valueOnly, `{"n":"\\"${'['.repeat(99)}","v":21.4}`, 21.4],
  [json({ value: '' }), '21.4', 21.4],
  [json({ value: '/0/a~1b' }), '[{"a/b":21.4}]', 21.4],
  [json({ value: '/__proto__/v' }), '{"__proto__":{"v":21.4}}', 21.4],
  [json({ unit: '/u' }), '{"v":70.52,"u":"[degF]"}', 21.4],
  [json({ unit: '/u' }), '{"v":294.55,"u":"K"}', 21.4],
  [json({ quality: '/q' }), '{"v":21.4,"q":"GOOD"}', 21.4],
  [json({ quality: '/q' }), '{"v":21.4,"q":true}', 21.4],
];
test.each(good)('%j reads %s as %d', (payload, text, value) => {
  const { intake, send } = scene([binding({ payload })]);
  expect(send(text)).toMatchObject([{ value, quality: quality.good, flags: 0 }]);
  expect(intake.counters).toMatchObject({ messages: 1, readings: 1, good: 1, dropped: 0 });
  expect(Object.values(intake.counters.causes).every((count) => count === 0)).toBe(true);
});

const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
const { undecodable, notFinite, wrongUnit, sensorBad } = quality;
const bad: readonly (readonly [PayloadWritten, string, number, IntakeCause])[] = [
  [plain, '', undecodable, 'not-a-number'],
  [plain, 'hot', undecodable, 'not-a-number'],
  [plain, '0x15', undecodable, 'not-a-number'],
  [plain, '21,4', undecodable, 'not-a-number'],
  [plain, '21.4 Cel', undecodable, 'not-a-number'],
  [plain, '{"v":21.4}', undecodable, 'not-a-number'],
  [plain, 'NaN', notFinite, 'not-finite'],
  [plain, '-Infinity', notFinite, 'not-finite'],
  [plain, '1e400', notFinite, 'not-finite'],
  [plain, '1e300', notFinite, 'not-finite'],
  [plain, '9'.repeat(1_000_000), undecodable, 'too-large'],
  [valueOnly, '', undecodable, 'not-json'],
  [valueOnly, 'hot', undecodable, 'not-json'],
  [valueOnly, '{"v":21.4', undecodable, 'not-json'],
  [valueOnly, "{'v':21.4}", undecodable, 'not-json'],
  [valueOnly, '{"v":NaN}', undecodable, 'not-json'],
  [valueOnly, '{"v":Infinity}', undecodable, 'not-json'],
  [valueOnly, '\ufeff{"v":21.4}', undecodable, 'not-json'],
  [valueOnly, '{"v":21.4}]]]]', undecodable, 'not-json'],
  [valueOnly, '{"v":1e400}', notFinite, 'not-finite'],
  [valueOnly, '{"v":-1e400}', notFinite, 'not-finite'],
  [valueOnly, '{"v":"NaN"}', notFinite, 'not-finite'],
  [valueOnly, '{"w":21.4}', undecodable, 'no-value'],
  [valueOnly, '{"v":null}', undecodable, 'no-value'],
  [valueOnly, '[21.4]', undecodable, 'no-value'],
  [valueOnly, '21.4', undecodable, 'no-value'],
  [valueOnly, 'null', undecodable, 'no-value'],
  [valueOnly, '{"v":"hot"}', undecodable, 'not-a-number'],
  [valueOnly, '{"v":""}', undecodable, 'not-a-number'],
  [valueOnly, '{"v":[21.4]}', undecodable, 'not-a-number'],
  [valueOnly, '{"v":{"v":21.4}}', undecodable, 'not-a-number'],
  [valueOnly, deep(100_000 / 2), undecodable, 'too-large'],
  [valueOnly, deep(30_000), undecodable, 'too-deep'],
  [valueOnly, `{"v":21.4,"x":${deep(limits.jsonDepthMax)}}`, undecodable, 'too-deep'],
  [valueOnly, `{"v":21.4,"x":"${'x'.repeat(1_000_000)}"}`, undecodable, 'too-large'],
  [json({ value: '/constructor/name' }), '{"v":21.4}', undecodable, 'no-value'],
  [json({ value: '/length' }), '[21.4]', undecodable, 'no-value'],
  [json({ value: '/__proto__/v' }), '{"v":21.4}', undecodable, 'no-value'],
  [json({ unit: '/u' }), '{"v":21.4}', undecodable, 'no-unit'],
  [json({ unit: '/u' }), '{"v":21.4,"u":null}', undecodable, 'no-unit'],
  [json({ unit: '/u' }), '{"v":21.4,"u":7}', undecodable, 'no-unit'],
  [json({ unit: '/u' }), '{"v":21.4,"u":"bar"}', wrongUnit, 'wrong-unit'],
  [json({ unit: '/u' }), '{"v":21.4,"u":"furlong"}', wrongUnit, 'wrong-unit'],
  [json({ unit: '/u' }), '{"v":21.4,"u":"cel"}', wrongUnit, 'wrong-unit'],
  [json({ quality: '/q' }), '{"v":21.4,"q":"bad"}', sensorBad, 'sensor-bad'],
  [json({ quality: '/q' }), '{"v":21.4,"q":false}', sensorBad, 'sensor-bad'],
  [json({ quality: '/q' }), '{"q":"bad"}', sensorBad, 'sensor-bad'],
  [valueAndTime, '{"v":21.4}', undecodable, 'no-time'],
  [valueAndTime, '{"v":21.4,"t":null}', undecodable, 'no-time'],
  [valueAndTime, '{"v":21.4,"t":"noon"}', undecodable, 'time-unreadable'],
  [valueAndTime, '{"v":21.4,"t":true}', undecodable, 'time-unreadable'],
  [valueAndTime, '{"v":21.4,"t":-1}', undecodable, 'time-unreadable'],
  [valueAndTime, '{"v":21.4,"t":1e300}', undecodable, 'time-unreadable'],
  [valueAndTime, '{"v":21.4,"t":"1969-12-31T23:59:59Z"}', undecodable, 'time-unreadable'],
];
test.each(bad.map((row) => [row[1].slice(0, 40), ...row] as const))(
  '%s is refused',
  (_, payload, text, code, cause) => {
    const { intake, send } = scene([binding({ payload })]);
    expect(send(text)).toMatchObject([{ at: startMs, value: 0, quality: code, flags: 0 }]);
    expect(intake.counters).toMatchObject({ messages: 1, readings: 1, bad: 1, good: 0 });
    expect(intake.counters.causes[cause]).toBe(1);
    expect(intake.examples.get(cause)).toEqual({ topic: 'mounts-2/store-1/air', atMs: startMs });
    // The next message is read as if nothing had been.
    expect(
      send(payload === plain ? '21.4' : '{"v":21.4,"u":"Cel","q":"good","t":1795597200}'),
    ).toHaveLength(1);
  },
);

test('bytes that are no UTF-8 are refused, in a number and inside JSON', () => {
  const number = scene([binding()]);
  expect(number.send(Uint8Array.of(0x32, 0x31, 0xb0))).toMatchObject([{ quality: undecodable }]);
  expect(number.intake.counters.causes['not-utf8']).toBe(1);
  const object = scene([binding({ payload: valueOnly })]);
  const latin = Buffer.from('{"n":"Öl","v":21.4}', 'latin1');
  expect(object.send(latin)).toMatchObject([{ quality: undecodable }]);
  expect(object.intake.counters.causes['not-utf8']).toBe(1);
});

test.each([
  ['uncertain', 'sensor-uncertain'],
  [0, 'quality-unreadable'],
  [192, 'quality-unreadable'],
  ['fine', 'quality-unreadable'],
  [undefined, 'quality-unreadable'],
] as const)('a sensor that says %j is judged and marked', (q, cause) => {
  const { intake, send } = scene([binding({ payload: json({ quality: '/q' }) })]);
  expect(send({ v: 21.4, q })).toMatchObject([{ value: 21.4, quality: quality.sensorUncertain }]);
  expect(intake.counters).toMatchObject({ uncertain: 1 });
  expect(intake.counters.causes[cause]).toBe(1);
});

test('the deepest allowed payload and the largest one are read', () => {
  const { send } = scene([binding({ payload: valueOnly })]);
  const nested = `{"v":21.4,"x":${deep(limits.jsonDepthMax - 1)}}`;
  expect(send(nested)).toMatchObject([{ value: 21.4, quality: quality.good }]);
  const frame = '{"v":21.4,"x":""}';
  const largest = `{"v":21.4,"x":"${'x'.repeat(limits.payloadBytesMax - frame.length)}"}`;
  expect(largest).toHaveLength(limits.payloadBytesMax);
  expect(send(largest)).toMatchObject([{ value: 21.4, quality: quality.good }]);
  expect(send(`${largest} `)).toMatchObject([{ quality: undecodable }]);
});

const at = Date.UTC(2026, 10, 25, 8, 59, 59, 250);
test.each([
  ['rfc3339', '2026-11-25T08:59:59.25Z', at],
  ['rfc3339', at, null],
  ['epoch_s', at / 1000, at],
  ['epoch_s', String(at / 1000), at],
  ['epoch_s', '2026-11-25T08:59:59.25Z', null],
  ['epoch_ms', at, at],
  ['epoch_ms', '2026-11-25T08:59:59.25Z', null],
  [undefined, '2026-11-25T09:59:59.250+01:00', at],
  [undefined, at, at],
  [undefined, at / 1000, at],
  [undefined, String(at), at],
] as const)('a time in %s written %j', (format, t, read) => {
  const payload = json({ time: '/t', ...(format === undefined ? {} : { time_format: format }) });
  const { send } = scene([binding({ payload })]);
  const sample = { v: 21.4, t };
  if (read === null) expect(send(sample)).toMatchObject([{ at: startMs, quality: undecodable }]);
  else expect(send(sample)).toMatchObject([{ at: read, quality: quality.good }]);
});

test('the pointers of a payload are all read', () => {
  const { send } = scene([binding({ payload: full })]);
  expect(send({ v: 70.52, t: at, u: '[degF]', q: 'uncertain' })).toMatchObject([
    { at, value: 21.4, quality: quality.sensorUncertain },
  ]);
});

test('a pointer that is none is refused when the site is laid out', () => {
  expect(() => scene([binding({ payload: json({ value: 'v' }) })])).toThrow(RangeError);
});
