/** Until when a calibration holds: through its last day, by the clock of the site. */
import { describe, expect, test } from 'vitest';
import { compileSite } from '#rules/plan/compile.ts';
import { startOfDayMs } from '#rules/plan/start-of-day.ts';
import { siteOf } from './site.ts';

function one(dates: string, timezone = 'Europe/Dublin') {
  const site = siteOf(
    `l: { s: { kind: custom, signals: { x: { topic: a, payload: { kind: plain }, unit: Cel, ${dates} } } } }`,
  );
  const found = compileSite({ ...site, timezone }, {}, {}, 'r');
  const problems = found.problems.filter(({ path }) => path.includes('signals'));
  return { end: found.bindings[0]?.calibrationEndMs, problems };
}
const utc = (text: string): number => Date.parse(text);

test.each([
  ['2026-03-31', '365 d', '2027-03-31T23:00:00Z'],
  ['2026-01-15', '12 mo', '2027-01-16T00:00:00Z'],
  ['2026-01-31', '1 mo', '2026-03-01T00:00:00Z'],
  ['2024-02-29', '12 mo', '2025-03-01T00:00:00Z'],
  ['2026-08-31', '6 mo', '2027-03-01T00:00:00Z'],
  ['2026-10-24', '1 d', '2026-10-26T00:00:00Z'],
  ['2026-03-28', '1 d', '2026-03-29T23:00:00Z'],
])('calibrated %s, every %s: overdue from %s in Dublin', (day, every, from) => {
  const { end, problems } = one(`calibrated: "${day}", calibrate_every: ${every}`);
  expect(problems).toEqual([]);
  expect(new Date(end!).toISOString()).toBe(new Date(from).toISOString());
});

test('the site’s clock decides', () => {
  const dates = 'calibrated: "2026-01-15", calibrate_every: 12 mo';
  expect(one(dates, 'America/Chicago').end).toBe(utc('2027-01-16T06:00:00Z'));
  expect(one(dates, 'Asia/Kolkata').end).toBe(utc('2027-01-15T18:30:00Z'));
});

test('without a term it is never overdue', () => {
  expect(one('calibrated: "2026-01-15"')).toEqual({ end: undefined, problems: [] });
});

describe('refused', () => {
  test.each([
    ['calibrate_every: 12 mo', 'calibrate_every'],
    ['calibrated: "2026-02-30", calibrate_every: 12 mo', 'calibrated'],
    ['calibrated: "1969-12-31"', 'calibrated'],
  ])('%s', (dates, place) => {
    expect(one(dates).problems.map(({ path }) => path.at(-1))).toEqual([place]);
  });
});

test('a zone nobody knows is told where the zone is read, and UTC stands in', () =>
  expect(startOfDayMs(utc('2026-01-15'), 'Nowhere/At-All')).toBe(utc('2026-01-15')));
