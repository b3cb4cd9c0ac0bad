/**
 * Values in the reader's units. Storage and wire are canonical; only what is shown is converted,
 * readings as readings and differences as differences (3 K are 5.4 °F).
 */
import { type Display, digitsFor, displayOf as displayIn } from '#rules/alarm/reader-units.ts';
import { toCanonical, unitOf } from '#rules/quantity/unit.ts';
import { readPreferences } from '../state/preferences.ts';

export interface Shown {
  /** In the reader's unit. */
  readonly number: number;
  readonly symbol: string;
  readonly digits: number;
}

/** How the reader of this page wants a canonical unit. `near`: a value or limit, which decides for lengths. */
export const displayOf = (unit: string, near: number | null): Display =>
  displayIn(unit, near, readPreferences());

/** `resolution`: canonical step of the value; null where it keeps full doubles. */
export function shown(value: number, unit: string, resolution: number | null): Shown {
  const how = displayOf(unit, value);
  const number = how.of(value);
  return { number, symbol: how.symbol, digits: digitsFor(resolution, how.perUnit, number) };
}

/** 1234.5 as the reader's language has it; a minus sign, never a hyphen. */
export function numberText(number: number, digits: number): string {
  const text = number.toFixed(digits);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}

const nbsp = '\u00a0';

/** Number and unit, never broken apart. */
export function quantity(value: number, unit: string, resolution: number | null): string {
  const { number, symbol, digits } = shown(value, unit, resolution);
  const text = numberText(number, digits);
  return symbol === '' ? text : `${text}${nbsp}${symbol}`;
}

/** A limit or setting, which somebody wrote: as few decimals as say it. */
export function plainQuantity(value: number, unit: string): string {
  const how = displayOf(unit, value);
  const number = Number(how.of(value).toPrecision(5));
  const digits = (String(number).split('.')[1] ?? '').length;
  const text = numberText(number, Math.min(digits, 4));
  return how.symbol === '' ? text : `${text}${nbsp}${how.symbol}`;
}

/** How far one value is from another: readings differ by a difference, in its own unit. */
export const differenceText = (
  difference: number,
  unit: string,
  resolution: number | null,
): string => {
  if (unit !== 'Cel') return quantity(difference, unit, resolution);
  return quantity(difference, 'K', resolution);
};

/** Settings that are readings; the others are spans, differences or counts and stand as written. */
const readings: readonly string[] = ['low', 'low_low', 'high', 'high_high'];

/** A setting as the site file has it, `112 Cel`, in the reader's unit where it is a reading or in kelvin. */
export function writtenQuantity(setting: string, written: string): string {
  const [, number, code = ''] = /^(-?\d+(?:\.\d+)?) (\S+)$/.exec(written) ?? [];
  const unit = unitOf(code);
  if (number === undefined || unit === null) return written;
  if (code === 'K') return plainQuantity(Number(number), 'K');
  if (!readings.includes(setting)) return written;
  return plainQuantity(toCanonical(Number(number), unit), unit.canonical);
}
