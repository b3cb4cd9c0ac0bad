/**
 * Values that no quantity of a kind can have, whatever the sensor: beyond them a reading is bad. Wide
 * on purpose, with room for a sensor's zero error; the site's own `range` is the narrower check.
 *
 * What a unit alone leaves open is left open: a pressure may be gauge or a difference, a percentage a
 * change. A humidity is known by its unit (Pa/Pa, %{RH}) or its signal's name.
 */
import { type Unit, unitOf } from './unit.ts';
import type { Dimension } from './unit-table.ts';

export interface PossibleRange {
  /** Canonical; infinite where nothing bounds it. */
  readonly low: number;
  readonly high: number;
  /** What no such value is, as it follows "It is ". */
  readonly words: string;
}

const atLeast = (low: number, words: string): PossibleRange => ({
  low,
  high: Number.POSITIVE_INFINITY,
  words,
});

/** 0 to 100 % by definition (WMO-No. 8, part I, chapter 4); 5 % of error: common practice, no published source. */
const humidity: PossibleRange = {
  low: -5,
  high: 105,
  words: 'no relative humidity: that is 0 to 100 %',
};

/** Nothing is below 0 Pa against vacuum; 1 kPa of zero error: common practice, no published source. */
const absolutePressure = atLeast(-1, 'no absolute pressure: none is below 0');

const byDimension: Readonly<Partial<Record<Dimension, PossibleRange>>> = {
  // 0 K: SI Brochure, 9th edition, 2.3.1, t/°C = T/K - 273.15.
  temperature: atLeast(-273.15, 'below absolute zero, -273.15 °C'),
  // Water solutions of a plant, beyond what glass electrodes read: common practice, no published source.
  acidity: { low: -1, high: 15, words: 'no pH of a bath: that is 0 to 14' },
  // Never below nothing; room for a zero error of 1 in the canonical unit, as above.
  density: atLeast(0, 'no density: none is below 0'),
  conductivity: atLeast(-1, 'no conductivity: none is below 0'),
  viscosity: atLeast(-1, 'no viscosity: none is below 0'),
  resistance: atLeast(-1, 'no resistance: none is below 0'),
};

const humidityWords = ['humidity', 'rh'];
/** A change of a humidity may be below 0. */
const changeWords = ['change', 'rate', 'deviation', 'difference', 'error', 'margin'];

/** `code`: the unit as it is written; `name`: the signal's. null where nothing is known to bound it. */
export function possibleRange(unit: Unit, code: string, name: string): PossibleRange | null {
  if (unit.dimension === 'ratio') return isHumidity(code, name) ? humidity : null;
  if (unit.dimension === 'pressure') return isAbsolute(code) ? absolutePressure : null;
  return byDimension[unit.dimension] ?? null;
}

function isHumidity(code: string, name: string): boolean {
  const words = name.split('-');
  if (code === 'Pa/Pa' || /^%\{r\.?h\.?\}$/i.test(code)) return true;
  const isRatio = unitOf(code)?.dimension === 'ratio';
  const isNamed = words.some((word) => humidityWords.includes(word));
  return isRatio && isNamed && !words.some((word) => changeWords.includes(word));
}

/** kPa{abs}, bar{a}, bar{absolute}: annotations add nothing to a unit, and say what it is measured against. */
const isAbsolute = (code: string): boolean => /\{(a|abs|absolute)\}/i.test(code);
