/**
 * Mails that come by the clock on the site's wall: the week's alarm performance, the day's signed
 * head of the ledger. When one was due last, and to whom it goes.
 *
 * Always true: each time on the wall is one instant, in the nights in which the clocks change too
 * (site-clock.ts): none is due twice because an hour is walked twice, none is left out because one
 * is missing.
 */
import type { EpochMs } from '../signal/sample.ts';
import type { TellingWritten } from '../site/telling-schema.ts';
import { minuteOf, weekdayIndex } from './rota.ts';
import { instantOfWall, wallTime } from './site-clock.ts';

export const mailingKinds = ['week', 'checkpoint'] as const;
export type MailingKind = (typeof mailingKinds)[number];

export interface Mailing {
  /** 0 is Monday; null: every day. */
  readonly weekday: number | null;
  /** Minutes after midnight on the wall. */
  readonly minute: number;
  /** People by name or id, roles, `on-call`. */
  readonly to: readonly string[];
  /** Somebody wrote down to whom it goes. */
  readonly isAsked: boolean;
}

export interface MailingSettings {
  readonly timezone: string;
  /** null where the site file wants none. */
  readonly of: Readonly<Record<MailingKind, Mailing | null>>;
}

/** The written part has passed its schema. */
export function mailingSettings(
  written: TellingWritten | undefined,
  timezone: string,
): MailingSettings {
  const { weekly_report: weekly = {}, checkpoint_mail: daily = {} } = written ?? {};
  const week: Mailing | null =
    weekly === 'off'
      ? null
      : {
          weekday: weekdayIndex(weekly.day ?? 'mon'),
          minute: minuteOf(weekly.at ?? '07:00'),
          to: weekly.to ?? ['engineer'],
          isAsked: weekly.to !== undefined,
        };
  const checkpoint: Mailing | null =
    daily === 'off'
      ? null
      : {
          weekday: null,
          minute: minuteOf(daily.at ?? '06:00'),
          to: daily.to ?? ['ehs', 'administrator'],
          isAsked: daily.to !== undefined,
        };
  return { timezone, of: { week, checkpoint } };
}

const dayMs = 86_400_000;

/** The latest instant at or before `at` for which it is written. */
export function lastDue(
  { weekday, minute }: Pick<Mailing, 'weekday' | 'minute'>,
  timezone: string,
  at: EpochMs,
): EpochMs {
  const today = wallTime(at, timezone);
  for (let back = -1; back <= 8; back += 1) {
    const day = today.day - back;
    const isDay = weekday === null || (day + 3) % 7 === weekday;
    const found = instantOfWall(day * dayMs + minute * 60_000, timezone);
    if (isDay && found <= at) return found;
  }
  throw new RangeError('every weekday comes within eight days');
}
