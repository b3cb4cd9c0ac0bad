import { type Sourced, sources } from './sourced.ts';

const umPerMil = 25.4;

export interface WetDryRow extends Sourced {
  readonly dryUm: number;
  readonly volumeSolidsPct: number;
  readonly wetUm: number;
  readonly toleranceUm: number;
}
export const wetDryRows: readonly WetDryRow[] = [
  { dryUm: 100, volumeSolidsPct: 62, wetUm: 161, toleranceUm: 0.5, source: 'a paint maker, pages on wet and dry film', flag: 'seen' },
  { dryUm: 100, volumeSolidsPct: 62, wetUm: 161.2903, toleranceUm: 5e-5, source: sources.maths, flag: 'calc' },
  { dryUm: 1.5 * umPerMil, volumeSolidsPct: 42, wetUm: 3.57 * umPerMil, toleranceUm: 0.005 * umPerMil, source: 'a trade journal of October 2003 on wet film', flag: 'seen' },
];

/** 231 in3 a gallon: ft2 a gallon at 10 mil wet, printed without loss. */
export const gallonRow = { wetMil: 10, ft2PerGal: 160.417, toleranceFt2PerGal: 0.001, m2PerFt2: 0.09290304, lPerGal: 3.785411784, umPerMil, source: 'a maker of industrial coatings, coverage formula', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

export const coverageRow = { dryUm: 100, volumeSolidsPct: 62, m2PerL: 6.2, source: 'formula printed by several makers; computed', flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

export const dilutionRow = { volumeSolidsPct: 62, parts: 0.1, dilutedPct: 56.3636, dryUm: 100, wetUm: 177.419, tolerance: 1e-3, source: 'formula printed by several makers; computed', flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

/** The trade's trap: a data sheet's solids by mass taken for solids by volume. */
export const massForVolume = { massSolidsPct: 35, solidsDensityGPerMl: 1.3577, volumeSolidsPct: 28.4, tolerancePct: 0.1, source: 'a public film calculator warns of it; figure computed', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

export const spotRow = { leastMil: 8, mostMil: 12, spotLeastMil: 6.4, spotMostMil: 14.4, umPerMil, source: 'SSPC-PA 2, as taught in two public courses', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

export const nominalRule = { lowestShare: 0.8, lowCountShareMax: 0.2, highestTimes: 3, source: 'ISO 19840 and ISO 12944', flag: 'memory' } as const satisfies Sourced & Record<string, unknown>;
