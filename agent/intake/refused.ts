/**
 * Messages nobody could use, the last few of each topic: what they said, when, and why they were
 * refused, so that a person can find out what is wrong with a sensor.
 *
 * Always true: bounded in topics, messages and characters; the topic refused longest ago makes room.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import type { IntakeCause } from './cause.ts';

export interface RefusedLimits {
  readonly refusedTopicsMax: number;
  readonly refusedMessagesKept: number;
  readonly refusedCharsKept: number;
  readonly topicBytesMax: number;
}

export interface RefusedMessage {
  readonly at: EpochMs;
  readonly cause: IntakeCause;
  /** `line/station/signal`; null where the topic could feed none. */
  readonly signal: string | null;
  /** How it begins, as far as it can be printed. */
  readonly begins: string;
  readonly bytes: number;
}

export interface RefusedTopic {
  readonly topic: string;
  /** Refused so far. */
  readonly count: number;
  /** The message that came last was refused. */
  readonly standing: boolean;
  /** The last few, oldest first. */
  readonly messages: readonly RefusedMessage[];
}

interface Entry {
  count: number;
  standing: boolean;
  readonly messages: RefusedMessage[];
}

/** Said of a message as a whole; what a sensor says of itself is no refusal. */
const refusals: ReadonlySet<IntakeCause> = new Set([
  'instance-name',
  'instance-collision',
  'instance-refused',
  'too-large',
  'not-utf8',
  'too-deep',
  'not-json',
  'not-a-number',
  'no-value',
  'not-finite',
  'no-time',
  'time-unreadable',
  'no-unit',
  'wrong-unit',
  'out-of-range',
  'future',
]);

export const isRefusal = (cause: IntakeCause): boolean => refusals.has(cause);

const lenientUtf8 = new TextDecoder('utf-8');
/** Four bytes are the longest character of UTF-8. */
const bytesACharacter = 4;

export class Refused {
  readonly #limits: RefusedLimits;
  /** The one refused longest ago first. */
  readonly #topics = new Map<string, Entry>();

  constructor(limits: RefusedLimits) {
    this.#limits = limits;
  }

  get isEmpty(): boolean {
    return this.#topics.size === 0;
  }

  note(
    topic: string,
    cause: IntakeCause,
    signal: string | null,
    payload: Uint8Array,
    at: EpochMs,
  ): void {
    const { refusedTopicsMax, refusedMessagesKept, topicBytesMax } = this.#limits;
    if (topic.length > topicBytesMax) return;
    const entry = this.#topics.get(topic) ?? { count: 0, standing: true, messages: [] };
    this.#topics.delete(topic);
    if (this.#topics.size >= refusedTopicsMax) {
      const [oldest] = this.#topics.keys();
      if (oldest !== undefined) this.#topics.delete(oldest);
    }
    this.#topics.set(topic, entry);
    entry.count += 1;
    entry.standing = true;
    entry.messages.push({
      at,
      cause,
      signal,
      begins: this.#begins(payload),
      bytes: payload.length,
    });
    if (entry.messages.length > refusedMessagesKept) entry.messages.shift();
  }

  /** A message of this topic was of use. */
  settled(topic: string): void {
    const entry = this.#topics.get(topic);
    if (entry !== undefined) entry.standing = false;
  }

  /** The one refused last first. */
  topics(): readonly RefusedTopic[] {
    return [...this.#topics]
      .map(([topic, { count, standing, messages }]) => ({
        topic,
        count,
        standing,
        messages: [...messages],
      }))
      .reverse();
  }

  #begins(payload: Uint8Array): string {
    const most = this.#limits.refusedCharsKept;
    const text = lenientUtf8.decode(payload.subarray(0, most * bytesACharacter));
    return [...text.replace(/\p{C}/gu, '·')].slice(0, most).join('');
  }
}
