/**
 * Writes a data folder row by row, as the store does, without waiting for the disk: tests need
 * thousands of them. What the store itself writes is tested with the store.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { inputCrc } from '../../../agent/store/checksum.ts';
import { encodeColumn } from '../../../agent/store/chunk.ts';
import { type FrozenColumns, OpenColumns } from '../../../agent/store/columns.ts';
import { inputKind, type StoredSignal } from '../../../agent/store/contract.ts';
import { pathsOf } from '../../../agent/store/data-folder.ts';
import { FramePacker } from '../../../agent/store/frame.ts';
import { createSchema } from '../../../agent/store/schema.ts';
import { SegmentWriter } from '../../../agent/store/segment-writer.ts';
import { Transactions } from '../../../agent/store/transaction.ts';
import type { Input } from '../../../rules/input.ts';
import { SampleBatch } from '../../../rules/signal/sample.ts';
import type { AnySample } from './patterns.ts';

export type SignalSample = AnySample & { readonly signal: number };

interface Row {
  readonly seq: number;
  readonly judged: number;
  readonly input: Input | null;
}

export class RecordBuilder {
  readonly folder = mkdtempSync(join(tmpdir(), 'forebond-record-'));
  readonly db = new DatabaseSync(pathsOf(this.folder).database);
  readonly signals: readonly StoredSignal[];
  readonly columns = new OpenColumns(0);
  seq = 0;
  sealedSeq = 0;
  private readonly packer = new FramePacker();
  private readonly writer: SegmentWriter;
  private open: Row[] = [];
  private readonly ids: Int32Array;
  private readonly digits: Int8Array;

  /** A batch calls signal `signals[i]` i. */
  constructor(signals: readonly StoredSignal[]) {
    this.signals = signals;
    this.ids = Int32Array.from(signals, (signal) => signal.id);
    this.digits = Int8Array.from(signals, (signal) => signal.digits ?? -1);
    this.db.exec('PRAGMA synchronous = OFF');
    createSchema(this.db);
    this.db.exec('PRAGMA journal_mode = WAL');
    const transactions = new Transactions(this.db, this.folder, () => {});
    this.writer = new SegmentWriter(this.db, transactions, 0);
    const insert = this.db.prepare('INSERT INTO signal VALUES(?,?,?,?,?)');
    for (const { id, name, unit, digits, kind } of signals)
      insert.run(id, name, unit, digits, kind);
  }

  samples(judged: number, samples: readonly SignalSample[]): void {
    const batch = new SampleBatch(Math.max(1, samples.length));
    for (const each of samples) {
      batch.push(each.signal, each.at, each.judged, each.value, each.quality, each.flags);
    }
    this.batch(judged, batch);
  }

  batch(judged: number, batch: SampleBatch): void {
    const body = this.packer.pack(batch, { ids: this.ids, digits: this.digits }, judged);
    this.write(judged, inputKind.samples, body, null);
    this.columns.append(batch, this.ids);
  }

  /** Samples the engine derived: they are in the columns and not in the log. */
  derived(batch: SampleBatch): void {
    this.columns.append(batch, this.ids);
  }

  input(input: Input): void {
    const body = Buffer.from(JSON.stringify(input));
    this.write(input.judged, inputKind[input.kind], body, input);
    if (input.kind === 'rebase') this.columns.rebase();
  }

  freeze(): FrozenColumns {
    const [first, last] = [this.open[0]!, this.open[this.open.length - 1]!];
    return this.columns.freeze({
      firstSeq: first.seq,
      lastSeq: last.seq,
      judgedFrom: first.judged,
      judgedTo: last.judged,
    });
  }

  /** Seals every row so far; dead rows stay behind unless `clean`. */
  seal(clean = true, frozen = this.freeze()): void {
    if (this.open.length === 0) return;
    const chunks = frozen.epochs.flatMap((set, epoch) =>
      set.flatMap((column, id) => {
        if (column === undefined) return [];
        const { digits } = this.signals.find((signal) => signal.id === id)!;
        return encodeColumn(id, digits, epoch, column.filled());
      }),
    );
    const { lastSeq, judgedTo } = frozen.span;
    this.writer.write({
      segment: { ...frozen.span, chunks },
      snapshot: { judged: judgedTo, format: 1, revision: 'r', state: new Uint8Array(1) },
      commands: this.open
        .filter((row) => row.input !== null && row.seq <= lastSeq)
        .map(({ seq, judged, input }) => ({ seq, judged, body: JSON.stringify(input) })),
    });
    this.columns.release(frozen);
    this.open = this.open.filter((row) => row.seq > lastSeq);
    this.sealedSeq = lastSeq;
    if (clean) this.writer.deleteDead(1e9);
  }

  get hasOpenRows(): boolean {
    return this.open.length > 0;
  }

  dispose(): void {
    this.db.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  private write(judged: number, kind: number, body: Uint8Array, input: Input | null): void {
    const row = { seq: ++this.seq, judged, kind, body };
    this.db
      .prepare('INSERT INTO input VALUES(?,?,?,?,?)')
      .run(row.seq, judged, kind, body, inputCrc(row));
    this.open.push({ seq: row.seq, judged, input });
  }
}

/** Runs `work` with a folder of its own, which is gone afterwards. */
export function withRecord<T>(
  signals: readonly StoredSignal[],
  work: (record: RecordBuilder) => T,
): T {
  const record = new RecordBuilder(signals);
  try {
    return work(record);
  } finally {
    record.dispose();
  }
}
