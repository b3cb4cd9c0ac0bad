/**
 * Samples on their way: one batch, column by column, so that a beat of thousands makes no objects.
 *
 * `value` is in the signal's canonical unit, already quantised to its resolution; where the
 * quality is bad there is no value and the column holds 0. `judged` is when the engine uses
 * the sample (docs/time.md).
 */
import type { QualityCode } from './quality.ts';

/** Milliseconds since 1970-01-01T00:00:00Z; a whole number. */
export type EpochMs = number;

export const sampleFlag = {
  /** Arrived beyond the signal's lateness: stored, not judged. */
  late: 1,
  /** Another value for a time already taken: stored, not judged. */
  conflict: 2,
  /** Retained and without its own time: judged as uncertain, but no sign of life. */
  noSignOfLife: 4,
} as const;
/** A sample with any of these flags is stored and never judged. */
export const unjudgedFlags = sampleFlag.late | sampleFlag.conflict;

export class SampleBatch {
  count = 0;
  signal: Int32Array;
  at: Float64Array;
  judged: Float64Array;
  value: Float64Array;
  quality: Uint8Array;
  flags: Uint8Array;

  constructor(capacity = 256) {
    this.signal = new Int32Array(capacity);
    this.at = new Float64Array(capacity);
    this.judged = new Float64Array(capacity);
    this.value = new Float64Array(capacity);
    this.quality = new Uint8Array(capacity);
    this.flags = new Uint8Array(capacity);
  }

  push(
    signal: number,
    at: EpochMs,
    judged: EpochMs,
    value: number,
    quality: QualityCode,
    flags: number,
  ): void {
    const i = this.count;
    if (i === this.signal.length) this.grow();
    this.signal[i] = signal;
    this.at[i] = at;
    this.judged[i] = judged;
    this.value[i] = value;
    this.quality[i] = quality;
    this.flags[i] = flags;
    this.count = i + 1;
  }

  clear(): void {
    this.count = 0;
  }

  private grow(): void {
    const capacity = this.signal.length * 2;
    const bigger = new SampleBatch(capacity);
    bigger.signal.set(this.signal);
    bigger.at.set(this.at);
    bigger.judged.set(this.judged);
    bigger.value.set(this.value);
    bigger.quality.set(this.quality);
    bigger.flags.set(this.flags);
    this.signal = bigger.signal;
    this.at = bigger.at;
    this.judged = bigger.judged;
    this.value = bigger.value;
    this.quality = bigger.quality;
    this.flags = bigger.flags;
  }
}
