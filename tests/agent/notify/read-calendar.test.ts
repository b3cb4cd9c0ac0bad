import { describe, expect, test } from 'vitest';
import { CalendarError, type CalendarWindow, readCalendar } from '#agent/notify/read-calendar.ts';

const bounds = { eventsMax: 50, repeatsMax: 2_000 };
const wide: CalendarWindow = {
  fromMs: Date.UTC(1997, 0),
  toMs: Date.UTC(2027, 0),
  timezone: 'Europe/Dublin',
};

const calendar = (...events: string[]): string =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//test//EN', ...events, 'END:VCALENDAR'].join('\r\n');
const event = (lines: string[], uid = 'a'): string =>
  ['BEGIN:VEVENT', `UID:${uid}`, 'DTSTAMP:20260101T000000Z', ...lines, 'END:VEVENT'].join('\r\n');
const read = (text: string, window = wide) => readCalendar(text, window, bounds);

/** The days on which spans begin, as the wall of New York has them. */
const daysOf = (text: string): string[] =>
  read(text).map(({ fromMs }) =>
    new Intl.DateTimeFormat('en-US', {
      timeZone: 'America/New_York',
      month: 'short',
      day: 'numeric',
    }).format(fromMs),
  );

// RFC 5545, 3.8.5.3, examples (zone America/New_York); their dates as the RFC prints them, from memory.
describe('examples of RFC 5545', () => {
  const rows: readonly (readonly [start: string, rule: string, days: string])[] = [
    [
      '19970902T090000',
      'FREQ=DAILY;COUNT=10',
      'Sep 2,Sep 3,Sep 4,Sep 5,Sep 6,Sep 7,Sep 8,Sep 9,Sep 10,Sep 11',
    ],
    [
      '19970902T090000',
      'FREQ=WEEKLY;INTERVAL=2;WKST=SU;COUNT=8;BYDAY=TU,TH',
      'Sep 2,Sep 4,Sep 16,Sep 18,Sep 30,Oct 2,Oct 14,Oct 16',
    ],
    [
      '19970805T090000',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO',
      'Aug 5,Aug 10,Aug 19,Aug 24',
    ],
    [
      '19970805T090000',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU',
      'Aug 5,Aug 17,Aug 19,Aug 31',
    ],
    [
      '19970929T090000',
      'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2;COUNT=7',
      'Sep 29,Oct 30,Nov 27,Dec 30,Jan 29,Feb 26,Mar 30',
    ],
    [
      '20070115T090000',
      'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5',
      'Jan 15,Jan 30,Feb 15,Mar 15,Mar 30',
    ],
  ];
  for (const [start, rule, days] of rows)
    test(`${start} ${rule}`, () => {
      const text = calendar(
        event([
          `DTSTART;TZID=America/New_York:${start}`,
          `DTEND;TZID=America/New_York:${start.replace('T09', 'T17')}`,
          `RRULE:${rule}`,
          'SUMMARY:Anna',
        ]),
      );
      expect(daysOf(text).join(',')).toBe(days);
    });
});

const nights = (zone: string): string =>
  calendar(
    event([
      `DTSTART${zone}:20260101T220000`,
      `DTEND${zone}:20260102T060000`,
      'RRULE:FREQ=DAILY',
      'SUMMARY:Anna, maintenance',
    ]),
  );

describe('the nights the clocks change, in Europe/Dublin', () => {
  const around = (from: number): CalendarWindow => ({
    ...wide,
    fromMs: from,
    toMs: from + 3_600_000,
  });
  for (const [name, zone] of [
    ['with its zone', ';TZID=Europe/Dublin'],
    ['floating, so by the site', ''],
  ] as const) {
    test(`${name}: a night shift of seven hours`, () => {
      const from = Date.UTC(2026, 2, 28, 22);
      expect(read(nights(zone), around(from))).toEqual([
        { fromMs: from, toMs: Date.UTC(2026, 2, 29, 5), who: ['Anna', 'maintenance'] },
      ]);
    });
    test(`${name}: a night shift of nine hours`, () => {
      const from = Date.UTC(2026, 9, 24, 21);
      expect(read(nights(zone), around(from))).toEqual([
        { fromMs: from, toMs: Date.UTC(2026, 9, 25, 6), who: ['Anna', 'maintenance'] },
      ]);
    });
  }
});

