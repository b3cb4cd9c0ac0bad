/**
 * How a reader wants values: units for what is measured in several, and the decimals to show.
 *
 * Readings are converted as readings and differences as differences: 3 K are 5.4 °F.
 */
import { fromCanonical, unitOf } from '../quantity/unit.ts';
import { unitSymbol } from './unit-symbol.ts';

export interface ReaderUnits {
  readonly temperature: 'Cel' | '[degF]';
  readonly pressure: 'kPa' | 'bar' | '[psi]';
  /** Film and residue. */
  readonly smallLength: 'um' | '[mil_i]';
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
  if (unit === null) throw new RangeError(`nobody is shown a unit ${code}`);
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
export function displayOf(unit: string, near: number | null, units: ReaderUnits): Display {
  const { temperature, pressure, smallLength } = units;
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
