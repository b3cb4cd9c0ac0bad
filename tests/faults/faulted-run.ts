/** What a run on the failing disk is sent, and what it says of itself. */
export interface FaultedRun {
  readonly at: number;
  readonly operations: number;
  /** Code of the error that kept it from starting or from stopping in order; null for none. */
  readonly start: string | null;
  readonly stop: string | null;
  /** Values acknowledged, in thousandths. */
  readonly acknowledged: readonly number[];
  /** What no person should ever see: stacks, hangs, the log's faults. */
  readonly faults: readonly string[];
}

export const sentKeys = [101_000, 102_000, 601_000, 602_000, 103_000] as const;
