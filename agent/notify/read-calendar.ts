/**
 * An iCalendar text as spans of a rota: who is named from when to when.
 *
 * Source: RFC 5545; recurrence by ical.js. Times are read on the wall of their zone and only then
 * become instants, so that a shift begins and ends by the clock people look at. That holds for the
 * end of each repeat too: the letter of 3.8.5.3 (an exact duration where DTEND is given) would leave
 * an hour with nobody in the night the clocks go back.
 */
import ICAL from 'ical.js';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { RotaSpan } from '#rules/telling/rota.ts';
import { instantOfWall } from '#rules/telling/site-clock.ts';

export interface CalendarBounds {
  readonly eventsMax: number;
  /** Repeats of one event that are worked out, those before the span included. */
  readonly repeatsMax: number;
}

export interface CalendarWindow {
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
  /** IANA; for times without a zone of their own. */
  readonly timezone: string;
}

/** A calendar that is none, or too large; the message is for people. */
export class CalendarError extends Error {}

/** Spans that touch the window, ascending. Throws CalendarError. */
export function readCalendar(
  text: string,
  window: CalendarWindow,
  bounds: CalendarBounds,
): RotaSpan[] {
  const calendar = parsed(text);
  const components = calendar.getAllSubcomponents('vevent');
  if (components.length > bounds.eventsMax)
    throw new CalendarError(`it holds more than ${bounds.eventsMax} events`);
  const events = components.map((component) => new ICAL.Event(component));
  const masters = events.filter((event) => !event.isRecurrenceException());
  for (const exception of events.filter((event) => event.isRecurrenceException()))
    masters.find(({ uid }) => uid === exception.uid)?.relateException(exception);
  return masters
    .flatMap((event) => spansOf(event, window, bounds.repeatsMax))
    .sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
}

function parsed(text: string): ICAL.Component {
  try {
    const roots: unknown = ICAL.parse(text);
    const calendar = new ICAL.Component(roots as unknown[]);
    if (calendar.name !== 'vcalendar') throw new CalendarError('it is no calendar');
    return calendar;
  } catch (error) {
    if (error instanceof CalendarError) throw error;
    throw new CalendarError('it is no iCalendar text', { cause: error });
  }
}

function spansOf(event: ICAL.Event, window: CalendarWindow, repeatsMax: number): RotaSpan[] {
  if (!event.isRecurring()) {
    const span = spanOf(event, event.startDate, event.endDate, window);
    return span === null ? [] : [span];
  }
  const spans: RotaSpan[] = [];
  const iterator = event.iterator();
  for (let n = 0; ; n += 1) {
    if (n > repeatsMax)
      throw new CalendarError(
        `"${event.summary}" repeats more than ${repeatsMax} times up to now; begin it later`,
      );
    const next: ICAL.Time | null | undefined = iterator.next();
    if (next === null || next === undefined) return spans;
    if (instantOf(next, zoneIdOf(event, 'dtstart'), window.timezone) >= window.toMs) return spans;
    const { startDate, endDate, item } = event.getOccurrenceDetails(next);
    const span = spanOf(item, startDate, endDate, window);
    if (span !== null) spans.push(span);
  }
}

function spanOf(
  event: ICAL.Event,
  start: ICAL.Time,
  end: ICAL.Time,
  { fromMs, toMs, timezone }: CalendarWindow,
): RotaSpan | null {
  const status: unknown = event.component.getFirstPropertyValue('status');
  if (status === 'CANCELLED') return null;
  const span = {
    fromMs: instantOf(start, zoneIdOf(event, 'dtstart'), timezone),
    toMs: instantOf(end, zoneIdOf(event, 'dtend') ?? zoneIdOf(event, 'dtstart'), timezone),
    who: namesOf(event.summary),
  };
  const touches = span.toMs > fromMs && span.fromMs < toMs && span.toMs > span.fromMs;
  return touches && span.who.length > 0 ? span : null;
}

/** "Anna, Ben": in the order in which they are told. */
const namesOf = (summary: string | null): string[] =>
  (summary ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** The TZID of a property; null where it has none. */
function zoneIdOf(event: ICAL.Event, property: 'dtstart' | 'dtend'): string | null {
  const value: unknown = event.component.getFirstProperty(property)?.getParameter('tzid');
  return typeof value === 'string' && value !== '' ? value : null;
}

/** A date alone is its midnight; a floating time is the site's (3.3.5, form 1). */
function instantOf(time: ICAL.Time, zoneId: string | null, siteZone: string): EpochMs {
  const { isDate } = time;
  const [hour, minute, second] = isDate ? [0, 0, 0] : [time.hour, time.minute, time.second];
  const wallMs = Date.UTC(time.year, time.month - 1, time.day, hour, minute, second);
  const zone: ICAL.Timezone | null = time.zone;
  if (zone === ICAL.Timezone.utcTimezone) return wallMs;
  if (zoneId === null || isDate) return instantOfWall(wallMs, siteZone);
  if (isZone(zoneId)) return instantOfWall(wallMs, zoneId);
  if (zone !== null && zone.tzid === zoneId) return time.toUnixTime() * 1_000;
  throw new CalendarError(
    `it names a time zone "${zoneId}" that nobody knows and it does not define`,
  );
}

const zones = new Map<string, boolean>();

function isZone(name: string): boolean {
  const known = zones.get(name);
  if (known !== undefined) return known;
  let is = true;
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    is = false;
  }
  zones.set(name, is);
  return is;
}
