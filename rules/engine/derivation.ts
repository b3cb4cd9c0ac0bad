/**
 * Derived signals: when each is due and what it comes to.
 *
 * One is computed when an input changed, a moment later so that inputs which change together are
 * taken together, and at most once a second.
 */
import type { Plan } from '../plan/plan.ts';
import { type QualityCode, quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
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
  private readonly inputs: Float64Array;
  private readonly sample: DerivedSample = { at: 0, value: 0, quality: 0 };

  constructor(plan: Plan, signals: Signals, saved: Readonly<Record<string, SavedDerived>>) {
    this.plan = plan;
    this.signals = signals;
    this.computedAt = Float64Array.from(
      plan.derived,
      (derived) => saved[plan.signals[derived.signal]!.id]?.computedAt ?? -1,
    );
    this.inputs = new Float64Array(Math.max(0, ...plan.derived.map((d) => d.inputs.length)));
  }

  /** When a derived signal is due whose input changes now. */
  due(index: number, now: EpochMs): EpochMs {
    const computedAt = this.computedAt[index]!;
    return Math.max(now + settleMs, computedAt < 0 ? 0 : computedAt + everyMs);
  }

  /**
   * Computes one from the latest readings. null before all inputs are known, and while it goes on
   * being unusable: one bad sample says so until it is over. The sample is reused.
   */
  compute(index: number, now: EpochMs): DerivedSample | null {
    const { signals, sample } = this;
    const derived = this.plan.derived[index]!;
    let usable = true;
    let uncertain = false;
    sample.at = 0;
    for (const [i, input] of derived.inputs.entries()) {
      if (!signals.known(input)) return null;
      if (!signals.usable(input)) usable = false;
      if (signals.quality[input] !== quality.good) uncertain = true;
      sample.at = Math.max(sample.at, signals.at[input]!);
      this.inputs[i] = signals.value[input]!;
    }
    this.computedAt[index] = now;
    const value = usable ? derived.compute(this.inputs) : null;
    if (value === null) {
      if ((signals.unusable[derived.signal]! & unusable.bad) !== 0) return null;
      sample.value = 0;
      sample.quality = usable ? quality.outsideFormula : quality.badInput;
      return sample;
    }
    sample.value = quantised(value, this.plan.signals[derived.signal]!.digits);
    sample.quality = uncertain ? quality.uncertainInput : quality.good;
    return sample;
  }

  computed(index: number): EpochMs | null {
    const at = this.computedAt[index]!;
    return at < 0 ? null : at;
  }
}

/** To the resolution, and never -0. */
function quantised(value: number, digits: number | null): number {
  if (digits === null) return value;
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0;
}
