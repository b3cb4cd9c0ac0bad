import { type Sourced, sources } from './sourced.ts';

const cengel = 'Y. A. Çengel, Heat Transfer, by its worked examples in a public solutions archive (FOSSEE)';

/** A ball of 1 mm: Bi, 1/tau and the time to 99 % of the way. */
export const cengelBall = { diameterM: 1e-3, conductivityWPerMK: 35, densityKgPerM3: 8500, heatJPerKgK: 320, transferWPerM2K: 210, biot: 0.001, ratePerS: 0.4632353, ninetyNineS: 10, toleranceS: 0.5, computedS: 9.94132, source: `${cengel}, example 4-1`, flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** A bead of solder. Time constant, diameter and temperatures were read; density and h are from memory and close exactly. */
export const lienhardBead = { diameterM: 1e-3, densityKgPerM3: 9300, heatJPerKgK: 180, transferWPerM2K: 250, timeConstantS: 1.116, toleranceS: 0.001, source: 'J. H. Lienhard, A Heat Transfer Textbook, example 1.4', flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** A thermocouple junction that is to have a time constant of one second. */
export const incroperaJunction = { diameterM: 7.06e-4, conductivityWPerMK: 20, densityKgPerM3: 8500, heatJPerKgK: 400, transferWPerM2K: 400, timeConstantS: 1, startC: 25, airC: 200, targetC: 199, reachS: 5.2, computedS: 5.16479, biot: 2.35e-3, toleranceShare: 0.01, source: 'F. P. Incropera, Fundamentals of Heat and Mass Transfer, example 5.1; properties read, answers from memory', flag: 'memory' } as const satisfies Sourced & Record<string, unknown>;

/** A cylinder with Bi near 0.9, which the book itself calls rough. */
export const cengelCylinder = { radiusM: 0.15, lengthM: 1.7, transferWPerM2K: 8, densityKgPerM3: 996, heatJPerKgK: 4178, conductivityWPerMK: 0.617, startC: 37, airC: 20, targetC: 25, volumePerAreaM: 0.068919, biot: 0.894, hours: 12.19, toleranceShare: 0.005, source: `${cengel}, example 4-2`, flag: 'seen' } as const satisfies Sourced & Record<string, unknown>;

/** Steel plate between h 30 and 15 W/m2K: the minutes the trade reckons with, by V/A. */
export interface SteelRow extends Sourced {
  readonly volumePerAreaMm: number;
  readonly shortestMin: number;
  readonly longestMin: number;
}
export const steelRows: readonly SteelRow[] = [
  { volumePerAreaMm: 1.5, shortestMin: 3, longestMin: 6, source: sources.maths, flag: 'calc' },
  { volumePerAreaMm: 5, shortestMin: 11, longestMin: 21, source: sources.maths, flag: 'calc' },
  { volumePerAreaMm: 20, shortestMin: 43, longestMin: 86, source: sources.maths, flag: 'calc' },
];

/** The water of one wet film against the metal under it. */
export const wetFilm = { wetUm: 67, densityGPerMl: 1.1, massSolidsPct: 35, kJPerM2: 115, toleranceKJPerM2: 1, sheetMm: 1, riseK: 60, toleranceK: 1.5, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;
