/**
 * Writes a seal in one transaction, and clears away what a seal has made dead.
 *
 * Inputs at or below the last segment's `last_seq` are dead by definition: a reader that sees the
 * segment does not read them, one that does not see it finds them in its own snapshot of the file.
 */
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { limits } from '../limits.ts';
import { stateCrc } from './checksum.ts';
import type { EncodedChunk } from './segment.ts';
import type { Seal } from './store-types.ts';
import type { Transactions } from './transaction.ts';

export class SegmentWriter {
  /** Inputs up to here are sealed. */
  sealedSeq: number;
  private readonly transactions: Transactions;
  private readonly segment: StatementSync;
  private readonly body: StatementSync;
  private readonly chunk: StatementSync;
  private readonly command: StatementSync;
  private readonly snapshot: StatementSync;
  private readonly oldSnapshots: StatementSync;
  private readonly firstInput: StatementSync;
  private readonly dead: StatementSync;

  constructor(db: DatabaseSync, transactions: Transactions, sealedSeq: number) {
    this.sealedSeq = sealedSeq;
    this.transactions = transactions;
    this.segment = db.prepare(
      'INSERT INTO segment(first_seq, last_seq, judged_from, judged_to) VALUES(?,?,?,?)',
    );
    this.body = db.prepare('INSERT INTO body(codec, crc, minutes, data) VALUES(?,?,?,?)');
    this.chunk = db.prepare(`INSERT INTO chunk(signal, t0, segment, part, t1, n, bad, late,
      lo, hi, sum, body) VALUES(?,?,?,?,?,?,?,?,?,?,?,?)`);
    this.command = db.prepare('INSERT INTO command(seq, judged, body) VALUES(?,?,?)');
    this.snapshot = db.prepare(`INSERT INTO snapshot(seq, judged, format, revision, state, crc)
      VALUES(?,?,?,?,?,?)`);
    this.oldSnapshots = db.prepare(`DELETE FROM snapshot WHERE seq NOT IN
      (SELECT seq FROM snapshot ORDER BY seq DESC LIMIT ${limits.snapshotsKept})`);
    this.firstInput = db.prepare('SELECT min(seq) AS seq FROM input');
    this.dead = db.prepare('DELETE FROM input WHERE seq <= ?');
  }

  write(seal: Seal): void {
    const { segment, snapshot } = seal;
    if (segment.firstSeq <= this.sealedSeq || segment.lastSeq < segment.firstSeq) {
      throw new RangeError(
        `a segment of ${segment.firstSeq} to ${segment.lastSeq} cannot follow ${this.sealedSeq}`,
      );
    }
    this.transactions.run(() => {
      const { firstSeq, lastSeq, judgedFrom, judgedTo } = segment;
      const id = Number(this.segment.run(firstSeq, lastSeq, judgedFrom, judgedTo).lastInsertRowid);
      for (const chunk of segment.chunks) this.writeChunk(id, chunk);
      for (const row of seal.commands) this.command.run(row.seq, row.judged, row.body);
      const { judged, format, revision, state } = snapshot;
      this.snapshot.run(lastSeq, judged, format, revision, state, stateCrc(state));
      this.oldSnapshots.run();
    });
    this.sealedSeq = segment.lastSeq;
  }

  /** Deletes sealed inputs, oldest first, at most `maxRows`; returns how many went. */
  deleteDead(maxRows: number): number {
    const first = this.firstInput.get()?.seq;
    if (typeof first !== 'number' || first > this.sealedSeq) return 0;
    const upTo = Math.min(this.sealedSeq, first + maxRows - 1);
    return this.transactions.run(() => Number(this.dead.run(upTo).changes));
  }

  private writeChunk(segment: number, c: EncodedChunk): void {
    const body = this.body.run(c.codec, c.crc, c.minutes, c.data).lastInsertRowid;
    this.chunk.run(
      c.signal,
      c.t0,
      segment,
      c.part,
      c.t1,
      c.n,
      c.bad,
      c.late,
      c.lo,
      c.hi,
      c.sum,
      body,
    );
  }
}
