import { type Sourced, sources } from './sourced.ts';

export interface DipRow extends Sourced {
  readonly viscosityMPaS: number;
  readonly mmPerS: number;
  readonly surfaceTensionMNPerM: number;
  readonly densityGPerMl: number;
  readonly ca: number;
  readonly lengthMm: number;
  readonly wetUm: number;
}
// No published numeric example was found; these come from the formula with g 9.80665.
const computed = { source: 'Landau-Levich-Derjaguin with 0.944, computed', flag: 'calc' } as const;
export const dipRows: readonly DipRow[] = [
  { viscosityMPaS: 1, mmPerS: 10, surfaceTensionMNPerM: 72, densityGPerMl: 1, ca: 1.38889e-4, lengthMm: 2.709605, wetUm: 6.85998, ...computed },
  { viscosityMPaS: 50, mmPerS: 5, surfaceTensionMNPerM: 30, densityGPerMl: 1, ca: 8.33333e-3, lengthMm: 1.749042, wetUm: 67.86588, ...computed },
  { viscosityMPaS: 100, mmPerS: 1, surfaceTensionMNPerM: 20, densityGPerMl: 0.97, ca: 5e-3, lengthMm: 1.450003, wetUm: 40.02403, ...computed },
];

/** The trade's own point, on the edge of the formula: 76 µm wet, 22 µm dry. */
export const tradePoint = { viscosityMPaS: 20, mPerMin: 1, surfaceTensionMNPerM: 35.1, densityGPerMl: 1.1, ca: 0.0095, wetUm: 76, volumeSolidsPct: 28.4, dryUm: 22, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

export const scaling = { speedTimes: 8, filmTimes: 4, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

export interface DrainRow extends Sourced {
  readonly viscosityMPaS: number;
  readonly belowM: number;
  readonly densityGPerMl: number;
  readonly drainS: number;
  readonly filmUm: number;
  readonly meanUm?: number;
}
const jeffreys = { source: 'Jeffreys 1930; the formula from memory, figures computed', flag: 'memory' } as const;
export const drainRows: readonly DrainRow[] = [
  { viscosityMPaS: 100, belowM: 0.1, densityGPerMl: 1, drainS: 60, filmUm: 130.366, meanUm: 86.911, ...jeffreys },
  { viscosityMPaS: 1, belowM: 0.1, densityGPerMl: 0.998, drainS: 1, filmUm: 101.082, ...jeffreys },
];

/** Six panels, fitted and predicted independently. */
export const panelFit = {
  panels: [[0.5, 13.1], [0.5, 12.6], [0.8, 17.9], [1, 20.6], [1, 21.4], [1.5, 27.2]],
  n: 0.6901939593949488, nU: 0.022128116079661943, kUm: 20.814792548601545, scatterShare: 0.021379805965013467,
  atMPerMin: 1.2, filmUm: 23.606005531346195, leastUm: 22.04760586552004, mostUm: 25.27455817855547,
  source: 'scipy 1.17.1 (stats.linregress, stats.t) on made-up panels', flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;
