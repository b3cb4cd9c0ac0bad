/**
 * A signal's record as the chart draws it: columns of time, low, high and mean in the reader's
 * unit, with an empty row wherever there was no reading, so that a gap is drawn as a gap.
 */
import type { Series } from '../../agent/web/contract.ts';

export interface Columns {
  /** Seconds; what the chart library counts in. */
  readonly times: number[];
  readonly low: (number | null)[];
  readonly high: (number | null)[];
  readonly mean: (number | null)[];
  /** Stretches of readings that were not usable, in seconds. */
  readonly unusable: Stretch[];
  /** Stretches with readings in doubt: uncertain, late or in conflict. In seconds. */
  readonly doubtful: Stretch[];
}

export type Stretch = readonly [from: number, to: number];

/** `everyMs`: how often the signal promised to speak; null where it promised nothing. */
export function columnsOf(
  { points, uncertain }: Series,
  of: (value: number) => number,
  stepMs: number,
  everyMs: number | null,
): Columns {
  const columns: Columns = { times: [], low: [], high: [], mean: [], unusable: [], doubtful: [] };
  const gapMs = Math.max(3 * stepMs, 3 * (everyMs ?? 0), 1_000);
  const push = (at: number, low: number | null, high: number | null, mean: number | null): void => {
    columns.times.push(at / 1_000);
    columns.low.push(low);
    columns.high.push(high);
    columns.mean.push(mean);
  };
  let before: number | null = null;
  for (const [i, [at, low, high, mean, , bad]] of points.entries()) {
    if (before !== null && at - before > gapMs) push((at + before) / 2, null, null, null);
    push(
      at,
      low === null ? null : of(low),
      high === null ? null : of(high),
      mean === null ? null : of(mean),
    );
    if (mean === null && bad > 0) mark(columns.unusable, at, stepMs);
    if ((uncertain[i] ?? 0) > 0) mark(columns.doubtful, at, stepMs);
    before = at;
  }
  return columns;
}

/** Neighbouring buckets are one stretch. */
function mark(stretches: Stretch[], at: number, stepMs: number): void {
  const [from, to] = [(at - stepMs / 2) / 1_000, (at + stepMs / 2) / 1_000];
  const last = stretches.at(-1);
  if (last !== undefined && from - last[1] < (2 * stepMs) / 1_000)
    stretches[stretches.length - 1] = [last[0], to];
  else stretches.push([from, to]);
}

export interface Summary {
  readonly low: number;
  readonly high: number;
  readonly mean: number;
}

/** Lowest, highest and mean in the canonical unit; null where no reading was usable. */
export function summaryOf({ points }: Series): Summary | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let n = 0;
  for (const [, min, max, mean, count, bad] of points) {
    if (min === null || max === null || mean === null) continue;
    low = Math.min(low, min);
    high = Math.max(high, max);
    sum += mean * (count - bad);
    n += count - bad;
  }
  return n === 0 ? null : { low, high, mean: sum / n };
}
