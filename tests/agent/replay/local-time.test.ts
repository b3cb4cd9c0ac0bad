/** Local clocks where they jump. Dates of the changes: IANA time zone database, as Node carries it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { localMsOf } from '#agent/replay/csv-cells.ts';
import { LocalTime } from '#agent/replay/local-time.ts';

const never = Number.NEGATIVE_INFINITY;
const instant = (zone: string, text: string, previousMs = never): number =>
  new LocalTime(zone).instantOf(localMsOf(text), previousMs);

test.each([
  ['Europe/Berlin', '2026-01-15 12:00', '2026-01-15T11:00:00Z'],
  ['Europe/Berlin', '2026-03-29 01:59:59', '2026-03-29T00:59:59Z'],
  ['Europe/Berlin', '2026-03-29 03:00', '2026-03-29T01:00:00Z'],
  ['Europe/Berlin', '2026-10-25 01:59', '2026-10-24T23:59:00Z'],
  ['Europe/Berlin', '2026-10-25 03:00', '2026-10-25T02:00:00Z'],
  ['America/New_York', '2026-03-08 03:00', '2026-03-08T07:00:00Z'],
  ['Asia/Kolkata', '2026-06-01 00:15', '2026-05-31T18:45:00Z'],
  ['Australia/Lord_Howe', '2026-01-01 00:00', '2025-12-31T13:00:00Z'],
  ['UTC', '2026-06-01 00:15', '2026-06-01T00:15:00Z'],
])('%s, %s', (zone, text, utc) => {
  expect(instant(zone, text)).toBe(Date.parse(utc));
});

test('the hour that is left out is no time', () => {
  expect(instant('Europe/Berlin', '2026-03-29 02:00')).toBeNaN();
  expect(instant('Europe/Berlin', '2026-03-29 02:59:59')).toBeNaN();
  // Lord Howe Island leaves out half an hour.
  expect(instant('Australia/Lord_Howe', '2026-10-04 02:15')).toBeNaN();
  expect(instant('Australia/Lord_Howe', '2026-10-04 02:30')).toBe(
    Date.parse('2026-10-03T15:30:00Z'),
  );
});

test('in the hour that comes twice the rows before decide', () => {
  const berlin = new LocalTime('Europe/Berlin');
  let previousMs = never;
  const read = (text: string): string => {
    previousMs = berlin.instantOf(localMsOf(text), previousMs);
    return new Date(previousMs).toISOString();
  };
  expect(read('2026-10-25 01:30')).toBe('2026-10-24T23:30:00.000Z');
  expect(read('2026-10-25 02:00')).toBe('2026-10-25T00:00:00.000Z');
  expect(read('2026-10-25 02:30')).toBe('2026-10-25T00:30:00.000Z');
  expect(read('2026-10-25 02:30')).toBe('2026-10-25T00:30:00.000Z');
  expect(read('2026-10-25 02:00')).toBe('2026-10-25T01:00:00.000Z');
  expect(read('2026-10-25 02:30')).toBe('2026-10-25T01:30:00.000Z');
  expect(read('2026-10-25 03:00')).toBe('2026-10-25T02:00:00.000Z');
  // Where the rows before have passed both, their order says nothing.
  expect(read('2026-10-25 02:30')).toBe('2026-10-25T00:30:00.000Z');
});

test('whatever a zone shows is read as the instant that shows it', () => {
  const zones = [
    'Europe/Berlin',
    'America/St_Johns',
    'Asia/Kathmandu',
    'Pacific/Apia',
    'Africa/Casablanca',
  ];
  const year = fc.integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2035, 0, 1) });
  const clocks = new Map(
    zones.map((zone) => [
      zone,
      {
        local: new LocalTime(zone),
        shown: new Intl.DateTimeFormat('sv-SE', {
          timeZone: zone,
          dateStyle: 'short',
          timeStyle: 'medium',
        }),
      },
    ]),
  );
  fc.assert(
    fc.property(fc.constantFrom(...zones), year, (zone, ms) => {
      const { local, shown } = clocks.get(zone)!;
      const second = Math.floor(ms / 1000) * 1000;
      const text = shown.format(second);
      // Told the true instant as the row before, the second pass of a doubled hour is found too.
      expect(local.instantOf(localMsOf(text), second)).toBe(second);
    }),
    { numRuns: 3_000 },
  );
});

test.each([
  '2026-02-30 09:00',
  '2026-01-01 24:00',
  '2026-01-01 9:00',
  '2026-01-01',
  '2026-01-01 09:60',
  '01.02.2026 09:00',
])('%j is no local time', (text) => {
  expect(localMsOf(text)).toBeNaN();
});
