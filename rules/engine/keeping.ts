/**
 * One derived signal that remembers, at work: its memory, and since when an input cannot be used.
 */
import type { DerivedNow, KeepingKind } from '../derive/derived-kind.ts';
import type { Timer } from '../kinds/kind.ts';
import type { Plan, PlanKeeping } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { SavedKeeping } from './state.ts';

export class Keeping {
  /** When it wants to be asked again, if nothing comes before. */
  readonly timer: Timer = { at: null };
  private readonly kind: KeepingKind;
  private readonly settings: unknown;
  private readonly key: string;
  private memory: unknown;
  /** Since when an input cannot be used. */
  private blindSince: EpochMs | null = null;
  /** The file its kind comes from is switched off: its kind is asked nothing. */
  private off = false;

  /** Takes up what was saved where it fits, else begins at `now`. */
  constructor(
    plan: Plan,
    { keeps, inputs, marks = [], counted = [] }: PlanKeeping,
    saved: SavedKeeping | undefined,
    now: EpochMs,
    off = false,
  ) {
    this.off = off;
    this.kind = keeps.kind;
    this.settings = keeps.settings;
    this.key = JSON.stringify([
      keeps.fingerprint,
      inputs.map((input) => `${plan.signals[input]!.id} ${plan.signals[input]!.unit}`),
      ...marks.map((mark) => plan.marks![mark]!.id),
      ...counted.map((mark) => `count ${plan.marks![mark]!.id}`),
    ]);
    const memory = this.carriedOver(saved);
    this.memory = off ? null : (memory ?? this.kind.begin(this.settings, now));
    if (memory !== null) this.blindSince = saved?.blindSince ?? null;
  }

  /** Its kind is asked nothing from here on, or begins anew. */
  switch(off: boolean, now: EpochMs): void {
    this.off = off;
    this.timer.at = null;
    this.blindSince = null;
    this.memory = off ? null : this.kind.begin(this.settings, now);
  }

  step(now: DerivedNow): number | null {
    if (this.blindSince !== null) {
      this.kind.gap(this.settings, this.memory, this.blindSince, now.at);
      this.blindSince = null;
    }
    this.timer.at = null;
    return this.kind.step(this.settings, this.memory, now, this.timer);
  }

  /** One of its inputs cannot be used from `at` on. */
  blind(at: EpochMs): void {
    if (!this.off) this.blindSince ??= at;
    this.timer.at = null;
  }

  /** Somebody said that it started anew at `at`; true where it can be. */
  start(at: EpochMs, now: EpochMs): boolean {
    if (this.off || this.kind.start === undefined) return false;
    if (this.blindSince !== null) {
      this.kind.gap(this.settings, this.memory, this.blindSince, now);
      this.blindSince = now;
    }
    this.kind.start(this.settings, this.memory, at, now);
    return true;
  }

  /** Somebody said that one more happened at `at`; true where it counts. */
  count(at: EpochMs): boolean {
    if (this.off || this.kind.count === undefined) return false;
    this.kind.count(this.settings, this.memory, at);
    return true;
  }

  gap(fromMs: EpochMs, toMs: EpochMs): void {
    if (!this.off && this.blindSince === null)
      this.kind.gap(this.settings, this.memory, fromMs, toMs);
  }

  /** The clock was set anew. What was saved of it has moved already. */
  shift(deltaMs: number): void {
    if (!this.off) this.kind.shift(this.memory, deltaMs);
  }

  save(): SavedKeeping {
    return {
      kind: this.kind.name,
      version: this.kind.version,
      key: this.key,
      memory: this.kind.save === undefined ? this.memory : this.kind.save(this.memory),
      blindSince: this.blindSince,
      ...(this.off ? { off: true } : {}),
    };
  }

  private carriedOver(saved: SavedKeeping | undefined): unknown {
    if (
      saved === undefined ||
      saved.off === true ||
      saved.kind !== this.kind.name ||
      saved.key !== this.key
    )
      return null;
    if (saved.version === this.kind.version) return saved.memory;
    return this.kind.migrate?.(saved.memory, saved.version) ?? null;
  }
}
