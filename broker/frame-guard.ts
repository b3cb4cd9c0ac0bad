/**
 * Watches the lengths of a client's packets as their bytes arrive, so that no packet longer than
 * the limit is ever collected in memory. MQTT 3.1.1 clause 2.2: one byte of type, then the remaining
 * length in one to four bytes of seven bits.
 *
 * A PUBLISH that is longer is cut to the limit, its header with it, and the rest of its bytes are
 * passed over as they come: whoever reads it sees that it is too long, its sender can still be
 * answered, and what it sends afterwards is read. Any other packet that is longer is a fault.
 *
 * Always true: the answer does not depend on how the bytes were cut into chunks.
 */
export type FrameFault = 'packet-too-large' | 'malformed';

/** The type of a packet is the upper half of its first byte; clause 2.2.1. */
const publishType = 3;

/** A remaining length as MQTT writes it, clause 2.2.3. */
function lengthBytes(length: number): number[] {
  return length < 128 ? [length] : [128 | (length & 127), ...lengthBytes(length >> 7)];
}

export class FrameGuard {
  readonly #bytesMax: number;
  /** Bytes of the present packet still to come: first to be read, then to be passed over. */
  #left = 0;
  #over = 0;
  /** The present packet's first byte, its length so far, and what its next seven bits are worth; 0 outside a header. */
  #first = 0;
  #length = 0;
  #worth = 0;

  constructor(bytesMax: number) {
    this.#bytesMax = bytesMax;
  }

  /** What of the bytes is to be read, maybe none; or a fault, after which the connection must end. */
  pass(chunk: Buffer): Buffer | FrameFault {
    const pieces: Buffer[] = [];
    const keep = (from: number, to: number): void => {
      if (to > from) pieces.push(chunk.subarray(from, to));
    };
    // A header is read once it is complete, so what a chunk has of one is held back.
    let held = this.#worth > 0;
    let [i, from, headAt] = [0, 0, 0];
    while (i < chunk.length) {
      if (this.#left > 0) {
        const step = Math.min(this.#left, chunk.length - i);
        this.#left -= step;
        i += step;
      } else if (this.#over > 0) {
        keep(from, i);
        const step = Math.min(this.#over, chunk.length - i);
        this.#over -= step;
        i += step;
        from = i;
      } else if (this.#worth === 0) {
        headAt = i;
        this.#first = chunk[i++]!;
        this.#length = 0;
        this.#worth = 1;
      } else {
        const fault = this.#lengthByte(chunk[i++]!);
        if (fault !== null) return fault;
        if (this.#worth === 0 && (held || this.#over > 0)) {
          keep(from, headAt);
          pieces.push(Buffer.from([this.#first, ...lengthBytes(this.#left)]));
          from = i;
          held = false;
        }
      }
    }
    keep(from, this.#worth === 0 ? i : headAt);
    return pieces.length === 1 ? pieces[0]! : Buffer.concat(pieces);
  }

  /** The next byte of the length; `worth` is 0 once it was the last. */
  #lengthByte(byte: number): FrameFault | null {
    this.#length += (byte & 127) * this.#worth;
    const isLong = this.#length > this.#bytesMax;
    if (isLong && this.#first >> 4 !== publishType) return 'packet-too-large';
    if (byte >= 128) {
      this.#worth *= 128;
      return this.#worth > 128 ** 3 ? 'malformed' : null;
    }
    this.#worth = 0;
    this.#left = isLong ? this.#bytesMax : this.#length;
    this.#over = this.#length - this.#left;
    return null;
  }
}
