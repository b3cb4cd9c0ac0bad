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
import { Keeping } from './keeping.ts';
import { type Signals, unusable } from './signals.ts';
import type { SavedDerived } from './state.ts';

const settleMs = 100;
const everyMs = 1_000;

export interface DerivedSample {
  at: EpochMs;
  value: number;
  quality: QualityCode;
}

export class Derivation {
  private readonly plan: Plan;
  private readonly signals: Signals;
  private readonly computedAt: Float64Array;
  private readonly inputs: readonly Float64Array[];
  /** By place in the plan; null for what remembers nothing. */
  private readonly keeping: readonly (Keeping | null)[];
  private readonly now: DerivedNow = {
    at: 0,
    inputs: new Float64Array(0),
    uncertain: false,
    doubt: quality.good,
  };
  /** Those whose kind is switched off. */
  private readonly off: Uint8Array;
  private readonly sample: DerivedSample = { at: 0, value: 0, quality: 0 };

  constructor(
    plan: Plan,
    signals: Signals,
    saved: Readonly<Record<string, SavedDerived>>,
    now: EpochMs,
    off: ReadonlySet<string> = new Set(),
  ) {
    this.plan = plan;
    this.off = Uint8Array.from(plan.derived, ({ extension = '' }) => Number(off.has(extension)));
    this.signals = signals;
    const of = (signal: number): SavedDerived | undefined => saved[plan.signals[signal]!.id];
    this.computedAt = Float64Array.from(
      plan.derived,
      (derived) => of(derived.signal)?.computedAt ?? -1,
    );
    this.inputs = plan.derived.map((derived) => new Float64Array(derived.inputs.length));
    this.keeping = plan.derived.map((derived, i) =>
      derived.keeps === undefined
        ? null
        : new Keeping(plan, derived, of(derived.signal)?.keeping, now, this.off[i] === 1),
    );
  }

  /** When a derived signal is due whose input changes now. */
  due(index: number, now: EpochMs): EpochMs {
    const computedAt = this.computedAt[index]!;
    return Math.max(now + settleMs, computedAt < 0 ? 0 : computedAt + this.waitMs(index));
  }

  /** What can no longer be used, or can be again, is told within a second whatever its kind. */
  private waitMs(index: number): number {
    const { everyMs: ownMs = everyMs, inputs, signal } = this.plan.derived[index]!;
    if (ownMs <= everyMs) return everyMs;
    const { signals } = this;
    const turned =
      (signals.unusable[signal]! & unusable.bad) !== 0 ||
      inputs.some((input) => !signals.usable(input));
    return turned ? everyMs : ownMs;
  }

  /** When it wants to be asked again by itself; null for never. */
  wants(index: number): EpochMs | null {
    const at = this.keeping[index]?.timer.at ?? null;
    return at === null ? null : Math.max(at, this.computedAt[index]! + everyMs);
  }

  /**
   * Computes one from the latest readings. null before all inputs are known, and while it goes on
   * being unusable: one bad sample says so until it is over. The sample is reused.
   */
  compute(index: number, now: EpochMs): DerivedSample | null {
    const { signals, sample } = this;
    const derived = this.plan.derived[index]!;
    const into = this.inputs[index]!;
    const { inputs } = derived;
    let usable = true;
    let uncertain = false;
    sample.at = 0;
    for (let i = 0; i < inputs.length; i += 1) {
      const input = inputs[i]!;
      if (!signals.known(input)) return null;
      if (!signals.usable(input)) usable = false;
      if (signals.quality[input] !== quality.good) uncertain = true;
      sample.at = Math.max(sample.at, signals.at[input]!);
      into[i] = signals.value[input]!;
    }
    this.computedAt[index] = now;
    this.now.doubt = quality.good;
    const off = this.off[index] === 1;
    const value = usable && !off ? this.valueOf(index, into, uncertain, now) : null;
    if (derived.keeps !== undefined) sample.at = now;
    if (value === null) {
      if ((signals.unusable[derived.signal]! & unusable.bad) !== 0) return null;
      sample.value = 0;
      sample.quality = off ? quality.ownKindFailed : usable ? this.refusal() : quality.badInput;
      return sample;
    }
    sample.value = quantised(value, this.plan.signals[derived.signal]!.digits);
    sample.quality = uncertain ? quality.uncertainInput : this.now.doubt;
    if (sample.quality === quality.good && derived.unproven === true)
      sample.quality = quality.unproven;
    return sample;
  }

  /** One of its inputs cannot be used from now on. */
  blind(index: number, now: EpochMs): void {
    this.keeping[index]?.blind(now);
  }

  /** A mark says what happened at `at`: those that it starts anew, by place in the plan. */
  start(mark: number, at: EpochMs, now: EpochMs): readonly number[] {
    return this.plan.derived.flatMap((derived, i) => {
      const marked = derived.keeps !== undefined && derived.marks?.includes(mark) === true;
      return marked && this.keeping[i]!.start(at, now) ? [i] : [];
    });
  }

  /** Those of a file that is switched off or on from `now` on, by place in the plan. */
  switch(extension: string, off: boolean, now: EpochMs): readonly number[] {
    return this.plan.derived.flatMap((derived, i) => {
      if (derived.extension !== extension) return [];
      this.off[i] = Number(off);
      this.keeping[i]?.switch(off, now);
      return [i];
    });
  }

  /** Nothing was observed in between. */
  gap(fromMs: EpochMs, toMs: EpochMs): void {
    for (const keeping of this.keeping) keeping?.gap(fromMs, toMs);
  }

  /** The clock was set anew. */
  shift(deltaMs: number): void {
    for (const keeping of this.keeping) keeping?.shift(deltaMs);
  }

  save(index: number): Omit<SavedDerived, 'due'> {
    const at = this.computedAt[index]!;
    const keeping = this.keeping[index];
    return {
      computedAt: at < 0 ? null : at,
      ...(keeping == null ? {} : { keeping: keeping.save() }),
    };
  }

  private refusal(): QualityCode {
    return isBad(this.now.doubt) ? this.now.doubt : quality.outsideFormula;
  }

  private valueOf(
    index: number,
    inputs: Float64Array,
    uncertain: boolean,
    at: EpochMs,
  ): number | null {
    const derived = this.plan.derived[index]!;
    if (derived.compute !== undefined) return derived.compute(inputs);
    const { now } = this;
    now.at = at;
    now.inputs = inputs;
    now.uncertain = uncertain;
    if (derived.settled !== undefined) return derived.settled(now);
    return this.keeping[index]!.step(now);
  }
}

/** To the resolution, and never -0. */
function quantised(value: number, digits: number | null): number {
  if (digits === null) return value;
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0;
}
