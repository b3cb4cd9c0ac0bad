import type { LoopBand } from '#rules/process/current-loop.ts';
import { type Sourced, sources } from './sourced.ts';

const ne43 = { source: 'NAMUR NE 43, as quoted by two suppliers of transmitters', flag: 'seen' } as const;
const between = { source: 'follows from the bands of NAMUR NE 43', flag: 'calc' } as const;
const maths = { source: sources.maths, flag: 'calc' } as const;

export interface BandRow extends Sourced {
  readonly currentMa: number;
  readonly band: LoopBand;
}
export const bandRows: readonly BandRow[] = [
  { currentMa: -1, band: 'fault-low', ...ne43 },
  { currentMa: 0, band: 'fault-low', ...ne43 },
  { currentMa: 3.6, band: 'fault-low', ...ne43 },
  { currentMa: 3.601, band: 'saturated', ...between },
  { currentMa: 3.799, band: 'saturated', ...between },
  { currentMa: 3.8, band: 'measured', ...ne43 },
  { currentMa: 4, band: 'measured', ...ne43 },
  { currentMa: 12, band: 'measured', ...ne43 },
  { currentMa: 20, band: 'measured', ...ne43 },
  { currentMa: 20.5, band: 'measured', ...ne43 },
  { currentMa: 20.501, band: 'saturated', ...between },
  { currentMa: 20.999, band: 'saturated', ...between },
  { currentMa: 21, band: 'fault-high', ...ne43 },
  { currentMa: 22.5, band: 'fault-high', ...ne43 },
];

/** How long a fault must last before it counts. */
export const persistence = { ms: 4_000, source: 'a forum of instrument engineers on NAMUR NE 43; one source', flag: 'seen' } as const;

export interface ScaleRow extends Sourced {
  readonly currentMa: number;
  readonly percent: number;
}
export const scaleRows: readonly ScaleRow[] = [
  { currentMa: 3.8, percent: -1.25, ...maths },
  { currentMa: 4, percent: 0, ...maths },
  { currentMa: 12, percent: 50, ...maths },
  { currentMa: 20, percent: 100, ...maths },
  { currentMa: 20.5, percent: 103.125, ...maths },
];

/** Where the line would be at the borders of the faults; a current there is no value. */
export const faultScaleRows: readonly ScaleRow[] = [
  { currentMa: 3.6, percent: -2.5, ...maths },
  { currentMa: 21, percent: 106.25, ...maths },
];
