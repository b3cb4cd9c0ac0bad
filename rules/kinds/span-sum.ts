/**
 * How long something held within a span that moves along with time.
 *
 * Time is kept in slices, a 64th of the span each, so that a year of readings costs as much as a
 * day. The oldest slice counts whole until it has left, so a sum errs by a slice at most, and never
 * to the short side. What nobody observed does not count.
 */
import type { EpochMs } from '../signal/sample.ts';

const slices = 64;

export interface SpanSum {
  /** Milliseconds held, by slice, the newest last. */
  held: number[];
  /** When the newest slice ends. */
  endsAt: EpochMs;
  /** Since when it holds, and is not counted yet; null while it does not hold. */
  since: EpochMs | null;
}

export const spanBegin = (spanMs: number, at: EpochMs): SpanSum => ({
  held: [0],
  endsAt: at + spanMs / slices,
  since: null,
});

/** Counts up to `now`, and lets go what has left the span. */
export function spanTo(sum: SpanSum, spanMs: number, now: EpochMs): void {
  while (now >= sum.endsAt) {
    count(sum, sum.endsAt);
    sum.held.push(0);
    if (sum.held.length > slices + 1) sum.held.shift();
    sum.endsAt += spanMs / slices;
  }
  count(sum, now);
}

function count(sum: SpanSum, until: EpochMs): void {
  if (sum.since === null || until <= sum.since) return;
  sum.held[sum.held.length - 1]! += until - sum.since;
  sum.since = until;
}

/** From `now` on it holds, or does not. */
export function spanSay(sum: SpanSum, spanMs: number, holds: boolean, now: EpochMs): void {
  spanTo(sum, spanMs, now);
  sum.since = holds ? now : null;
}

export const spanHeldMs = (sum: SpanSum): number => sum.held.reduce((all, ms) => all + ms, 0);

/** When the oldest slice that holds anything leaves; null where none does. */
export function spanForgetsAt(sum: SpanSum, spanMs: number): EpochMs | null {
  const first = sum.held.findIndex((ms) => ms > 0);
  if (first < 0) return null;
  const slicesLeft = first + slices + 1 - sum.held.length;
  return Math.ceil(sum.endsAt + (slicesLeft * spanMs) / slices);
}

/** Nobody saw what held from `fromMs` to `toMs`. */
export function spanGap(sum: SpanSum, spanMs: number, fromMs: EpochMs, toMs: EpochMs): void {
  const holds = sum.since !== null;
  spanSay(sum, spanMs, false, fromMs);
  spanSay(sum, spanMs, holds, toMs);
}

export function spanShift(sum: SpanSum, deltaMs: number): void {
  sum.endsAt += deltaMs;
  if (sum.since !== null) sum.since += deltaMs;
}
