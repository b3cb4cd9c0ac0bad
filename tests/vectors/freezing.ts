import { type Sourced, sources } from './sourced.ts';

const computed = 'computed for the trade; real convection lies between conduction and one temperature';

/** A 208 L drum of 20 °C in air of -10 °C, U 8 W/(m2 K). */
export const drumRow = {
  startC: 20, airC: -10, transferWPerM2K: 8,
  wallAt5H: 4.5, wallAt0H: 13, meanThenC: 10, stirredTo5H: 13, stirredTo0H: 21,
  toleranceH: 0.5, source: computed, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

/** 200 kg of water in a drum 0.58 m across and 0.88 m high, cooled all over. */
export const stirredDrumRow = {
  radiusM: 0.29, heightM: 0.88, massKg: 200, heatJPerKgK: 4_186, areaM2: 2.131885,
  startC: 20, airC: -10, transferWPerM2K: 8, timeConstantH: 13.63556, to0H: 14.98019, toleranceH: 1e-4,
  source: sources.maths, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

/** A cylinder of water, computed as one temperature although it should not be. */
export const textbookCylinder = {
  radiusM: 0.15, heightM: 1.7, densityKgPerM3: 996, heatJPerKgK: 4_178, conductivityWPerMK: 0.617,
  startC: 37, airC: 20, transferWPerM2K: 8, targetC: 25, volumePerAreaM: 0.068919, biot: 0.894, hours: 12.19, toleranceShare: 0.005,
  source: 'Cengel, Heat Transfer, example 4-2, in a public companion of worked examples', flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** First root, from charts for one-term solutions. */
export const oneTermRows = [
  { shape: 'side', biot: 1, root: 1.2558, source: 'tables of one-term conduction in cylinders, from memory', flag: 'memory' },
  { shape: 'side', biot: 10, root: 2.1795, source: 'tables of one-term conduction in cylinders, from memory', flag: 'memory' },
  { shape: 'ends', biot: 1, root: 0.8603, source: 'tables of one-term conduction in walls, from memory', flag: 'memory' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
