/** A part of the year: over the new year, within one, on days there are; and clocks that begin only then. */
import { describe, expect, test } from 'vitest';
import { inSeason } from '#rules/kinds/season.ts';
import { Drive } from '../engine/drive.ts';
import { compiled, signalLine } from '../plan/site.ts';

const hour = 3_600_000;
const on = (month: number, day: number, clock = 0): number =>
  Date.UTC(2027, month - 1, day) + clock * hour;

describe('within it', () => {
  const winter = { from: 1_015, until: 415 };
  const summer = { from: 601, until: 831 };
  test.each([
    [winter, on(10, 14, 23.99), false],
    [winter, on(10, 15), true],
    [winter, on(12, 31), true],
    [winter, on(1, 1), true],
    [winter, on(4, 15, 23.99), true],
    [winter, on(4, 16), false],
    [summer, on(5, 31, 23.99), false],
    [summer, on(6, 1), true],
    [summer, on(8, 31, 23.99), true],
    [summer, on(9, 1), false],
    [null, on(7, 1), true],
  ])('%j at %d: %s', (season, at, within) => expect(inSeason(season, at)).toBe(within));
});

const site = (rule: string, signals = '') =>
  compiled(
    `l: { s: { kind: adhesive-store, signals: { wall: ${signalLine('w', 'Cel')} ${signals} }, rules: { freight-unlogged-season: { ${rule} } } } }`,
  );
const season = 'season_from: "10-15", season_until: "04-15"';
const card = (of: ReturnType<typeof site>) =>
  of.rules.find(({ id }) => id === 'l/s/freight-unlogged-season');

describe('a delivery without a logger', () => {
  const told = (from: number, ...marks: readonly (readonly [hours: number, mark: string])[]) => {
    const drive = new Drive(site(season).plan, from);
    for (const [hours, mark] of marks) {
      const judged = from + hours * hour;
      drive.input({
        kind: 'command',
        verb: 'mark',
        judged,
        station: 'l/s',
        mark,
        item: 'drum-1',
        by: 'a',
      });
      drive.advance(judged);
    }
    drive.advance(from + 30 * hour);
    return drive.effects.flatMap((e) =>
      e.kind === 'transition' && e.again === undefined && e.rule.endsWith('unlogged-season')
        ? [`${(e.judged - from) / hour} ${e.transition}`]
        : e.kind === 'hold'
          ? [`held ${e.item}`]
          : [],
    );
  };
  test('in the frost season is told and held; ended by the logger', () => {
    expect(told(on(1, 10), [1, 'received'], [5, 'logger-read'])).toEqual([
      '3 raised',
      'held drum-1',
      '5 returned',
    ]);
    expect(told(on(1, 10), [1, 'received'], [2.5, 'logger-read'])).toEqual([]);
  });
  test('in summer is not', () => {
    expect(told(on(7, 10), [1, 'received'])).toEqual([]);
  });
});

describe('in a site file', () => {
  test('not armed before somebody said when frost comes', () => {
    expect(card(site(''))).toMatchObject({ readiness: 'not-armed' });
    expect(card(site(''))!.needs.join()).toContain('season_from');
    expect(card(site(season))).toMatchObject({ readiness: 'armed' });
  });
  test('moot where a sensor outside says it', () => {
    const outside = site('', `, outside: ${signalLine('o', 'Cel')}`);
    expect(card(outside)).toBeUndefined();
    expect(outside.coverage.stations[0]!.moot.map(({ rule }) => rule)).toContain(
      'l/s/freight-unlogged-season',
    );
  });
  test.each([
    ['season_from: "13-01", season_until: "04-15"', 'there is no day 13-01 in a year'],
    ['season_from: "10-15", season_until: "02-30"', 'there is no day 02-30 in a year'],
  ])('%s is refused', (rule, problem) => {
    expect(site(rule).problems).toEqual([expect.objectContaining({ problem })]);
  });
});
