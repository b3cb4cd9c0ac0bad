/** A time that cannot be right: how far off in words, and which slip is the likely one. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantOfEpochS } from '#rules/signal/instant-text.ts';
import { aheadFix, aheadWords, isSecondsForMs, spanInWords } from '#rules/signal/wrong-time.ts';

const now = Date.UTC(2026, 0, 5, 8, 10);
const h = 3_600_000;

test.each([
  [0, '0 seconds'],
  [1_000, '1 second'],
  [119_000, '119 seconds'],
  [120_000, '2 minutes'],
  [5.5 * h, '5.5 hours'],
  [48 * h, '2 days'],
  [97_829_978_000, '1132 days'],
])('%d ms is %s', (ms, words) => expect(spanInWords(ms)).toBe(words));

test('how far ahead, and the moment itself', () =>
  expect(aheadWords(now + 97_829_978_000, now)).toBe(
    'it lies 1132 days ahead of this clock (2029-02-10T15:09:38.000Z)',
  ));

describe('which slip', () => {
  test.each([
    // Milliseconds that were read as seconds: 2026 becomes the year 57974, out of range; micro- as milliseconds alike.
    [(now - 60_000) * 1_000, /thousand times too large/],
    [now + h, /local time sent as UTC/],
    [now + 5.5 * h + 30_000, /local time sent as UTC/],
    [now + 13.75 * h - 90_000, /local time sent as UTC/],
    [now + 5 * h + 7.5 * 60_000, /set the clock of the sender, best/],
    [now + 60_000, /set the clock of the sender, best/],
    [now + 15 * h, /set the clock of the sender, best/],
    [now + 97_829_978_000, /set the clock of the sender, best/],
  ])('%d', (at, fix) => expect(aheadFix(at, now)).toMatch(fix));

  test('seconds taken for milliseconds are a moment of January 1970', () => {
    expect(isSecondsForMs(now / 1_000, now)).toBe(true);
    expect(isSecondsForMs(0, now)).toBe(false);
    expect(isSecondsForMs(now - 365 * 24 * h, now)).toBe(false);
    expect(instantOfEpochS(now / 1_000)).toBe(now);
  });
  test('a clock of small numbers knows no such slip', () =>
    expect(isSecondsForMs(10, 10_000)).toBe(false));
});

test('whatever lies ahead, the words have neither a bare count of many seconds nor NaN', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER - now }), (aheadMs) => {
      const words = `${aheadWords(now + aheadMs, now)}; ${aheadFix(now + aheadMs, now)}`;
      expect(words).not.toMatch(/NaN|\d{4,} seconds/);
    }),
  );
});
