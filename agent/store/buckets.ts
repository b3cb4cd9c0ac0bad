/**
 * Buckets of equal width that samples, minute summaries and whole chunks are added up in.
 *
 * Always true: a sample is in the bucket that holds its `at`; every sample counts, bad ones also as
 * bad; least, greatest and mean are over usable samples, those neither bad nor in conflict. Those
 * in doubt (uncertain, late, in conflict) are counted beside.
 */
import { isInDoubt } from '#rules/signal/doubt.ts';
import { firstBadCode } from '#rules/signal/quality.ts';
import { type EpochMs, sampleFlag } from '#rules/signal/sample.ts';
import type { OpenColumn, SeriesPoint } from './contract.ts';
import { type Minutes, minuteMs } from './minutes.ts';

export class Buckets {
  readonly sinceMs: EpochMs;
  readonly untilMs: EpochMs;
  readonly stepMs: number;
  private readonly lo: Float64Array;
  private readonly hi: Float64Array;
  private readonly sum: Float64Array;
  private readonly usable: Float64Array;
  private readonly n: Float64Array;
  private readonly bad: Float64Array;
  private readonly doubtful: Float64Array;

  /** From `sinceMs` up to, not including, `untilMs`; the last bucket may be cut short. */
  constructor(sinceMs: EpochMs, untilMs: EpochMs, stepMs: number) {
    this.sinceMs = sinceMs;
    this.untilMs = untilMs;
    this.stepMs = stepMs;
    const count = Math.ceil((untilMs - sinceMs) / stepMs);
    this.lo = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    this.hi = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
    this.sum = new Float64Array(count);
    this.usable = new Float64Array(count);
    this.n = new Float64Array(count);
    this.bad = new Float64Array(count);
    this.doubtful = new Float64Array(count);
  }

  /** The bucket that holds a moment between since and until. */
  of(at: EpochMs): number {
    return Math.floor((at - this.sinceMs) / this.stepMs);
  }

  addSamples(column: OpenColumn): void {
    const { at, value, quality, flags, count } = column;
    const { sinceMs, untilMs, lo, hi, sum } = this;
    for (let i = 0; i < count; i += 1) {
      const time = at[i]!;
      if (time < sinceMs || time >= untilMs) continue;
      const b = this.of(time);
      this.n[b]! += 1;
      if (isInDoubt(quality[i]!, flags[i]!)) this.doubtful[b]! += 1;
      if (quality[i]! >= firstBadCode) this.bad[b]! += 1;
      else if ((flags[i]! & sampleFlag.conflict) === 0) {
        const x = value[i]!;
        if (x < lo[b]!) lo[b] = x;
        if (x > hi[b]!) hi[b] = x;
        sum[b]! += x;
        this.usable[b]! += 1;
      }
    }
  }

  /** Exact where buckets begin on whole minutes; otherwise a minute goes where it begins. */
  addMinutes(minutes: Minutes): void {
    const { scale } = minutes;
    for (let i = 0; i < minutes.minute.length; i += 1) {
      const startMs = minutes.minute[i]! * minuteMs;
      if (startMs + minuteMs <= this.sinceMs || startMs >= this.untilMs) continue;
      const b = this.of(Math.max(startMs, this.sinceMs));
      const usable = minutes.usable(i);
      this.add(
        b,
        minutes.n[i]!,
        minutes.bad[i]!,
        usable,
        minutes.lo[i]! / scale,
        minutes.hi[i]! / scale,
        minutes.sum[i]! / scale,
        minutes.doubtful[i]!,
      );
    }
  }

  /** Figures of several samples; lo, hi and sum mean nothing where `usable` is 0. */
  add(
    bucket: number,
    n: number,
    bad: number,
    usable: number,
    lo: number,
    hi: number,
    sum: number,
    doubtful = 0,
  ): void {
    this.n[bucket]! += n;
    this.bad[bucket]! += bad;
    this.doubtful[bucket]! += doubtful;
    if (usable === 0) return;
    this.usable[bucket]! += usable;
    this.sum[bucket]! += sum;
    if (lo < this.lo[bucket]!) this.lo[bucket] = lo;
    if (hi > this.hi[bucket]!) this.hi[bucket] = hi;
  }

  /** For each point, how many of its samples are in doubt. */
  inDoubt(): number[] {
    return [...this.doubtful].filter((_, b) => this.n[b]! > 0);
  }

  /** One point for each bucket that holds a sample. */
  points(): SeriesPoint[] {
    const points: SeriesPoint[] = [];
    for (let b = 0; b < this.n.length; b += 1) {
      const n = this.n[b]!;
      if (n === 0) continue;
      const at = this.sinceMs + b * this.stepMs;
      const usable = this.usable[b]!;
      const bad = this.bad[b]!;
      if (usable === 0) points.push([at, null, null, null, n, bad]);
      else points.push([at, this.lo[b]!, this.hi[b]!, this.sum[b]! / usable, n, bad]);
    }
    return points;
  }
}
