import { expect, test } from 'vitest';
import { checkedNames, timesOf } from '#agent/wiring/house.ts';
import { peopleWritten } from '#rules/site/people-schema.ts';

const hourMs = 3_600_000;

test('sessions end as the site file says', () => {
  const usual = { idleMs: 8 * hourMs, absoluteMs: 720 * hourMs };
  expect(timesOf(undefined)).toEqual(usual);
  expect(timesOf('required')).toEqual(usual);
  expect(timesOf({ session_idle: '30 min', session_end: '1 d' })).toEqual({
    idleMs: hourMs / 2,
    absoluteMs: 24 * hourMs,
  });
});

test.each([
  { session_idle: '1 min' },
  { session_end: '1 h' },
  { session_idle: '2 d', session_end: '1 d' },
])('%j cannot be', (written) => {
  expect(() => timesOf(written)).toThrow(/in an order that cannot be/);
});

test.each(['yes', true, { idle: '4 h' }, { session_idle: 4 }])('%j is refused', (written) => {
  expect(peopleWritten.safeParse(written).success).toBe(false);
});

test('names under which a machine is reached', () => {
  expect(checkedNames(['Box.works.example', 'box', '192.0.2.7', '2001:db8::7'])).toEqual([
    ...['box.works.example', 'box', '192.0.2.7', '2001:db8::7'],
  ]);
  for (const name of ['', 'a b', 'https://box', 'box:8620', '-box', 'box/'])
    expect(() => checkedNames([name])).toThrow();
});
