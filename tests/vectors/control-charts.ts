import { type Sourced, sources } from './sourced.ts';

/** Section 6.3.2.4; its limits are the steady ones at every point, cut off after four decimals. */
export const nistEwma = {
  weight: 0.3, target: 50, sigma: 2.0539, widthSigmas: 3,
  values: [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1],
  averages: [50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99],
  upper: 52.5884, lower: 47.4115, upperExact: 52.588432, lowerExact: 47.411568,
  source: sources.nistControl, flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** Ten samples from N(10, 1)-like data that shifts after the twentieth; the limits grow. */
export const montgomeryData = {
  target: 10, sigma: 1,
  values: [9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40, 10.08, 9.37, 10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62, 11.31, 10.52],
  source: sources.montgomery, flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export const montgomeryEwma = {
  weight: 0.1, widthSigmas: 2.7,
  averages: [[1, 9.945], [2, 9.7495], [3, 9.70355], [29, 10.64682], [30, 10.63414]],
  firstLimits: [9.73, 10.27], lastLimits: [9.3811, 10.6189],
  signals: [29, 30],
  source: `series computed from the data of ${sources.montgomery}`, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

export const montgomeryCusum = {
  allowance: 0.5, decisionInterval: 5, high29: 5.28, high30: 5.3, signals: [29, 30],
  source: `series computed from the data of ${sources.montgomery}`, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

/** Section 6.3.2.3. */
export const nistCusum = {
  target: 325, allowance: 0.3175, decisionInterval: 4.1959,
  values: [324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350],
  signals: [14, 15, 16, 17, 18, 19, 20],
  high: [0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445, 16.0025, 19.035],
  low: [0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.715, 0.1725, 0.255, 0.3125, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  plainEnd: 19.075,
  source: `${sources.nistControl}; the series computed`, flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** Points between false alarms of a sound process. */
export const runLengths = [
  { name: '3 sigma alone', points: 370.4, tolerance: 0.05, source: 'as printed in public test code after a reference work', flag: 'seen' },
  { name: 'the four Western Electric rules together', points: 91.75, tolerance: 0.1, source: 'Champ and Woodall, Technometrics 29 (1987), as printed in public test code', flag: 'seen' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

/** Tabular cusum, k 0.5 sigma: points to a signal after a shift of so many sigma. */
export const cusumRunLengths = [
  { decisionSigmas: 4, shiftSigmas: 0, points: 168, tolerance: 0.5, source: 'D. C. Montgomery, table of cusum run lengths, k 0.5', flag: 'memory' },
  { decisionSigmas: 4, shiftSigmas: 1, points: 8.38, tolerance: 0.01, source: 'D. C. Montgomery, table of cusum run lengths, k 0.5', flag: 'memory' },
  { decisionSigmas: 5, shiftSigmas: 0, points: 465, tolerance: 0.5, source: 'D. C. Montgomery, table of cusum run lengths, k 0.5', flag: 'memory' },
  { decisionSigmas: 5, shiftSigmas: 1, points: 10.4, tolerance: 0.05, source: 'D. C. Montgomery, table of cusum run lengths, k 0.5', flag: 'memory' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

const tables = 'two published tables of control chart factors; each figure recomputed by quadrature';
const factor = (n: number, d2: number, d3: number, a2: number, rangeLow: number, rangeHigh: number, c4: number) =>
  ({ n, d2, d3, a2, rangeLow, rangeHigh, c4, source: tables, flag: 'seen' }) as const;
export const factorRows = [
  factor(2, 1.128, 0.853, 1.880, 0, 3.267, 0.7979),
  factor(3, 1.693, 0.888, 1.023, 0, 2.574, 0.8862),
  factor(4, 2.059, 0.880, 0.729, 0, 2.282, 0.9213),
  factor(5, 2.326, 0.864, 0.577, 0, 2.114, 0.9400),
  factor(6, 2.534, 0.848, 0.483, 0, 2.004, 0.9515),
  factor(7, 2.704, 0.833, 0.419, 0.076, 1.924, 0.9594),
  factor(8, 2.847, 0.820, 0.373, 0.136, 1.864, 0.9650),
  factor(9, 2.970, 0.808, 0.337, 0.184, 1.816, 0.9693),
  factor(10, 3.078, 0.797, 0.308, 0.223, 1.777, 0.9727),
] satisfies readonly (Sourced & Record<string, unknown>)[];

/** Section 6.3.2.2, single values and moving ranges. */
export const nistIndividuals = {
  values: [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1],
  mean: 50.81, movingRange: 1.8778, high: 55.8041, low: 45.8159, rangeHigh: 6.1347, tolerance: 5e-5,
  source: sources.nistControl, flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** Section 6.1.6. */
export const nistCapability = {
  low: 8, high: 20, mean: 16, sigma: 2, cp: 1, cpk: 0.6667, cpu: 0.6667, cpl: 1.3333, k: 0.3333, tolerance: 5e-5,
  source: sources.nistControl, flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** 95 % intervals of 20 values. */
export const capabilityIntervals = [
  { name: 'Cp', index: 2.29, valuesCount: 20, low: 1.57, high: 3.01, source: 'D. C. Montgomery, Introduction to Statistical Quality Control, from memory', flag: 'memory' },
  { name: 'Cpk', index: 1.33, valuesCount: 20, low: 0.88, high: 1.78, source: 'D. C. Montgomery, Introduction to Statistical Quality Control, from memory', flag: 'memory' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
