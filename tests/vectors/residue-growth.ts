import type { Sourced } from './sourced.ts';

/** 1 L/h, half of it onto parts, 2 m2, 40 h; the adhesive has some 28 % solids by volume. */
export const depositRow = {
  sprayedLPerH: 1, hours: 40, ontoPartsShare: 0.5, volumeSolidsShare: 0.28, areaM2: 2, thicknessMm: 2.8,
  source: 'computed for the trade', flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;
