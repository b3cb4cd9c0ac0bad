/**
 * An alarm's sentence: its label's words filled in with what the evidence holds.
 *
 * Values print in their canonical units with the signal's decimals, times in the site's zone,
 * spans in the unit a person would use. A name the evidence does not hold prints as "unknown":
 * a sentence must never fail where somebody waits for it.
 */
import type { Evidence } from '../kinds/kind.ts';
import type { CardLabel, Fact } from '../plan/card.ts';
import { causeOf } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import { unitSymbol } from './unit-symbol.ts';

export interface Subject {
  /** `line/station`. */
  readonly station: string;
  /** `line/station/signal`. */
  readonly signal: string;
  readonly unit: string;
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
  return `${Math.round(span / msPer.d)} d`;
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
  const number = digits === null ? String(Number(value.toPrecision(6))) : value.toFixed(digits);
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
  return fill(label.sentence ?? kindSentence(evidence), words);
}

/** Steps, cautions and the rest of a label name facts too. */
export const fillFacts = (text: string, subject: Subject): string =>
  fill(text, wordsOf(subject, {}, 0));

const fill = (text: string, words: Readonly<Record<string, string | undefined>>): string =>
  text.replace(/\{\$(\w+)\}/g, (_, name: string) => words[name] ?? 'unknown');

function factText(fact: Fact): string {
  switch (fact.kind) {
    case 'quantity':
      return quantityText(fact.value, fact.unit, null);
    case 'duration':
      return spanText(fact.ms);
    case 'text':
      return fact.text;
  }
}

function wordsOf(
  subject: Subject,
  evidence: Evidence,
  now: EpochMs,
): Record<string, string | undefined> {
  const { unit, digits, timezone } = subject;
  const value = (x: number | undefined): string | undefined =>
    x === undefined ? undefined : quantityText(x, unit, digits);
  const until = (x: EpochMs | undefined): string | undefined =>
    x === undefined ? undefined : spanText(x - now);
  const { sinceMs, slopePerH, cause } = evidence;
  const facts = Object.entries(subject.facts).map(([name, fact]) => [name, factText(fact)]);
  const slopeUnit = unit === 'Cel' ? 'K' : unit;
  return {
    ...Object.fromEntries(facts),
    station: subject.station,
    signal: subject.signal,
    container: subject.container ?? subject.station,
    value: value(evidence.value),
    limit: value(evidence.limit),
    slope:
      slopePerH === undefined
        ? undefined
        : quantityText(Math.abs(slopePerH), slopeUnit, digits ?? 2),
    early: until(evidence.earliestMs),
    late: until(evidence.latestMs),
    duration: sinceMs === undefined ? undefined : spanText(now - sinceMs),
    clock: sinceMs === undefined ? undefined : clockText(sinceMs, timezone, now),
    cause: cause === undefined ? undefined : (causeOf(cause) ?? undefined),
  };
}
