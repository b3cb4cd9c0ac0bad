/**
 * Samples that wait for their moment, taken in the order (judged, signal, at, arrival).
 *
 * A heap of slots over columns, so that a beat of thousands makes no objects. What waits is part
 * of the engine's state: after a restart it is judged in the same order.
 */
import type { SampleBatch } from '../signal/sample.ts';
import { Lane } from './lane.ts';

export interface PendingSample {
  readonly signal: number;
  readonly at: number;
  readonly judged: number;
  readonly value: number;
  readonly quality: number;
  readonly flags: number;
}

export class Pending {
  private capacity = 256;
  private signal = new Int32Array(this.capacity);
  private at = new Float64Array(this.capacity);
  private judged = new Float64Array(this.capacity);
  private value = new Float64Array(this.capacity);
  private quality = new Uint8Array(this.capacity);
  private flags = new Uint8Array(this.capacity);
  private arrival = new Float64Array(this.capacity);
  private heap = new Int32Array(this.capacity);
  private free: number[] = [];
  private used = 0;
  private arrivals = 0;
  private waiting = 0;
  private readonly lane = new Lane();
  /** What the heap took before the lane began has a lower number of arrival. */
  private laneSince = 0;

  get size(): number {
    return this.waiting + this.lane.size;
  }

  /** Time of the first in order; Infinity when none waits. */
  get nextJudged(): number {
    const inHeap = this.waiting === 0 ? Number.POSITIVE_INFINITY : this.judged[this.heap[0]!]!;
    return Math.min(inHeap, this.lane.judged);
  }

  push(batch: SampleBatch, i: number): void {
    const begins = this.lane.size === 0;
    if (this.lane.take(batch, i)) {
      if (begins) this.laneSince = this.arrivals;
      return;
    }
    this.insert(
      batch.signal[i]!,
      batch.at[i]!,
      batch.judged[i]!,
      batch.value[i]!,
      batch.quality[i]!,
      batch.flags[i]!,
    );
  }

  insert(
    signal: number,
    at: number,
    judged: number,
    value: number,
    quality: number,
    flags: number,
  ): void {
    const slot = this.free.pop() ?? this.used++;
    if (slot === this.capacity) this.grow();
    this.signal[slot] = signal;
    this.at[slot] = at;
    this.judged[slot] = judged;
    this.value[slot] = value;
    this.quality[slot] = quality;
    this.flags[slot] = flags;
    this.arrival[slot] = this.arrivals++;
    this.rise(this.waiting++, slot);
  }

  /** Takes the first in order into `into`; there must be one. */
  take(into: { -readonly [K in keyof PendingSample]: number }): void {
    if (this.laneFirst()) {
      this.lane.leave(into);
      return;
    }
    const slot = this.heap[0]!;
    into.signal = this.signal[slot]!;
    into.at = this.at[slot]!;
    into.judged = this.judged[slot]!;
    into.value = this.value[slot]!;
    into.quality = this.quality[slot]!;
    into.flags = this.flags[slot]!;
    this.free.push(slot);
    this.waiting -= 1;
    if (this.waiting > 0) this.sink(this.heap[this.waiting]!);
    else if (this.lane.size === 0) this.arrivals = 0;
  }

  /** Of one moment and signal, what was held from earlier goes before what arrived at it. */
  private laneFirst(): boolean {
    if (this.lane.size === 0) return false;
    if (this.waiting === 0) return true;
    const slot = this.heap[0]!;
    const judged = this.judged[slot]!;
    if (judged !== this.lane.judged) return this.lane.judged < judged;
    const { signal } = this.lane;
    if (this.signal[slot] !== signal) return signal < this.signal[slot]!;
    const at = this.at[slot]!;
    if (at !== this.lane.judged) return this.lane.judged < at;
    return this.laneSince <= this.arrival[slot]!;
  }

  clear(): void {
    this.lane.clear();
    this.waiting = 0;
    this.used = 0;
    this.free.length = 0;
    this.arrivals = 0;
  }

  /** All that wait, in order; the state of the engine holds them. */
  list(): PendingSample[] {
    const inHeap = Array.from(this.heap.subarray(0, this.waiting))
      .sort((a, b) => (this.before(a, b) ? -1 : 1))
      .map((slot) => ({
        signal: this.signal[slot]!,
        at: this.at[slot]!,
        judged: this.judged[slot]!,
        value: this.value[slot]!,
        quality: this.quality[slot]!,
        flags: this.flags[slot]!,
        early: this.arrival[slot]! < this.laneSince,
      }));
    const [earlier, later] = [inHeap.filter((p) => p.early), inHeap.filter((p) => !p.early)];
    // Sorting keeps the order of equals, which is that of arrival.
    return [...earlier, ...this.lane.rest(), ...later]
      .map(({ signal, at, judged, value, quality, flags }) => ({
        signal,
        at,
        judged,
        value,
        quality,
        flags,
      }))
      .sort((a, b) => a.judged - b.judged || a.signal - b.signal || a.at - b.at);
  }

  private before(a: number, b: number): boolean {
    const byJudged = this.judged[a]! - this.judged[b]!;
    if (byJudged !== 0) return byJudged < 0;
    const bySignal = this.signal[a]! - this.signal[b]!;
    if (bySignal !== 0) return bySignal < 0;
    const byAt = this.at[a]! - this.at[b]!;
    if (byAt !== 0) return byAt < 0;
    return this.arrival[a]! < this.arrival[b]!;
  }

  private rise(from: number, slot: number): void {
    const { heap } = this;
    let i = from;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (!this.before(slot, heap[parent]!)) break;
      heap[i] = heap[parent]!;
      i = parent;
    }
    heap[i] = slot;
  }

  private sink(slot: number): void {
    const { heap, waiting: size } = this;
    let i = 0;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= size) break;
      if (child + 1 < size && this.before(heap[child + 1]!, heap[child]!)) child += 1;
      if (!this.before(heap[child]!, slot)) break;
      heap[i] = heap[child]!;
      i = child;
    }
    heap[i] = slot;
  }

  private grow(): void {
    this.capacity *= 2;
    const wider = <A extends Int32Array | Float64Array | Uint8Array>(old: A, empty: A): A => {
      empty.set(old);
      return empty;
    };
    this.signal = wider(this.signal, new Int32Array(this.capacity));
    this.at = wider(this.at, new Float64Array(this.capacity));
    this.judged = wider(this.judged, new Float64Array(this.capacity));
    this.value = wider(this.value, new Float64Array(this.capacity));
    this.quality = wider(this.quality, new Uint8Array(this.capacity));
    this.flags = wider(this.flags, new Uint8Array(this.capacity));
    this.arrival = wider(this.arrival, new Float64Array(this.capacity));
    this.heap = wider(this.heap, new Int32Array(this.capacity));
  }
}
