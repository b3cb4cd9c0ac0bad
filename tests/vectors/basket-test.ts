import type { Sourced } from './sourced.ts';

/** Cubes; illustrative data of a published test, fitted here. */
export const illustrativeBaskets = {
  halfSizesM: [0.025, 0.05, 0.1], ignitionC: [168, 149, 132],
  slopeK: -14609.8566, intercept: 53.603805, activationJPerMol: 121_473.1, rSquared: 0.9999592,
  heatReleaseWPerM3: 1.17337e18, conductivityWPerMK: 0.09,
  largeHalfSizeM: 0.5, largeC: 97.046,
  source: 'published self-heating tests of an open process library (data); figures computed', flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

/** Cubes of activated carbon by side, the fit over all six; and the largest foretold by the five others. */
export const carbonBaskets = {
  sidesMm: [51, 76, 102, 152, 204, 601], ignitionC: [125, 113, 110, 99, 90, 60],
  activationJPerMol: 88_900, toleranceJPerMol: 100, intercept: 46.866,
  foretoldC: 68, observedC: 60,
  source: 'Cameron and MacDowall 1972, in Drysdale, An Introduction to Fire Dynamics, from memory; fit computed', flag: 'memory',
} as const satisfies Sourced & Record<string, unknown>;
