/**
 * Compressed air: pressure dew point to dew point at another pressure, and the water class.
 *
 * The share of vapour in the air does not change when the pressure does, so
 * e(t2) p1 = e(t1) p2 with both pressures absolute. The enhancement factor is left out: about
 * 0.2 K in the frost point at 8 bar. Published tables of this conversion mix two conventions,
 * 2 to 3 K apart: over ice below freezing (frost point) and over supercooled water; each name
 * here says which. Outside its range a function answers null, never NaN.
 */
import {
  dewPointOverWaterC,
  frostPointBelowFreezingElseDewPointC,
  saturationPressureOverIceBelowFreezingPa,
  saturationPressureOverWaterPa,
} from './saturation.ts';
import type { Subject } from './subject.ts';

/** kPa absolute: the standard atmosphere (ISO 2533), where nobody measured the real one. */
export const standardAtmosphereKPa = 101.325;

const absoluteKPaMax = 2_000;
const pdpMaxC = 60;

/**
 * Absolute pressure of a gauge reading, kPa; gauge readings are over the atmosphere around the
 * gauge. Null unless the atmosphere is 50 to 120 kPa and the sum over 0 and up to 2000 kPa.
 */
export function absoluteFromGaugeKPa(
  gaugeKPa: number,
  atmosphereKPa = standardAtmosphereKPa,
): number | null {
  if (!(atmosphereKPa >= 50 && atmosphereKPa <= 120)) return null;
  const absoluteKPa = gaugeKPa + atmosphereKPa;
  return absoluteKPa > 0 && absoluteKPa <= absoluteKPaMax ? absoluteKPa : null;
}

/**
 * Dew point after a change of pressure, °C, over ice below the triple point on both sides.
 * From -100 to 60 °C, both pressures absolute, over 0 and up to 2000 kPa; null outside, and
 * where the result would lie outside -100 to 100 °C.
 */
export function frostPointBelowFreezingAtPressureC(
  dewPointC: number,
  fromAbsoluteKPa: number,
  toAbsoluteKPa: number,
): number | null {
  if (!(dewPointC <= pdpMaxC)) return null;
  const fromPa = saturationPressureOverIceBelowFreezingPa(dewPointC);
  const toPa = atPressure(fromPa, fromAbsoluteKPa, toAbsoluteKPa);
  return toPa === null ? null : frostPointBelowFreezingElseDewPointC(toPa);
}

/** The same over liquid water at every temperature, supercooled below 0 °C, on both sides. */
export function dewPointOverWaterAtPressureC(
  dewPointC: number,
  fromAbsoluteKPa: number,
  toAbsoluteKPa: number,
): number | null {
  if (!(dewPointC <= pdpMaxC)) return null;
  const fromPa = saturationPressureOverWaterPa(dewPointC);
  const toPa = atPressure(fromPa, fromAbsoluteKPa, toAbsoluteKPa);
  return toPa === null ? null : dewPointOverWaterC(toPa);
}

/**
 * Pressure dew point to frost point at the atmosphere, °C (a dew point where it lies over 0.01 °C).
 * The line pressure is gauge. Ranges as the two functions it is made of; null outside.
 */
export function atmosphericFrostPointC(
  pressureDewPointC: number,
  lineGaugeKPa: number,
  atmosphereKPa = standardAtmosphereKPa,
): number | null {
  const lineKPa = absoluteFromGaugeKPa(lineGaugeKPa, atmosphereKPa);
  if (lineKPa === null) return null;
  return frostPointBelowFreezingAtPressureC(pressureDewPointC, lineKPa, atmosphereKPa);
}

/** Pressure dew point to dew point over (supercooled) water at the atmosphere, °C; the line pressure is gauge. */
export function atmosphericDewPointOverWaterC(
  pressureDewPointC: number,
  lineGaugeKPa: number,
  atmosphereKPa = standardAtmosphereKPa,
): number | null {
  const lineKPa = absoluteFromGaugeKPa(lineGaugeKPa, atmosphereKPa);
  if (lineKPa === null) return null;
  return dewPointOverWaterAtPressureC(pressureDewPointC, lineKPa, atmosphereKPa);
}

