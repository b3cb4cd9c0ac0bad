/**
 * Watches the lengths of a client's packets as their bytes arrive, so that no packet longer than
 * the limit is ever collected in memory. MQTT 3.1.1 clause 2.2: one byte of type, then the remaining
 * length in one to four bytes of seven bits.
 *
 * Always true: the answer does not depend on how the bytes were cut into chunks.
 */
export type FrameFault = 'packet-too-large' | 'malformed';

export class FrameGuard {
  readonly #bytesMax: number;
  /** Bytes of the present packet still to come. */
  #left = 0;
  /** The present packet's length so far, and what its next seven bits are worth; 0 before its type. */
  #length = 0;
  #worth = 0;

  constructor(bytesMax: number) {
    this.#bytesMax = bytesMax;
  }

  /** The first fault in the bytes, or null. After a fault the connection must end. */
  inspect(chunk: Uint8Array): FrameFault | null {
    const end = chunk.length;
    let i = 0;
    while (i < end) {
      if (this.#left > 0) {
        const step = Math.min(this.#left, end - i);
        this.#left -= step;
        i += step;
      } else if (this.#worth === 0) {
        this.#length = 0;
        this.#worth = 1;
        i++;
      } else {
        const byte = chunk[i++]!;
        this.#length += (byte & 127) * this.#worth;
        if (this.#length > this.#bytesMax) return 'packet-too-large';
        if (byte < 128) {
          this.#left = this.#length;
          this.#worth = 0;
        } else {
          this.#worth *= 128;
          if (this.#worth > 128 ** 3) return 'malformed';
        }
      }
    }
    return null;
  }
}
