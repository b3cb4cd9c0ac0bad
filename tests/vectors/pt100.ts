import type { Pt100Class } from '#rules/process/pt100.ts';
import type { Sourced } from './sourced.ts';

const table = { source: 'IEC 60751 resistance table, as printed by two makers of sensors', flag: 'seen' } as const;
const formula = { source: 'IEC 60751, computed from its constants', flag: 'calc' } as const;
const tolerance = { source: 'IEC 60751 tolerance table, as printed by a maker of sensors', flag: 'seen' } as const;
const remembered = { source: 'IEC 60751, class AA', flag: 'memory' } as const;

export interface ResistanceRow extends Sourced {
  readonly temperatureC: number;
  readonly ohm: number;
  readonly toleranceOhm: number;
}
const printed = (temperatureC: number, ohm: number): ResistanceRow => ({ temperatureC, ohm, toleranceOhm: 0.00501, ...table });
const computed = (temperatureC: number, ohm: number): ResistanceRow => ({ temperatureC, ohm, toleranceOhm: 5.1e-6, ...formula });
export const resistanceRows: readonly ResistanceRow[] = [
  printed(-200, 18.52), printed(-100, 60.26), printed(-20, 92.16), printed(0, 100), printed(50, 119.4),
  printed(100, 138.51), printed(140, 153.58), printed(200, 175.86), printed(300, 212.05),
  computed(-200, 18.52008), computed(-100, 60.25584), computed(-20, 92.1599), computed(0, 100),
  computed(50, 119.39713), computed(100, 138.5055), computed(112, 143.04854), computed(140, 153.5843),
  computed(155, 159.19121), computed(200, 175.856), computed(300, 212.0515),
];

export interface ToleranceRow extends Sourced {
  readonly grade: Pt100Class;
  readonly temperatureC: number;
  readonly toleranceK: number;
}
const both = (temperatureC: number, classA: number, classB: number, sourced: Sourced): ToleranceRow[] => [
  { grade: 'A', temperatureC, toleranceK: classA, ...sourced },
  { grade: 'B', temperatureC, toleranceK: classB, ...sourced },
];
export const toleranceRows: readonly ToleranceRow[] = [
  ...both(-200, 0.55, 1.3, tolerance), ...both(-100, 0.35, 0.8, tolerance), ...both(-20, 0.19, 0.4, tolerance),
  ...both(0, 0.15, 0.3, tolerance), ...both(50, 0.25, 0.55, tolerance), ...both(100, 0.35, 0.8, tolerance),
  ...both(140, 0.43, 1, tolerance), ...both(200, 0.55, 1.3, tolerance), ...both(300, 0.75, 1.8, tolerance),
  ...both(112, 0.374, 0.86, formula), ...both(155, 0.46, 1.075, formula),
  { grade: 'AA', temperatureC: 0, toleranceK: 0.1, ...remembered },
  { grade: 'AA', temperatureC: 100, toleranceK: 0.27, ...remembered },
];

/** One table in circulation has two digits of this entry the wrong way round. */
export const misprint = { temperatureC: -160, printedOhm: 35.34, ohm: 35.54, toleranceOhm: 0.005, source: 'a resistance table of a maker of sensors against the formula of IEC 60751', flag: 'seen' } as const;
