/**
 * Bytes of packed samples: whole numbers in as few bytes as they need, doubles in eight.
 *
 * A varint carries seven bits a byte, least first; zigzag folds the sign in (0, -1, 1, -2 …).
 * Whole numbers of up to 2^52 in size pass unchanged; beyond that the writer refuses.
 * The writer reserves nothing by itself: `room` before a run of puts.
 */

/** Largest size of a whole number that zigzag carries exactly. */
export const wholeMax = 2 ** 52;

const double = new Float64Array(1);
const doubleBytes = new Uint8Array(double.buffer);

export class ByteWriter {
  bytes: Uint8Array;
  at = 0;

  constructor(capacity: number) {
    this.bytes = new Uint8Array(capacity);
  }

  /** Makes room for `count` more bytes; what was written stays. */
  room(count: number): void {
    const needed = this.at + count;
    if (needed <= this.bytes.length) return;
    const bigger = new Uint8Array(Math.max(needed, this.bytes.length * 2));
    bigger.set(this.bytes.subarray(0, this.at));
    this.bytes = bigger;
  }

  byte(value: number): void {
    this.bytes[this.at++] = value;
  }

  /** Whole, 0 to 2^53 - 1; at most 8 bytes. */
  whole(value: number): void {
    let rest = value;
    while (rest > 0x7fffffff) {
      this.bytes[this.at++] = (rest % 128) | 128;
      rest = Math.floor(rest / 128);
    }
    while (rest > 127) {
      this.bytes[this.at++] = (rest & 127) | 128;
      rest >>>= 7;
    }
    this.bytes[this.at++] = rest;
  }

  /** Whole, of up to 2^52 in size; at most 8 bytes. */
  signed(value: number): void {
    const small = value | 0;
    if (small === value && small < 0x40000000 && small >= -0x40000000) {
      this.whole((small << 1) ^ (small >> 31));
      return;
    }
    if (!Number.isInteger(value) || Math.abs(value) > wholeMax) {
      throw new RangeError(`cannot pack ${value} as a whole number`);
    }
    this.whole(value < 0 ? -value * 2 - 1 : value * 2);
  }

  /** Eight bytes, IEEE 754, in this machine's order (every machine we run on is little-endian). */
  double(value: number): void {
    double[0] = value;
    this.bytes.set(doubleBytes, this.at);
    this.at += 8;
  }

  /** What was written, shared with this writer. */
  written(): Uint8Array {
    return this.bytes.subarray(0, this.at);
  }
}

export class ByteReader {
  readonly bytes: Uint8Array;
  at: number;

  constructor(bytes: Uint8Array, at = 0) {
    this.bytes = bytes;
    this.at = at;
  }

  get ended(): boolean {
    return this.at >= this.bytes.length;
  }

  byte(): number {
    const value = this.bytes[this.at++];
    if (value === undefined) throw new RangeError('the bytes end in the middle of a value');
    return value;
  }

  whole(): number {
    const first = this.byte();
    if (first < 128) return first;
    let value = first & 127;
    let scale = 128;
    for (;;) {
      const next = this.byte();
      value += (next & 127) * scale;
      if (next < 128) break;
      scale *= 128;
      if (scale > wholeMax) throw new RangeError('a number is longer than any that was written');
    }
    return value;
  }

  signed(): number {
    const value = this.whole();
    if (value <= 0x7fffffff) return (value >>> 1) ^ -(value & 1);
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  double(): number {
    if (this.at + 8 > this.bytes.length) throw new RangeError('the bytes end inside a double');
    for (let i = 0; i < 8; i += 1) doubleBytes[i] = this.bytes[this.at + i]!;
    this.at += 8;
    return double[0]!;
  }
}
