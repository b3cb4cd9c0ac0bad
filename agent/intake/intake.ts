/**
 * From an MQTT message to samples in a batch, ready to be judged.
 *
 * Always true: every message is counted, as unrouted or by the readings it gave; every reading is
 * stored as good, uncertain or bad, or dropped and counted by cause; nothing a device sends makes
 * it throw. Values leave it finite, in the canonical unit, at the signal's resolution.
 */
import type { Binding } from '#rules/plan/binding.ts';
import type { MarkBinding } from '#rules/plan/card.ts';
import { isBad, type QualityCode, quality } from '#rules/signal/quality.ts';
import { type EpochMs, type SampleBatch, unjudgedFlags } from '#rules/signal/sample.ts';
import { Arrival, type ArrivalLimits, type IntakeClock, takesTime } from './arrival.ts';
import { type Example, type IntakeCause, type IntakeCounters, Tally } from './cause.ts';
import { type MarkCounters, MarkIntake, type SaidMark } from './mark-intake.ts';
import { Message, type MessageLimits } from './message.ts';
import { beyondWords, refusalDetail, refusedMarkWords } from './refusal-detail.ts';
import {
  type doorCauses,
  Refused,
  type RefusedLimits,
  type RefusedMessage,
  type RefusedTopic,
} from './refused.ts';
import { Router, type RouterLimits, type RouterPorts, type Taken } from './router.ts';

export interface IntakeLimits extends ArrivalLimits, MessageLimits, RouterLimits, RefusedLimits {
  readonly topicBytesMax: number;
  readonly unboundTopicsMax: number;
  readonly itemCharsMax: number;
}

export interface IntakeOptions extends RouterPorts {
  readonly bindings: readonly Binding[];
  /** Topics that say marks, of the site as it is now; none where it is left out. */
  readonly markBindings?: () => readonly MarkBinding[];
  readonly limits: IntakeLimits;
  readonly clock: IntakeClock;
  /** Hears of the first message of each topic and cause that is refused. */
  readonly firstRefused?: (topic: string, message: RefusedMessage) => void;
}

export interface Intake {
  /**
   * Takes one message; its samples are added to `out`. `beatMs`: the grid point at which it will
   * be judged, at or after `nowMs`; both are ignored by the samples' clock. The payload is not kept.
   * `from`: who sent it, empty where that is not known; it holds for `marks` as well.
   */
  take(
    topic: string,
    payload: Uint8Array,
    retained: boolean,
    beatMs: EpochMs,
    nowMs: EpochMs,
    out: SampleBatch,
    from?: string,
  ): void;
  /**
   * Takes one recorded value of the signal with this plan index on the samples' clock: `atMs` is
   * its time, and the value passes through unit, calibration and resolution as a payload's does.
   * A null unit is the promised one; NaN or an infinity is stored as not finite. Feed ascending
   * times. False where no binding feeds the signal.
   */
  takeValue(
    signal: number,
    value: number,
    unit: string | null,
    code: QualityCode,
    atMs: EpochMs,
    out: SampleBatch,
  ): boolean;
  /** The marks a message says, beside the samples it gives and after they are taken; none for most. */
  marks(topic: string, payload: Uint8Array, retained: boolean): readonly SaidMark[];
  /** A message that its sender may not publish: kept as refused, at wall-clock `at`. */
  turnedAway(
    topic: string,
    payload: Uint8Array,
    from: string,
    cause: (typeof doorCauses)[number],
    at: EpochMs,
  ): void;
  /** A mark it gave was refused by the rules: why, and how to mend it behind a semicolon. */
  markRefused(
    mark: SaidMark,
    message: { readonly topic: string; readonly data: Uint8Array; readonly from: string },
    why: string,
  ): void;
  /**
   * A reading that somebody enters, of the signal with this plan index: as a message with a time of
   * its own. False where no binding feeds the signal.
   */
  takeByHand(
    signal: number,
    value: number,
    unit: string,
    atMs: EpochMs,
    beatMs: EpochMs,
    nowMs: EpochMs,
    out: SampleBatch,
  ): boolean;
  /** From here on these bindings hold; memory of a signal stays with its name. Throws RangeError on broken ones. */
  replan(bindings: readonly Binding[]): void;
  /** Recorded samples, oldest first: what a restart must know to tell duplicates and jumps. */
  remember(recorded: SampleBatch): void;
  /** By the samples' clock: what comes from here on is judged at or after `ms`. */
  passTo(ms: EpochMs): void;
  /** While true, every usable sample is marked uncertain. */
  setClockDoubt(inDoubt: boolean): void;
  /** By the samples' clock: the greatest `at` seen, or what it was passed to; -Infinity before. */
  readonly engineTimeMs: EpochMs;
  readonly counters: Readonly<IntakeCounters>;
  readonly markCounters: Readonly<MarkCounters>;
  /** The last occasion of each cause. */
  readonly examples: ReadonlyMap<IntakeCause, Readonly<Example>>;
  /** Topics nobody bound, with their counts: the first so many. */
  readonly unboundTopics: ReadonlyMap<string, number>;
  /** Messages that could not be used, the last few of each topic; the topic refused last first. */
  refused(): readonly RefusedTopic[];
  /** Topics of places that are not watched because another topic has their name. */
  taken(): readonly Taken[];
}

const noMarks: readonly MarkBinding[] = [];
const none: readonly SaidMark[] = [];
const idOf = ({ station, mark }: { readonly station: string; readonly mark: string }): string =>
  `${station}/${mark}`;

