/** What the site file says of telling, ready to be judged by. */
import type { Priority } from '../alarm/priority.ts';
import { parseDuration } from '../quantity/duration.ts';
import type { RotaEntryWritten, TellingWritten } from '../site/telling-schema.ts';
import { minuteOf, type WeekEntry, weekdayIndex } from './rota.ts';

export interface QuietHours {
  /** Minutes after midnight on the wall. */
  readonly fromMin: number;
  /** At or below `fromMin` they end on the day after. */
  readonly toMin: number;
  readonly priorities: readonly Priority[];
}

export interface TellingSettings {
  readonly timezone: string;
  readonly quiet: QuietHours | null;
  /** null: half the rule's time to respond. */
  readonly escalateAfterMs: Readonly<Record<Priority, number | null>>;
  /** Minutes after midnight on the wall. */
  readonly digestMin: number;
}

const duration = (written: string | undefined): number | null => {
  if (written === undefined) return null;
  const parsed = parseDuration(written);
  return parsed.ok ? parsed.value : null;
};

/** The written part has passed its schema. */
export function tellingSettings(
  written: TellingWritten | undefined,
  timezone: string,
): TellingSettings {
  const { quiet_hours: quiet, escalate_after: after, digest_at: digest } = written ?? {};
  return {
    timezone,
    quiet:
      quiet === undefined
        ? null
        : {
            fromMin: minuteOf(quiet.from),
            toMin: minuteOf(quiet.to),
            priorities: quiet.priorities ?? ['medium', 'low'],
          },
    escalateAfterMs: {
      high: duration(after?.high),
      medium: duration(after?.medium),
      low: duration(after?.low),
    },
    digestMin: minuteOf(digest ?? '07:00'),
  };
}

/** The hours of the week of a rota; calendars are read elsewhere. */
export function weekEntry(written: Exclude<RotaEntryWritten, { calendar: string }>): WeekEntry {
  const { who, days, from, to, stations, hazards } = written;
  return {
    kind: 'week',
    who,
    weekdays: days?.map(weekdayIndex) ?? [0, 1, 2, 3, 4, 5, 6],
    fromMin: minuteOf(from ?? '00:00'),
    toMin: minuteOf(to ?? from ?? '00:00'),
    stations: stations ?? null,
    hazards: hazards ?? null,
  };
}

/** Judgement: the next person needs what is left of the time to respond. */
const defaultAfterMs: Readonly<Record<Priority, number>> = {
  high: 5 * 60_000,
  medium: 15 * 60_000,
  low: 60 * 60_000,
};
const afterMsMin = 2 * 60_000;
const afterMsMax = 60 * 60_000;

/** How long somebody has to answer before the next is told. */
export function escalateAfterMs(
  settings: TellingSettings,
  priority: Priority,
  respondMs: number | null,
): number {
  const set = settings.escalateAfterMs[priority];
  if (set !== null) return set;
  if (respondMs === null) return defaultAfterMs[priority];
  return Math.min(afterMsMax, Math.max(afterMsMin, Math.round(respondMs / 2)));
}
