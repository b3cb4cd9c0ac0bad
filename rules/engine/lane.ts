/**
 * Samples of one moment, arrived in any order and left in the order (signal, arrival).
 *
 * A beat's readings mostly share their moment and hold right then; for them one sort at the end
 * is far cheaper than a place in a heap each. What does not fit is refused, for the heap.
 */
import { SampleBatch } from '../signal/sample.ts';
import type { PendingSample } from './pending.ts';

/** Arrivals of one moment; with the signal before it a key stays exact. */
const arrivalsMax = 2 ** 22;

export class Lane {
  judged = Number.POSITIVE_INFINITY;
  private readonly samples = new SampleBatch(256);
  private keys = new Float64Array(256);
  private next = 0;
  private sorted = false;

  get size(): number {
    return this.samples.count - this.next;
  }

  /** False where it is of another moment, held earlier, or comes while the lane empties. */
  take(batch: SampleBatch, i: number): boolean {
    const { samples } = this;
    const judged = batch.judged[i]!;
    if (samples.count === 0) this.judged = judged;
    else if (judged !== this.judged || this.sorted || samples.count === arrivalsMax) return false;
    if (batch.at[i] !== judged) {
      if (samples.count === 0) this.judged = Number.POSITIVE_INFINITY;
      return false;
    }
    samples.push(
      batch.signal[i]!,
      judged,
      judged,
      batch.value[i]!,
      batch.quality[i]!,
      batch.flags[i]!,
    );
    return true;
  }

  /** Signal of the first in order; there must be one. */
  get signal(): number {
    return this.samples.signal[this.first()]!;
  }

  leave(into: { -readonly [K in keyof PendingSample]: number }): void {
    const { samples } = this;
    const i = this.first();
    into.signal = samples.signal[i]!;
    into.at = this.judged;
    into.judged = this.judged;
    into.value = samples.value[i]!;
    into.quality = samples.quality[i]!;
    into.flags = samples.flags[i]!;
    this.next += 1;
    if (this.next === samples.count) this.clear();
  }

  clear(): void {
    this.samples.clear();
    this.next = 0;
    this.sorted = false;
    this.judged = Number.POSITIVE_INFINITY;
  }

  /** What waits, in no order. */
  *rest(): Generator<PendingSample> {
    const { samples, judged } = this;
    for (let n = this.next; n < samples.count; n += 1) {
      const i = this.sorted ? this.keys[n]! % arrivalsMax : n;
      yield {
        signal: samples.signal[i]!,
        at: judged,
        judged,
        value: samples.value[i]!,
        quality: samples.quality[i]!,
        flags: samples.flags[i]!,
      };
    }
  }

  private first(): number {
    if (!this.sorted) this.sort();
    return this.keys[this.next]! % arrivalsMax;
  }

  private sort(): void {
    const { samples } = this;
    const { count } = samples;
    if (this.keys.length < count) this.keys = new Float64Array(samples.signal.length);
    for (let i = 0; i < count; i += 1) this.keys[i] = samples.signal[i]! * arrivalsMax + i;
    this.keys.subarray(0, count).sort();
    this.sorted = true;
  }
}
