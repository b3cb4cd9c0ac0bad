/** The instant at which a day begins in an IANA zone. */
import type { EpochMs } from '../signal/sample.ts';

/**
 * `utcMidnightMs`: the day, as if it were one of UTC. In a zone nobody knows (which is told where
 * the zone is read) UTC stands in. Where clocks skip midnight, the day begins up to an hour later.
 */
export function startOfDayMs(utcMidnightMs: EpochMs, timezone: string): EpochMs {
  const format = formatOf(timezone);
  if (format === null) return utcMidnightMs;
  const about = utcMidnightMs - offsetMs(format, utcMidnightMs);
  return utcMidnightMs - offsetMs(format, about);
}

/** Its language is written out, and only its offset is read. */
function formatOf(timezone: string) {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: timezone, timeZoneName: 'longOffset' });
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const offsetPattern = /^GMT(?:([+-])(\d\d):(\d\d)(?::(\d\d))?)?$/;

function offsetMs(format: NonNullable<ReturnType<typeof formatOf>>, at: EpochMs): number {
  const name = format.formatToParts(at).find(({ type }) => type === 'timeZoneName')?.value ?? '';
  const match = offsetPattern.exec(name);
  if (match === null) throw new Error(`an offset nobody expected: ${name}`);
  const [, sign, hours = '0', minutes = '0', seconds = '0'] = match;
  const size = (Number(hours) * 60 + Number(minutes)) * 60_000 + Number(seconds) * 1_000;
  return sign === '-' ? -size : size;
}
