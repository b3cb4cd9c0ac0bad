/**
 * One derived signal at work: what the engine asks of it each time, in one object of one shape
 * whatever its kind.
 */
import type { DerivedNow } from '../derive/derived-kind.ts';
import type { Plan, PlanDerived } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import { Keeping } from './keeping.ts';
import type { SavedDerived } from './state.ts';

/** One is computed at most this often while its kind says nothing else. */
export const everyMs = 1_000;

export class LiveDerived {
  /** When it was last computed; -1 before the first time. */
  computedAt: EpochMs;
  /** How long it waits after that while its inputs can be used. */
  readonly waitMs: number;
  /** The signal it makes. */
  readonly signal: number;
  readonly inputs: readonly number[];
  /** Room for their readings. */
  readonly values: Float64Array;
  readonly formula: ((inputs: ArrayLike<number>) => number | null) | null;
  readonly settled: ((now: DerivedNow) => number | null) | null;
  /** null for what remembers nothing. */
  readonly keeping: Keeping | null;
  /** Its kind is switched off. */
  off: boolean;
  readonly unproven: boolean;
  /** As in its plan. */
  readonly carries: PlanDerived['carries'];
  /** Steps of its resolution in one unit; null keeps full doubles. */
  private readonly stepsPerUnit: number | null;
  readonly plan: PlanDerived;

  constructor(
    plan: Plan,
    derived: PlanDerived,
    saved: SavedDerived | undefined,
    now: EpochMs,
    off: boolean,
  ) {
    this.computedAt = saved?.computedAt ?? -1;
    this.waitMs = Math.max(everyMs, derived.everyMs ?? everyMs);
    this.signal = derived.signal;
    this.inputs = derived.inputs;
    this.values = new Float64Array(derived.inputs.length);
    this.formula = derived.compute ?? null;
    this.settled = derived.settled ?? null;
    this.keeping =
      derived.keeps === undefined ? null : new Keeping(plan, derived, saved?.keeping, now, off);
    this.off = off;
    this.unproven = derived.unproven === true;
    this.carries = derived.carries;
    const { digits } = plan.signals[derived.signal]!;
    this.stepsPerUnit = digits === null ? null : 10 ** digits;
    this.plan = derived;
  }

  /** What it comes to from the readings in `now`; null where it has no answer. */
  valueOf(now: DerivedNow): number | null {
    const { formula, settled } = this;
    if (formula !== null) return formula(now.inputs);
    if (settled !== null) return settled(now);
    return this.keeping!.step(now);
  }

  /** To the resolution, and never -0. */
  quantised(value: number): number {
    const { stepsPerUnit } = this;
    if (stepsPerUnit === null) return value;
    return Math.round(value * stepsPerUnit) / stepsPerUnit + 0;
  }

  switch(off: boolean, now: EpochMs): void {
    this.off = off;
    this.keeping?.switch(off, now);
  }

  save(): Omit<SavedDerived, 'due'> {
    const { computedAt, keeping } = this;
    return {
      computedAt: computedAt < 0 ? null : computedAt,
      ...(keeping === null ? {} : { keeping: keeping.save() }),
    };
  }
}
