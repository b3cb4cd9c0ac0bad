/** A part of the year, from one day to another: days of the calendar, by UTC. */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import type { SettingsReader } from './settings.ts';

/** Both as month * 100 + day, both within it; `from` after `until` goes over the new year. */
export interface Season {
  readonly from: number;
  readonly until: number;
}

const days = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export const seasonSetting = (description: string) =>
  z
    .string()
    .check(
      z.regex(/^\d{2}-\d{2}$/, 'write a month and a day, as "10-15"'),
      z.meta({ description }),
    );

/** null for the whole year; problems are reported. */
export function compileSeason(read: SettingsReader): Season | null {
  const [from, until] = (['season_from', 'season_until'] as const).map((key) => dayOf(read, key));
  const given = ['season_from', 'season_until'].filter((key) => read.has(key));
  if (given.length === 1)
    read.report({
      path: [given[0]!],
      problem: 'a season has a first and a last day',
      fix: 'give season_from and season_until, or neither',
    });
  return from == null || until == null ? null : { from, until };
}

function dayOf(read: SettingsReader, key: string): number | null {
  const text = read.text(key);
  if (text === null) return null;
  const [month = 0, day = 0] = text.split('-').map(Number);
  if (day >= 1 && day <= (days[month - 1] ?? 0)) return month * 100 + day;
  read.report({
    path: [key],
    problem: `there is no day ${text} in a year`,
    fix: 'write month and day, as "10-15" for the 15th of October',
  });
  return null;
}

/** Always so where there is no season. */
export function inSeason(season: Season | null, at: EpochMs): boolean {
  if (season === null) return true;
  const date = new Date(at);
  const day = (date.getUTCMonth() + 1) * 100 + date.getUTCDate();
  const { from, until } = season;
  return from <= until ? day >= from && day <= until : day >= from || day <= until;
}
