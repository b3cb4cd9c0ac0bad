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
  /** Stretches in which some readings were not usable, and others were. In seconds. */
  readonly partly: Stretch[];
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
  const columns: Columns = {
    times: [],
    low: [],
    high: [],
    mean: [],
    unusable: [],
    partly: [],
    doubtful: [],
  };
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
    if (bad > 0) mark(mean === null ? columns.unusable : columns.partly, at, stepMs);
    if ((uncertain[i] ?? 0) > 0) mark(columns.doubtful, at, stepMs);
    before = at;
  }
  return columns;
}

/** What else stands in a chart, that its legend must name. */
export interface ChartMarks {
  readonly limits: number;
  readonly forecast: boolean;
  /** Bars of alarms nobody has answered, and of those somebody has. */
  readonly open: boolean;
  readonly answered: boolean;
}

export const legendItems = [
  'mean',
  'range',
  'doubtful',
  'unusable',
  'partly',
  'gap',
  'limit',
  'forecast',
  'alarm',
  'answered',
] as const;
export type LegendItem = (typeof legendItems)[number];

/** What is to be seen, and no more. */
export function legendOf(columns: Columns, marks: ChartMarks): LegendItem[] {
  const { times, low, high, mean, unusable, partly, doubtful } = columns;
  const isGap = (i: number): boolean =>
    mean[i] === null && !unusable.some(([from, to]) => times[i]! >= from && times[i]! <= to);
  const shown: Readonly<Record<LegendItem, boolean>> = {
    mean: mean.some((each) => each !== null),
    range: low.some((each, i) => each !== high[i]),
    doubtful: doubtful.length > 0,
    unusable: unusable.length > 0,
    partly: partly.length > 0,
    gap: times.some((_, i) => isGap(i)),
    limit: marks.limits > 0,
    forecast: marks.forecast,
    alarm: marks.open,
    answered: marks.answered,
  };
  return legendItems.filter((item) => shown[item]);
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
