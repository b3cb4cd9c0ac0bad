/**
 * Instants as text (RFC 3339) or epoch numbers, to whole milliseconds since 1970.
 *
 * An instant is a whole number from 0 to the end of the year 9999, or NaN where there is none:
 * no sensor measured before 1970, and a clock that says so is not to be trusted.
 */
import type { EpochMs } from './sample.ts';

export const lastInstantMs: EpochMs = 253_402_300_799_999;

/** From here on an epoch number of unknown unit is taken for milliseconds: 1973 as such, 5138 as seconds. */
const epochMsFrom = 1e11;

const within = (ms: number): EpochMs => (ms >= 0 && ms <= lastInstantMs ? ms : Number.NaN);

/** Two digits at `at`, or a negative number. */
function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1000;
}

/** Midnight of a date of the proleptic Gregorian calendar in ms; NaN where there is no such day. */
export function dateMs(year: number, month: number, day: number): number {
  if (month < 1 || month > 12 || day < 1 || day > 31) return Number.NaN;
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getUTCDate() === day ? date.getTime() : Number.NaN;
}

/** The date that `text` begins with, as midnight in ms; NaN where there is none. */
export function datePartMs(text: string): number {
  if (text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return Number.NaN;
  const century = twoDigits(text, 0);
  const year = twoDigits(text, 2);
  if (century < 0 || year < 0) return Number.NaN;
  return dateMs(century * 100 + year, twoDigits(text, 5), twoDigits(text, 8));
}

/** ms of a zone at `at`: `Z` or `+hh:mm`; NaN where it is none or does not end the text. */
function zoneMs(text: string, at: number): number {
  const sign = text.charCodeAt(at);
  if (sign === 90 || sign === 122) return text.length === at + 1 ? 0 : Number.NaN;
  if ((sign !== 43 && sign !== 45) || text.length !== at + 6 || text.charCodeAt(at + 3) !== 58) {
    return Number.NaN;
  }
  const hour = twoDigits(text, at + 1);
  const minute = twoDigits(text, at + 4);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return Number.NaN;
  return (sign === 45 ? -1 : 1) * (hour * 60 + minute) * 60_000;
}

/**
 * RFC 3339 `date-time` to ms; NaN where the text is none. Digits beyond the millisecond are cut.
 * `T` and `Z` in either case, or a space for `T` (section 5.6); second 60 is the next minute's first.
 */
export function instantOfRfc3339(text: string): EpochMs {
  const day = datePartMs(text);
  const between = text.charCodeAt(10);
  if (between !== 84 && between !== 116 && between !== 32) return Number.NaN;
  if (text.charCodeAt(13) !== 58 || text.charCodeAt(16) !== 58) return Number.NaN;
  const hour = twoDigits(text, 11);
  const minute = twoDigits(text, 14);
  const second = twoDigits(text, 17);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) {
    return Number.NaN;
  }
  let at = 19;
  let fractionMs = 0;
  if (text.charCodeAt(at) === 46) {
    at += 1;
    const start = at;
    for (let weight = 100; ; weight = Math.floor(weight / 10), at += 1) {
      const digit = text.charCodeAt(at) - 48;
      if (!(digit >= 0 && digit <= 9)) break;
      fractionMs += digit * weight;
    }
    if (at === start) return Number.NaN;
  }
  const zone = zoneMs(text, at);
  return within(day + hour * 3_600_000 + minute * 60_000 + second * 1000 + fractionMs - zone);
}

/** Seconds since 1970, fractions allowed, rounded to the millisecond; NaN out of range. */
export const instantOfEpochS = (seconds: number): EpochMs => within(Math.round(seconds * 1000));

/** Milliseconds since 1970, rounded to a whole one; NaN out of range. */
export const instantOfEpochMs = (ms: number): EpochMs => within(Math.round(ms));

/** Seconds or milliseconds, told apart by size. */
export const instantOfEpoch = (epoch: number): EpochMs =>
  epoch >= epochMsFrom ? instantOfEpochMs(epoch) : instantOfEpochS(epoch);
