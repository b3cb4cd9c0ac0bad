/**
 * What is known of each signal: its latest usable reading, and whether it can be used now.
 */
import type { Reading } from '../kinds/kind.ts';
import type { Plan } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { SavedLatest } from './state.ts';

/** Why a signal cannot be used; the bits add up. */
export const unusable = { bad: 1, lost: 2 } as const;

export class Signals {
  /** When the latest usable reading held; -1 before the first. */
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly quality: Uint8Array;
  /** 0 where the signal can be used. */
  readonly unusable: Uint8Array;
  private readonly plan: Plan;

  constructor(plan: Plan, saved: Readonly<Record<string, SavedLatest>>) {
    this.plan = plan;
    this.at = new Float64Array(plan.signals.length).fill(-1);
    this.value = new Float64Array(plan.signals.length);
    this.quality = new Uint8Array(plan.signals.length);
    this.unusable = new Uint8Array(plan.signals.length);
    for (const [i, { id }] of plan.signals.entries()) {
      const latest = saved[id];
      if (latest === undefined) continue;
      this.at[i] = latest.at;
      this.value[i] = latest.value;
      this.quality[i] = latest.quality;
      if (latest.bad) this.unusable[i] = unusable.bad;
    }
  }

  set(signal: number, at: EpochMs, value: number, quality: number): void {
    this.at[signal] = at;
    this.value[signal] = value;
    this.quality[signal] = quality;
  }

  /** The latest usable reading into `into`, as judged at `judged`. */
  read(signal: number, judged: EpochMs, into: Reading): void {
    into.at = this.at[signal]!;
    into.judged = judged;
    into.value = this.value[signal]!;
    into.quality = this.quality[signal]!;
  }

  /** The latest usable reading; null before the first. */
  latest(signal: number): { at: EpochMs; value: number; quality: number } | null {
    if (!this.known(signal)) return null;
    return { at: this.at[signal]!, value: this.value[signal]!, quality: this.quality[signal]! };
  }

  known(signal: number): boolean {
    return this.at[signal]! >= 0;
  }

  usable(signal: number): boolean {
    return this.unusable[signal] === 0 && this.known(signal);
  }

  save(): Record<string, SavedLatest> {
    const saved: Record<string, SavedLatest> = {};
    for (const [i, { id }] of this.plan.signals.entries()) {
      const bad = (this.unusable[i]! & unusable.bad) !== 0;
      if (!this.known(i) && !bad) continue;
      saved[id] = { at: this.at[i]!, value: this.value[i]!, quality: this.quality[i]!, bad };
    }
    return saved;
  }
}
