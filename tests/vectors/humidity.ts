import { type Sourced, sources } from './sourced.ts';

export interface DewPointRow extends Sourced {
  readonly temperatureC: number;
  readonly humidityPct: number;
  readonly over: 'water' | 'ice';
  readonly pointC: number;
  readonly toleranceK: number;
}

// 0.01 K is the distance of Hyland-Wexler from Sonntag: 3e-4 of pressure is 0.005 K at 20 °C.
// 0.03 K is that of the Magnus form. Rows from Sonntag's own constants carry half their last digit.
export const dewPointRows: readonly DewPointRow[] = [
  { temperatureC: 25, humidityPct: 80, over: 'water', pointC: 21.3094, toleranceK: 1e-3, source: 'PsychroLib, example in the header of its source', flag: 'seen' },
  { temperatureC: 25, humidityPct: 80, over: 'water', pointC: 21.309397163329322, toleranceK: 1e-3, source: sources.library, flag: 'seen' },
  { temperatureC: 20, humidityPct: 50, over: 'water', pointC: 9.272392288187499, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 20, humidityPct: 50, over: 'water', pointC: 9.27365, toleranceK: 5e-6, source: sources.sonntag, flag: 'calc' },
  { temperatureC: 20, humidityPct: 50, over: 'water', pointC: 9.25517, toleranceK: 0.03, source: sources.wmo, flag: 'calc' },
  { temperatureC: 23, humidityPct: 50, over: 'water', pointC: 12.028409357384476, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 20, humidityPct: 60, over: 'water', pointC: 12.0075, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 23, humidityPct: 85, over: 'water', pointC: 20.3424, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 15, humidityPct: 85, over: 'water', pointC: 12.5012, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 25, humidityPct: 50, over: 'water', pointC: 13.864, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 25, humidityPct: 60, over: 'water', pointC: 16.693149006198954, toleranceK: 0.03, source: sources.wmo, flag: 'calc' },
  { temperatureC: 25, humidityPct: 85, over: 'water', pointC: 22.300144911689635, toleranceK: 0.03, source: sources.wmo, flag: 'calc' },
  { temperatureC: 30, humidityPct: 70, over: 'water', pointC: 23.927219625175848, toleranceK: 0.03, source: sources.wmo, flag: 'calc' },
  { temperatureC: 10, humidityPct: 80, over: 'water', pointC: 6.706013093947368, toleranceK: 0.03, source: sources.wmo, flag: 'calc' },
  // The ambiguity below 0 °C: one air, two "dew points", 1.2 K apart.
  { temperatureC: 5, humidityPct: 30, over: 'ice', pointC: -9.920377771842057, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { temperatureC: 5, humidityPct: 30, over: 'ice', pointC: -9.91927, toleranceK: 5e-6, source: sources.sonntag, flag: 'calc' },
  { temperatureC: 5, humidityPct: 30, over: 'water', pointC: -11.1386, toleranceK: 5e-6, source: sources.sonntag, flag: 'calc' },
  { temperatureC: 0, humidityPct: 50, over: 'ice', pointC: -8.1623, toleranceK: 5e-5, source: sources.sonntag, flag: 'calc' },
  { temperatureC: 0, humidityPct: 50, over: 'water', pointC: -9.1808, toleranceK: 5e-5, source: sources.sonntag, flag: 'calc' },
];

/** Vapour at -5 °C and 80 %: over water as we take it, and what the same words mean over ice. */
export const belowFreezingHumidity = {
  temperatureC: -5,
  humidityPct: 80,
  overWaterPa: 337.443,
  overIcePa: 321.411297983,
  tolerancePa: 0.1,
  source: `${sources.wmo}; ${sources.library}`,
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export const testClimate = {
  temperatureC: 23,
  humidityPct: 50,
  pressurePa: 101325,
  vapourPa: 1405.2209599489802,
  ratio: 0.008746718200659285,
  wetBulbC: 16.246886850863262,
  source: sources.library,
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export interface MarginRow extends Sourced {
  readonly surfaceC: number;
  readonly temperatureC: number;
  readonly humidityPct: number;
  readonly marginK: number;
  readonly toleranceK: number;
}
export const marginRows: readonly MarginRow[] = [
  { surfaceC: 15.01, temperatureC: 20, humidityPct: 60, marginK: 3.0025, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { surfaceC: 23, temperatureC: 23, humidityPct: 85, marginK: 2.66, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { surfaceC: 15, temperatureC: 15, humidityPct: 85, marginK: 2.5, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { surfaceC: 16.864, temperatureC: 25, humidityPct: 50, marginK: 3, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  // Surface at air temperature: the margin is exactly 3 K at these humidities, all below 85 %.
  { surfaceC: 10, temperatureC: 10, humidityPct: 81.593, marginK: 3, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { surfaceC: 20, temperatureC: 20, humidityPct: 82.861, marginK: 3, toleranceK: 0.01, source: sources.library, flag: 'seen' },
  { surfaceC: 30, temperatureC: 30, humidityPct: 84.015, marginK: 3, toleranceK: 0.01, source: sources.library, flag: 'seen' },
];
/** The customary least margin, K. ASTM D3276 is said to ask 5 [degF]; that one is from memory. */
export const customaryMargin = { leastK: 3, humidityMaxPct: 85, source: sources.custom, flag: 'seen' } as const;

/** What the yardstick of WMO formulas must give before anything is compared to it. */
export const wmoRows = {
  // The public code names 0.001 a specific humidity and then uses it as a mixing ratio; 0.1 % apart.
  mixingRatio: { hPa: 1000, temperatureC: 10, ratio: 0.001, humidityPct: 13.031628710406915, toleranceShare: 1e-9, source: 'public code quoting WMO-No. 8 (2008), eq. 4.A.6 and Annex 4.B', flag: 'seen' },
  enhancement: { hPa: 1013.25, factor: 1.004718705178263, toleranceShare: 1e-12, source: sources.wmo, flag: 'calc' },
} as const;
