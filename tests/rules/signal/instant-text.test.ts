import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  instantOfEpoch,
  instantOfEpochMs,
  instantOfEpochS,
  instantOfRfc3339,
} from '#rules/signal/instant-text.ts';

// Source: RFC 3339, section 5.8, but for the last one, which lies before 1970 and is refused below.
test.each([
  ['1985-04-12T23:20:50.52Z', Date.UTC(1985, 3, 12, 23, 20, 50, 520)],
  ['1996-12-19T16:39:57-08:00', Date.UTC(1996, 11, 20, 0, 39, 57)],
  ['1990-12-31T23:59:60Z', Date.UTC(1991, 0, 1)],
  ['1990-12-31T15:59:60-08:00', Date.UTC(1991, 0, 1)],
])('RFC 3339 section 5.8: %s', (text, ms) => {
  expect(instantOfRfc3339(text)).toBe(ms);
});

test.each([
  ['2026-11-25t09:00:00z', Date.UTC(2026, 10, 25, 9)],
  ['2026-11-25 09:00:00Z', Date.UTC(2026, 10, 25, 9)],
  ['2026-11-25T09:00:00.1239999Z', Date.UTC(2026, 10, 25, 9, 0, 0, 123)],
  ['2024-02-29T00:00:00Z', Date.UTC(2024, 1, 29)],
  ['1970-01-01T00:00:00Z', 0],
  ['9999-12-31T23:59:59.999Z', 253_402_300_799_999],
])('%s is read', (text, ms) => {
  expect(instantOfRfc3339(text)).toBe(ms);
});

const refused = [
  '1937-01-01T12:00:27.87+00:20',
  '1969-12-31T23:59:59Z',
  '2026-11-25T09:00:00',
  '2026-11-25',
  '2026-11-25T09:00Z',
  '2026-11-25T24:00:00Z',
  '2026-11-25T09:60:00Z',
  '2026-11-25T09:00:61Z',
  '2026-02-30T09:00:00Z',
  '2023-02-29T09:00:00Z',
  '2026-13-01T09:00:00Z',
  '2026-00-10T09:00:00Z',
  '2026-11-25T09:00:00.Z',
  '2026-11-25T09:00:00+0100',
  '2026-11-25T09:00:00+24:00',
  '2026-11-25T09:00:00Zx',
  '26-11-25T09:00:00Z',
  '9xx9-11-25T09:00:00Z',
  '99x9-11-25T09:00:00Z',
  '9999-12-31T23:59:59-01:00',
  '',
  'yesterday',
];
test.each(refused)('%j is no instant', (text) => {
  expect(instantOfRfc3339(text)).toBeNaN();
});

test('what a date prints is what it reads, in any offset', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 253_402_300_799_999 }),
      fc.integer({ min: -1439, max: 1439 }),
      (ms, offsetMin) => {
        const local = ms + offsetMin * 60_000;
        fc.pre(local >= 0 && local <= 253_402_300_799_999);
        const minutes = Math.abs(offsetMin);
        const two = (n: number): string => String(n).padStart(2, '0');
        const zone = `${offsetMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
        const text = new Date(local).toISOString().replace('Z', zone);
        expect(instantOfRfc3339(text)).toBe(ms);
      },
    ),
  );
});

test('epoch numbers', () => {
  expect(instantOfEpochS(1_764_063_371.1234)).toBe(1_764_063_371_123);
  expect(instantOfEpochMs(1_764_063_371_123.4)).toBe(1_764_063_371_123);
  expect(instantOfEpoch(1_764_063_371)).toBe(1_764_063_371_000);
  expect(instantOfEpoch(1_764_063_371_123)).toBe(1_764_063_371_123);
  expect(instantOfEpoch(99_999_999_999)).toBe(99_999_999_999_000);
  expect(instantOfEpoch(100_000_000_000)).toBe(100_000_000_000);
  for (const none of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1e300]) {
    expect(instantOfEpoch(none)).toBeNaN();
    expect(instantOfEpochMs(none)).toBeNaN();
    expect(instantOfEpochS(none)).toBeNaN();
  }
});
