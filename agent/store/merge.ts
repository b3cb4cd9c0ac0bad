/**
 * Many signals' columns as one row of batches, in the order (time, signal, place in its column).
 *
 * The merge goes by windows of time. Within a window it counts how many samples fall on each
 * millisecond and so knows each one's place; a sample is moved once and nothing is compared.
 */
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import type { Column } from './columns.ts';

/** A signal's column on its way through the merge; the list of sources is in the order of signals. */
export interface MergeSource {
  /** What the batches call the signal; negative: its samples are left out. */
  index: number;
  /** Ascending by the time of the merge. */
  readonly column: Column;
  /** The first sample not yet merged. */
  next: number;
}

export type TimeOf = 'judged' | 'at';

const windowSamples = 8_192;
const windowMsMax = 65_536;

export class Merge {
  private readonly counts = new Int32Array(windowMsMax + 1);
  private batch = new SampleBatch(windowSamples * 2);
  private readonly time: TimeOf;

  constructor(time: TimeOf) {
    this.time = time;
  }

  /**
   * All samples before `toMs`, a window at a time. A batch holds until the next is asked for; the
   * sources have moved beyond it when it is handed out.
   */
  *before(sources: readonly MergeSource[], toMs: EpochMs): Generator<SampleBatch> {
    const windowMs = this.windowFor(sources, toMs);
    for (;;) {
      const startMs = this.earliest(sources);
      if (startMs >= toMs) return;
      const batch = this.fill(sources, startMs, Math.min(toMs, startMs + windowMs));
      if (batch.count > 0) yield batch;
    }
  }

  private earliest(sources: readonly MergeSource[]): EpochMs {
    let earliest = Number.POSITIVE_INFINITY;
    for (const { column, next } of sources) {
      if (next < column.count && column[this.time][next]! < earliest) {
        earliest = column[this.time][next]!;
      }
    }
    return earliest;
  }

  /** So wide that it holds some thousand samples. */
  private windowFor(sources: readonly MergeSource[], toMs: EpochMs): number {
    let count = 0;
    let latest = Number.NEGATIVE_INFINITY;
    for (const { column, next } of sources) {
      count += column.count - next;
      if (next < column.count) latest = Math.max(latest, column[this.time][column.count - 1]!);
    }
    const spanMs = Math.min(latest, toMs) - this.earliest(sources) + 1;
    return Math.max(1, Math.min(windowMsMax, Math.ceil((spanMs * windowSamples) / count)));
  }

  private fill(sources: readonly MergeSource[], startMs: EpochMs, endMs: EpochMs): SampleBatch {
    const places = this.counts.fill(0, 0, endMs - startMs + 1);
    let total = 0;
    for (const source of sources) {
      const time = source.column[this.time];
      const { count } = source.column;
      if (source.index < 0) continue;
      let i = source.next;
      while (i < count && time[i]! < endMs) places[time[i++]! - startMs]! += 1;
      total += i - source.next;
    }
    let place = 0;
    for (let ms = 0; ms < endMs - startMs; ms += 1) {
      const here = places[ms]!;
      places[ms] = place;
      place += here;
    }
    if (total > this.batch.signal.length) this.batch = new SampleBatch(total * 2);
    for (const source of sources) move(source, this.time, places, startMs, endMs, this.batch);
    this.batch.count = total;
    return this.batch;
  }
}

/** Puts a source's samples before `endMs` in their places, and the source beyond them. */
function move(
  source: MergeSource,
  timeOf: TimeOf,
  places: Int32Array,
  startMs: EpochMs,
  endMs: EpochMs,
  batch: SampleBatch,
): void {
  const { column, index } = source;
  const time = column[timeOf];
  let i = source.next;
  for (; i < column.count && time[i]! < endMs; i += 1) {
    if (index < 0) continue;
    const place = places[time[i]! - startMs]!++;
    batch.signal[place] = index;
    batch.at[place] = column.at[i]!;
    batch.judged[place] = column.judged[i]!;
    batch.value[place] = column.value[i]!;
    batch.quality[place] = column.quality[i]!;
    batch.flags[place] = column.flags[i]!;
  }
  source.next = i;
}

/** Drops what is merged, so that more can be added behind what is left. */
export function compact(source: MergeSource): void {
  const { column, next } = source;
  if (next === 0) return;
  for (const name of ['at', 'judged', 'value', 'quality', 'flags'] as const) {
    column[name].copyWithin(0, next, column.count);
  }
  column.count -= next;
  source.next = 0;
}