describe('what calendars also say', () => {
  const day = (n: number, extra: string[], uid = 'a'): string =>
    event([`DTSTART:202611${n}T060000Z`, `DTEND:202611${n}T140000Z`, ...extra], uid);
  test('an exception takes the place of its repeat, a cancelled one leaves a hole', () => {
    const text = calendar(
      day(23, ['RRULE:FREQ=DAILY;COUNT=4', 'EXDATE:20261126T060000Z', 'SUMMARY:Anna']),
      event([
        'RECURRENCE-ID:20261124T060000Z',
        'DTSTART:20261124T060000Z',
        'DTEND:20261124T140000Z',
        'SUMMARY:Ben',
      ]),
      event([
        'RECURRENCE-ID:20261125T060000Z',
        'DTSTART:20261125T060000Z',
        'DTEND:20261125T140000Z',
        'STATUS:CANCELLED',
        'SUMMARY:Anna',
      ]),
    );
    expect(read(text).map(({ fromMs, who }) => [new Date(fromMs).getUTCDate(), ...who])).toEqual([
      [23, 'Anna'],
      [24, 'Ben'],
    ]);
  });
  test('an event of a whole day is the day of the site', () => {
    const text = calendar(
      event(['DTSTART;VALUE=DATE:20260701', 'DTEND;VALUE=DATE:20260702', 'SUMMARY:Anna']),
    );
    expect(read(text)).toEqual([
      { fromMs: Date.UTC(2026, 5, 30, 23), toMs: Date.UTC(2026, 6, 1, 23), who: ['Anna'] },
    ]);
  });
  test('a zone of the calendar’s own is read as it defines it', () => {
    const text = calendar(
      'BEGIN:VTIMEZONE',
      'TZID:Plant',
      'BEGIN:STANDARD',
      'DTSTART:19700101T000000',
      'TZOFFSETFROM:+0300',
      'TZOFFSETTO:+0300',
      'END:STANDARD',
      'END:VTIMEZONE',
      event([
        'DTSTART;TZID=Plant:20261125T060000',
        'DTEND;TZID=Plant:20261125T140000',
        'SUMMARY:A',
      ]),
    );
    expect(read(text)).toEqual([
      { fromMs: Date.UTC(2026, 10, 25, 3), toMs: Date.UTC(2026, 10, 25, 11), who: ['A'] },
    ]);
  });
  test('events without a name or without length say nothing', () => {
    expect(read(calendar(day(23, []), day(24, ['SUMMARY: , '], 'b')))).toEqual([]);
  });
});

describe('refused, with a reason', () => {
  const reason = (text: string): string => {
    try {
      read(text);
    } catch (error) {
      if (error instanceof CalendarError) return error.message;
      throw error;
    }
    return 'taken';
  };
  test('what is no calendar', () => {
    expect(reason('<html>sign in</html>')).toBe('it is no iCalendar text');
    expect(reason('')).toBe('it is no calendar');
    expect(reason('BEGIN:VCARD\r\nEND:VCARD')).toBe('it is no calendar');
  });
  test('a zone nobody knows', () => {
    const text = calendar(
      event(['DTSTART;TZID=Moon/Base:20261125T060000', 'DURATION:PT8H', 'SUMMARY:A']),
    );
    expect(reason(text)).toMatch(/time zone "Moon\/Base"/);
  });
  test('too many events, too many repeats', () => {
    const many = Array.from({ length: 51 }, (_, i) => event(['DTSTART:20261125T060000Z'], `${i}`));
    expect(reason(calendar(...many))).toBe('it holds more than 50 events');
    const text = calendar(
      event(['DTSTART:19970101T060000Z', 'DURATION:PT1H', 'RRULE:FREQ=HOURLY', 'SUMMARY:A']),
    );
    expect(reason(text)).toMatch(/"A" repeats more than 2000 times/);
  });
});
