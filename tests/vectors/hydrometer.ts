import { type Sourced, sources } from './sourced.ts';

export interface GravityRow extends Sourced {
  readonly gravity: number;
  readonly f: number;
  readonly calibratedF: number;
  readonly corrected: number;
}
const printed = { source: 'the polynomial as printed by a public wine laboratory and elsewhere, computed', flag: 'calc' } as const;
/** Printed to 1e-6. */
export const gravityRows: readonly GravityRow[] = [
  { gravity: 1.05, f: 77, calibratedF: 68, corrected: 1.051175, ...printed },
  { gravity: 1.05, f: 86, calibratedF: 59, corrected: 1.053516, ...printed },
  { gravity: 1.02, f: 50, calibratedF: 68, corrected: 1.018504, ...printed },
  { gravity: 1.1, f: 95, calibratedF: 60, corrected: 1.105347, ...printed },
];

/** h(77)/h(68) against the density of water at 20 over 25 °C: less, by what the glass grows, and no more. Water there is by the CIPM formula. */
export const glassShare = { ratio: 1.0011186, water: 1.0011632, tolerance: 5e-8, waterTolerance: 1e-6, mostByGlass: 1.25e-4, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;

/** One web copy of the polynomial drops the powers of F. */
export const droppedPowers = { gravity: 1.05, f: 77, calibratedF: 68, source: 'a public calculator that prints the polynomial without its powers', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** A 0.002 division, no certificate: what it is worth in solids at 35 % and 1.10 g/mL. */
export const coarseDivision = { divisionGPerMl: 0.002, solidsPerMilligram: 0.31, leastPct: 0.3, mostPct: 0.6, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;
