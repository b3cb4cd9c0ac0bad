import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Rota, type WeekEntry, whoIsOn } from '#rules/telling/rota.ts';
import { instantOfWall, nextAtMinute, wallTime } from '#rules/telling/site-clock.ts';

const everyDay = [0, 1, 2, 3, 4, 5, 6];
const week = (part: Partial<WeekEntry> & Pick<WeekEntry, 'who'>): WeekEntry => ({
  kind: 'week',
  weekdays: everyDay,
  fromMin: 0,
  toMin: 0,
  stations: null,
  hazards: null,
  ...part,
});
const rotaOf = (...entries: Rota['entries']): Rota => ({ timezone: 'Europe/Dublin', entries });
const on = (rota: Rota, at: number, station = 'l/s', hazard: string | null = 'freezing') =>
  whoIsOn(rota, at, station, hazard).who;

const early = week({ who: ['anna'], fromMin: 6 * 60, toMin: 14 * 60 });
const late = week({ who: ['ben'], fromMin: 14 * 60, toMin: 22 * 60 });
const night = week({ who: ['carl'], fromMin: 22 * 60, toMin: 6 * 60 });
const shifts = rotaOf(early, late, night);

describe('a table of the week', () => {
  test('a shift holds its first minute and not the one it ends at', () => {
    const at = (hour: number, minute: number): readonly string[] =>
      on(shifts, Date.UTC(2026, 10, 25, hour, minute)); // Dublin is on UTC in winter
    expect(at(5, 59)).toEqual(['carl']);
    expect(at(6, 0)).toEqual(['anna']);
    expect(at(13, 59)).toEqual(['anna']);
    expect(at(14, 0)).toEqual(['ben']);
    expect(at(22, 0)).toEqual(['carl']);
  });

  test('a night of Friday lasts into Saturday, and no other', () => {
    const rota = rotaOf(week({ who: ['carl'], weekdays: [4], fromMin: 22 * 60, toMin: 6 * 60 }));
    const friday = Date.UTC(2026, 10, 27);
    expect(on(rota, friday + 5 * 3_600_000)).toEqual([]);
    expect(on(rota, friday + 23 * 3_600_000)).toEqual(['carl']);
    expect(on(rota, friday + 29 * 3_600_000)).toEqual(['carl']);
    expect(on(rota, friday + 30 * 3_600_000)).toEqual([]);
    expect(on(rota, friday + 47 * 3_600_000)).toEqual([]);
  });

  // Europe/Dublin 2026: summer time begins 29 March 01:00 UTC and ends 25 October 01:00 UTC
  // (Directive 2000/84/EC: the last Sundays of March and October).
  test('in the night that loses an hour the night shift is seven hours long', () => {
    const from = Date.UTC(2026, 2, 28, 22, 0);
    expect(on(shifts, from - 1)).toEqual(['ben']);
    expect(on(shifts, from)).toEqual(['carl']);
    expect(on(shifts, from + 7 * 3_600_000 - 1)).toEqual(['carl']);
    expect(on(shifts, from + 7 * 3_600_000)).toEqual(['anna']);
  });
  test('in the night that has an hour twice it is nine hours long, without a hole', () => {
    const from = Date.UTC(2026, 9, 24, 21, 0);
    expect(on(shifts, from - 1)).toEqual(['ben']);
    for (let minute = 0; minute < 9 * 60; minute += 1)
      expect(on(shifts, from + minute * 60_000)).toEqual(['carl']);
    expect(on(shifts, from + 9 * 3_600_000)).toEqual(['anna']);
  });
  test('three shifts that meet leave nobody out and name nobody twice, at any time', () => {
    fc.assert(
      fc.property(fc.integer({ min: Date.UTC(2026, 0), max: Date.UTC(2028, 0) }), (at) => {
        expect(on(shifts, at)).toHaveLength(1);
      }),
    );
  });
});

describe('by station and hazard', () => {
  const rota = rotaOf(
    week({ who: ['maintenance', 'anna'] }),
    week({ who: ['ben'], stations: ['l/oven'] }),
    week({ who: ['ehs-1'], hazards: ['fire'] }),
    week({ who: ['dora', 'ben'], stations: ['l'], hazards: ['fire'] }),
  );
  test('the one that fits closest is told first, nobody twice', () => {
    expect(on(rota, 0, 'l/oven', 'fire')).toEqual(['dora', 'ben', 'ehs-1', 'maintenance', 'anna']);
    expect(on(rota, 0, 'l/oven', 'under-bake')).toEqual(['ben', 'maintenance', 'anna']);
    expect(on(rota, 0, 'm/oven', 'fire')).toEqual(['ehs-1', 'maintenance', 'anna']);
  });
  test('a name that merely begins alike is another station', () => {
    expect(on(rota, 0, 'l/oven-2', null)).toEqual(['maintenance', 'anna']);
  });
});

test('a calendar that cannot be read says so, and what it said last still holds', () => {
  const rota = rotaOf({
    kind: 'calendar',
    calendar: 'rota.ics',
    spans: [{ fromMs: 100, toMs: 200, who: ['anna'] }],
    knownUntilMs: 1_000,
    cause: 'it is not there',
    stations: null,
    hazards: null,
  });
  expect(whoIsOn(rota, 150, 'l/s', null)).toEqual({
    who: ['anna'],
    causes: ['The calendar rota.ics cannot be read: it is not there'],
  });
  expect(on(rota, 199)).toEqual(['anna']);
  expect(on(rota, 200)).toEqual([]);
});

describe('the clock on the wall', () => {
  test('a time in the missing hour is as far from midnight as before the change', () => {
    const wall = Date.UTC(2026, 2, 29, 1, 30);
    expect(instantOfWall(wall, 'Europe/Dublin')).toBe(Date.UTC(2026, 2, 29, 1, 30));
  });
  test('a time that comes twice means the first', () => {
    const wall = Date.UTC(2026, 9, 25, 1, 30);
    expect(instantOfWall(wall, 'Europe/Dublin')).toBe(Date.UTC(2026, 9, 25, 0, 30));
  });
  const zone = fc.constantFrom(
    'Europe/Dublin',
    'America/New_York',
    'Asia/Kolkata',
    'Pacific/Auckland',
    'UTC',
  );
  const minute = fc.integer({ min: 0, max: 1_439 });
  const moment = fc.integer({ min: Date.UTC(2026, 0), max: Date.UTC(2028, 0) });
  test('an instant read off the wall leads back to it, or an hour before', () => {
    fc.assert(
      fc.property(moment, zone, (at, timezone) => {
        const { day, minute: of } = wallTime(at, timezone);
        const whole = Math.floor(at / 60_000) * 60_000;
        const back = instantOfWall(day * 86_400_000 + of * 60_000, timezone);
        expect([0, 3_600_000]).toContain(whole - back);
      }),
    );
  });
  test('the next time of a minute lies ahead, within a day and a bit', () => {
    fc.assert(
      fc.property(moment, minute, zone, (at, of, timezone) => {
        const next = nextAtMinute(at, of, timezone);
        expect(next).toBeGreaterThan(at);
        expect(next - at).toBeLessThanOrEqual(26 * 3_600_000);
      }),
    );
  });
});
