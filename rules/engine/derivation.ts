/**
 * Derived signals: when each is due and what it comes to.
 *
 * One is computed when an input changed, a moment later so that inputs which change together are
 * taken together, and at most once a second, or as seldom as its kind says. One that remembers is also
 * asked when it said so.
 */
import type { DerivedNow } from '../derive/derived-kind.ts';
import type { Plan } from '../plan/plan.ts';
import { isBad, type QualityCode, quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import { everyMs, LiveDerived } from './live-derived.ts';
import type { RackHeats } from './rack-heat.ts';
import { type Signals, unusable } from './signals.ts';
import type { SavedDerived } from './state.ts';

/** No sooner than this after an input changed. */
const settleMs = 100;

export interface DerivedSample {
  at: EpochMs;
  value: number;
  quality: QualityCode;
}

export class Derivation {
  /** By place in the plan. */
  readonly list: readonly LiveDerived[];
  /** 1 where an input changed since it was computed: another reading makes it due no sooner. */
  readonly awaited: Uint8Array;
  private readonly signals: Signals;
  /** What racks carry, for those that tell it. */
  heats: RackHeats | null = null;
  private readonly now: DerivedNow = {
    at: 0,
    inputs: new Float64Array(0),
    uncertain: false,
    doubt: quality.good,
  };
  private readonly sample: DerivedSample = { at: 0, value: 0, quality: 0 };

  constructor(
    plan: Plan,
    signals: Signals,
    saved: Readonly<Record<string, SavedDerived>>,
    now: EpochMs,
    off: ReadonlySet<string> = new Set(),
  ) {
    this.signals = signals;
    this.awaited = new Uint8Array(plan.derived.length);
    this.list = plan.derived.map(
      (derived) =>
        new LiveDerived(
          plan,
          derived,
          saved[plan.signals[derived.signal]!.id],
          now,
          off.has(derived.extension ?? ''),
        ),
    );
  }

  /** When a derived signal is due whose input changes now. */
  due(index: number, now: EpochMs): EpochMs {
    this.awaited[index] = 1;
    const derived = this.list[index]!;
    const { computedAt } = derived;
    return Math.max(now + settleMs, computedAt < 0 ? 0 : computedAt + this.waitMs(derived));
  }

  /** What can no longer be used, or can be again, is told within a second whatever its kind. */
  private waitMs({ waitMs, inputs, signal }: LiveDerived): number {
    if (waitMs <= everyMs) return everyMs;
    const { signals } = this;
    if ((signals.unusable[signal]! & unusable.bad) !== 0) return everyMs;
    for (let i = 0; i < inputs.length; i += 1) if (!signals.usable(inputs[i]!)) return everyMs;
    return waitMs;
  }

  /** When it wants to be asked again by itself; null for never. */
  wants(index: number): EpochMs | null {
    const { keeping, computedAt } = this.list[index]!;
    const at = keeping?.timer.at ?? null;
    return at === null ? null : Math.max(at, computedAt + everyMs);
  }

  /**
   * Computes one from the latest readings. null before all inputs are known, and while it goes on
   * being unusable: one bad sample says so until it is over. The sample is reused.
   */
  compute(index: number, at: EpochMs): DerivedSample | null {
    this.awaited[index] = 0;
    const { signals, sample, now } = this;
    const derived = this.list[index]!;
    const { inputs, values, carries } = derived;
    let usable = true;
    let uncertain = false;
    sample.at = 0;
    for (let i = 0; i < inputs.length; i += 1) {
      const input = inputs[i]!;
      if (!signals.known(input)) return null;
      if (!signals.usable(input)) usable = false;
      if (signals.quality[input] !== quality.good) uncertain = true;
      sample.at = Math.max(sample.at, signals.at[input]!);
      values[i] = signals.value[input]!;
    }
    derived.computedAt = at;
    now.at = at;
    now.inputs = values;
    now.uncertain = uncertain;
    now.doubt = quality.good;
    if (carries !== undefined) now.carried = this.heats?.carried(carries) ?? null;
    const value = usable && !derived.off ? derived.valueOf(now) : null;
    if (derived.keeping !== null) sample.at = at;
    if (value === null) {
      if ((signals.unusable[derived.signal]! & unusable.bad) !== 0) return null;
      sample.value = 0;
      if (derived.off) sample.quality = quality.ownKindFailed;
      else sample.quality = usable ? this.refusal() : quality.badInput;
      return sample;
    }
    sample.value = derived.quantised(value);
    sample.quality = uncertain ? quality.uncertainInput : now.doubt;
    if (sample.quality === quality.good && derived.unproven) sample.quality = quality.unproven;
    return sample;
  }

  /** One of its inputs cannot be used from now on. */
  blind(index: number, now: EpochMs): void {
    this.list[index]!.keeping?.blind(now);
  }

  /** A mark says what happened at `at`: those it starts anew or that count it, by place. */
  start(mark: number, at: EpochMs, now: EpochMs): readonly number[] {
    return this.list.flatMap(({ plan, keeping }, i) => {
      if (plan.keeps === undefined) return [];
      const started = plan.marks?.includes(mark) === true && keeping!.start(at, now);
      const counted = plan.counted?.includes(mark) === true && keeping!.count(at);
      return started || counted ? [i] : [];
    });
  }

  /** Those of a file that is switched off or on from `now` on, by place in the plan. */
  switch(extension: string, off: boolean, now: EpochMs): readonly number[] {
    return this.list.flatMap((derived, i) => {
      if (derived.plan.extension !== extension) return [];
      derived.switch(off, now);
      return [i];
    });
  }

  /** Nothing was observed in between. */
  gap(fromMs: EpochMs, toMs: EpochMs): void {
    for (const { keeping } of this.list) keeping?.gap(fromMs, toMs);
  }

  /** The clock was set anew. */
  shift(deltaMs: number): void {
    for (const { keeping } of this.list) keeping?.shift(deltaMs);
  }

  save(index: number): Omit<SavedDerived, 'due'> {
    return this.list[index]!.save();
  }

  private refusal(): QualityCode {
    return isBad(this.now.doubt) ? this.now.doubt : quality.outsideFormula;
  }
}
