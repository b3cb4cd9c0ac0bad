import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lastDue, mailingSettings } from '#rules/telling/mailings.ts';
import { instantOfWall, wallTime } from '#rules/telling/site-clock.ts';

const hour = 3_600_000;
const dublin = 'Europe/Dublin';
const utc = (text: string): number => Date.parse(`${text}Z`);

/** Every instant at which it falls due within a span, looked at every minute. */
function dueWithin(
  mailing: { readonly weekday: number | null; readonly minute: number },
  from: number,
  to: number,
): number[] {
  const seen = new Set<number>();
  for (let at = from; at <= to; at += 60_000) seen.add(lastDue(mailing, dublin, at));
  return [...seen].filter((at) => at > from);
}

// Directive 2000/84/EC (from memory): forward on the last Sunday of March, 28 March 2027, back on the
// last Sunday of October, 31 October 2027, both at 01:00 UTC.
describe('in the nights in which the clocks change', () => {
  test('an hour that is missing: once, by the clock before the change', () => {
    const sunday = { weekday: 6, minute: 90 };
    expect(dueWithin(sunday, utc('2027-03-27T20:00'), utc('2027-03-28T12:00'))).toEqual([
      utc('2027-03-28T01:30'),
    ]);
  });
  test('an hour that is walked twice: once, the first time', () => {
    const sunday = { weekday: 6, minute: 90 };
    expect(dueWithin(sunday, utc('2027-10-30T20:00'), utc('2027-10-31T12:00'))).toEqual([
      utc('2027-10-31T00:30'),
    ]);
  });
  test('seven by the clock is seven on both sides of it', () => {
    const daily = { weekday: null, minute: 7 * 60 };
    expect(dueWithin(daily, utc('2027-03-26T12:00'), utc('2027-03-29T12:00'))).toEqual([
      utc('2027-03-27T07:00'),
      utc('2027-03-28T06:00'),
      utc('2027-03-29T06:00'),
    ]);
  });
});

test('it is the latest there was, on its weekday, at its time, wherever the site is', () => {
  const zones = ['Europe/Dublin', 'America/St_Johns', 'Australia/Lord_Howe', 'Asia/Kathmandu'];
  fc.assert(
    fc.property(
      fc.integer({ min: utc('2026-01-01T00:00'), max: utc('2029-01-01T00:00') }),
      fc.constantFrom(...zones),
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 0, max: 1_439 }),
      (at, zone, weekday, minute) => {
        const due = lastDue({ weekday, minute }, zone, at);
        expect(due).toBeLessThanOrEqual(at);
        expect(at - due).toBeLessThan(7 * 24 * hour + 2 * hour);
        const { day, weekday: on } = wallTime(due, zone);
        expect(on).toBe(weekday);
        expect(instantOfWall(day * 24 * hour + minute * 60_000, zone)).toBe(due);
        // Asked again at the same instant, it is the same: no two fall together.
        expect(lastDue({ weekday, minute }, zone, due)).toBe(due);
        expect(lastDue({ weekday, minute }, zone, due - 1)).toBeLessThan(due);
      },
    ),
    { numRuns: 300 },
  );
});

test('what the site file leaves out, and what it says', () => {
  expect(mailingSettings(undefined, dublin).of).toEqual({
    week: { weekday: 0, minute: 420, to: ['engineer'], isAsked: false },
    checkpoint: { weekday: null, minute: 360, to: ['ehs', 'administrator'], isAsked: false },
  });
  const written = {
    weekly_report: { day: 'fri' as const, at: '14:30', to: ['on-call', 'Erin'] },
    checkpoint_mail: 'off' as const,
  };
  expect(mailingSettings(written, dublin).of).toEqual({
    week: { weekday: 4, minute: 870, to: ['on-call', 'Erin'], isAsked: true },
    checkpoint: null,
  });
});
