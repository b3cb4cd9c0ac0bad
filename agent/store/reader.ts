/**
 * The whole record of a data folder, in the order of judgement: what replay is fed.
 *
 * Always true: inputs come in the order (judged, kind, signal by name, at, arrival), the same from
 * sealed segments and from the open log; a running agent may seal meanwhile and no sample is
 * missed or doubled. Derived signals are left out, since judging makes them anew. A stretch is
 * read in one short transaction, never across a yield.
 */
import { type Input, inputOrder } from '#rules/input.ts';
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import { orderBy } from './chunk.ts';
import { Column } from './columns.ts';
import type { StoredSignal } from './contract.ts';
import { compact, Merge, type MergeSource } from './merge.ts';
import { ReadOnlyStore } from './read-only.ts';
import { type Entry, type Into, type Loaded, loadOpenLog, loadSegment } from './stretch.ts';

export type RecordItem =
  /** Holds until the next item is asked for. */
  | {
      readonly kind: 'samples';
      readonly batch: SampleBatch;
      /** Still waiting for their moment when the clock was set back, which is the next item. */
      readonly held: boolean;
    }
  | { readonly kind: 'input'; readonly seq: number; readonly input: Input }
  /** Could not be read and is left out; `signal` is a name, null where it may have been any. */
  | {
      readonly kind: 'damage';
      readonly signal: string | null;
      readonly fromMs: EpochMs;
      readonly toMs: EpochMs;
      readonly reason: string;
    };

export interface RecordOptions {
  /** Judged at or after. */
  readonly sinceMs?: EpochMs;
  /** Judged before. */
  readonly untilMs?: EpochMs;
  /** Only inputs after this sequence number, which is the end of a segment (as of a snapshot) or 0. */
  readonly fromSeq?: number;
  /**
   * What batches call a signal, negative to leave it out; asked at the start, and again after each
   * `site` input was handed out. By default a signal is called by its stored id.
   */
  readonly indexOf?: (signal: StoredSignal) => number;
}

interface Source extends MergeSource {
  readonly signal: StoredSignal;
}

/** Throws AgentError where the folder's store cannot be opened or its file is damaged. */
export function* readRecord(folder: string, options: RecordOptions = {}): Generator<RecordItem> {
  const store = ReadOnlyStore.open(folder);
  try {
    yield* new RecordReading(store, options).items();
  } finally {
    store.close();
  }
}

class RecordReading {
  private readonly store: ReadOnlyStore;
  private readonly options: RecordOptions;
  private readonly sinceMs: EpochMs;
  private readonly untilMs: EpochMs;
  private readonly merge = new Merge('judged');
  /** In the order of judgement. */
  private sources: Source[] = [];
  private byId = new Map<number, Source>();
  /** Entries whose moment lies in what follows. */
  private waiting: Entry[] = [];
  private afterSeq: number;

  constructor(store: ReadOnlyStore, options: RecordOptions) {
    this.store = store;
    this.options = options;
    this.sinceMs = options.sinceMs ?? Number.NEGATIVE_INFINITY;
    this.untilMs = options.untilMs ?? Number.POSITIVE_INFINITY;
    this.afterSeq = options.fromSeq ?? store.atOnce(() => this.firstAfterSeq());
  }

  *items(): Generator<RecordItem> {
    for (;;) {
      const stretch = this.store.atOnce(() => this.loadNext());
      for (const { signal, ...damage } of stretch.damage) {
        const name = signal === null ? null : (this.byId.get(signal)?.signal.name ?? null);
        yield { kind: 'damage', signal: name, ...damage };
      }
      yield* this.stretchItems(stretch);
      if (stretch.isOpenLog || stretch.limitMs >= this.untilMs) return;
    }
  }

  /** The row before the first that may matter: an earlier segment may hold samples judged later. */
  private firstAfterSeq(): number {
    const row = this.store.db
      .prepare('SELECT min(first_seq) AS seq FROM segment WHERE judged_to >= ?')
      .get(Math.max(this.sinceMs, 0) - limits.sealEveryMs);
    return row?.seq == null ? this.store.sealedSeq() : Number(row.seq) - 1;
  }

  /** The next segment if there is one by now, else the open log. */
  private loadNext(): Stretch {
    this.meetSignals();
    for (const source of this.sources) compact(source);
    const later: Map<number, Column>[] = [];
    const into =
      (wants: (source: Source) => boolean): Into =>
      (epoch, id) => {
        const source = this.byId.get(id);
        if (source === undefined || !wants(source)) return null;
        if (epoch === 0) return source.column;
        while (later.length < epoch) later.push(new Map());
        const columns = later[epoch - 1]!;
        const column = columns.get(id) ?? new Column();
        columns.set(id, column);
        return column;
      };
    const rows = this.store.db
      .prepare(
        `SELECT id, first_seq AS firstSeq, last_seq AS lastSeq, judged_from AS judgedFrom
         FROM segment WHERE first_seq > ? ORDER BY id LIMIT 2`,
      )
      .all(this.afterSeq) as unknown as SegmentStart[];
    const [segment, next] = rows;
    if (segment === undefined) {
      const loaded = loadOpenLog(this.store, this.afterSeq, into(notDerived));
      return { ...loaded, later, isOpenLog: true, limitMs: Number.POSITIVE_INFINITY };
    }
    const loaded = loadSegment(this.store, segment, (entries) => {
      const mayChange = entries.some((entry) => entry.input.kind === 'site');
      return into((source) => notDerived(source) && (mayChange || source.index >= 0));
    });
    this.afterSeq = segment.lastSeq;
    const limitMs = next?.judgedFrom ?? this.firstOpenJudged(segment.lastSeq);
    return { ...loaded, later, isOpenLog: false, limitMs };
  }

