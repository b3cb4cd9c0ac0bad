/** What every station of the demo line sees of a moment. */
import type { FaultName } from './timetable.ts';

export interface Moment {
  /** Milliseconds since 1970 at the end of the step. */
  readonly atMs: number;
  /** Seconds since the beginning of the show, or of the history; the rhythm of the line. */
  readonly lineS: number;
  readonly stepS: number;
  readonly seed: number;
  readonly outsideC: number;
  readonly hallC: number;
  readonly hallRhPercent: number;
  /** How much of a fault is there, 0 to 1. */
  fault(name: FaultName): number;
  /** Seconds since the fault last began, and since it was last over; null where it never was. */
  since(name: FaultName): number | null;
  over(name: FaultName): number | null;
}
