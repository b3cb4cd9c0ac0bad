/**
 * What has added up since the last new start: hours run, volume pumped, minutes in the heat.
 *
 * A reading holds until the next one. What nobody saw adds nothing, and the sum then says that a
 * part is missing, until it starts anew; so does one that has not seen its start.
 */
import type { EpochMs } from '../signal/sample.ts';

export interface SumSince {
  /** Counted up to here; null before the first reading and after a time nobody saw. */
  at: EpochMs | null;
  /** What adds up per hour from `at` on. */
  perH: number;
  sum: number;
  /** Part of the time since the start was not observed. */
  partial: boolean;
  /** Last value of the signal that starts it anew. */
  start: number | null;
}

const msPerH = 3_600_000;
/** How often a sum that grows is told although no reading came. */
export const toldEveryMs = 60_000;

/** `awaited`: a signal or a mark starts it anew, so that what went before is missing. */
export const sumBegin = (awaited: boolean): SumSince => ({
  at: null,
  perH: 0,
  sum: 0,
  partial: awaited,
  start: null,
});

/** Adds up to `to`. */
export function sumTo(sum: SumSince, to: EpochMs): void {
  if (sum.at !== null && to > sum.at) sum.sum += (sum.perH * (to - sum.at)) / msPerH;
  sum.at = to;
}

/** Begins anew where the start's signal rose: 0 to 1, or a count that went up. */
export function sumStart(sum: SumSince, value: number): boolean {
  const rose = sum.start !== null && value > sum.start;
  sum.start = value;
  if (rose) sumAnew(sum);
  return rose;
}

function sumAnew(sum: SumSince): void {
  sum.sum = 0;
  sum.partial = false;
}

/** A word of the start is taken as said in time; later than this, what ran since is missing. */
const saidInTimeMs = 60_000;

/** Somebody said that it started anew at `at`. */
export function sumSaid(sum: SumSince, at: EpochMs, now: EpochMs): void {
  if (sum.at !== null) sumTo(sum, now);
  sumAnew(sum);
  sum.partial = now - at > saidInTimeMs;
}

export function sumGap(sum: SumSince, fromMs: EpochMs, toMs: EpochMs): void {
  if (sum.at === null) return;
  sumTo(sum, fromMs);
  sum.at = toMs;
  sum.partial = true;
}

export function sumShift(sum: SumSince, deltaMs: number): void {
  if (sum.at !== null) sum.at += deltaMs;
}

/** Whole minutes, in s: a sum of time is told no finer. */
export const wholeMinutesS = (hours: number): number => Math.floor(hours * 60 + 1e-9) * 60;
