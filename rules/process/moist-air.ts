/**
 * Moist air: humidity ratio, wet bulb, enthalpy, volume. For drying and flash-off, where a
 * dew point says little.
 *
 * Ideal gases without the enhancement factor: against saturated tables that include it the
 * humidity ratio is low by 0.5 % at 25 °C and 1.2 % at 85 °C. Pressure is absolute, Pa.
 * Below 0 °C the wick of a wet bulb carries ice. Outside its range a function answers null, never NaN.
 *
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 20, 26, 30, 33 and 35, with the
 * saturation pressure of Sonntag 1990.
 */
import { firstDepositFromHumidityC, vapourPressureOverWaterPa } from './humidity.ts';
import { saturationPressureOverIcePa, saturationPressureOverWaterPa } from './saturation.ts';
import type { Subject } from './subject.ts';

/** Molar mass of water over that of dry air. */
const massRatio = 0.621945;
const dryAirGasConstantJPerKgK = 287.042;

const believable = (pressurePa: number): boolean => pressurePa >= 1e3 && pressurePa <= 2e6;

/** W = 0.621945 e / (p - e), kg water a kg dry air. p 1 kPa to 2 MPa, e from 0 to below p; null outside. */
export function humidityRatio(vapourPressurePa: number, pressurePa: number): number | null {
  if (!believable(pressurePa)) return null;
  if (!(vapourPressurePa >= 0 && vapourPressurePa < pressurePa)) return null;
  return (massRatio * vapourPressurePa) / (pressurePa - vapourPressurePa);
}

/** e = p W / (0.621945 + W), Pa. W from 0 to 1e3, p 1 kPa to 2 MPa; null outside. */
export function vapourPressureFromRatioPa(ratio: number, pressurePa: number): number | null {
  if (!(ratio >= 0 && ratio <= 1e3 && believable(pressurePa))) return null;
  return (pressurePa * ratio) / (massRatio + ratio);
}

/** W of saturated air at t over water, -100 to 100 °C. Null outside and where e_w(t) is not below p. */
export function saturatedHumidityRatioOverWater(
  temperatureC: number,
  pressurePa: number,
): number | null {
  const saturationPa = saturationPressureOverWaterPa(temperatureC);
  return saturationPa === null ? null : humidityRatio(saturationPa, pressurePa);
}

/**
 * W from dry and wet bulb, kg/kg; a wet bulb below 0 °C is an iced one. -100 to 100 °C; null
 * outside, for a wet bulb above the dry one, and where air cannot be that dry.
 */
export function humidityRatioFromWetBulbIcedBelowFreezing(
  dryBulbC: number,
  wetBulbC: number,
  pressurePa: number,
): number | null {
  if (!(dryBulbC >= -100 && dryBulbC <= 100 && wetBulbC <= dryBulbC)) return null;
  const iced = wetBulbC < 0;
  const wickPa = iced
    ? saturationPressureOverIcePa(wetBulbC)
    : saturationPressureOverWaterPa(wetBulbC);
  const saturated = wickPa === null ? null : humidityRatio(wickPa, pressurePa);
  if (saturated === null) return null;
  const sensible = 1.006 * (dryBulbC - wetBulbC);
  const ratio = iced
    ? ((2830 - 0.24 * wetBulbC) * saturated - sensible) / (2830 + 1.86 * dryBulbC - 2.1 * wetBulbC)
    : ((2501 - 2.326 * wetBulbC) * saturated - sensible) /
      (2501 + 1.86 * dryBulbC - 4.186 * wetBulbC);
  return ratio >= 0 ? ratio : null;
}

/**
 * Thermodynamic wet bulb, °C, within 1e-6 K; humidity over water. -100 to 100 °C, over 0 to
 * 100 %; null outside and where the air would have to boil.
 */
