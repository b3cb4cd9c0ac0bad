/**
 * Samples by plan index on their way to the log, the open segment and the board of latest values,
 * all of which know a signal by its stored id.
 */
import type { Plan } from '#rules/plan/plan.ts';
import { type EpochMs, type SampleBatch, sampleFlag, unjudgedFlags } from '#rules/signal/sample.ts';
import type { OpenColumns } from '../store/columns.ts';
import type { StoredSignal } from '../store/contract.ts';
import { FramePacker, type StoredSignals } from '../store/frame.ts';
import type { SampleKeeper } from '../turn/ports.ts';

export interface Latest {
  readonly at: EpochMs;
  readonly value: number;
  readonly quality: number;
}

export type Register = (signals: readonly Omit<StoredSignal, 'id'>[]) => StoredSignal[];

export class SampleBook implements SampleKeeper {
  /** Every sample that came gets the next number. */
  cursor = 0;
  private readonly packer = new FramePacker();
  private readonly columns: OpenColumns;
  private readonly register: Register;
  private readonly introduced = new WeakMap<Plan, readonly StoredSignal[]>();
  private stored: StoredSignals = { ids: new Int32Array(0), digits: new Int8Array(0) };
  private signals = new Map<number, StoredSignal>();
  /** By stored id. */
  private at: number[] = [];
  private value: number[] = [];
  private quality: number[] = [];
  private stamp: number[] = [];
  private readonly late = new Map<number, EpochMs>();

  constructor(columns: OpenColumns, register: Register) {
    this.columns = columns;
    this.register = register;
  }

  /**
   * Gives the plan's signals their stored ids. Throws STORE_SIGNAL_CHANGED, and where the disk
   * refuses; after it `lay` cannot be refused.
   */
  introduce(plan: Plan): readonly StoredSignal[] {
    const known = this.introduced.get(plan);
    if (known !== undefined) return known;
    const signals = this.register(
      plan.signals.map(({ id, unit, digits, kind }) => ({ name: id, unit, digits, kind })),
    );
    this.introduced.set(plan, signals);
    return signals;
  }

  /** From here on batches speak of this plan's signals. Throws as `introduce`. */
  lay(plan: Plan): void {
    const signals = this.introduce(plan);
    this.stored = {
      ids: Int32Array.from(signals, ({ id }) => id),
      digits: Int8Array.from(signals, ({ digits }) => digits ?? -1),
    };
    for (const signal of signals) this.signals.set(signal.id, signal);
  }

  get storedSignals(): readonly StoredSignal[] {
    return [...this.signals.values()];
  }

  /** The plan index of each stored id, -1 where the plan has no such signal. */
  indexById(): Int32Array {
    const { ids } = this.stored;
    const most = ids.reduce((max, id) => Math.max(max, id), 0);
    const index = new Int32Array(most + 1).fill(-1);
    for (const [i, id] of ids.entries()) index[id] = i;
    return index;
  }

  idOf(index: number): number {
    return this.stored.ids[index]!;
  }

  pack(batch: SampleBatch, judged: EpochMs): Uint8Array {
    return this.packer.pack(batch, this.stored, judged);
  }

  append(batch: SampleBatch): void {
    const { ids } = this.stored;
    this.columns.append(batch, ids);
    for (let i = 0; i < batch.count; i += 1) {
      const id = ids[batch.signal[i]!]!;
      this.cursor += 1;
      if ((batch.flags[i]! & sampleFlag.late) !== 0) this.late.set(id, batch.at[i]!);
      if (!this.isLatest(batch, i, this.at[id])) continue;
      this.late.delete(id);
      this.at[id] = batch.at[i]!;
      this.value[id] = batch.value[i]!;
      this.quality[id] = batch.quality[i]!;
      this.stamp[id] = this.cursor;
    }
  }

  /** What is only kept is not shown; nor is what held before the latest, unless the clock was set back since. */
  private isLatest(batch: SampleBatch, i: number, knownAt: EpochMs | undefined): boolean {
    if ((batch.flags[i]! & unjudgedFlags) !== 0) return false;
    return knownAt === undefined || batch.at[i]! >= knownAt || knownAt > batch.judged[i]!;
  }

  /** The latest sample of a signal; null before the first since the start. */
  latest(index: number): Latest | null {
    const id = this.stored.ids[index]!;
    const at = this.at[id];
    return at === undefined ? null : { at, value: this.value[id]!, quality: this.quality[id]! };
  }

  /** The time given with the newest sample that came too late to be judged; null where a judged one came since. */
  lateAt(index: number): EpochMs | null {
    return this.late.get(this.stored.ids[index]!) ?? null;
  }

  /** Did a sample of the signal come after the cursor? */
  cameAfter(index: number, cursor: number): boolean {
    return (this.stamp[this.stored.ids[index]!] ?? 0) > cursor;
  }
}

/** Samples by index of another plan, those the plan has no signal for left out; `into` serves. */
export function inPlan(
  plan: Plan,
  batch: SampleBatch,
  other: Plan,
  into: SampleBatch,
): SampleBatch {
  if (other.revision === plan.revision) return batch;
  into.clear();
  const { signal, at, judged, value, quality, flags } = batch;
  for (let i = 0; i < batch.count; i += 1) {
    const { id } = other.signals[signal[i]!]!;
    const index = plan.signals.findIndex((each) => each.id === id);
    if (index >= 0) into.push(index, at[i]!, judged[i]!, value[i]!, quality[i]!, flags[i]!);
  }
  return into;
}
