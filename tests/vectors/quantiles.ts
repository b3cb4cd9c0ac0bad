import type { Sourced } from './sourced.ts';

/** 97.5 % quantiles of Student's t, and one of 95 %. */
export const tRows = [
  { degrees: 1, p: 0.975, t: 12.706, source: 'tables of Student’s t, from memory', flag: 'memory' },
  { degrees: 2, p: 0.975, t: 4.303, source: 'tables of Student’s t, from memory', flag: 'memory' },
  { degrees: 3, p: 0.975, t: 3.182, source: 'tables of Student’s t, from memory', flag: 'memory' },
  { degrees: 10, p: 0.975, t: 2.228, source: 'tables of Student’s t, from memory', flag: 'memory' },
  { degrees: 30, p: 0.95, t: 1.697, source: 'tables of Student’s t, from memory', flag: 'memory' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

/** Where the reference library of the tests is off by 1e-3: another one. */
export const chiSquareRows = [
  { degrees: 2000, p: 0.025, x: 1877.9460368153905, source: 'scipy 1.17.1, chi2.ppf', flag: 'seen' },
  { degrees: 2000, p: 0.975, x: 2125.8423024497756, source: 'scipy 1.17.1, chi2.ppf', flag: 'seen' },
  { degrees: 10000, p: 0.025, x: 9724.718377389798, source: 'scipy 1.17.1, chi2.ppf', flag: 'seen' },
  { degrees: 10000, p: 0.975, x: 10279.07017988759, source: 'scipy 1.17.1, chi2.ppf', flag: 'seen' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