export function wetBulbIcedBelowFreezingC(
  temperatureC: number,
  humidityPct: number,
  pressurePa: number,
): number | null {
  if (!(humidityPct <= 100)) return null;
  const vapourPa = vapourPressureOverWaterPa(temperatureC, humidityPct);
  const wanted = vapourPa === null ? null : humidityRatio(vapourPa, pressurePa);
  const deposit = firstDepositFromHumidityC(temperatureC, humidityPct);
  if (wanted === null || deposit === null) return null;
  let below = Math.min(deposit, temperatureC);
  let above = temperatureC;
  while (above - below > 1e-6) {
    const middle = (below + above) / 2;
    // Null below the answer means too dry; above it a wick near boiling, which is too wet.
    const ratio =
      humidityRatioFromWetBulbIcedBelowFreezing(temperatureC, middle, pressurePa) ??
      (saturatedHumidityRatioOverWater(middle, pressurePa) === null ? Number.POSITIVE_INFINITY : 0);
    if (ratio > wanted) above = middle;
    else below = middle;
  }
  return (below + above) / 2;
}

/** h = 1.006 t + W (2501 + 1.86 t), kJ a kg dry air, from 0 °C dry. -100 to 200 °C, W 0 to 1e3; null outside. */
export function enthalpyKJPerKg(temperatureC: number, ratio: number): number | null {
  if (!(temperatureC >= -100 && temperatureC <= 200 && ratio >= 0 && ratio <= 1e3)) return null;
  return 1.006 * temperatureC + ratio * (2501 + 1.86 * temperatureC);
}

/** v = 287.042 T (1 + 1.607858 W) / p, m3 a kg dry air. -100 to 200 °C, W 0 to 1e3, p 1 kPa to 2 MPa; null outside. */
export function specificVolumeM3PerKg(
  temperatureC: number,
  ratio: number,
  pressurePa: number,
): number | null {
  if (!(temperatureC >= -100 && temperatureC <= 200 && ratio >= 0 && ratio <= 1e3)) return null;
  if (!believable(pressurePa)) return null;
  return (dryAirGasConstantJPerKgK * (temperatureC + 273.15) * (1 + 1.607858 * ratio)) / pressurePa;
}

export const subject: Subject = {
  title: 'Moist air',
  about: 'Water in air by mass, wet bulb, enthalpy, volume: for drying and flash-off.',
  symbols: {
    W: 'humidity ratio, kg water a kg dry air; W* saturated at the wet bulb',
    e: 'vapour pressure, Pa',
    p: 'absolute pressure, Pa',
    t: 'dry bulb, °C; t* wet bulb',
    h: 'enthalpy, kJ a kg dry air',
    v: 'volume, m3 a kg dry air',
    T: 'temperature, K',
  },
  source:
    'ASHRAE Handbook Fundamentals 2017, chapter 1, equations 20, 26, 30, 33, 35; saturation by Sonntag 1990.',
  uncertainty:
    'Ideal gases: W low by 0.5 % at 25 °C and 1.2 % at 85 °C against tables with the enhancement factor.',
  functions: {
    humidityRatio: {
      formula: 'W = 0.621945 e/(p - e)',
      range: 'p 1 kPa to 2 MPa, e from 0 to below p; nothing outside.',
    },
    vapourPressureFromRatioPa: {
      formula: 'e = p W/(0.621945 + W)',
      range: 'W 0 to 1000, p as above; nothing outside.',
    },
    saturatedHumidityRatioOverWater: {
      formula: 'W with e = e_w(t)',
      range: '-100 to 100 °C; nothing outside and where water would boil.',
    },
    humidityRatioFromWetBulbIcedBelowFreezing: {
      formula:
        'W = ((2501 - 2.326 t*) W* - 1.006 (t - t*))/(2501 + 1.86 t - 4.186 t*); below 0 °C with the figures of ice',
      range: '-100 to 100 °C, wet bulb not above dry; nothing outside.',
    },
    wetBulbIcedBelowFreezingC: {
      formula: 'the t* that gives W, by bisection to 1e-6 K',
      range: '-100 to 100 °C, RH over 0 to 100 %; nothing outside.',
    },
    enthalpyKJPerKg: {
      formula: 'h = 1.006 t + W (2501 + 1.86 t)',
      range: '-100 to 200 °C, W 0 to 1000; nothing outside.',
    },
    specificVolumeM3PerKg: {
      formula: 'v = 287.042 T (1 + 1.607858 W)/p',
      range: '-100 to 200 °C, W 0 to 1000, p as above; nothing outside.',
    },
  },
};
