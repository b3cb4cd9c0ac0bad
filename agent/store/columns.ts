/**
 * The open segment in memory: each signal's samples since the last seal, column by column.
 *
 * Always true: a column only grows, and what it holds is never changed; so a reader in another
 * thread may be handed its arrays as they are (the memory is shared, nothing is copied). Frozen
 * columns stay readable here until `release`, so that no sample is out of sight between the
 * freeze and the commit that seals it. Feeding the log's rows again rebuilds the same columns.
 */
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import type { OpenColumn } from './contract.ts';
import type { SegmentSpan } from './segment.ts';

const bytesPerSample = 8 + 8 + 8 + 1 + 1;
const capacityMin = 64;

/** One signal's samples in the order they arrived. */
export class Column implements OpenColumn {
  count = 0;
  capacity = 0;
  at = new Float64Array(0);
  judged = new Float64Array(0);
  value = new Float64Array(0);
  quality = new Uint8Array(0);
  flags = new Uint8Array(0);
  private readonly shared: boolean;

  /** `shared`: other threads may be handed the arrays. */
  constructor(capacity = 0, shared = false) {
    this.shared = shared;
    if (capacity > 0) this.reserve(capacity);
  }

  /** Makes room for `capacity` samples in all. */
  reserve(capacity: number): void {
    if (capacity <= this.capacity) return;
    const bytes = capacity * bytesPerSample;
    // The types say ArrayBuffer; nothing that is done with the views depends on which it is.
    const buffer = (
      this.shared ? new SharedArrayBuffer(bytes) : new ArrayBuffer(bytes)
    ) as ArrayBuffer;
    const { at, judged, value, quality, flags } = this.filled();
    this.at = new Float64Array(buffer, 0, capacity);
    this.judged = new Float64Array(buffer, capacity * 8, capacity);
    this.value = new Float64Array(buffer, capacity * 16, capacity);
    this.quality = new Uint8Array(buffer, capacity * 24, capacity);
    this.flags = new Uint8Array(buffer, capacity * 25, capacity);
    this.at.set(at);
    this.judged.set(judged);
    this.value.set(value);
    this.quality.set(quality);
    this.flags.set(flags);
    this.capacity = capacity;
  }

  push(at: EpochMs, judged: EpochMs, value: number, quality: number, flags: number): void {
    const i = this.count;
    if (i === this.capacity) this.reserve(Math.max(capacityMin, Math.ceil(i * 1.5)));
    this.at[i] = at;
    this.judged[i] = judged;
    this.value[i] = value;
    this.quality[i] = quality;
    this.flags[i] = flags;
    this.count = i + 1;
  }

  append(samples: OpenColumn): void {
    const n = this.count;
    this.reserve(n + samples.count);
    this.at.set(samples.at.subarray(0, samples.count), n);
    this.judged.set(samples.judged.subarray(0, samples.count), n);
    this.value.set(samples.value.subarray(0, samples.count), n);
    this.quality.set(samples.quality.subarray(0, samples.count), n);
    this.flags.set(samples.flags.subarray(0, samples.count), n);
    this.count = n + samples.count;
  }

  /** The arrays cut to what they hold; the memory is the same. */
  filled(): OpenColumn {
    const n = this.count;
    return {
      count: n,
      at: this.at.subarray(0, n),
      judged: this.judged.subarray(0, n),
      value: this.value.subarray(0, n),
      quality: this.quality.subarray(0, n),
      flags: this.flags.subarray(0, n),
    };
  }
}

/** All signals' columns over a stretch in which the clock was never set back, by stored id. */
export type ColumnSet = (Column | undefined)[];

/** Columns that no longer grow, on their way to be sealed. */
export interface FrozenColumns {
  readonly span: SegmentSpan;
  /** Nothing of a row up to this one is in here. */
  readonly afterSeq: number;
  /** More than one where the clock was set back in between. */
  readonly epochs: readonly ColumnSet[];
}

/** A part of a signal's unsealed samples. It is sealed, whole, once a segment reaches beyond `afterSeq`. */
export interface OpenPart {
  readonly afterSeq: number;
  readonly column: OpenColumn;
}

export class OpenColumns {
  private epochs: ColumnSet[] = [[]];
  private afterSeq: number;
  private frozen: FrozenColumns[] = [];
  /** How many samples each signal's last column held: the next begins with that much room. */
  private hints: number[] = [];

  /** `afterSeq`: the last row that is sealed already, 0 where none is. */
  constructor(afterSeq: number) {
    this.afterSeq = afterSeq;
  }

  /** Adds a batch; `ids[signal]` is the stored id, and a signal without one (-1) is left out. */
  append(batch: SampleBatch, ids: Int32Array | null = null): void {
    const columns = this.epochs[this.epochs.length - 1]!;
    for (let i = 0; i < batch.count; i += 1) {
      const signal = batch.signal[i]!;
      const id = ids === null ? signal : ids[signal]!;
      if (id < 0) continue;
      const column = columns[id] ?? this.begin(columns, id);
      column.push(
        batch.at[i]!,
        batch.judged[i]!,
        batch.value[i]!,
        batch.quality[i]!,
        batch.flags[i]!,
      );
    }
  }

  /** The clock was set back: later judged times do not compare with earlier ones. */
  rebase(): void {
    this.epochs.push([]);
  }

  /**
   * Hands out everything so far, which covers the input rows of `span`, and begins anew.
   * Call `release` once the segment is committed; until then copies include it.
   */
  freeze(span: SegmentSpan): FrozenColumns {
    const frozen = { span, afterSeq: this.afterSeq, epochs: this.epochs };
    this.frozen.push(frozen);
    for (const columns of this.epochs) {
      columns.forEach((column, id) => {
        if (column !== undefined) this.hints[id] = column.count;
      });
    }
    this.epochs = [[]];
    this.afterSeq = span.lastSeq;
    return frozen;
  }

  release(frozen: FrozenColumns): void {
    this.frozen = this.frozen.filter((kept) => kept !== frozen);
  }

  /** A signal's unsealed samples, oldest part first; the arrays may be handed to another thread. */
  copyOf(id: number): OpenPart[] {
    const parts: OpenPart[] = [];
    for (const frozen of this.frozen) addParts(parts, frozen.afterSeq, frozen.epochs, id);
    addParts(parts, this.afterSeq, this.epochs, id);
    return parts;
  }

  private begin(columns: ColumnSet, id: number): Column {
    const hint = this.hints[id] ?? 0;
    const column = new Column(Math.max(capacityMin, Math.ceil(hint * 1.02)), true);
    columns[id] = column;
    return column;
  }
}

function addParts(
  parts: OpenPart[],
  afterSeq: number,
  epochs: readonly ColumnSet[],
  id: number,
): void {
  for (const columns of epochs) {
    const column = columns[id];
    if (column !== undefined) parts.push({ afterSeq, column: column.filled() });
  }
}
