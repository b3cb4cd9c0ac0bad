/** What was looked for in a refused message and what stood there, short and printable. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Message } from '#agent/intake/message.ts';
import { refusalDetail } from '#agent/intake/refusal-detail.ts';
import type { RefusalCause } from '#agent/intake/refused.ts';
import { limits } from '#agent/limits.ts';
import type { PayloadWritten } from '#rules/site/signal-schema.ts';
import { binding, scene, startMs } from './scene.ts';

const json: PayloadWritten = { kind: 'json', value: '/a/v', time: '/t', unit: '/u' };
function detail(cause: RefusalCause, text: string, payload: PayloadWritten = json) {
  const message = new Message(limits);
  message.load(new TextEncoder().encode(text));
  return refusalDetail(cause, payload, message, startMs);
}

describe('where it was looked, and what was there', () => {
  test.each<[RefusalCause, string, string | null, string | null]>([
    ['no-value', '{"b":{"v":1},"t":5}', '/a/v', 'nothing; there is /b/v, /t'],
    ['no-value', '{}', '/a/v', 'nothing'],
    ['no-value', '{"a":{"v":null}}', '/a/v', 'null'],
    ['no-value', '{"a/b":1,"c~d":2}', '/a/v', 'nothing; there is /a~1b, /c~0d'],
    ['not-a-number', '{"a":{"v":"21,5 °C"}}', '/a/v', 'the text "21,5 °C"'],
    ['not-a-number', '{"a":{"v":[1]}}', '/a/v', 'a list'],
    ['not-a-number', '{"a":{"v":{"x":1}}}', '/a/v', 'an object, with places of its own'],
    ['out-of-range', '{"a":{"v":850}}', '/a/v', 'the number 850'],
    ['no-time', '{"a":{"v":1}}', '/t', 'nothing; there is /a/v'],
    ['time-unreadable', '{"t":"noon"}', '/t', 'the text "noon"'],
    ['wrong-unit', '{"u":"bar"}', '/u', 'the text "bar"'],
    ['not-json', 'R-12', '/a/v', 'no JSON'],
    ['too-large', 'R-12', null, null],
  ])('%s of %s', (cause, text, lookedFor, found) =>
    expect(detail(cause, text)).toEqual({ lookedFor, found, words: null }),
  );
  test('a plain payload as a whole, cut', () => {
    expect(detail('not-a-number', `on\u0007${'é'.repeat(99)}`, { kind: 'plain' })).toEqual({
      lookedFor: null,
      found: `the text "on·${'é'.repeat(45)}…"`,
      words: null,
    });
  });
  test('of many places a few, and that there are more', () => {
    const text = JSON.stringify(Object.fromEntries([...'abcdefghi'].map((key) => [key, 1])));
    expect(detail('no-value', text).found).toBe('nothing; there is /a, /b, /c, /d, /e, /f, …');
  });
  test('whatever comes, it is short and can be printed', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const { found } = detail('no-value', text);
        expect((found ?? '').length).toBeLessThan(500);
        expect(found ?? '').not.toMatch(/\p{Cc}/u);
      }),
    );
  });
});

test('a reading from the future: how far, and what is likely wrong', () => {
  const { send, intake } = scene([binding({ payload: { kind: 'json', value: '/v', time: '/t' } })]);
  send({ v: 1, t: startMs + 97_829_978_000 });
  send({ v: 1, t: startMs + 7_200_000 });
  expect(intake.refused()[0]!.messages).toMatchObject([
    {
      cause: 'future',
      lookedFor: '/t',
      words: { why: expect.stringMatching(/^it lies 1132 days ahead/), fix: expect.any(String) },
    },
    { words: { fix: expect.stringMatching(/local time sent as UTC/) } },
  ]);
});

test('the first of each topic and cause is told, and who sent it', () => {
  const told: string[] = [];
  const { send } = scene([binding({})], {
    firstRefused: (topic, { cause, from }) => void told.push(`${topic} ${cause} ${from}`),
  });
  for (const text of ['a', 'b', 'NaN', 'c']) send(text);
  expect(told).toEqual([
    'mounts-2/store-1/air not-a-number null',
    'mounts-2/store-1/air not-finite null',
  ]);
});
