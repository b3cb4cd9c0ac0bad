/**
 * The times one signal has already taken, to tell a repeated sample from a new one.
 *
 * Ascending times, each with the value it holds, or none where that sample was bad. Bounded by
 * age and by count: the oldest leave first, and a time that left is new again.
 */
import type { EpochMs } from '#rules/signal/sample.ts';

export class RecentTimes {
  readonly #countMax: number;
  #at = new Float64Array(16);
  /** NaN stands for a bad sample. */
  #value = new Float64Array(16);
  #start = 0;
  #end = 0;

  constructor(countMax: number) {
    this.#countMax = countMax;
  }

  get count(): number {
    return this.#end - this.#start;
  }

  /**
   * Takes `at` for `value` (NaN: bad) and answers 'new'; or, where the time is taken, leaves
   * it and answers whether the value is the same.
   */
  take(at: EpochMs, value: number): 'new' | 'same' | 'other' {
    const place = this.#placeOf(at);
    if (place < this.#end && this.#at[place] === at) {
      return Object.is(this.#value[place], value) ? 'same' : 'other';
    }
    this.#insert(place, at, value);
    return 'new';
  }

  /** Forgets times before `fromMs`. */
  forgetBefore(fromMs: EpochMs): void {
    while (this.#start < this.#end && this.#at[this.#start]! < fromMs) this.#start += 1;
  }

  /** The first place whose time is not before `at`. */
  #placeOf(at: EpochMs): number {
    let low = this.#start;
    let high = this.#end;
    if (low === high || this.#at[high - 1]! < at) return high;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.#at[middle]! < at) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  #insert(place: number, at: EpochMs, value: number): void {
    let to = place;
    if (this.count === this.#countMax) {
      // Older than all that is kept: it would be the first to leave.
      if (to === this.#start) return;
      this.#start += 1;
    }
    if (this.#end === this.#at.length) to -= this.#makeRoom();
    if (to < this.#end) {
      this.#at.copyWithin(to + 1, to, this.#end);
      this.#value.copyWithin(to + 1, to, this.#end);
    }
    this.#at[to] = at;
    this.#value[to] = value;
    this.#end += 1;
  }

  /** Moves the kept times to the front, into bigger columns where they fill half; the shift. */
  #makeRoom(): number {
    const shift = this.#start;
    const { count } = this;
    const length = count * 2 > this.#at.length ? this.#at.length * 2 : this.#at.length;
    const at = new Float64Array(length);
    const value = new Float64Array(length);
    at.set(this.#at.subarray(shift, this.#end));
    value.set(this.#value.subarray(shift, this.#end));
    this.#at = at;
    this.#value = value;
    this.#start = 0;
    this.#end = count;
    return shift;
  }
}
