/**
 * Writes a turn: inputs, ledger, occurrences, holds and the run's heartbeat in one transaction.
 *
 * The chain's head and the last sequence number move only after the commit returned.
 */
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { limits } from '../limits.ts';
import { inputCrc } from './checksum.ts';
import type {
  HoldRow,
  LedgerBody,
  OccurrenceRow,
  OutboxRow,
  OvenRunRow,
  Turn,
} from './contract.ts';
import { chainHash, ledgerRecord } from './ledger.ts';
import type { LedgerHead } from './store-types.ts';
import type { Transactions } from './transaction.ts';

export class TurnWriter {
  lastSeq: number;
  head: LedgerHead;
  private readonly transactions: Transactions;
  private readonly input: StatementSync;
  private readonly ledger: StatementSync;
  private readonly occurrence: StatementSync;
  private readonly hold: StatementSync;
  private readonly ovenRun: StatementSync;
  private readonly outbox: StatementSync;
  private readonly outboxOld: StatementSync;
  private readonly alive: StatementSync;
  private readonly floor: StatementSync;
  /** Sequence numbers up to here were given and lost; the first commit writes it down. */
  private floorSeq: number | null;

  constructor(
    db: DatabaseSync,
    transactions: Transactions,
    start: {
      readonly lastSeq: number;
      readonly floorSeq: number | null;
      readonly head: LedgerHead;
    },
  ) {
    const { lastSeq, floorSeq, head } = start;
    this.lastSeq = lastSeq;
    this.floorSeq = floorSeq;
    this.head = head;
    this.transactions = transactions;
    this.input = db.prepare('INSERT INTO input(seq, judged, kind, body, crc) VALUES(?,?,?,?,?)');
    this.ledger = db.prepare('INSERT INTO ledger(id, record, hash) VALUES(?,?,?)');
    this.occurrence = db.prepare(`INSERT INTO occurrence(id, rule, state, raised, closed, detail)
      VALUES(?,?,?,?,?,?) ON CONFLICT(id) DO UPDATE SET rule = excluded.rule,
      state = excluded.state, raised = excluded.raised, closed = excluded.closed,
      detail = excluded.detail`);
    this.hold = db.prepare(`INSERT INTO hold(id, what, item, since, lifted, detail)
      VALUES(?,?,?,?,?,?) ON CONFLICT(id) DO UPDATE SET what = excluded.what,
      item = excluded.item, since = excluded.since, lifted = excluded.lifted,
      detail = excluded.detail`);
    this.ovenRun = db.prepare(`INSERT INTO oven_run(id, station, opened, closed, detail)
      VALUES(?,?,?,?,?) ON CONFLICT(id) DO UPDATE SET station = excluded.station,
      opened = excluded.opened, closed = excluded.closed, detail = excluded.detail`);
    this.outbox = db.prepare(`INSERT INTO outbox(occurrence, step, channel, due, tries, done,
      outcome, cause, detail) VALUES(?,?,?,?,?,?,?,?,?) ON CONFLICT(occurrence, step, channel)
      DO UPDATE SET due = excluded.due, tries = excluded.tries, done = excluded.done,
      outcome = excluded.outcome, cause = excluded.cause, detail = excluded.detail`);
    this.outboxOld = db.prepare('DELETE FROM outbox WHERE done IS NOT NULL AND done < ?');
    this.floor = db.prepare('INSERT OR IGNORE INTO seq_floor(seq) VALUES(?)');
    this.alive = db.prepare('UPDATE run SET last_alive = ?, judged_to = ? WHERE id = ?');
  }

  /** Returns the ledger's last id. */
  commit(turn: Turn, run: number): number {
    let head = this.head;
    let seq = this.lastSeq;
    this.transactions.run(() => {
      seq = this.writeInputs(turn, seq);
      for (const body of turn.ledger) head = this.writeLedger(head, body);
      for (const row of turn.occurrences) this.writeOccurrence(row);
      for (const row of turn.holds) this.writeHold(row);
      for (const row of turn.ovenRuns ?? []) this.writeOvenRun(row);
      for (const row of turn.outbox ?? []) this.writeOutbox(row);
      if ((turn.outbox ?? []).length > 0)
        this.outboxOld.run(turn.aliveAt - limits.outboxDoneKeptMs);
      if (this.floorSeq !== null) this.floor.run(this.floorSeq);
      this.alive.run(turn.aliveAt, turn.judgedTo, run);
    });
    this.head = head;
    this.lastSeq = seq;
    this.floorSeq = null;
    return head.id;
  }

  private writeInputs(turn: Turn, after: number): number {
    let last = after;
    for (const row of turn.inputs) {
      if (row.seq <= last) throw new RangeError(`input ${row.seq} does not follow ${last}`);
      this.input.run(row.seq, row.judged, row.kind, row.body, inputCrc(row));
      last = row.seq;
    }
    return last;
  }

  private writeLedger(head: LedgerHead, body: LedgerBody): LedgerHead {
    const id = head.id + 1;
    const record = ledgerRecord(id, body);
    const hash = chainHash(head.hash, record);
    this.ledger.run(id, record, hash);
    return { id, hash };
  }

  private writeOccurrence(row: OccurrenceRow): void {
    this.occurrence.run(row.id, row.rule, row.state, row.raised, row.closed, row.detail);
  }

  private writeOvenRun(row: OvenRunRow): void {
    this.ovenRun.run(row.id, row.station, row.opened, row.closed, row.detail);
  }

  private writeOutbox(row: OutboxRow): void {
    const { occurrence, step, channel, due, tries, done, outcome, cause, detail } = row;
    this.outbox.run(occurrence, step, channel, due, tries, done, outcome, cause, detail);
  }

  private writeHold(row: HoldRow): void {
    this.hold.run(row.id, row.what, row.item, row.since, row.lifted, row.detail);
  }
}
