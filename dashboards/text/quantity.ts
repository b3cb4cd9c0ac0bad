/**
 * Values in the reader's units. Storage and wire are canonical; only what is shown is converted,
 * readings as readings and differences as differences (3 K are 5.4 °F).
 */
import { unitSymbol } from '#rules/alarm/unit-symbol.ts';
import { fromCanonical, toCanonical, unitOf } from '#rules/quantity/unit.ts';
import { readPreferences } from '../state/preferences.ts';

export interface Shown {
  /** In the reader's unit. */
  readonly number: number;
  readonly symbol: string;
  readonly digits: number;
}

export interface Display {
  readonly symbol: string;
  readonly of: (canonical: number) => number;
  /** What one canonical unit is in the reader's; for decimals and differences. */
  readonly perUnit: number;
}

const symbols: Readonly<Record<string, string>> = {
  '[degF]': '°F',
  '[degF]{difference}': '°F',
  'Cel{difference}': '°C',
  '[psi]': 'psi',
  bar: 'bar',
  mbar: 'mbar',
  Pa: 'Pa',
  "[in_i'H2O]": 'inH₂O',
  um: 'µm',
  '[mil_i]': 'mil',
  'g/mL': 'g/mL',
  'm/min': 'm/min',
};

function display(code: string): Display {
  const unit = unitOf(code);
  if (unit === null) throw new RangeError(`the page shows no unit ${code}`);
  const of = (canonical: number): number => fromCanonical(canonical, unit);
  return { symbol: symbols[code] ?? unitSymbol(code), of, perUnit: unit.over / unit.times };
}

const asIs = (unit: string): Display => ({
  symbol: unit === '/min' ? 'rpm' : unitSymbol(unit),
  of: (value) => value,
  perUnit: 1,
});

/** Filter drops and drafts: in bar they would be all zeros. */
const smallPressure = { bar: 'mbar', kPa: 'Pa', '[psi]': "[in_i'H2O]" } as const;

/** How the reader wants a canonical unit. `near`: a value or limit, which decides for lengths. */
export function displayOf(unit: string, near: number | null): Display {
  const { temperature, pressure, smallLength } = readPreferences();
  switch (unit) {
    case 'Cel':
      return display(temperature);
    case 'K':
      return display(`${temperature}{difference}`);
    case 'K/min': {
      const { symbol, perUnit } = display(`${temperature}{difference}`);
      return { symbol: `${symbol}/min`, of: (value) => value * perUnit, perUnit };
    }
    case 'kPa':
      return display(near !== null && Math.abs(near) < 5 ? smallPressure[pressure] : pressure);
    case 'mm':
      return near !== null && Math.abs(near) < 3 ? display(smallLength) : asIs(unit);
    case 'm/s':
      return near !== null && Math.abs(near) < 0.2 ? display('m/min') : asIs(unit);
    case 'kg/m3':
      return display('g/mL');
    default:
      return asIs(unit);
  }
}

/** Decimals that keep what the resolution tells and add nothing. */
export function digitsFor(resolution: number | null, perUnit: number, number: number): number {
  if (resolution !== null)
    return Math.min(6, Math.max(0, Math.ceil(-Math.log10(resolution * perUnit) - 0.3)));
  const size = Math.abs(number);
  return size === 0 ? 1 : Math.min(4, Math.max(0, 2 - Math.floor(Math.log10(size))));
}

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
