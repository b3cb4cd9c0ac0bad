/** Times and spans for people: site time, coarse spans, ranges instead of countdowns. */
import { spanText } from '#rules/alarm/say.ts';
import { readBoard } from '../state/board.ts';
import { languageNow, localNumber } from './language.ts';
import { say } from './say.ts';

const zone = (): string => readBoard().site?.timezone ?? 'UTC';

const formats = new Map<string, Intl.DateTimeFormat>();
function format(name: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const language = languageNow();
  const key = `${name} ${zone()} ${language}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat(language === 'en' ? 'en-GB' : language, {
    timeZone: zone(),
    hourCycle: 'h23',
    ...options,
  });
  formats.set(key, made);
  return made;
}

const day = (at: number): string =>
  format('day', { year: 'numeric', month: '2-digit', day: '2-digit' }).format(at);

export const hourMinute = (at: number): string =>
  format('minute', { hour: '2-digit', minute: '2-digit' }).format(at);
export const hourMinuteSecond = (at: number): string =>
  format('second', { hour: '2-digit', minute: '2-digit', second: '2-digit' }).format(at);
const weekday = (at: number): string => format('weekday', { weekday: 'short' }).format(at);
const date = (at: number): string => format('date', { day: 'numeric', month: 'short' }).format(at);

const fullDate = (at: number): string =>
  format('full-date', { day: 'numeric', month: 'short', year: 'numeric' }).format(at);
const year = (at: number): string => format('year', { year: 'numeric' }).format(at);

/** Less than this apart, two days of one weekday are one day. */
const weekMs = 7 * 86_400_000;

/**
 * 02:10; Thu 14:00 within the six days beside today; 3 Mar 14:00 beyond, and for the weekday that it is
 * today; with its year where that is another one.
 */
export function clock(at: number, now: number): string {
  if (day(at) === day(now)) return hourMinute(at);
  const near = Math.abs(at - now) < weekMs && weekday(at) !== weekday(now);
  const name = year(at) !== year(now) ? fullDate(at) : near ? weekday(at) : date(at);
  return `${name} ${hourMinute(at)}`;
}

/** Spans without a break between number and unit. */
export const span = (ms: number): string => localNumber(spanText(ms)).replace(' ', '\u00a0');

const parts = (ms: number): { count: string; unit: string } => {
  const [count = '0', unit = ''] = localNumber(spanText(Math.max(0, ms))).split(' ');
  return { count, unit };
};

/** `3 to 6 min`, `50 s to 4 min`; one value where both ends read alike. */
export function spanRange(fromMs: number, toMs: number): string {
  const [from, to] = [parts(fromMs), parts(toMs)];
  if (from.unit !== to.unit) return say('spanRange', { from: span(fromMs), to: span(toMs) });
  return from.count === to.count
    ? span(toMs)
    : say('spanRange', { from: from.count, to: span(toMs) });
}

/** `2026-03-01T14:00`, as a field for date and time has it, read as UTC. */
const asUtc = (text: string): number => Date.parse(`${text.slice(0, 16)}Z`);

/** What the site's clock shows at a moment, in the same shape. */
const shownThere = (at: number): string => {
  const fields = new Map(
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone(),
      hourCycle: 'h23',
      ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
    })
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  const of = (name: Intl.DateTimeFormatPartTypes): string => fields.get(name) ?? '';
  return `${of('year')}-${of('month')}-${of('day')}T${of('hour')}:${of('minute')}`;
};

/**
 * The moment, epoch ms, at which the site's clock shows `2026-03-01T14:00`; NaN for what is no such text. Of
 * an hour that a change of the clock has twice the first; one that it leaves out counts on from before it.
 */
export function siteTime(text: string): number {
  const wall = asUtc(text);
  if (Number.isNaN(wall)) return wall;
  const tried = [wall - 86_400_000, wall + 86_400_000].map(
    (near) => wall - (asUtc(shownThere(near)) - near),
  );
  const fits = tried.filter((at) => asUtc(shownThere(at)) === wall);
  return fits.length > 0 ? Math.min(...fits) : tried[0]!;
}

/** The phone keeps another time than the site: then the zone is named. */
export function foreignZone(): string | null {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return here === zone() ? null : zone();
}
