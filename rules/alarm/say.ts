/**
 * An alarm's sentence: its label's words filled in with what the evidence holds.
 *
 * Values print in their canonical units with the signal's decimals, times in the site's zone,
 * spans in the unit a person would use. A name the evidence does not hold prints as "unknown":
 * a sentence must never fail where somebody waits for it.
 */
import type { Evidence } from '../kinds/kind.ts';
import type { CardLabel, Fact } from '../plan/card.ts';
import { causeOf, isKnown, type QualityCode } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import { bareItem, sentenceFor } from './sentence.ts';
import { unitSymbol } from './unit-symbol.ts';

export interface Subject {
  /** `line/station`. */
  readonly station: string;
  /** `line/station/signal`. */
  readonly signal: string;
  /** All the rule judges, that one first; only that one where it is absent. */
  readonly signals?: readonly string[];
  readonly unit: string;
  /** The UCUM code in which its signal is written, for readers with units of their own. */
  readonly written?: string;
  readonly digits: number | null;
  readonly facts: Readonly<Record<string, Fact>>;
  /** IANA zone of the site. */
  readonly timezone: string;
  readonly container: string | null;
}

const msPer = { s: 1_000, min: 60_000, h: 3_600_000, d: 86_400_000 } as const;

/** 90 s, 12 min, 3.5 h, 4 d: two figures that matter, and its unit. */
export function spanText(ms: number): string {
  const span = Math.max(0, ms);
  if (span < 2 * msPer.min) return `${Math.round(span / msPer.s)} s`;
  if (span < 2 * msPer.h) return `${Math.round(span / msPer.min)} min`;
  if (span < 2 * msPer.d) return `${Number((span / msPer.h).toFixed(1))} h`;
  return `${Number((span / msPer.d).toFixed(span < 10 * msPer.d ? 1 : 0))} d`;
}

