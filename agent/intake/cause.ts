/**
 * Why intake refused, marked or dropped something: the words its counters and examples use.
 *
 * Beside the stored quality codes, which are coarser: `not-json` and `no-value` are both
 * stored as undecodable, but are mended in different places.
 */
import { isRefusal } from './refused.ts';

export const intakeCauses = [
  // No signal takes the message.
  'unbound-topic',
  'instance-name',
  'instance-collision',
  'instance-refused',
  // Bad: stored without a value.
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
  'sensor-bad',
  'out-of-range',
  'future',
  'loop-fault',
  'sensor-break',
  'sensor-short',
  'cold-junction-missing',
  // Uncertain: stored and judged, marked.
  'quality-unreadable',
  'sensor-uncertain',
  'retained',
  'clock',
  'loop-saturated',
  'cold-junction-stale',
  'cold-junction-uncertain',
  'jump',
  'calibration-overdue',
  // Stored, not judged.
  'late',
  'conflict',
  // Dropped.
  'duplicate',
  'before-any-time',
] as const;

export type IntakeCause = (typeof intakeCauses)[number];

/** The last time something happened, and to which topic or signal; by the samples' clock its time, 0 before any. */
export interface Example {
  topic: string;
  atMs: number;
}

export interface IntakeCounters {
  /** MQTT messages taken. */
  messages: number;
  /** Messages no signal takes. */
  unrouted: number;
  /** Readings the rest gave: good + uncertain + bad + dropped. */
  readings: number;
  good: number;
  uncertain: number;
  bad: number;
  dropped: number;
  /** Occasions by cause; one reading may count under several. */
  readonly causes: Record<IntakeCause, number>;
}

export function newCounters(): IntakeCounters {
  const causes = Object.fromEntries(intakeCauses.map((cause) => [cause, 0]));
  return {
    messages: 0,
    unrouted: 0,
    readings: 0,
    good: 0,
    uncertain: 0,
    bad: 0,
    dropped: 0,
    causes: causes as Record<IntakeCause, number>,
  };
}

/** Counts occasions by cause and keeps the last example of each. */
export class Tally {
  readonly counters = newCounters();
  readonly examples = new Map<IntakeCause, Example>();
  /** What is being taken now; set once a message. */
  topic = '';
  nowMs = 0;
  /** The first reason why what is being taken is refused; null while it is not. */
  refusal: IntakeCause | null = null;
  readonly #topicLengthMax: number;

  constructor(topicLengthMax: number) {
    this.#topicLengthMax = topicLengthMax;
  }

  count(cause: IntakeCause): void {
    this.counters.causes[cause] += 1;
    if (this.refusal === null && isRefusal(cause)) this.refusal = cause;
    const example = this.examples.get(cause);
    const topic =
      this.topic.length > this.#topicLengthMax
        ? this.topic.slice(0, this.#topicLengthMax)
        : this.topic;
    if (example === undefined) this.examples.set(cause, { topic, atMs: this.nowMs });
    else {
      example.topic = topic;
      example.atMs = this.nowMs;
    }
  }
}
