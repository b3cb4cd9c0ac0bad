/**
 * What a start finds out about the store before anything is fed again.
 *
 * SQLite is silent about a log that lost its end and about bytes flipped in blobs; here it is said.
 * Feeding the log again and comparing with the ledger is the engine's part, not the store's.
 */
import type { DatabaseSync } from 'node:sqlite';
import type { HighWater } from './high-water.ts';
import { storedHead } from './ledger.ts';
import { storedSnapshots, storeReader } from './store-reader.ts';
import type { Finding } from './store-types.ts';

export interface Recovered {
  readonly findings: Finding[];
  /** Highest sequence number ever given, lost ones included: none is given twice. */
  readonly lastSeq: number;
  readonly sealedSeq: number;
  /** Where rows are missing at the end: the number up to which none may be given again. */
  readonly floorSeq: number | null;
}

export function recover(db: DatabaseSync, mark: HighWater | 'unreadable' | null): Recovered {
  const sealedSeq = highest(db, 'SELECT max(last_seq) AS n FROM segment');
  const stored = lastStoredSeq(db);
  const findings: Finding[] = [];
  if (mark === 'unreadable') findings.push({ kind: 'high-water-unreadable' });
  const known = mark === 'unreadable' ? null : mark;
  if (known !== null) findings.push(...compare(db, known, stored));
  for (const { row, sound } of storedSnapshots(db)) {
    if (!sound) findings.push({ kind: 'damaged-snapshot', seq: row.seq });
  }
  findings.push(...damagedInputs(db, sealedSeq));
  const lastSeq = Math.max(stored, known?.seq ?? 0);
  return { findings, lastSeq, sealedSeq, floorSeq: lastSeq > stored ? lastSeq : null };
}

function compare(db: DatabaseSync, known: HighWater, storedSeq: number): Finding[] {
  const findings: Finding[] = [];
  if (storedSeq < known.seq) {
    findings.push({ kind: 'lost', fromSeq: storedSeq + 1, toSeq: known.seq });
  }
  const head = storedHead(db);
  if (head.id < known.ledgerId) {
    findings.push({ kind: 'ledger-lost', fromId: head.id + 1, toId: known.ledgerId });
    return findings;
  }
  const there = db.prepare('SELECT hash FROM ledger WHERE id = ?').get(known.ledgerId)?.hash;
  if (there instanceof Uint8Array && !known.hash16.every((byte, i) => byte === there[i])) {
    findings.push({ kind: 'ledger-differs', id: known.ledgerId });
  }
  return findings;
}

function damagedInputs(db: DatabaseSync, after: number): Finding[] {
  const findings: Finding[] = [];
  const rows = storeReader(db).inputsAfter(after, (row) =>
    findings.push({ kind: 'damaged-input', ...row }),
  );
  for (const _ of rows);
  return findings;
}

/** Highest sequence number the database knows of. */
export const lastStoredSeq = (db: DatabaseSync): number =>
  Math.max(
    highest(db, 'SELECT max(last_seq) AS n FROM segment'),
    highest(db, 'SELECT max(seq) AS n FROM input'),
    highest(db, 'SELECT max(seq) AS n FROM seq_floor'),
  );

function highest(db: DatabaseSync, sql: string): number {
  const n = db.prepare(sql).get()?.n;
  return typeof n === 'number' ? n : 0;
}
