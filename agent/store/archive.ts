/**
 * Old records of the ledger into a file of their own; an anchor stays: how many there were and the last
 * hash, so that the chain goes on unbroken and the file can be held to it for ever.
 *
 * Always true: nothing is deleted before the file is on disk; that it happened is a record itself.
 */
import { closeSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { pathsOf } from './data-folder.ts';
import { onDisk } from './disk-error.ts';
import { requireFolder } from './folder-use.ts';
import { anchorOf, chainHash, ledgerRecord, storedHead } from './ledger.ts';
import { takeLock } from './lock.ts';
import { ReadOnlyStore } from './read-only.ts';
import type { LedgerHead } from './store-types.ts';
import { Transactions } from './transaction.ts';

export interface Archived {
  readonly count: number;
  readonly head: LedgerHead;
}

interface Row {
  readonly id: number;
  readonly record: string;
  readonly hash: Uint8Array;
}

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/**
 * Records of before `beforeMs`; null where there are none. Throws STORE_LOCKED while an agent runs,
 * LEDGER_ARCHIVE_TOO_NEW, LEDGER_ARCHIVE_EXISTS, and as opening a store does.
 */
export function archiveLedger(
  folder: string,
  beforeMs: number,
  to: string,
  nowMs: number,
): Archived | null {
  requireFolder(folder);
  const paths = pathsOf(folder);
  ReadOnlyStore.open(folder).close();
  const lock = takeLock(paths);
  try {
    const db = new DatabaseSync(paths.database);
    try {
      return onDisk(paths.database, () => archive(db, paths.database, beforeMs, to, nowMs));
    } finally {
      db.close();
    }
  } finally {
    lock.release();
  }
}

function archive(
  db: DatabaseSync,
  path: string,
  beforeMs: number,
  to: string,
  nowMs: number,
): Archived | null {
  const alive = db.prepare('SELECT max(last_alive) AS at FROM run').get()?.at;
  // A start compares what it judges again with the records of the last hours.
  const latestMs = (typeof alive === 'number' ? alive : nowMs) - limits.ledgerKeptMs;
  if (beforeMs > latestMs)
    throw new AgentError('LEDGER_ARCHIVE_TOO_NEW', { latest: new Date(latestMs).toISOString() });
  const from = anchorOf(db);
  const rows = oldRows(db, from.id, beforeMs);
  const last = rows.at(-1);
  if (last === undefined) return null;
  const head = { id: last.id, hash: last.hash };
  writeArchive(to, from, rows);
  new Transactions(db, path, () => undefined).run(() => {
    db.prepare('INSERT INTO ledger_anchor(id, hash) VALUES(?,?)').run(head.id, head.hash);
    db.prepare('DELETE FROM ledger WHERE id <= ?').run(head.id);
    const end = storedHead(db);
    const facts = { type: 'ledger-archived', at: nowMs, up_to: head.id, hash: hex(head.hash) };
    const record = ledgerRecord(end.id + 1, facts);
    db.prepare('INSERT INTO ledger(id, record, hash) VALUES(?,?,?)').run(
      end.id + 1,
      record,
      chainHash(end.hash, record),
    );
  });
  return { count: rows.length, head };
}

/** From the anchor on, up to the first that is not older. */
function oldRows(db: DatabaseSync, afterId: number, beforeMs: number): Row[] {
  const rows: Row[] = [];
  const all = db.prepare('SELECT id, record, hash FROM ledger WHERE id > ? ORDER BY id');
  for (const row of all.iterate(afterId) as unknown as Iterable<Row>) {
    const at = timeOf(row.record);
    if (at !== null && at >= beforeMs) break;
    rows.push(row);
  }
  return rows;
}

function timeOf(record: string): number | null {
  const { judged, at } = JSON.parse(record) as { judged?: unknown; at?: unknown };
  return typeof judged === 'number' ? judged : typeof at === 'number' ? at : null;
}

/** JSON lines: first where it begins, then each record as it was hashed. */
function writeArchive(to: string, from: LedgerHead, rows: readonly Row[]): void {
  let fd: number;
  try {
    fd = openSync(to, 'wx', 0o600);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST')
      throw new AgentError('LEDGER_ARCHIVE_EXISTS', { path: to });
    throw error;
  }
  try {
    writeSync(fd, `${JSON.stringify({ after: from.id, hash: hex(from.hash) })}\n`);
    for (const { record } of rows) writeSync(fd, `${record}\n`);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** Is the file what was archived from this folder? Throws LEDGER_ARCHIVE_UNREADABLE. */
export function verifyArchive(folder: string, path: string): boolean {
  const lines = readFileSync(path, 'utf8').trimEnd().split('\n');
  let head: { id: number; hash: Uint8Array };
  try {
    const { after, hash } = JSON.parse(lines[0] ?? '') as { after: number; hash: string };
    head = { id: after, hash: Buffer.from(hash, 'hex') };
  } catch (error) {
    throw new AgentError('LEDGER_ARCHIVE_UNREADABLE', { path }, error);
  }
  for (const record of lines.slice(1))
    head = { id: head.id + 1, hash: chainHash(head.hash, record) };
  const store = ReadOnlyStore.open(folder);
  try {
    const anchor = store.db.prepare('SELECT hash FROM ledger_anchor WHERE id = ?').get(head.id);
    return anchor !== undefined && hex(anchor.hash as Uint8Array) === hex(head.hash);
  } finally {
    store.close();
  }
}
