/** Times by the site's clock: what a field has is the moment at which that clock shows it. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBoard } from '../../dashboards/state/board.ts';
import { clock, siteTime } from '../../dashboards/text/clock.ts';

const site = { site: 'works', timezone: 'Europe/London', at: 0, shifts_min: [], revision: 'r' };
beforeAll(() => writeBoard({ site }));
afterAll(() => writeBoard({ site: null }));

describe('Europe/London', () => {
  test.each([
    ['2026-01-15T06:00', '2026-01-15T06:00Z'],
    ['2026-07-15T06:00', '2026-07-15T05:00Z'],
    // Clocks go back at 02:00 on 25 October 2026: 01:30 comes twice, the first is in summer time.
    ['2026-10-25T01:30', '2026-10-25T00:30Z'],
    ['2026-10-25T03:00', '2026-10-25T03:00Z'],
    // 01:30 does not exist on 29 March 2026.
    ['2026-03-29T01:30', '2026-03-29T01:30Z'],
  ])('%s is %s', (text, instant) => expect(siteTime(text)).toBe(Date.parse(instant)));
  test('no date is none', () => expect(siteTime('')).toBeNaN());
});

test('the year of another year is said', () => {
  const now = Date.parse('2026-01-02T12:00Z');
  expect(clock(Date.parse('2025-12-31T14:00Z'), now)).toMatch(/2025/);
  expect(clock(Date.parse('2020-06-01T14:00Z'), now)).toMatch(/2020/);
  expect(clock(Date.parse('2026-01-01T14:00Z'), now)).not.toMatch(/20\d\d/);
});
