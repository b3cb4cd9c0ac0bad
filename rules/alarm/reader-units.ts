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
  /** Films. */
  readonly smallLength: 'um' | '[mil_i]';
  /** Air, parts drawn and carried: as each is written, in m/s or m/min, or both in feet. */
  readonly speed: 'm' | '[ft_i]/min';
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
  '[ft_i]/min': 'ft/min',
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

/** Filter drops and draughts: in bar they would be all zeros. */
const smallPressure = { bar: 'mbar', kPa: 'Pa', '[psi]': "[in_i'H2O]" } as const;
const smallPressures = ['Pa', 'mbar', 'hPa', 'mm[H2O]', 'cm[H2O]', "[in_i'H2O]", 'mm[Hg]'];
const films = ['um', 'nm', '[mil_i]', '[mil_us]'];

/**
 * How the reader wants a canonical unit. `written`: the UCUM code in which the site or its station
 * writes this thing, by which a draught is told from a header and a withdrawal from an exhaust; so
 * one thing has one unit, whatever its value. Absent, it is as the canonical one.
 */
export function displayOf(unit: string, written: string | undefined, units: ReaderUnits): Display {
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
      return display(smallPressures.includes(written ?? '') ? smallPressure[pressure] : pressure);
    case 'mm':
      return films.includes(written ?? '') ? display(smallLength) : asIs(unit);
    case 'm/s':
      return display(speedUnit(written ?? unit, units));
    case 'kg/m3':
      return display('g/mL');
    default:
      return asIs(unit);
  }
}

/** Rates of growth and of levels are told by the hour, whatever the reader has for speeds. */
function speedUnit(written: string, { speed }: ReaderUnits): string {
  if (written.endsWith('/h')) return 'mm/h';
  if (speed !== 'm') return speed;
  return written.endsWith('/min') ? 'm/min' : 'm/s';
}

/** Decimals that keep what the resolution tells and add nothing. */
export function digitsFor(resolution: number | null, perUnit: number, number: number): number {
  if (resolution !== null)
    return Math.min(6, Math.max(0, Math.ceil(-Math.log10(resolution * perUnit) - 0.3)));
  const size = Math.abs(number);
  return size === 0 ? 1 : Math.min(4, Math.max(0, 2 - Math.floor(Math.log10(size))));
}
