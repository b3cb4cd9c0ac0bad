/** When a sensor was compared with a reference, and until when that holds. */
import type { EpochMs } from '../signal/sample.ts';

export interface CalibrationDates {
  /** As written: `2026-03-31`. */
  readonly calibrated: string;
  /** The last day on which it holds; null where nobody said for how long. */
  readonly lastDay: string | null;
  /** When that day is over, by the site's clock. */
  readonly overdueFromMs: EpochMs | null;
}