  private firstOpenJudged(afterSeq: number): EpochMs {
    const row = this.store.db
      .prepare('SELECT judged FROM input WHERE seq > ? ORDER BY seq LIMIT 1')
      .get(afterSeq);
    return row === undefined ? Number.POSITIVE_INFINITY : Number(row.judged);
  }

  /** Signals are only ever added. */
  private meetSignals(): void {
    this.sources = this.store.signals().map((signal) => {
      const known = this.byId.get(signal.id);
      return known ?? { signal, index: this.indexOf(signal), column: new Column(), next: 0 };
    });
    this.byId = new Map(this.sources.map((source) => [source.signal.id, source]));
  }

  private indexOf(signal: StoredSignal): number {
    return this.options.indexOf?.(signal) ?? signal.id;
  }

  private *stretchItems(stretch: Stretch): Generator<RecordItem> {
    const { epochs, rebases } = inEpochs(stretch.entries);
    for (const [epoch, entries] of epochs.entries()) {
      this.beginEpoch(epoch === 0 ? undefined : stretch.later[epoch - 1]);
      this.waiting = [...this.waiting, ...entries].sort(byMoment);
      const rebase = rebases[epoch];
      yield* this.upTo(rebase?.judged ?? stretch.limitMs);
      if (rebase === undefined) continue;
      const gaps = this.takeWaiting((entry) => byMoment(entry, rebase) < 0);
      for (const gap of gaps) yield* this.entryItem(gap);
      yield* this.samplesBefore(Number.POSITIVE_INFINITY, true);
      yield* this.entryItem(rebase);
    }
  }

  private beginEpoch(columns: Map<number, Column> | undefined): void {
    for (const source of this.sources) {
      const column = columns?.get(source.signal.id);
      if (column !== undefined) {
        source.column.count = 0;
        source.column.append(column);
        source.next = 0;
      }
      orderBy('judged', source.column);
      const { judged, count } = source.column;
      while (source.next < count && judged[source.next]! < this.sinceMs) source.next += 1;
    }
  }

  /** Everything before a moment, in order. */
  private *upTo(limitMs: EpochMs): Generator<RecordItem> {
    const endMs = Math.min(limitMs, this.untilMs);
    for (const entry of this.takeWaiting((waiting) => waiting.judged < endMs)) {
      const first = inputOrder[entry.input.kind] < inputOrder.sample;
      yield* this.samplesBefore(first ? entry.judged : entry.judged + 1, false);
      yield* this.entryItem(entry);
    }
    yield* this.samplesBefore(endMs, false);
  }

  private takeWaiting(due: (entry: Entry) => boolean): Entry[] {
    const taken = this.waiting.filter(due);
    this.waiting = this.waiting.filter((entry) => !due(entry));
    return taken;
  }

  private *samplesBefore(toMs: EpochMs, held: boolean): Generator<RecordItem> {
    for (const batch of this.merge.before(this.sources, toMs)) {
      yield { kind: 'samples', batch, held };
    }
  }

  private *entryItem(entry: Entry): Generator<RecordItem> {
    if (entry.judged < this.sinceMs) return;
    yield { kind: 'input', seq: entry.seq, input: entry.input };
    if (entry.input.kind !== 'site') return;
    for (const source of this.sources) source.index = this.indexOf(source.signal);
  }
}

interface Stretch extends Loaded {
  /** Columns of the second and later epochs, by stored id. */
  readonly later: readonly Map<number, Column>[];
  readonly isOpenLog: boolean;
  /** What is judged from here on is to be merged with what follows. */
  readonly limitMs: EpochMs;
}

interface SegmentStart {
  readonly id: number;
  readonly firstSeq: number;
  readonly lastSeq: number;
  readonly judgedFrom: EpochMs;
}

const notDerived = (source: Source): boolean => source.signal.kind !== 'derived';

const byMoment = (a: Entry, b: Entry): number =>
  a.judged - b.judged || inputOrder[a.input.kind] - inputOrder[b.input.kind] || a.seq - b.seq;

/** Entries between the moments at which the clock was set back, and those moments. */
function inEpochs(entries: readonly Entry[]): { epochs: Entry[][]; rebases: Entry[] } {
  const epochs: Entry[][] = [[]];
  const rebases: Entry[] = [];
  for (const entry of entries) {
    if (entry.input.kind === 'rebase') {
      rebases.push(entry);
      epochs.push([]);
    } else epochs[epochs.length - 1]!.push(entry);
  }
  return { epochs, rebases };
}