/** 02:10, with the date where it is not the day of `now`. */
export function clockText(at: EpochMs, timezone: string, now: EpochMs): string {
  const day = (t: EpochMs): string =>
    new Intl.DateTimeFormat('en-CA', { timeZone: timezone, dateStyle: 'short' }).format(t);
  const time = new Intl.DateTimeFormat('en-GB', {
    timeZone: timezone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(at);
  return day(at) === day(now) ? time : `${day(at)} ${time}`;
}

export function quantityText(value: number, unit: string, digits: number | null): string {
  const rounded = digits === null ? String(Number(value.toPrecision(6))) : value.toFixed(digits);
  const number = Number(rounded) === 0 ? rounded.replace('-', '') : rounded;
  const symbol = unitSymbol(unit);
  return symbol === '' ? number : `${number} ${symbol}`;
}

/** `now`: the moment the evidence is of. */
export function sayAlarm(
  label: CardLabel,
  kindSentence: (evidence: Evidence) => string,
  subject: Subject,
  evidence: Evidence,
  now: EpochMs,
): string {
  const words = wordsOf(subject, evidence, now);
  return fill(sentenceFor(label.sentence ?? kindSentence(evidence), evidence), words);
}

/** Steps, cautions and the rest of a label name facts too. */
export const fillFacts = (text: string, subject: Subject): string =>
  fill(text, wordsOf(subject, {}, 0));

const unknown = 'unknown';

const fill = (text: string, words: ReadonlyMap<string, string>): string =>
  text.replace(/\{\$([^}]*)\}/g, (_, name: string) => words.get(name) ?? unknown);

/** A code that another version gave is no reason to be silent. */
const causeText = (code: QualityCode): string | undefined =>
  isKnown(code) ? (causeOf(code) ?? undefined) : undefined;

/** What a placeholder stands for, before it is printed in anybody's units or language. */
export type Spoken =
  | Fact
  /** `digits`: the decimals of its resolution; null keeps what matters. */
  | {
      readonly kind: 'reading';
      readonly value: number;
      readonly unit: string;
      readonly written_unit?: string;
      readonly digits: number | null;
    }
  | { readonly kind: 'clock'; readonly at: EpochMs };

function spokenText(spoken: Spoken, timezone: string, now: EpochMs): string {
  switch (spoken.kind) {
    case 'quantity':
      return quantityText(spoken.value, spoken.unit, null);
    case 'reading':
      return quantityText(spoken.value, spoken.unit, spoken.digits);
    case 'duration':
      return spanText(spoken.ms);
    case 'clock':
      return clockText(spoken.at, timezone, now);
    case 'text':
      return spoken.text;
  }
}

const wordsOf = (subject: Subject, evidence: Evidence, now: EpochMs): ReadonlyMap<string, string> =>
  new Map(
    [...spokenOf(subject, evidence, now)].map(([name, spoken]) => [
      name,
      spokenText(spoken, subject.timezone, now),
    ]),
  );

const plain = (text: string, german?: string): Spoken => ({
  kind: 'text',
  text,
  ...(german === undefined ? {} : { german }),
});

/** What every placeholder of the label stands for; a name that is missing prints as "unknown". */
export function spokenOf(
  subject: Subject,
  evidence: Evidence,
  now: EpochMs,
): ReadonlyMap<string, Spoken> {
  const { unit, digits } = subject;
  const words = new Map<string, Spoken>(Object.entries(subject.facts));
  const text = (name: string, said: string): unknown => words.set(name, plain(said));
  text('station', subject.station);
  text('signal', subject.signal);
  text('container', subject.container ?? subject.station);
  const { value, limit, side, sinceMs, slopePerH, earliestMs, latestMs, cause } = evidence;
  const told = { kind: 'reading', unit, ...writtenUnit(subject), digits } as const;
  if (value !== undefined) words.set('value', { ...told, value });
  if (value !== undefined && value < 0) words.set('past', { ...told, value: -value });
  if (limit !== undefined) words.set('limit', { ...told, value: limit });
  if (side !== undefined) text('side', side === 'low' ? 'below' : 'above');
  if (slopePerH !== undefined) {
    words.set('slope', slope(slopePerH, unit));
    words.set('minuteslope', slope(slopePerH / 60, unit));
  }
  if (earliestMs !== undefined) words.set('early', until(earliestMs, now));
  if (latestMs !== undefined) words.set('late', until(latestMs, now));
  if (sinceMs !== undefined) {
    words.set('duration', { kind: 'duration', ms: now - sinceMs });
    words.set('clock', { kind: 'clock', at: sinceMs });
  }
  const causeSaid = cause === undefined ? undefined : causeText(cause);
  if (causeSaid !== undefined) text('cause', causeSaid);
  speakOfSeveral(words, subject, evidence);
  return words;
}

/** What kinds of several signals, of a target and of a load's heat have to say. */
function speakOfSeveral(words: Map<string, Spoken>, subject: Subject, evidence: Evidence): void {
  const { unit, digits, signals = [subject.signal] } = subject;
  const { input, reference, difference, allowed, reachedMs, requiredMs, leftMs } = evidence;
  const { item, items } = evidence;
  if (item !== undefined) words.set('item', plain(item));
  const bare = item === undefined ? null : bareItem(item);
  if (bare !== null) words.set('itemname', plain(bare));
  if (items !== undefined) words.set('items', plain(String(items)));
  speakOfHold(words, evidence);
  words.set('signals', plain(signals.join(' and '), signals.join(' und ')));
  const which = input === undefined ? undefined : signals[input];
  if (which !== undefined) words.set('which', plain(which));
  const other = evidence.other === undefined ? undefined : signals[evidence.other];
  if (other !== undefined) words.set('other', plain(other));
  if (reference !== undefined)
    words.set('reference', {
      kind: 'reading',
      value: reference,
      unit,
      ...writtenUnit(subject),
      digits,
    });
  for (const [name, value] of Object.entries({ difference, allowed }))
    if (value !== undefined)
      words.set(name, {
        kind: 'reading',
        value,
        unit: differenceUnit(unit),
        ...(unit === 'Cel' ? {} : writtenUnit(subject)),
        digits,
      });
  for (const [name, ms] of Object.entries({
    reached: reachedMs,
    required: requiredMs,
    left: leftMs,
    per: evidence.perMs,
  }))
    if (ms !== undefined) words.set(name, { kind: 'duration', ms });
}

/** Who held it: a rule by its name; a person by the id that whoever knows people turns into a name. */
function speakOfHold(words: Map<string, Spoken>, { heldBy, heldFor }: Evidence): void {
  if (heldBy === undefined) return;
  const rule = heldBy.startsWith('rule:') ? heldBy.slice('rule:'.length) : null;
  words.set(
    'setter',
    rule === null ? plain(heldBy) : plain(`the rule ${rule}`, `die Regel ${rule}`),
  );
  words.set('reason', plain(heldFor ?? 'its alarm says why'));
}

const writtenUnit = ({ written }: Subject): { readonly written_unit?: string } =>
  written === undefined ? {} : { written_unit: written };

const differenceUnit = (unit: string): string => (unit === 'Cel' ? 'K' : unit);

/** Two figures: a robust slope is not known better. */
const slope = (slopePerH: number, unit: string): Spoken => ({
  kind: 'quantity',
  value: Number(Math.abs(slopePerH).toPrecision(2)),
  unit: differenceUnit(unit),
});

/** How long until then; beyond a month nobody plans by it. */
function until(at: EpochMs, now: EpochMs): Spoken {
  const monthMs = 30 * msPer.d;
  return at - now > monthMs
    ? plain(`more than ${spanText(monthMs)}`, `mehr als ${spanText(monthMs)}`)
    : { kind: 'duration', ms: at - now };
}
