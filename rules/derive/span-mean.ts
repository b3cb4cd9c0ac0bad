/**
 * A reading added up and averaged over a span that moves along with time.
 *
 * Time is kept in slices of equal length, so that a month of readings costs as much as a minute.
 * The oldest slice counts whole until it has left. A reading holds until the next one; what nobody
 * saw does not count.
 */
import type { EpochMs } from '../signal/sample.ts';

export interface Span {
  readonly spanMs: number;
  readonly slices: number;
}

export interface SpanMean {
  /** Reading times milliseconds, and milliseconds seen, by slice, the newest last. */
  sums: number[];
  seen: number[];
  /** When the newest slice ends. */
  endsAt: EpochMs;
  /** Counted up to here; null before the first reading. */
  at: EpochMs | null;
  held: number;
}

export const meanBegin = ({ spanMs, slices }: Span, at: EpochMs): SpanMean => ({
  sums: [0],
  seen: [0],
  endsAt: at + spanMs / slices,
  at: null,
  held: 0,
});

/** Counts up to `now`, and lets go what has left the span. */
export function meanTo(mean: SpanMean, span: Span, now: EpochMs): void {
  const sliceMs = span.spanMs / span.slices;
  if (now - mean.endsAt > span.spanMs + sliceMs) leap(mean, span, now);
  while (now >= mean.endsAt) {
    count(mean, mean.endsAt);
    mean.sums.push(0);
    mean.seen.push(0);
    if (mean.sums.length > span.slices + 1) {
      mean.sums.shift();
      mean.seen.shift();
    }
    mean.endsAt += sliceMs;
  }
  count(mean, now);
}

/** All there was has left the span: goes on a span before `now`, on the grid of its slices. */
function leap(mean: SpanMean, span: Span, now: EpochMs): void {
  const sliceMs = span.spanMs / span.slices;
  const skipped = Math.floor((now - span.spanMs - mean.endsAt) / sliceMs);
  mean.endsAt += skipped * sliceMs;
  mean.sums = [0];
  mean.seen = [0];
  if (mean.at !== null) mean.at = Math.max(mean.at, mean.endsAt - sliceMs);
}

function count(mean: SpanMean, until: EpochMs): void {
  if (mean.at === null || until <= mean.at) return;
  const last = mean.sums.length - 1;
  const ms = until - mean.at;
  mean.sums[last]! += mean.held * ms;
  mean.seen[last]! += ms;
  mean.at = until;
}

/** From `now` on it reads `value`. */
export function meanSay(mean: SpanMean, span: Span, value: number, now: EpochMs): void {
  meanTo(mean, span, now);
  mean.at = now;
  mean.held = value;
}

function total(slices: readonly number[]): number {
  let all = 0;
  for (let i = 0; i < slices.length; i += 1) all += slices[i]!;
  return all;
}

export const spanSeenMs = (mean: SpanMean): number => total(mean.seen);

/** Reading times milliseconds over the span. */
export const spanSum = (mean: SpanMean): number => total(mean.sums);

/** The mean over what was seen of the span; what is held where that is nothing yet. */
export function spanMean(mean: SpanMean): number {
  const seenMs = spanSeenMs(mean);
  return seenMs === 0 ? mean.held : spanSum(mean) / seenMs;
}

/** Seen for less than half of the span: it speaks for the other half only by luck. */
export const halfSeen = (mean: SpanMean, { spanMs }: Span): boolean =>
  spanSeenMs(mean) >= spanMs / 2;

/** Nobody saw what it read from `fromMs` to `toMs`. */
export function meanGap(mean: SpanMean, span: Span, fromMs: EpochMs, toMs: EpochMs): void {
  const seen = mean.at !== null;
  meanTo(mean, span, fromMs);
  mean.at = null;
  meanTo(mean, span, toMs);
  if (seen) mean.at = toMs;
}

export function meanShift(mean: SpanMean, deltaMs: number): void {
  mean.endsAt += deltaMs;
  if (mean.at !== null) mean.at += deltaMs;
}
