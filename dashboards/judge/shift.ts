/** When the shift ends, by the clock of the site. */

const minuteMs = 60_000;
const dayMs = 86_400_000;

/** Minutes since the site's midnight. Throws on a zone the browser does not know. */
function minuteOfDay(at: number, timezone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: timezone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at);
  const part = (type: string): number => Number(parts.find((each) => each.type === type)?.value);
  return part('hour') * 60 + part('minute');
}

/**
 * The next change of shift after `now`. `shiftsMin`: minutes after midnight, ascending. On a day the
 * clock changes it may be an hour off until the change has passed.
 */
export function shiftEnd(now: number, timezone: string, shiftsMin: readonly number[]): number {
  const minute = minuteOfDay(now, timezone);
  const next = shiftsMin.find((each) => each > minute);
  const left = next === undefined ? (shiftsMin[0] ?? 0) + dayMs / minuteMs - minute : next - minute;
  return Math.floor(now / minuteMs) * minuteMs + left * minuteMs;
}
