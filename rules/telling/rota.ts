/**
 * Who is on call: a table of the week and spans of a calendar, by station and hazard.
 *
 * Always true: an entry that names stations or hazards goes before one that names none; among
 * equals the order of the site file decides; a name stands once. Who is meant by a name (a person
 * or all of a role) is found when somebody is to be told, so that a rota may name people who come
 * later.
 */

import type { EpochMs } from '../signal/sample.ts';
import { type Weekday, weekdays } from '../site/telling-schema.ts';
import { wallTime } from './site-clock.ts';

export interface RotaPlaces {
  /** `line/station` or `line`; null for all. */
  readonly stations: readonly string[] | null;
  readonly hazards: readonly string[] | null;
}

export interface WeekEntry extends RotaPlaces {
  readonly kind: 'week';
  readonly who: readonly string[];
  /** 0 is Monday; days on which it begins. */
  readonly weekdays: readonly number[];
  /** Minutes after midnight on the wall. */
  readonly fromMin: number;
  /** At or below `fromMin` it ends on the day after. */
  readonly toMin: number;
}

export interface RotaSpan {
  readonly fromMs: EpochMs;
  /** Not included. */
  readonly toMs: EpochMs;
  readonly who: readonly string[];
}

export interface CalendarEntry extends RotaPlaces {
  readonly kind: 'calendar';
  /** As the site file names it. */
  readonly calendar: string;
  /** Ascending by beginning. */
  readonly spans: readonly RotaSpan[];
  /** Spans are worked out up to here; beyond it nothing is known. */
  readonly knownUntilMs: EpochMs;
  /** Why it could not be read; its spans are then those read last. */
  readonly cause: string | null;
}

export type RotaEntry = WeekEntry | CalendarEntry;

export interface Rota {
  /** IANA. */
  readonly timezone: string;
  readonly entries: readonly RotaEntry[];
}

export interface OnCall {
  /** Names in the order in which they are told; empty where the rota says nobody. */
  readonly who: readonly string[];
  /** What is wrong with it, in plain words. */
  readonly causes: readonly string[];
}

/** `hazard` is null for the health of sensors. */
export function whoIsOn(rota: Rota, at: EpochMs, station: string, hazard: string | null): OnCall {
  const wall = wallTime(at, rota.timezone);
  const fitting = rota.entries
    .filter((entry) => speaksOf(entry, station, hazard))
    .map((entry, order) => ({ entry, order, weight: weight(entry) }))
    .sort((a, b) => b.weight - a.weight || a.order - b.order)
    .map(({ entry }) => entry);
  const who = fitting.flatMap((entry) =>
    entry.kind === 'week'
      ? covers(entry, wall.weekday, wall.minute)
        ? entry.who
        : []
      : entry.spans
          .filter(({ fromMs, toMs }) => fromMs <= at && at < toMs)
          .flatMap((span) => span.who),
  );
  const causes = fitting.flatMap((entry) => {
    if (entry.kind === 'week') return [];
    if (entry.cause !== null)
      return [`The calendar ${entry.calendar} cannot be read: ${entry.cause}`];
    return at >= entry.knownUntilMs ? [`The calendar ${entry.calendar} is not read this far.`] : [];
  });
  return { who: [...new Set(who)], causes };
}

const speaksOf = (entry: RotaEntry, station: string, hazard: string | null): boolean =>
  (entry.stations === null ||
    entry.stations.some((name) => name === station || station.startsWith(`${name}/`))) &&
  (entry.hazards === null || (hazard !== null && entry.hazards.includes(hazard)));

const weight = (entry: RotaEntry): number =>
  (entry.stations === null ? 0 : 1) + (entry.hazards === null ? 0 : 2);

function covers(entry: WeekEntry, weekday: number, minute: number): boolean {
  const { fromMin, toMin } = entry;
  const begins = (day: number): boolean => entry.weekdays.includes(day);
  if (fromMin < toMin) return begins(weekday) && fromMin <= minute && minute < toMin;
  const yesterday = (weekday + 6) % 7;
  return (begins(weekday) && minute >= fromMin) || (begins(yesterday) && minute < toMin);
}

/** "06:30" as minutes after midnight. The schema has checked its shape. */
export function minuteOf(clock: string): number {
  const [hour, minute] = clock.split(':');
  return Number(hour) * 60 + Number(minute);
}

export const weekdayIndex = (day: Weekday): number => weekdays.indexOf(day);
