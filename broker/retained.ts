/**
 * Bounds what clients may have retained. The broker library keeps every retained message for ever.
 *
 * Always true: beyond the bound a message is still passed on and judged; only its copy for later
 * readers is refused, and counted.
 */
import type { DoorCounters } from './counters.ts';

export class RetainedBound {
  readonly #bytesMax: number;
  readonly #topicsMax: number;
  readonly #counters: DoorCounters;
  readonly #bytesOf = new Map<string, number>();
  #bytes = 0;

  constructor(limits: { retainedMax: number; retainedBytesMax: number }, counters: DoorCounters) {
    this.#topicsMax = limits.retainedMax;
    this.#bytesMax = limits.retainedBytesMax;
    this.#counters = counters;
  }

  /** Whether a message may be retained; an empty one clears its topic. Our own always may. */
  admit(topic: string, payloadBytes: number, own: boolean): boolean {
    const before = this.#bytesOf.get(topic);
    const bytes = payloadBytes === 0 ? 0 : payloadBytes + topic.length;
    const after = this.#bytes - (before ?? 0) + bytes;
    const full =
      after > this.#bytesMax || (before === undefined && this.#bytesOf.size >= this.#topicsMax);
    if (bytes > 0 && full && !own) {
      this.#counters.retainedRefused++;
      return false;
    }
    this.#bytes = after;
    if (bytes === 0) this.#bytesOf.delete(topic);
    else this.#bytesOf.set(topic, bytes);
    this.#counters.retained = this.#bytesOf.size;
    return true;
  }
}
