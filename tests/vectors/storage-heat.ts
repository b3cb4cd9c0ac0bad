import { type Sourced, sources } from './sourced.ts';

export interface KineticRow extends Sourced {
  readonly name: string;
  readonly temperaturesC: readonly number[];
  readonly weights: readonly number[];
  readonly kineticMeanC: number;
  readonly toleranceK: number;
}
const even = (temperaturesC: readonly number[]) => ({ temperaturesC, weights: temperaturesC.map(() => 1) });
const definition = 'the formula of Tong and Lock 2015 (R code public), E/R 10 000 K';

export const kineticRows: readonly KineticRow[] = [
  { name: 'constant', ...even([25]), kineticMeanC: 25, toleranceK: 1e-9, source: definition, flag: 'calc' },
  { name: 'even steps', ...even([20, 25, 30]), kineticMeanC: 25.858208, toleranceK: 1e-4, source: definition, flag: 'calc' },
  { name: 'a hot tenth', temperaturesC: [20, 40], weights: [0.9, 0.1], kineticMeanC: 25.057598, toleranceK: 1e-4, source: definition, flag: 'calc' },
  { name: 'eight readings', ...even([22, 23, 24, 25, 26, 27, 28, 30]), kineticMeanC: 25.957028, toleranceK: 1e-4, source: definition, flag: 'calc' },
  { name: 'five readings of a warehouse', ...even([21, 23.5, 28, 31.5, 24]), kineticMeanC: 26.34556859487998, toleranceK: 1e-5, source: definition, flag: 'calc' },
  { name: 'one warm day of a cold store', ...even([4, 4, 4, 4, 16]), kineticMeanC: 8.108857, toleranceK: 1e-4, source: definition, flag: 'calc' },
];

/** A public test asks for more than the mean, 6.4, and at least 8.0. */
export const coldStore = {
  temperaturesC: [4, 4, 4, 4, 16], mean: 6.4, least: 8, source: 'a public test of mean kinetic temperature', flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** Unevenly spaced: straight lines of ageing, against each reading standing until the next. */
export const unevenRow = {
  timesH: [0, 24, 30, 34, 58], temperaturesC: [20, 22, 35, 21, 20], trapezoidC: 23.3146, stepsC: 22.7415, toleranceK: 1e-3,
  source: definition, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

export const degreeHourRow = {
  timesH: [0, 6], temperaturesC: [-2, -2], baseC: 0, kelvinHours: 12, source: sources.maths, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;
