import { type Sourced, sources } from './sourced.ts';

const f0 = 'a public text on the F0 value of thermal processing';
export interface ZRow extends Sourced {
  readonly temperatureC: number;
  readonly referenceC: number;
  readonly zK: number;
  readonly minutes: number;
  readonly equivalent: number;
  readonly tolerance: number;
}
const rate = { referenceC: 121.1, zK: 10, minutes: 1, tolerance: 1e-9, source: 'a public table of lethal rates', flag: 'seen' } as const;
export const zRows: readonly ZRow[] = [
  { temperatureC: 121, referenceC: 121, zK: 10, minutes: 15, equivalent: 15, tolerance: 1e-9, source: f0, flag: 'seen' },
  { temperatureC: 111, referenceC: 121, zK: 10, minutes: 15, equivalent: 1.5, tolerance: 1e-9, source: f0, flag: 'seen' },
  { temperatureC: 124, referenceC: 121, zK: 10, minutes: 15, equivalent: 29.929, tolerance: 0.001, source: `${f0}; the case read, its figure computed`, flag: 'calc' },
  { temperatureC: 101.1, equivalent: 0.01, ...rate },
  { temperatureC: 111.1, equivalent: 0.1, ...rate },
  { temperatureC: 121.1, equivalent: 1, ...rate },
  { temperatureC: 131.1, equivalent: 10, ...rate },
  { temperatureC: 141.1, equivalent: 100, ...rate },
];

/** Up in 10 min, hold 10, down in 10: exact, and what sums of rates at fixed steps make of it. */
export const rampRow = {
  fromC: 100, holdC: 121.1, rampMin: 10, holdMin: 10, referenceC: 121.1, zK: 10,
  exactMin: 14.084581, eachRampMin: 2.0422904,
  trapezoids: [{ stepMin: 1, minutes: 14.164612 }, { stepMin: 0.5, minutes: 14.104648 }, { stepMin: 0.1, minutes: 14.085384 }],
  tolerance: 1e-6, source: sources.maths, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

export interface ArrheniusRow extends Sourced {
  readonly activationKJPerMol: number;
  readonly temperatureC: number;
  readonly referenceC: number;
  readonly factor: number;
  readonly tolerance: number;
}
export const arrheniusRows: readonly ArrheniusRow[] = [
  { activationKJPerMol: 100, temperatureC: 10, referenceC: 25, factor: 0.118001, tolerance: 1e-5, source: 'formula and case from the R package rpmodel (ftemp_arrh); figure computed', flag: 'calc' },
  { activationKJPerMol: 100, temperatureC: 150, referenceC: 140, factor: 1.989654, tolerance: 1e-6, source: sources.maths, flag: 'calc' },
  { activationKJPerMol: 100, temperatureC: 160, referenceC: 140, factor: 3.834949, tolerance: 1e-6, source: sources.maths, flag: 'calc' },
];

export const conversionRow = { zK: 10, atC: 121.1, activationKJPerMol: 297.57, tolerance: 0.01, source: sources.maths, flag: 'calc' } as const satisfies Sourced & Record<string, unknown>;
