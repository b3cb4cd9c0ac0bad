import { type Sourced, sources } from './sourced.ts';

export interface RatioRow extends Sourced {
  readonly from: 'humidity' | 'wet-bulb';
  readonly dryBulbC: number;
  /** Percent or degrees, by `from`. */
  readonly second: number;
  readonly pressurePa: number;
  readonly ratio: number;
  readonly toleranceShare: number;
}
// 3e-4: saturation pressure by Hyland-Wexler in the library, by Sonntag here.
export const ratioRows: readonly RatioRow[] = [
  { from: 'humidity', dryBulbC: 25, second: 80, pressurePa: 101325, ratio: 0.015961824340422887, toleranceShare: 3e-4, source: sources.library, flag: 'seen' },
  { from: 'wet-bulb', dryBulbC: 30, second: 25, pressurePa: 95461, ratio: 0.0192281274241096, toleranceShare: 3e-4, source: sources.libraryTests, flag: 'seen' },
  { from: 'wet-bulb', dryBulbC: 30, second: 25, pressurePa: 95461, ratio: 0.019224769837522727, toleranceShare: 3e-4, source: sources.library, flag: 'seen' },
  { from: 'wet-bulb', dryBulbC: -1, second: -5, pressurePa: 95461, ratio: 0.00120399819933844, toleranceShare: 3e-4, source: sources.libraryTests, flag: 'seen' },
  { from: 'wet-bulb', dryBulbC: -1, second: -5, pressurePa: 95461, ratio: 0.0012041562773, toleranceShare: 3e-4, source: sources.library, flag: 'seen' },
];

export interface WetBulbRow extends Sourced {
  readonly temperatureC: number;
  readonly humidityPct: number;
  readonly pressurePa: number;
  readonly wetBulbC: number;
  readonly toleranceK: number;
}
export const wetBulbRows: readonly WetBulbRow[] = [
  { temperatureC: 7, humidityPct: 61, pressurePa: 100000, wetBulbC: 3.92667433781955, toleranceK: 0.004, source: sources.libraryTests, flag: 'seen' },
  { temperatureC: 7, humidityPct: 61, pressurePa: 100000, wetBulbC: 3.926329211090538, toleranceK: 0.001, source: sources.library, flag: 'seen' },
  { temperatureC: 23, humidityPct: 50, pressurePa: 101325, wetBulbC: 16.246886850863262, toleranceK: 0.001, source: sources.library, flag: 'seen' },
];

/** Air at 40 °C dry and 20 °C wet bulb. The handbook rounds; the library does not. */
export const handbookExample = {
  dryBulbC: 40,
  wetBulbC: 20,
  pressurePa: 101325,
  ratio: 0.0065,
  humidityPct: 14,
  dewPointC: 7,
  enthalpyKJPerKg: 56.7,
  volumeM3PerKg: 0.896,
  source: sources.ashraeExample,
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;
export const libraryExample = {
  ratio: 0.006400785966,
  humidityPct: 13.9795,
  dewPointC: 7.4336,
  enthalpyKJPerKg: 56.72458,
  volumeM3PerKg: 0.896248,
  source: sources.library,
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export interface SaturatedRow extends Sourced {
  readonly temperatureC: number;
  readonly pressurePa: number;
  readonly withEnhancement: number;
  readonly ideal: number;
  /** By how much an ideal gas may fall short of the handbook's table. */
  readonly shortShareMax: number;
}
export const saturatedRows: readonly SaturatedRow[] = [
  { temperatureC: 25, pressurePa: 101325, withEnhancement: 0.020173, ideal: 0.0200811227, shortShareMax: 0.005, source: sources.ashraeMoistAir, flag: 'seen' },
  { temperatureC: 50, pressurePa: 101325, withEnhancement: 0.086863, ideal: 0.0863267108, shortShareMax: 0.01, source: sources.ashraeMoistAir, flag: 'seen' },
  { temperatureC: 85, pressurePa: 101325, withEnhancement: 0.838105, ideal: 0.8280752539, shortShareMax: 0.02, source: sources.ashraeMoistAir, flag: 'seen' },
];
