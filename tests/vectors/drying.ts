import { type Sourced, sources } from './sourced.ts';

/** A pool of 25 by 20 m, and a basin. The first was printed by the second: by the hour it is 3600 times that. */
export const poolRow = { areaM2: 500, airMPerS: 0.5, surfaceRatio: 0.019826, airRatio: 0.0115, kgPerS: 0.04, computedKgPerS: 0.0398954, toleranceShare: 0.01, source: 'a public engineering reference on evaporation from water surfaces, as quoted in a physics forum', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;
export const basinRow = { areaM2: 5, airMPerS: 2, surfaceRatio: 0.02, airRatio: 0.01, kgPerH: 3.15, source: 'the same formula in a public answer', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** Constant-rate drying in a tray. The wet bulb was confirmed by PsychroLib: 28.8932 °C. */
export const trayRow = { airC: 65.6, ratio: 0.01, pressurePa: 101325, fluxKgPerM2H: 22770, transferWPerM2K: 62.45, wetBulbC: 28.9, libraryWetBulbC: 28.8932, toleranceK: 0.005, rateKgPerM2H: 3.39, toleranceShare: 0.01, source: 'C. J. Geankoplis, Transport Processes, example 9.6-3', flag: 'memory' } as const satisfies Sourced & Record<string, unknown>;

export const dryerRow = { inletK: 400, wetBulbK: 312, transferUnits: 1.5, outletK: 331.6355, toleranceK: 0.2, publishedLowK: 331.5, publishedHighK: 331.6, source: 'Coulson and Richardson, volume 2, example 16.5, by a public solutions archive (FOSSEE)', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

export const balanceRow = { driedKg: 1000, beforePct: 80, afterPct: 5, waterKg: 3750, source: 'Treybal, illustration 12.1, by a public solutions archive (FOSSEE)', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

export interface LimitRow extends Sourced {
  readonly temperatureC: number;
  readonly ratio: number;
}
// 3e-4 of pressure between the library's saturation formula and ours grows to 2e-3 of the ratio where
// vapour is half of the air.
const library = { source: sources.library, flag: 'seen' } as const;
export const limitRows: readonly LimitRow[] = [
  { temperatureC: 40, ratio: 0.0488826, ...library },
  { temperatureC: 50, ratio: 0.0863267, ...library },
  { temperatureC: 60, ratio: 0.1524175, ...library },
  { temperatureC: 70, ratio: 0.2766887, ...library },
  { temperatureC: 80, ratio: 0.5469405, ...library },
];

/** Oven air of dew point 17.39 °C at 120 °C. */
export const ovenAir = { dryBulbC: 120, dewPointC: 17.39, ratio: 0.0124395, wetBulbC: 39.2857, pressurePa: 101325, source: sources.library, flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** From the boiling point on air can carry any amount: there is no limit to compare with. */
export const boundless = { temperatureC: 100, pressurePa: 101325, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

const steam = { toleranceShare: 0.006, source: 'steam tables', flag: 'memory' } as const;
export const evaporationRows = [
  { temperatureC: 0, kJPerKg: 2500.9, ...steam },
  { temperatureC: 40, kJPerKg: 2406.0, ...steam },
  { temperatureC: 100, kJPerKg: 2256.4, ...steam },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
