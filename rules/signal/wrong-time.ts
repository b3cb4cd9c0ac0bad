/**
 * A time that cannot be right, in words: how far it is off, and what is most likely wrong with it.
 *
 * Three slips explain most of them: seconds taken for milliseconds or the other way round, a local
 * time without its zone, a clock that was never set (common practice, no published source).
 */
import { counted } from '../quantity/counted.ts';
import { lastInstantMs } from './instant-text.ts';
import type { EpochMs } from './sample.ts';

const minuteMs = 60_000;
const hourMs = 3_600_000;
const dayMs = 86_400_000;
/** Nearer than this to now, a number a thousand times larger or smaller is the same moment in another unit. */
const sameMomentMs = 400 * dayMs;
/** The zones of the world lie 14 h ahead of UTC at most, in steps of a quarter of an hour (IANA time zone database). */
const zoneAheadMsMax = 14 * hourMs;
const zoneStepMs = 15 * minuteMs;
const clocksApartMs = 2 * minuteMs;

/** 40 seconds, 12 minutes, 5.5 hours, 1132 days: a length of time, 0 or more, as people read it. */
export function spanInWords(ms: number): string {
  if (ms < 2 * minuteMs) return counted(Math.round(ms / 1_000), 'second');
  if (ms < 2 * hourMs) return counted(Math.round(ms / minuteMs), 'minute');
  if (ms < 2 * dayMs) return counted(Number((ms / hourMs).toFixed(1)), 'hour');
  return counted(Math.round(ms / dayMs), 'day');
}

const isNear = (at: EpochMs, now: EpochMs): boolean =>
  now > sameMomentMs && Math.abs(at - now) < sameMomentMs;

/** Taken for milliseconds, it is one of the first days of 1970; taken for seconds, it is about now. */
export const isSecondsForMs = (at: EpochMs, now: EpochMs): boolean =>
  at > 0 && isNear(at * 1_000, now);

function isLocalForUtc(aheadMs: number): boolean {
  const beyondMs = aheadMs % zoneStepMs;
  return (
    aheadMs >= zoneStepMs - clocksApartMs &&
    aheadMs <= zoneAheadMsMax + clocksApartMs &&
    Math.min(beyondMs, zoneStepMs - beyondMs) <= clocksApartMs
  );
}

/** How to mend a time that lies ahead of `now`; begins lower case, without its full stop. */
export function aheadFix(at: EpochMs, now: EpochMs): string {
  if (isNear(at / 1_000, now))
    return 'it is a thousand times too large: send seconds or milliseconds since 1970, and say which of them where it can be said (time_format)';
  if (isLocalForUtc(at - now))
    return 'it looks like a local time sent as UTC: send UTC, or the offset with it, as 2026-01-05T08:10:00+02:00; if the zone is right, set the clock of the sender';
  return 'set the clock of the sender, best from a time server; its time is to be in UTC';
}

/** "it lies 1132 days ahead of this clock (2029-12-31T08:10:00.000Z)": without its full stop. */
export const aheadWords = (at: EpochMs, now: EpochMs): string =>
  `it lies ${spanInWords(at - now)} ahead of this clock (${momentText(at)})`;

const momentText = (at: EpochMs): string =>
  at <= lastInstantMs ? new Date(at).toISOString() : 'after the year 9999';
