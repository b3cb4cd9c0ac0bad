/**
 * Saturation pressure of water vapour over water and over ice, and the temperatures back from it.
 *
 * Below 0 °C "dew point" has two meanings, 1 to 3 K apart: over supercooled water, as weather
 * services and humidity sensors mean it, and over ice (the frost point). Every name here says which.
 * Outside its range a function answers null, never NaN and never a number it does not believe in.
 *
 * Source: D. Sonntag, Important new values of the physical constants of 1986, vapour pressure
 * formulations based on the ITS-90, and psychrometer formulae, Z. Meteorol. 40 (1990) 340-344.
 * Ranges as commonly quoted from it: water -100 to 100 °C (below 0 °C supercooled), ice -100 to
 * 0 °C; taken here up to the triple point, 0.01 °C, where the two meet at 611.657 Pa.
 */
import type { Subject } from './subject.ts';

const zeroCelsiusK = 273.15;
export const triplePointC = 0.01;
const lowestC = -100;
const highestC = 100;

/** ln p = a / T + b + c T + d T^2 + e ln T; p in Pa, T in K. */
interface Curve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly topC: number;
  /** Magnus approximation of the same curve, only to begin the search for a temperature. */
  readonly magnusSlope: number;
  readonly magnusC: number;
}

const overWater: Curve = {
  a: -6096.9385,
  b: 21.2409642,
  c: -2.711193e-2,
  d: 1.673952e-5,
  e: 2.433502,
  topC: highestC,
  magnusSlope: 17.62,
  magnusC: 243.12,
};
const overIce: Curve = {
  a: -6024.5282,
  b: 29.32707,
  c: 1.0613868e-2,
  d: -1.3198825e-5,
  e: -0.49382577,
  topC: triplePointC,
  magnusSlope: 22.46,
  magnusC: 272.62,
};

/** e_w(t): Pa over liquid water at t, -100 to 100 °C (supercooled below 0); null outside. */
export const saturationPressureOverWaterPa = (temperatureC: number): number | null =>
  pressurePa(overWater, temperatureC);

/** e_i(t): Pa over ice at t, -100 to 0.01 °C; null outside. */
export const saturationPressureOverIcePa = (temperatureC: number): number | null =>
  pressurePa(overIce, temperatureC);

/**
 * t_d: the temperature at which vapour of this pressure is saturated over liquid water, also
 * below 0 °C. Pressures of -100 to 100 °C, that is 0.0036 to 101 400 Pa; null outside.
 */
export const dewPointOverWaterC = (vapourPressurePa: number): number | null =>
  temperatureC(overWater, vapourPressurePa);

/** t_f: the same over ice, -100 to 0.01 °C, up to 611.657 Pa; null outside. */
export const frostPointOverIceC = (vapourPressurePa: number): number | null =>
  temperatureC(overIce, vapourPressurePa);

/** Over ice below the triple point, over water above: what settles first on a cooling surface. */
export const saturationPressureOverIceBelowFreezingPa = (temperatureC: number): number | null =>
  pressurePa(temperatureC < triplePointC ? overIce : overWater, temperatureC);

/** The frost point over ice below the triple point, the dew point over water above; null outside. */
export const frostPointBelowFreezingElseDewPointC = (vapourPressurePa: number): number | null =>
  temperatureC(overIce, vapourPressurePa) ?? temperatureC(overWater, vapourPressurePa);

const lnPressure = (curve: Curve, temperatureK: number): number =>
  curve.a / temperatureK +
  curve.b +
  (curve.c + curve.d * temperatureK) * temperatureK +
  curve.e * Math.log(temperatureK);

function pressurePa(curve: Curve, temperatureC: number): number | null {
  // Written so that NaN fails it too.
  if (!(temperatureC >= lowestC && temperatureC <= curve.topC)) return null;
  return Math.exp(lnPressure(curve, temperatureC + zeroCelsiusK));
}

/** Newton's method on ln p, which is monotone and nearly straight in 1/T. */
function temperatureC(curve: Curve, vapourPressurePa: number): number | null {
  if (!(vapourPressurePa > 0 && vapourPressurePa < 1e6)) return null;
  const wanted = Math.log(vapourPressurePa);
  const ratio = wanted - Math.log(611.2);
  // Far below the range Magnus has a pole; any start above it converges to the same place.
  let foundC = Math.max(-110, (curve.magnusC * ratio) / (curve.magnusSlope - ratio));
  for (let turn = 0; turn < 12; turn += 1) {
    const k = foundC + zeroCelsiusK;
    const slopePerK = -curve.a / (k * k) + curve.c + 2 * curve.d * k + curve.e / k;
    const stepK = (lnPressure(curve, k) - wanted) / slopePerK;
    foundC -= stepK;
    if (Math.abs(stepK) < 1e-10) return withinRange(curve, foundC);
  }
  return null;
}

/** The ends belong to the range: what the search misses them by, below 1e-9 K, is no reason to refuse. */
function withinRange(curve: Curve, foundC: number): number | null {
  if (foundC < lowestC - 1e-9 || foundC > curve.topC + 1e-9) return null;
  return Math.min(curve.topC, Math.max(lowestC, foundC));
}

export const subject: Subject = {
  title: 'Saturation of water vapour',
  about:
    'How much vapour air can hold over water and over ice, and the temperatures back from it. Below 0 °C the two lie 1 to 3 K apart in dew point, so every name says which.',
  symbols: {
    e_w: 'saturation pressure over water, Pa',
    e_i: 'saturation pressure over ice, Pa',
    e: 'vapour pressure, Pa',
    T: 'temperature, K',
  },
  source:
    'D. Sonntag, Z. Meteorol. 40 (1990) 340-344; its ranges as commonly quoted (from memory).',
  uncertainty:
    'Over water within 5e-5 of IAPWS from 0 to 25 °C; over ice within 1e-4 down to -20 °C, 6e-4 at -60 °C.',
  functions: {
    saturationPressureOverWaterPa: {
      formula:
        'ln e_w = -6096.9385/T + 21.2409642 - 2.711193e-2 T + 1.673952e-5 T^2 + 2.433502 ln T',
      range: '-100 to 100 °C, supercooled below 0; nothing outside.',
    },
    saturationPressureOverIcePa: {
      formula:
        'ln e_i = -6024.5282/T + 29.32707 + 1.0613868e-2 T - 1.3198825e-5 T^2 - 0.49382577 ln T',
      range: '-100 to 0.01 °C; nothing outside.',
    },
    saturationPressureOverIceBelowFreezingPa: {
      formula: 'e_i below the triple point, 0.01 °C, e_w above',
      range: '-100 to 100 °C; nothing outside.',
    },
    dewPointOverWaterC: {
      formula: 'the temperature with e_w = e, by Newton on ln e_w',
      range: '0.0036 to 101 400 Pa; nothing outside.',
    },
    frostPointOverIceC: {
      formula: 'the temperature with e_i = e',
      range: 'Up to 611.657 Pa; nothing outside.',
    },
    frostPointBelowFreezingElseDewPointC: {
      formula: 'the frost point below the triple point, the dew point above',
      range: 'Up to 101 400 Pa; nothing outside.',
    },
  },
};
