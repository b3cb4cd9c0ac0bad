/**
 * How far a value moved within a span that moves along with time: its lowest and its highest.
 *
 * Kept in slices, a 16th of the span each. The oldest slice counts whole until it has left, so a
 * value is called steady a slice late at most, and never too soon. The last reading holds until the
 * next one.
 */
import type { EpochMs } from '../signal/sample.ts';

const slices = 16;

export interface SpanExtremes {
  /** By slice, the newest last. */
  lows: number[];
  highs: number[];
  /** Of all slices. */
  lowest: number;
  highest: number;
  /** When the newest slice ends. */
  endsAt: EpochMs;
  /** Since when it is watched without a break. */
  beganAt: EpochMs;
  value: number;
}

export const extremesBegin = (spanMs: number, value: number, now: EpochMs): SpanExtremes => ({
  lows: [value],
  highs: [value],
  lowest: value,
  highest: value,
  endsAt: now + spanMs / slices,
  beganAt: now,
  value,
});

export function extremesTake(of: SpanExtremes, spanMs: number, value: number, now: EpochMs): void {
  extremesTo(of, spanMs, now);
  of.value = value;
  const last = of.lows.length - 1;
  if (value < of.lows[last]!) of.lows[last] = value;
  if (value > of.highs[last]!) of.highs[last] = value;
  if (value < of.lowest) of.lowest = value;
  if (value > of.highest) of.highest = value;
}

/** Lets go what has left the span. */
export function extremesTo(of: SpanExtremes, spanMs: number, now: EpochMs): void {
  if (now < of.endsAt) return;
  const sliceMs = spanMs / slices;
  if (now >= of.endsAt + 2 * spanMs) {
    // All of it has left; only what it said last still holds.
    of.lows = [of.value];
    of.highs = [of.value];
    of.endsAt = now + sliceMs;
  }
  while (now >= of.endsAt) {
    of.lows.push(of.value);
    of.highs.push(of.value);
    of.endsAt += sliceMs;
    if (of.lows.length <= slices + 1) continue;
    of.lows.shift();
    of.highs.shift();
  }
  of.lowest = Math.min(...of.lows);
  of.highest = Math.max(...of.highs);
}

export const extremesRange = ({ lowest, highest }: SpanExtremes): number => highest - lowest;

export function extremesShift(of: SpanExtremes, deltaMs: number): void {
  of.endsAt += deltaMs;
  of.beganAt += deltaMs;
}
