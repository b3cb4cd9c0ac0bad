import { type Sourced, sources } from './sourced.ts';

export interface MixingRow extends Sourced {
  readonly massShare: number;
  readonly solids: number;
  readonly liquid: number;
  readonly mixed: number;
  readonly tolerance: number;
  readonly volumeShare?: number;
}
export const mixingRows: readonly MixingRow[] = [
  { massShare: 0.3, solids: 2500, liquid: 1000, mixed: 1220, tolerance: 0.5, source: 'a public engineering reference, slurry density', flag: 'seen' },
  { massShare: 0.3, solids: 2500, liquid: 1000, mixed: 1219.512195, tolerance: 1e-6, source: sources.maths, flag: 'calc' },
  { massShare: 0.3, solids: 2650, liquid: 1000, mixed: 1229.7, tolerance: 0.05, volumeShare: 0.139211, source: 'a public slurry density calculator with worked example', flag: 'seen' },
  { massShare: 0.5, solids: 40, liquid: 30, mixed: 34.285, tolerance: 0.001, source: 'a public slurry density calculator with worked example', flag: 'seen' },
];

/** A dispersion of 35 % solids at 1.10 g/mL and 20 °C: what each error costs, in % solids. */
export const sensitivity = {
  ovenSolidsPct: 35,
  densityGPerMl: 1.1,
  temperatureC: 20,
  perMilligramPerMl: 0.31,
  fiveKelvinUncorrected: 0.4,
  onePercentAir: -3.4,
  source: sources.maths,
  flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

/** Solids that weigh nearly what water does: one kg/m3 is then 0.7 % solids. */
export const illConditioned = {
  solidsKgPerM3: 1150,
  liquidKgPerM3: 998,
  pctPerKgPerM3: 0.7,
  tolerancePct: 0.06,
  source: sources.maths,
  flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;
