import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lookAt } from '#agent/listen/payload.ts';

const now = Date.UTC(2026, 10, 25, 8);
const look = (text: string) => lookAt('a/b', Buffer.from(text), now);

describe('what a payload is', () => {
  test.each([
    ['21.4', 'plain'],
    [' -3 ', 'plain'],
    ['', 'empty'],
    ['on', 'text'],
    ['{"v":1', 'text'],
    ['"21.4"', 'text'],
    ['{"v":1}', 'json'],
    ['[1,2]', 'json'],
    // RFC 8428, sections 5.1.1 and 5.1.2.
    ['[{"n":"urn:dev:ow:10e2073a01080063","u":"Cel","v":23.1}]', 'senml'],
    [
      '[{"bn":"urn:dev:ow:10e2073a01080063:","n":"voltage","u":"V","v":120.1},{"n":"current","u":"A","v":1.2}]',
      'senml',
    ],
    ['[{"v":1}]', 'json'],
    ['[]', 'json'],
  ])('%j is %s', (text, kind) => expect(look(text).kind).toBe(kind));

  test('Sparkplug B by its topic', () =>
    expect(lookAt('spBv1.0/works/DDATA/node/oven', Uint8Array.of(8, 1), now).kind).toBe(
      'sparkplug',
    ));
  test('bytes that are no text', () =>
    expect(lookAt('a/b', Uint8Array.of(0xff, 0xfe, 0x00), now).kind).toBe('binary'));
  test('more than a payload may have', () =>
    expect(lookAt('a/b', new Uint8Array(65_537).fill(0x31), now).kind).toBe('too-large'));
  test('whatever comes, it answers', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        lookAt('a/b', bytes, now);
      }),
    );
    fc.assert(
      fc.property(fc.json(), (text) => {
        for (const { value } of look(text).values) expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });
});

describe('where things stand in JSON', () => {
  test('values by JSON Pointer, numbers in text too', () =>
    expect(look('{"a":{"b/c":1.5},"d":"2","on":true,"name":"x"}').values).toEqual([
      { pointer: '/a/b~1c', value: 1.5, isBoolean: false },
      { pointer: '/d', value: 2, isBoolean: false },
      { pointer: '/on', value: 1, isBoolean: true },
    ]));
  test.each([
    [`{"v":1,"t":${now}}`, '/t'],
    [`{"v":1,"ts":${now / 1_000}}`, '/ts'],
    ['{"v":1,"time":"2026-11-25T07:59:00Z"}', '/time'],
    // A temperature that is called t is no time.
    ['{"t":21.5}', null],
    ['{"v":1,"time":12}', null],
  ])('time in %s', (text, pointer) => expect(look(text).timePointer).toBe(pointer));
  test('the time is no value', () =>
    expect(look(`{"v":1,"t":${now}}`).values.map(({ pointer }) => pointer)).toEqual(['/v']));
  test('unit and quality', () => {
    const { unit, qualityPointer, values } = look('{"value":70,"unit":"degF","ok":true}');
    expect([unit, qualityPointer, values.length]).toEqual([
      { pointer: '/unit', text: 'degF' },
      '/ok',
      1,
    ]);
  });
  test('a status that is a number is a value', () =>
    expect(look('{"status":3}').values).toHaveLength(1));
});
