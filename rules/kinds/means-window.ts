/**
 * Means of a signal over a window that moves along: what a robust slope is drawn through.
 *
 * A window is kept as so many means at most, however fast the signal is; a sparse one makes a mean
 * of each reading. The slope is computed once a mean, never once a sample. Nobody draws a slope
 * across time that was not observed: whoever keeps the window empties it at a gap.
 */
import { confidenceZ, type SenSlope, senSlope } from '../process/trend.ts';
import type { EpochMs } from '../signal/sample.ts';

export interface MeansWindow {
  /** Closed means of the window, oldest first, and the middle of what each is made of. */
  times: EpochMs[];
  means: number[];
  /** The open mean. */
  openAt: EpochMs | null;
  closedAt: EpochMs | null;
  sumTimes: number;
  sum: number;
  count: number;
}

export const meansBegin = (): MeansWindow => ({
  times: [],
  means: [],
  openAt: null,
  closedAt: null,
  sumTimes: 0,
  sum: 0,
  count: 0,
});

/** Nothing of it can be used any more. */
export const meansForget = (window: MeansWindow): MeansWindow =>
  Object.assign(window, meansBegin());

/** Takes a reading; true where it closed a mean, a `most`-th of the window long. */
export function meansTake(
  window: MeansWindow,
  windowMs: number,
  most: number,
  value: number,
  judged: EpochMs,
): boolean {
  window.openAt ??= judged;
  window.sumTimes += judged - window.openAt;
  window.sum += value;
  window.count += 1;
  if (window.closedAt !== null && judged - window.closedAt < windowMs / most) return false;
  const { times, means } = window;
  times.push(window.openAt + window.sumTimes / window.count);
  means.push(window.sum / window.count);
  Object.assign(window, { openAt: null, closedAt: judged, sumTimes: 0, sum: 0, count: 0 });
  while (times.length > most || times[0]! < judged - windowMs) {
    times.shift();
    means.shift();
  }
  return true;
}

export function meansShift(window: MeansWindow, deltaMs: number): void {
  window.times = window.times.map((time) => time + deltaMs);
  if (window.openAt !== null) window.openAt += deltaMs;
  if (window.closedAt !== null) window.closedAt += deltaMs;
}

const scratch: SenSlope = { slope: 0, low: 0, high: 0 };

/** Sen's slope of the means, units per millisecond, in an object that is reused; null for fewer than two. */
export function meansSlope(
  { times, means }: MeansWindow,
  z: number = confidenceZ.p90,
): SenSlope | null {
  const since = times.map((time) => time - times[0]!);
  return senSlope(since, means, means.length, z, scratch);
}

/** What lies in the middle; of two middles, half-way. There must be one. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
