/** What was heard, a line a topic: how often, what kind of payload, which values, how they moved. */
import { type FoundValue, type Look, lookAt } from './payload.ts';

export interface HeardValue {
  readonly pointer: string;
  readonly last: number;
  readonly least: number;
  readonly most: number;
  readonly isBoolean: boolean;
  readonly isBinary: boolean;
}

export interface HeardTopic {
  readonly topic: string;
  readonly messages: number;
  /** Only retained messages came: an old value, and nobody may be publishing. */
  readonly isRetainedOnly: boolean;
  /** Mean seconds between live messages; null with fewer than two. */
  readonly everyS: number | null;
  readonly look: Look;
  readonly values: readonly HeardValue[];
}

interface Entry {
  messages: number;
  live: number;
  firstMs: number;
  lastMs: number;
  look: Look;
  readonly values: Map<string, { -readonly [K in keyof HeardValue]: HeardValue[K] }>;
}

export class TopicBook {
  private readonly topicsMax: number;
  private readonly entries = new Map<string, Entry>();
  /** Messages of topics beyond the most that are kept. */
  passedOver = 0;

  constructor(topicsMax: number) {
    this.topicsMax = topicsMax;
  }

  hear(topic: string, payload: Uint8Array, isRetained: boolean, nowMs: number): void {
    let entry = this.entries.get(topic);
    if (entry === undefined) {
      if (this.entries.size >= this.topicsMax) {
        this.passedOver += 1;
        return;
      }
      const look = lookAt(topic, payload, nowMs);
      entry = { messages: 0, live: 0, firstMs: nowMs, lastMs: nowMs, look, values: new Map() };
      this.entries.set(topic, entry);
    }
    entry.messages += 1;
    if (!isRetained) {
      if (entry.live === 0) entry.firstMs = nowMs;
      entry.live += 1;
      entry.lastMs = nowMs;
    }
    const look = lookAt(topic, payload, nowMs);
    // A sensor that stutters once is no other kind of sensor.
    if (look.values.length > 0 || entry.look.values.length === 0) entry.look = look;
    for (const value of look.values) note(entry, value);
  }

  /** By topic. */
  topics(): HeardTopic[] {
    return [...this.entries]
      .map(([topic, { messages, live, firstMs, lastMs, look, values }]) => ({
        topic,
        messages,
        isRetainedOnly: live === 0,
        everyS: live < 2 ? null : (lastMs - firstMs) / 1_000 / (live - 1),
        look,
        values: [...values.values()],
      }))
      .sort((a, b) => (a.topic < b.topic ? -1 : 1));
  }
}

function note(entry: Entry, { pointer, value, isBoolean }: FoundValue): void {
  const known = entry.values.get(pointer);
  const isBinary = value === 0 || value === 1;
  if (known === undefined)
    entry.values.set(pointer, {
      pointer,
      last: value,
      least: value,
      most: value,
      isBoolean,
      isBinary,
    });
  else {
    known.last = value;
    known.least = Math.min(known.least, value);
    known.most = Math.max(known.most, value);
    known.isBoolean &&= isBoolean;
    known.isBinary &&= isBinary;
  }
}
