/**
 * Values in the reader's units. Storage and wire are canonical; only what is shown is converted,
 * readings as readings and differences as differences (3 K are 5.4 °F).
 */
import { type Display, digitsFor, displayOf as displayIn } from '#rules/alarm/reader-units.ts';
import { spanText } from '#rules/alarm/say.ts';
import { toCanonical, unitOf } from '#rules/quantity/unit.ts';
import { readPreferences } from '../state/preferences.ts';
import { localNumber } from './language.ts';
import { say } from './say.ts';

export interface Shown {
  /** In the reader's unit. */
  readonly number: number;
  readonly symbol: string;
  readonly digits: number;
}

/** What a number is in: canonical, and as the site writes it. A bare code is a thing nobody writes otherwise. */
export type InUnit = string | { readonly unit: string; readonly written_unit?: string | undefined };

/** How the reader of this page wants it. */
export function displayOf(inUnit: InUnit): Display {
  const [unit, written] =
    typeof inUnit === 'string' ? [inUnit, undefined] : [inUnit.unit, inUnit.written_unit];
  const how = displayIn(unit, written, readPreferences());
  return unit === 'K.h' ? { ...how, symbol: say('degreeHours') } : how;
}

/** `resolution`: canonical step of the value; null where it keeps full doubles. */
export function shown(value: number, inUnit: InUnit, resolution: number | null): Shown {
  const how = displayOf(inUnit);
  const number = how.of(value);
  return { number, symbol: how.symbol, digits: digitsFor(resolution, how.perUnit, number) };
}

/** 1234.5 as the reader's language has it; a minus sign, never a hyphen. */
export function numberText(number: number, digits: number): string {
  const text = number.toFixed(digits);
  return localNumber((Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−'));
}

const nbsp = '\u00a0';

const withUnit = (text: string, symbol: string): string =>
  symbol === '' ? text : `${text}${nbsp}${symbol}`;

/** Seconds from this many on are told as a span: 604800 s are 7 d. */
const spanFromS = 120;

const isSpan = (value: number, inUnit: InUnit): boolean =>
  (typeof inUnit === 'string' ? inUnit : inUnit.unit) === 's' && Math.abs(value) >= spanFromS;

const spanOf = (seconds: number): string =>
  (seconds < 0 ? '−' : '') + localNumber(spanText(Math.abs(seconds) * 1_000)).replace(' ', nbsp);

/** Number and unit, never broken apart. */
export function quantity(value: number, inUnit: InUnit, resolution: number | null): string {
  if (isSpan(value, inUnit)) return spanOf(value);
  const { number, symbol, digits } = shown(value, inUnit, resolution);
  return withUnit(numberText(number, digits), symbol);
}

/**
 * A limit or another number that somebody wrote, as doubles have it: four figures, whole numbers
 * whole, no noughts at its end. The same text in the sentence, on the card and under the ruler.
 */
export function plainNumber(value: number, inUnit: InUnit): string {
  const number = displayOf(inUnit).of(value);
  const size = number === 0 ? 0 : Math.floor(Math.log10(Math.abs(number)));
  const text = number.toFixed(Math.min(6, Math.max(0, 3 - size)));
  return numberText(Number(text), text.includes('.') ? decimalsOf(text) : 0);
}

const decimalsOf = (text: string): number => (text.replace(/0+$/, '').split('.')[1] ?? '').length;

export const plainQuantity = (value: number, inUnit: InUnit): string =>
  isSpan(value, inUnit)
    ? spanOf(value)
    : withUnit(plainNumber(value, inUnit), displayOf(inUnit).symbol);

/** How far one value is from another: readings differ by a difference, in its own unit. */
export const differenceText = (
  difference: number,
  inUnit: InUnit,
  resolution: number | null,
): string => {
  const unit = typeof inUnit === 'string' ? inUnit : inUnit.unit;
  return quantity(difference, unit === 'Cel' ? 'K' : inUnit, resolution);
};

/** Settings that are readings; the others are spans, differences or counts and stand as written. */
const readings: readonly string[] = ['low', 'low_low', 'high', 'high_high', 'target'];

/** A setting as the site file has it, `112 Cel`, in the reader's unit where it is a reading or in kelvin. */
export function writtenQuantity(setting: string, written: string): string {
  const [, number, code = ''] = /^(-?\d+(?:\.\d+)?) (\S+)$/.exec(written) ?? [];
  const unit = unitOf(code);
  if (number === undefined || unit === null) return written;
  if (code === 'K') return plainQuantity(Number(number), 'K');
  // A speed of turning is read as rpm, how far it may move too.
  if (code === '/min') return plainQuantity(Number(number), code);
  if (!readings.includes(setting)) return written;
  return plainQuantity(toCanonical(Number(number), unit), {
    unit: unit.canonical,
    written_unit: code,
  });
}
