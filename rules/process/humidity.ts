/**
 * Relative humidity to vapour pressure, dew point and the margin of a surface above it.
 *
 * Relative humidity is over liquid water at every temperature, as weather services (WMO-No. 8,
 * Guide to Instruments and Methods of Observation) and the makers of humidity sensors define it.
 * Some handbooks take it over ice below 0 °C: at -5 °C and 80 % that is 5 % less vapour.
 * Outside its range a function answers null, never NaN.
 */
import {
  dewPointOverWaterC,
  frostPointBelowFreezingElseDewPointC,
  saturationPressureOverWaterPa,
} from './saturation.ts';
import type { Subject } from './subject.ts';

/**
 * The highest reading taken as a humidity. A good sensor in saturated air may read a few percent
 * over 100 (common practice, no published source), and that is when condensation must be seen.
 */
export const humidityPctMax = 105;

/** J/(kg K): 8.314462618 / 0.018015268, molar gas constant over molar mass of water (CODATA 2018; IAPWS). */
const vapourGasConstantJPerKgK = 461.523;

/**
 * e = RH/100 e_w(t), Pa. t -100 to 100 °C, RH over 0 and up to 105 % over water; null outside.
 */
export function vapourPressureOverWaterPa(
  temperatureC: number,
  humidityPct: number,
): number | null {
  if (!(humidityPct > 0 && humidityPct <= humidityPctMax)) return null;
  const saturationPa = saturationPressureOverWaterPa(temperatureC);
  return saturationPa === null ? null : (saturationPa * humidityPct) / 100;
}

/** t_d over water, °C, also below 0 °C. Ranges as `vapourPressureOverWaterPa`; null outside. */
export function dewPointOverWaterFromHumidityC(
  temperatureC: number,
  humidityPct: number,
): number | null {
  const vapourPa = vapourPressureOverWaterPa(temperatureC, humidityPct);
  return vapourPa === null ? null : dewPointOverWaterC(vapourPa);
}

/**
 * Where moisture first settles on a cooling surface, °C: dew point over water above the triple
 * point, frost point over ice below it. Ranges as `vapourPressureOverWaterPa`; null outside.
 */
export function firstDepositFromHumidityC(
  temperatureC: number,
  humidityPct: number,
): number | null {
  const vapourPa = vapourPressureOverWaterPa(temperatureC, humidityPct);
  return vapourPa === null ? null : frostPointBelowFreezingElseDewPointC(vapourPa);
}

/**
 * Margin of a surface above the first deposit, K: surface temperature minus dew point, below
 * 0 °C minus frost point, which is the higher of the two and so the smaller margin. Negative
 * where the surface is wet or frosted. 3 K is the customary least margin before coating;
 * ISO 8502-4 itself gives guidance and no single figure. Surface -100 to 100 °C; null outside.
 */
export function surfaceMarginK(
  surfaceC: number,
  temperatureC: number,
  humidityPct: number,
): number | null {
  if (!(surfaceC >= -100 && surfaceC <= 100)) return null;
  const depositC = firstDepositFromHumidityC(temperatureC, humidityPct);
  return depositC === null ? null : surfaceC - depositC;
}

/** Relative humidity over water, %, of vapour of this pressure in air at t; null outside -100 to 100 °C. */
export function humidityOverWaterPct(
  vapourPressurePa: number,
  temperatureC: number,
): number | null {
  const saturationPa = saturationPressureOverWaterPa(temperatureC);
  if (saturationPa === null || !(vapourPressurePa >= 0 && vapourPressurePa < 1e6)) return null;
  return (vapourPressurePa / saturationPa) * 100;
}

/** rho_v = e / (R_v T), kg/m3, as an ideal gas (error below 0.2 % under 50 °C). -100 to 100 °C; null outside. */
export function vapourDensityKgPerM3(
  vapourPressurePa: number,
  temperatureC: number,
): number | null {
  if (!(temperatureC >= -100 && temperatureC <= 100)) return null;
  if (!(vapourPressurePa >= 0 && vapourPressurePa < 1e6)) return null;
  return vapourPressurePa / (vapourGasConstantJPerKgK * (temperatureC + 273.15));
}

export const subject: Subject = {
  title: 'Humidity, dew point and margin of a surface',
  about:
    'What a humidity sensor says about condensation on a part. Relative humidity is over water at every temperature. The margin matters for cold bare metal and cold coated parts; it does not judge flash-off.',
  symbols: {
    RH: 'relative humidity over water, %',
    t: 'air temperature, °C; t_s of the surface',
    e: 'vapour pressure, Pa',
    e_w: 'saturation pressure over water, Pa',
    t_d: 'dew point over water, °C',
    t_f: 'frost point over ice, °C',
    R_v: 'gas constant of vapour, 461.523 J/(kg K)',
  },
  source:
    'Definition of RH: WMO-No. 8. Saturation: Sonntag 1990. 3 K of margin is customary; ISO 8502-4 gives no single figure.',
  uncertainty:
    '0.01 K in dew point against another saturation formula; a sensor good to 2 % RH is about 0.35 K at room conditions.',
  functions: {
    vapourPressureOverWaterPa: {
      formula: 'e = RH/100 e_w(t)',
      range: '-100 to 100 °C, RH over 0 to 105 %; nothing outside.',
    },
    dewPointOverWaterFromHumidityC: {
      formula: 't_d with e_w(t_d) = e',
      range: 'As above; nothing outside.',
    },
    firstDepositFromHumidityC: {
      formula: 't_d above 0.01 °C, t_f below',
      range: 'As above; nothing outside.',
    },
    surfaceMarginK: {
      formula: 't_s - first deposit',
      range: 'Surface -100 to 100 °C, else as above; nothing outside.',
    },
    humidityOverWaterPct: {
      formula: 'RH = 100 e/e_w(t)',
      range: '-100 to 100 °C, e 0 to 1e6 Pa; nothing outside.',
    },
    vapourDensityKgPerM3: {
      formula: 'e/(R_v T)',
      range: 'As above; nothing outside.',
      uncertainty: 'Below 0.2 % under 50 °C, as an ideal gas.',
    },
  },
};
