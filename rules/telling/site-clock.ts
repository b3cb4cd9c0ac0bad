/**
 * The clock on the site's wall: its weekday, its minute, and the instant a wall time stands for.
 *
 * In the night the clocks go back an hour is walked twice, and both count; in the night they go
 * forward an hour is missing, and a time in it means the same distance from midnight as before the
 * change (RFC 5545, 3.3.5: a local time that does not occur is taken with the offset before the gap).
 */
import type { EpochMs } from '../signal/sample.ts';

export interface WallTime {
  /** Days since 1 January 1970 of the date on the wall. */
  readonly day: number;
  /** 0 is Monday. */
  readonly weekday: number;
  /** Minutes after midnight on the wall. */
  readonly minute: number;
}

const dayMs = 86_400_000;
const newFormat = (timezone: string) =>
  new Intl.DateTimeFormat('en-US', {
    timeZone: timezone,
    calendar: 'gregory',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });

const formats = new Map<string, ReturnType<typeof newFormat>>();

function formatOf(timezone: string): ReturnType<typeof newFormat> {
  const known = formats.get(timezone) ?? newFormat(timezone);
  formats.set(timezone, known);
  return known;
}

/** The wall's reading as if it were UTC, whole seconds. Throws RangeError on an unknown zone. */
function wallAsUtcMs(at: EpochMs, timezone: string): number {
  const part: Record<string, number> = {};
  for (const { type, value } of formatOf(timezone).formatToParts(at)) part[type] = Number(value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = part;
  return Date.UTC(year, month - 1, day, hour, minute, second);
}

export function wallTime(at: EpochMs, timezone: string): WallTime {
  const wall = wallAsUtcMs(at, timezone);
  const day = Math.floor(wall / dayMs);
  // 1 January 1970 was a Thursday.
  return { day, weekday: (day + 3) % 7, minute: Math.floor((wall - day * dayMs) / 60_000) };
}

/** The first instant at which the wall shows this time, given as if it were UTC. */
export function instantOfWall(wallMs: number, timezone: string): EpochMs {
  const offsetAt = (at: EpochMs): number =>
    wallAsUtcMs(at, timezone) - Math.floor(at / 1000) * 1000;
  const before = offsetAt(wallMs - dayMs);
  const after = offsetAt(wallMs + dayMs);
  // The offset before a change gives the first of two, and leads over a gap.
  for (const offset of before === after ? [before] : [before, after]) {
    const at = wallMs - offset;
    if (offsetAt(at) === offset) return at;
  }
  return wallMs - before;
}

/** The next instant after `at` at which the wall shows `minute` after midnight. */
export function nextAtMinute(at: EpochMs, minute: number, timezone: string): EpochMs {
  const { day } = wallTime(at, timezone);
  for (const ahead of [0, 1, 2]) {
    const found = instantOfWall((day + ahead) * dayMs + minute * 60_000, timezone);
    if (found > at) return found;
  }
  throw new RangeError('every clock shows every minute within two days');
}