/**
 * Vapour in the air, parts per million by volume: e / p, p absolute. A pressure dew point -100 to
 * 60 °C, over ice below freezing; null outside, and where e is not below p.
 */
export function vapourPpm(pressureDewPointC: number, lineAbsoluteKPa: number): number | null {
  if (!(pressureDewPointC <= pdpMaxC)) return null;
  const vapourPa = saturationPressureOverIceBelowFreezingPa(pressureDewPointC);
  if (vapourPa === null || !(lineAbsoluteKPa > 0 && lineAbsoluteKPa <= absoluteKPaMax)) return null;
  const share = vapourPa / (lineAbsoluteKPa * 1_000);
  return share < 1 ? share * 1e6 : null;
}

/**
 * Water class of ISO 8573-1:2010 by pressure dew point alone: 1 to 6; null above +10 °C, where the
 * classes 7 to 9 go by liquid water, which no dew point shows. Class 0 is an agreement and never
 * read off. Nothing is said of oil and particles: those classes take a laboratory.
 */
export function waterClassByDewPoint(pressureDewPointC: number): 1 | 2 | 3 | 4 | 5 | 6 | null {
  if (!(pressureDewPointC >= -273.15)) return null;
  if (pressureDewPointC <= -70) return 1;
  if (pressureDewPointC <= -40) return 2;
  if (pressureDewPointC <= -20) return 3;
  if (pressureDewPointC <= 3) return 4;
  if (pressureDewPointC <= 7) return 5;
  return pressureDewPointC <= 10 ? 6 : null;
}

function atPressure(
  vapourPa: number | null,
  fromAbsoluteKPa: number,
  toAbsoluteKPa: number,
): number | null {
  if (vapourPa === null) return null;
  if (!(fromAbsoluteKPa > 0 && fromAbsoluteKPa <= absoluteKPaMax)) return null;
  if (!(toAbsoluteKPa > 0 && toAbsoluteKPa <= absoluteKPaMax)) return null;
  return (vapourPa / fromAbsoluteKPa) * toAbsoluteKPa;
}

export const subject: Subject = {
  title: 'Compressed air',
  about:
    'Pressure dew point to dew point at another pressure, and the water class. The hazard of a spray line is liquid water and oil in its pipe; a dew point says nothing of oil or particles.',
  symbols: {
    t1: 'dew point at the first pressure, °C; t2 at the second',
    p1: 'first absolute pressure, kPa; p2 second',
    e: 'saturation pressure over water, or over ice below freezing, Pa',
    PDP: 'pressure dew point, °C',
  },
  source:
    'Share of vapour unchanged; Sonntag 1990. Classes: ISO 8573-1:2010, as tabled by two makers of equipment.',
  uncertainty: '0.2 K in the frost point at 8 bar, for the enhancement factor left out.',
  functions: {
    absoluteFromGaugeKPa: {
      formula: 'gauge + atmosphere',
      range: 'Atmosphere 50 to 120 kPa, sum over 0 to 2000 kPa; nothing outside.',
    },
    frostPointBelowFreezingAtPressureC: {
      formula: 'e(t2) p1 = e(t1) p2, over ice below the triple point',
      range: '-100 to 60 °C, over 0 to 2000 kPa absolute; nothing outside.',
    },
    dewPointOverWaterAtPressureC: {
      formula: 'e_w(t2) p1 = e_w(t1) p2, over water at every temperature',
      range: 'As above; nothing outside.',
    },
    atmosphericFrostPointC: {
      formula: 'as above, from the line to the atmosphere, over ice below freezing',
      range: 'As above; line pressure gauge.',
    },
    atmosphericDewPointOverWaterC: {
      formula: 'as above, from the line to the atmosphere, over water',
      range: 'As above; line pressure gauge.',
    },
    vapourPpm: {
      formula: '1e6 e/p',
      range: '-100 to 60 °C; nothing outside and where e is not below p.',
    },
    waterClassByDewPoint: {
      formula: '1: PDP <= -70, 2: -40, 3: -20, 4: +3, 5: +7, 6: +10 °C',
      range: 'Nothing above +10 °C, where the class goes by liquid water. Never class 0.',
    },
  },
};
