/**
 * How a metal part follows the air of an oven: one temperature for the whole part, one time constant.
 *
 * d theta/dt = -theta/tau with theta = T_part - T_air and tau = rho c (V/A)/h. Fair where the Biot
 * number is below 0.1. Every oven figure of the trade is metal temperature, and air leads it by tens
 * of kelvin: 1.5 mm of steel at h 15 to 30 W/m2K takes 3 to 6 min to close two thirds of the
 * distance, 20 mm 43 to 86 min. h is not known beforehand: until a trial run has given tau
 * (time-constant-fit.ts), what is computed here is uncertain and advice only.
 *
 * While the film is wet the part lags further: its water takes heat (evaporationLoadJPerM2).
 * Outside its range a function answers null, never NaN.
 */
import type { Subject } from './subject.ts';

/** Above this the part's inside no longer follows its skin (customary; Incropera, Cengel). */
export const biotMax = 0.1;

/** Where nothing better is known: carbon steel, kg/m3, J/(kg K), W/(m K) (handbook figures, from memory). */
export const carbonSteel = {
  densityKgPerM3: 7_850,
  heatJPerKgK: 490,
  conductivityWPerMK: 50,
} as const;

export interface Metal {
  /** 500 to 25 000. */
  readonly densityKgPerM3: number;
  /** Specific heat, 50 to 10 000. */
  readonly heatJPerKgK: number;
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
const degrees = (c: number): boolean => c >= -100 && c <= 1_500;
const sound = (metal: Metal): boolean =>
  metal.densityKgPerM3 >= 500 &&
  metal.densityKgPerM3 <= 25_000 &&
  metal.heatJPerKgK >= 50 &&
  metal.heatJPerKgK <= 10_000;
const halfway = (m: number): boolean => m > 0 && m <= 10;
const film = (h: number): boolean => h > 0 && h <= 1e5;

/**
 * tau = rho c (V/A)/h, s. V/A is volume over heated surface, m: half the thickness of a sheet heated
 * on both sides, all of it where on one, a sixth of the diameter of a ball. Over 0 to 10 m; h over
 * 0 to 1e5 W/m2K; null outside.
 */
export function timeConstantS(
  metal: Metal,
  volumePerAreaM: number,
  transferWPerM2K: number,
): number | null {
  if (!sound(metal) || !halfway(volumePerAreaM) || !film(transferWPerM2K)) return null;
  return finite((metal.densityKgPerM3 * metal.heatJPerKgK * volumePerAreaM) / transferWPerM2K);
}

/** h = rho c (V/A)/tau, W/m2K: what a fitted time constant says of the oven. Tau over 0 to 1e7 s; null outside. */
export function transferFromTimeConstantWPerM2K(
  metal: Metal,
  volumePerAreaM: number,
  timeConstantS: number,
): number | null {
  if (!sound(metal) || !halfway(volumePerAreaM)) return null;
  if (!(timeConstantS > 0 && timeConstantS <= 1e7)) return null;
  return finite((metal.densityKgPerM3 * metal.heatJPerKgK * volumePerAreaM) / timeConstantS);
}

/** Bi = h (V/A)/k, no unit. k over 0 to 1000 W/mK; null outside. */
export function biotNumber(
  transferWPerM2K: number,
  volumePerAreaM: number,
  conductivityWPerMK: number,
): number | null {
  if (!film(transferWPerM2K) || !halfway(volumePerAreaM)) return null;
  if (!(conductivityWPerMK > 0 && conductivityWPerMK <= 1_000)) return null;
  return finite((transferWPerM2K * volumePerAreaM) / conductivityWPerMK);
}

/**
 * How far a computed part temperature is to be believed: good only with Bi under 0.1 and a time
 * constant from a trial run of this part family and load. A Biot number that nobody knows counts
 * as too large.
 */
export const lumpedQuality = (
  biot: number | null,
  timeConstantFrom: 'trial-run' | 'estimate',
): 'good' | 'uncertain' =>
  biot !== null && biot >= 0 && biot < biotMax && timeConstantFrom === 'trial-run'
    ? 'good'
    : 'uncertain';

/** T = T_air + (T_0 - T_air) exp(-t/tau), °C. -100 to 1500 °C, t 0 to 1e8 s, tau over 0 to 1e7 s; null outside. */
export function partTemperatureC(
  startC: number,
  airC: number,
  elapsedS: number,
  timeConstantS: number,
): number | null {
  return partAfterStepC(startC, airC, airC, elapsedS, timeConstantS);
}

/**
 * One step of the same with air that runs straight from one reading to the next, exact for that:
 * what a signal computes from reading to reading. Ranges as `partTemperatureC`.
 */
export function partAfterStepC(
  partC: number,
  airFromC: number,
  airToC: number,
  stepS: number,
  timeConstantS: number,
): number | null {
  if (!degrees(partC) || !degrees(airFromC) || !degrees(airToC)) return null;
  if (!(stepS >= 0 && stepS <= 1e8)) return null;
  if (!(timeConstantS > 0 && timeConstantS <= 1e7)) return null;
  const x = stepS / timeConstantS;
  const left = Math.exp(-x);
  // (1 - e^-x)/x: the share of the step that the air's rise has had on the part; 1 as x goes to 0.
  const share = x < 1e-9 ? 1 - x / 2 : -Math.expm1(-x) / x;
  return finite(left * partC + (share - left) * airFromC + (1 - share) * airToC);
}

/**
 * Time until the part is at `targetC`, s: tau ln((T_air - T_0)/(T_air - T_target)); 0 where it is
 * there or beyond already, on its way from the start; 'never' where the air does not lead it past.
 * Ranges as `partTemperatureC`; null outside.
 */
export function timeToReachS(
  startC: number,
  airC: number,
  targetC: number,
  timeConstantS: number,
): number | 'never' | null {
  if (!degrees(startC) || !degrees(airC) || !degrees(targetC)) return null;
  if (!(timeConstantS > 0 && timeConstantS <= 1e7)) return null;
  if (startC === targetC) return 0;
  const ratio = (airC - startC) / (airC - targetC);
  if (!(ratio > 1) || !Number.isFinite(ratio)) return 'never';
  return timeConstantS * Math.log(ratio);
}

/**
 * Heat that the water of a wet film takes, J/m2 of coated surface: WFT rho (1 - w) h_fg, with
 * h_fg = 2501 - 2.326 T kJ/kg. 67 µm of 1.10 g/mL and 35 % solids take about 115 kJ/m2. WFT 0 to
 * 10 000 µm, density 0.9 to 1.6 g/mL, mass solids 0 to 100 %, 0 to 100 °C; null outside.
 */
export function evaporationLoadJPerM2(
  wetUm: number,
  densityGPerMl: number,
  massSolidsPct: number,
  atC: number,
): number | null {
  if (!(wetUm >= 0 && wetUm <= 10_000)) return null;
  if (!(densityGPerMl >= 0.9 && densityGPerMl <= 1.6)) return null;
  if (!(massSolidsPct >= 0 && massSolidsPct <= 100)) return null;
  if (!(atC >= 0 && atC <= 100)) return null;
  const waterKgPerM2 = wetUm * 1e-6 * densityGPerMl * 1_000 * (1 - massSolidsPct / 100);
  return waterKgPerM2 * evaporationJPerKg(atC);
}

/** h_fg, J/kg, as in the psychrometric equations of ASHRAE. */
const evaporationJPerKg = (atC: number): number => 1_000 * (2_501 - 2.326 * atC);

/**
 * By how many kelvin the same heat would have warmed the metal: q/(rho c V/A), K, with V/A over the
 * coated surface. Load 0 to 1e9 J/m2; null outside.
 */
export function loadAsRiseK(
  loadJPerM2: number,
  metal: Metal,
  volumePerAreaM: number,
): number | null {
  if (!(loadJPerM2 >= 0 && loadJPerM2 <= 1e9) || !sound(metal) || !halfway(volumePerAreaM))
    return null;
  return finite(loadJPerM2 / (metal.densityKgPerM3 * metal.heatJPerKgK * volumePerAreaM));
}

/** Extra time the film's water costs, s: q/(h (T_air - T_wet)), at the wet part's own temperature. Null unless the air is warmer. */
export function evaporationDelayS(
  loadJPerM2: number,
  transferWPerM2K: number,
  airC: number,
  wetC: number,
): number | null {
  if (!(loadJPerM2 >= 0 && loadJPerM2 <= 1e9) || !film(transferWPerM2K)) return null;
  if (!degrees(airC) || !degrees(wetC) || !(airC > wetC)) return null;
  return finite(loadJPerM2 / (transferWPerM2K * (airC - wetC)));
}

const asBefore = 'Ranges as above; nothing outside.';
export const subject: Subject = {
  title: 'Heating of a part',
  about:
    'Metal temperature from oven air for parts that warm as one. Uncertain until a trailing-thermocouple run of the part family and load has given the time constant, and where the Biot number is 0.1 or more. Not for infrared ovens, where air temperature means nothing.',
  symbols: {
    T: 'part temperature, °C; T_0 at the start, T_air of the oven air',
    tau: 'time constant, s',
    t: 'time, s',
    rho: 'density of the metal, kg/m3; of the wet film, kg/m3',
    c: 'specific heat, J/(kg K)',
    'V/A': 'volume over heated surface, m',
    h: 'heat transfer, W/(m2 K)',
    k: 'conductivity of the metal, W/(m K)',
    Bi: 'Biot number, no unit',
    q: 'heat for evaporation, J/m2',
    w: 'solids by mass, share',
    h_fg: 'heat of evaporation, J/kg',
  },
  source:
    'Lumped capacity, as in Y. A. Çengel, Heat Transfer, chapter 4, and F. P. Incropera, chapter 5. Heat of evaporation: ASHRAE Fundamentals 2017, chapter 1.',
  uncertainty:
    'With h guessed at 15 to 30 W/m2K a factor of two; with a fitted time constant its own uncertainty (time constant from a trial run).',
  functions: {
    timeConstantS: {
      formula: 'tau = rho c (V/A)/h',
      range:
        'rho 500 to 25 000 kg/m3, c 50 to 10 000 J/kgK, V/A over 0 to 10 m, h over 0 to 1e5 W/m2K; nothing outside.',
    },
    transferFromTimeConstantWPerM2K: { formula: 'h = rho c (V/A)/tau', range: asBefore },
    biotNumber: { formula: 'Bi = h (V/A)/k', range: 'k over 0 to 1000 W/mK; nothing outside.' },
    lumpedQuality: {
      formula: 'good where Bi < 0.1 and tau from a trial run; uncertain else',
      range: 'An unknown Bi counts as too large.',
    },
    partTemperatureC: {
      formula: 'T = T_air + (T_0 - T_air) exp(-t/tau)',
      range: '-100 to 1500 °C, t 0 to 1e8 s, tau over 0 to 1e7 s; nothing outside.',
    },
    partAfterStepC: {
      formula:
        "T' = e^-x T + (s - e^-x) T_air(from) + (1 - s) T_air(to), x = t/tau, s = (1 - e^-x)/x",
      range: asBefore,
    },
    timeToReachS: {
      formula: 't = tau ln((T_air - T_0)/(T_air - T_target))',
      range: '"never" where the target does not lie between; else as above.',
    },
    evaporationLoadJPerM2: {
      formula: 'q = WFT rho (1 - w) h_fg, h_fg = 2501 - 2.326 T kJ/kg',
      range:
        'WFT 0 to 10 000 µm, 0.9 to 1.6 g/mL, solids 0 to 100 %, 0 to 100 °C; nothing outside.',
    },
    loadAsRiseK: { formula: 'q/(rho c V/A)', range: 'q 0 to 1e9 J/m2; nothing outside.' },
    evaporationDelayS: {
      formula: 'q/(h (T_air - T))',
      range: 'Air warmer than the wet part; nothing else.',
    },
  },
};
