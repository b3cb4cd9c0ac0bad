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
  readonly refusedLoggedMax: number;
  readonly topicBytesMax: number;
}

/** What intake or the engine says of a mark. */
export const markCauses = ['no-item', 'item-unreadable', 'mark-refused'] as const;
/** What the door says of a message whose sender may not publish it. */
export const doorCauses = ['not-listed', 'own', 'server'] as const;
export type RefusalCause = IntakeCause | (typeof markCauses)[number] | (typeof doorCauses)[number];

export interface RefusalDetail {
  /** JSON Pointer of the site file; null where none was followed. */
  readonly lookedFor: string | null;
  /** What stood there, in words; null where nothing was looked at. */
  readonly found: string | null;
  /** Where the cause alone would say too little. */
  readonly words: { readonly why: string; readonly fix: string } | null;
}

export interface RefusedMessage extends RefusalDetail {
  readonly at: EpochMs;
  readonly cause: RefusalCause;
  /** `line/station/signal` or `line/station/mark`; null where the topic could feed none. */
  readonly signal: string | null;
  /** The device, or the MQTT client where it has no name; null where that is not known. */
  readonly from: string | null;
  /** How it begins, as far as it can be printed. */
  readonly begins: string;
  /** Read of it: of one that is too large, no more than shows that. */
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

/** A message as it is refused, before it is cut. */
export interface Refusal extends Partial<RefusalDetail> {
  readonly topic: string;
  readonly cause: RefusalCause;
  readonly signal: string | null;
  readonly payload: Uint8Array;
  readonly at: EpochMs;
  /** Empty where nobody knows. */
  readonly from: string;
}

export class Refused {
  readonly #limits: RefusedLimits;
  readonly #first: (topic: string, message: RefusedMessage) => void;
  /** Topics and causes that were told to `first`. */
  readonly #told = new Set<string>();
  /** The one refused longest ago first. */
  readonly #topics = new Map<string, Entry>();

  /** `first` hears of the first message of each topic and cause, up to so many. */
  constructor(
    limits: RefusedLimits,
    first: (topic: string, message: RefusedMessage) => void = () => undefined,
  ) {
    this.#limits = limits;
    this.#first = first;
  }

  get isEmpty(): boolean {
    return this.#topics.size === 0;
  }

  note(refusal: Refusal): void {
    const { topic, cause, signal, payload, at } = refusal;
    const { lookedFor = null, found = null, words = null } = refusal;
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
    const [begins, bytes] = [this.#begins(payload), payload.length];
    const from = refusal.from === '' ? null : refusal.from;
    const message = { at, cause, signal, from, lookedFor, found, words, begins, bytes };
    entry.messages.push(message);
    if (entry.messages.length > refusedMessagesKept) entry.messages.shift();
    this.#tellFirst(topic, message);
  }

  #tellFirst(topic: string, message: RefusedMessage): void {
    const key = `${message.cause}\n${topic}`;
    if (this.#told.has(key) || this.#told.size >= this.#limits.refusedLoggedMax) return;
    this.#told.add(key);
    this.#first(topic, message);
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
