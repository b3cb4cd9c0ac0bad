/**
 * One MQTT payload, read at most once however many signals it feeds.
 *
 * Size and depth are checked before JSON.parse sees the text; the text is UTF-8 or refused.
 * One object serves all messages in turn.
 */
import type { IntakeCause } from './cause.ts';

export interface MessageLimits {
  readonly payloadBytesMax: number;
  readonly jsonDepthMax: number;
}

const strictUtf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const quote = 0x22;
const backslash = 0x5c;

export class Message {
  bytes: Uint8Array = new Uint8Array(0);
  /** Why the payload has no text, or its text is no JSON; null where all is well. */
  cause: IntakeCause | null = null;
  readonly #limits: MessageLimits;
  #text: string | null = null;
  #root: unknown;
  #parsed = false;
  #ascii = false;

  constructor(limits: MessageLimits) {
    this.#limits = limits;
  }

  /** Begins with the next payload. */
  load(bytes: Uint8Array): void {
    this.bytes = bytes;
    this.#text = null;
    this.#root = undefined;
    this.#parsed = false;
    this.#ascii = false;
    this.cause = bytes.length > this.#limits.payloadBytesMax ? 'too-large' : null;
  }

  /** The payload as text; null, and `cause` says why, where it has none. */
  text(): string | null {
    if (this.#text !== null || this.cause !== null) return this.#text;
    try {
      this.#text = this.#ascii ? latin1(this.bytes) : strictUtf8.decode(this.bytes);
    } catch {
      this.cause = 'not-utf8';
    }
    return this.#text;
  }

  /** The payload as JSON; undefined, and `cause` says why, where it is none. */
  json(): unknown {
    if (this.#parsed || this.cause !== null) return this.#root;
    this.#parsed = true;
    if (this.#depth() > this.#limits.jsonDepthMax) {
      this.cause = 'too-deep';
      return undefined;
    }
    const text = this.text();
    if (text === null) return undefined;
    try {
      this.#root = JSON.parse(text);
    } catch {
      this.cause = 'not-json';
    }
    return this.#root;
  }

  /** Deepest nesting of brackets outside strings; notes on the way whether all is ASCII. */
  #depth(): number {
    const { bytes } = this;
    let deepest = 0;
    let depth = 0;
    let inString = false;
    let seen = 0;
    for (let i = 0; i < bytes.length; i += 1) {
      const byte = bytes[i]!;
      seen |= byte;
      if (inString) {
        if (byte === backslash) i += 1;
        else if (byte === quote) inString = false;
      } else if (byte === quote) inString = true;
      // [ and { differ from ] and } by 2, and { } from [ ] by the bit 0x20.
      else if ((byte | 0x20) === 0x7b) {
        depth += 1;
        if (depth > deepest) deepest = depth;
      } else if ((byte | 0x20) === 0x7d) depth -= 1;
    }
    this.#ascii = seen < 0x80;
    return deepest;
  }
}

function latin1(bytes: Uint8Array): string {
  const buffer = Buffer.isBuffer(bytes)
    ? bytes
    : Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return buffer.toString('latin1');
}