/** Throws RangeError on a pointer that is none, or on an exact topic that feeds no signal. */
export function createIntake(options: IntakeOptions): Intake {
  const { limits } = options;
  const router = new Router(options.bindings, options, limits);
  const tally = new Tally(limits.topicBytesMax);
  const arrival = new Arrival(options.clock, limits, tally);
  const message = new Message(limits);
  const refused = new Refused(limits, options.firstRefused);
  let sender = '';
  let markUnreadable = false;
  const marks = new MarkIntake(
    options.markBindings ?? (() => noMarks),
    limits,
    (binding, cause, loaded) => {
      markUnreadable = true;
      const at = tally.nowMs;
      refused.note({
        ...{ topic: binding.topic, cause, signal: idOf(binding), payload: loaded.bytes, at },
        ...{ from: sender, ...refusalDetail(cause, binding.payload, loaded, at) },
      });
    },
  );
  const unboundTopics = new Map<string, number>();
  const { counters } = tally;

  function unbound(topic: string): void {
    tally.count('unbound-topic');
    const seen = unboundTopics.get(topic);
    if (seen !== undefined) unboundTopics.set(topic, seen + 1);
    else if (unboundTopics.size < limits.unboundTopicsMax && topic.length <= limits.topicBytesMax) {
      unboundTopics.set(topic, 1);
    }
  }

  return {
    take(topic, payload, retained, beatMs, nowMs, out, from = '') {
      counters.messages += 1;
      sender = from;
      tally.topic = topic;
      tally.nowMs = arrival.bySamples ? Math.max(arrival.engineTimeMs, 0) : nowMs;
      const { targets, refusals } = router.route(topic);
      for (let i = 0; i < refusals.length; i += 1) {
        tally.count(refusals[i]!);
        refused.note({ topic, cause: refusals[i]!, signal: null, payload, at: tally.nowMs, from });
      }
      if (targets.length === 0) {
        // It says a mark, and is counted there.
        if (refusals.length === 0 && marks.knows(topic)) return;
        counters.unrouted += 1;
        if (refusals.length === 0) unbound(topic);
        return;
      }
      message.load(payload);
      let wasRefused = refusals.length > 0;
      arrival.out = out;
      arrival.retained = retained;
      arrival.recorded = false;
      arrival.beatMs = beatMs;
      arrival.nowMs = nowMs;
      for (let i = 0; i < targets.length; i += 1) {
        const target = targets[i]!;
        arrival.target = target;
        tally.refusal = null;
        target.decode(message, arrival);
        if (tally.refusal === null) continue;
        const [cause, at] = [tally.refusal, tally.nowMs];
        refused.note({
          ...{ topic, cause, signal: target.id, payload, at, from },
          ...refusalDetail(cause, target.binding.payload, message, at),
          ...(cause === 'out-of-range' ? beyondWords(target.binding, arrival.beyond) : {}),
        });
        wasRefused = true;
      }
      if (!wasRefused && !refused.isEmpty) refused.settled(topic);
    },

    takeValue(signal, value, unit, code, atMs, out) {
      const target = router.targetOf(signal);
      if (target === undefined) return false;
      tally.topic = target.binding.id;
      tally.nowMs = atMs;
      arrival.target = target;
      arrival.out = out;
      arrival.retained = false;
      arrival.recorded = true;
      const finite = Number.isFinite(value) || isBad(code);
      arrival.reading(
        finite ? value : 0,
        atMs,
        unit,
        finite ? code : quality.notFinite,
        finite ? null : 'not-finite',
      );
      return true;
    },

    marks(topic, payload, retained) {
      if (!marks.knows(topic)) return none;
      markUnreadable = false;
      const said = marks.take(topic, payload, retained);
      if (
        said.length > 0 &&
        !markUnreadable &&
        !refused.isEmpty &&
        router.route(topic).targets.length === 0
      )
        refused.settled(topic);
      return said;
    },

    turnedAway(topic, payload, from, cause, at) {
      refused.note({ topic, payload, from, cause, signal: null, at });
    },

    markRefused(mark, message, text) {
      const words = refusedMarkWords(text);
      const at = tally.nowMs;
      const signal = idOf(mark);
      const { topic, data: payload, from } = message;
      refused.note({ topic, payload, from, cause: 'mark-refused', signal, at, words });
    },

    takeByHand(signal, value, unit, atMs, beatMs, nowMs, out) {
      const target = router.targetOf(signal);
      if (target === undefined) return false;
      tally.topic = target.binding.id;
      tally.nowMs = nowMs;
      Object.assign(arrival, { target, out, retained: false, recorded: false, beatMs, nowMs });
      arrival.reading(value, atMs, unit, quality.good, null);
      return true;
    },

    replan(bindings) {
      router.replan(bindings);
      // A topic that is bound now is no longer one nobody bound.
      unboundTopics.clear();
    },

    remember(recorded) {
      for (let i = 0; i < recorded.count; i += 1) {
        const target = router.targetOf(recorded.signal[i]!);
        if (target !== undefined && (recorded.flags[i]! & unjudgedFlags) === 0) {
          const code = recorded.quality[i]!;
          target.memory.remember(
            recorded.at[i]!,
            recorded.value[i]!,
            code,
            target.binding.hasOwnTime && takesTime(code),
            recorded.at[i]! - target.binding.latenessMs,
          );
        }
        arrival.passTo(recorded.at[i]!);
      }
    },

    passTo(ms) {
      if (arrival.bySamples) arrival.passTo(ms);
    },

    setClockDoubt(inDoubt) {
      arrival.clockInDoubt = inDoubt;
    },
    get engineTimeMs() {
      return arrival.engineTimeMs;
    },
    counters,
    markCounters: marks.counters,
    examples: tally.examples,
    unboundTopics,
    refused: () => refused.topics(),
    taken: () => router.taken,
  };
}
