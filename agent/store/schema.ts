/**
 * The database: its tables, its mark, its settings.
 *
 * The schema and the mark are written in one transaction of a rollback journal, before the file
 * turns to write-ahead logging: a file with anything in it carries the mark in its header.
 */
import type { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';

/** "FORE" in ASCII, in the header's application id. */
export const applicationId = 0x464f5245;
export const schemaVersion = 3;

/** Since schema 2. `run` is the agent’s own; this is a load’s through an oven. */
export const ovenRunTable = `
CREATE TABLE oven_run(id TEXT PRIMARY KEY, station TEXT NOT NULL, opened INTEGER NOT NULL,
  closed INTEGER, detail TEXT NOT NULL) STRICT;
CREATE INDEX oven_run_opened ON oven_run(opened);`;

/** Since schema 3: what is said, how it ended, and what waits by itself. */
export const outboxWhole = `
ALTER TABLE outbox ADD COLUMN outcome TEXT;
ALTER TABLE outbox ADD COLUMN detail TEXT NOT NULL DEFAULT '{}';
CREATE INDEX outbox_waiting ON outbox(id) WHERE done IS NULL;
CREATE INDEX outbox_done ON outbox(done) WHERE done IS NOT NULL;`;

const tables = `
CREATE TABLE signal(id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, unit TEXT NOT NULL,
  digits INTEGER, kind TEXT NOT NULL) STRICT;
CREATE TABLE input(seq INTEGER PRIMARY KEY, judged INTEGER NOT NULL, kind INTEGER NOT NULL,
  body BLOB NOT NULL, crc INTEGER NOT NULL) STRICT;
CREATE TABLE seq_floor(seq INTEGER PRIMARY KEY) STRICT;
CREATE TABLE segment(id INTEGER PRIMARY KEY, first_seq INTEGER NOT NULL, last_seq INTEGER NOT NULL,
  judged_from INTEGER NOT NULL, judged_to INTEGER NOT NULL) STRICT;
-- late: samples in doubt that are not bad (late, uncertain, in conflict); at first only the late ones
CREATE TABLE chunk(signal INTEGER NOT NULL, t0 INTEGER NOT NULL, segment INTEGER NOT NULL,
  part INTEGER NOT NULL, t1 INTEGER NOT NULL, n INTEGER NOT NULL, bad INTEGER NOT NULL,
  late INTEGER NOT NULL, lo REAL, hi REAL, sum REAL, body INTEGER NOT NULL,
  PRIMARY KEY(signal, t0, segment, part)) STRICT, WITHOUT ROWID;
CREATE INDEX chunk_segment ON chunk(segment);
CREATE TABLE body(id INTEGER PRIMARY KEY, codec INTEGER NOT NULL, crc INTEGER NOT NULL,
  minutes BLOB, data BLOB) STRICT;
CREATE INDEX body_raw ON body(id) WHERE data IS NOT NULL;
CREATE TABLE command(seq INTEGER PRIMARY KEY, judged INTEGER NOT NULL, body TEXT NOT NULL) STRICT;
CREATE TABLE snapshot(seq INTEGER PRIMARY KEY, judged INTEGER NOT NULL, format INTEGER NOT NULL,
  revision TEXT NOT NULL, state BLOB NOT NULL, crc INTEGER NOT NULL) STRICT;
CREATE TABLE site_revision(hash TEXT PRIMARY KEY, first_seq INTEGER NOT NULL,
  text TEXT NOT NULL) STRICT;
CREATE TABLE occurrence(id TEXT PRIMARY KEY, rule TEXT NOT NULL, state TEXT NOT NULL,
  raised INTEGER NOT NULL, closed INTEGER, detail TEXT NOT NULL) STRICT;
CREATE INDEX occurrence_open ON occurrence(rule) WHERE closed IS NULL;
CREATE INDEX occurrence_closed ON occurrence(closed) WHERE closed IS NOT NULL;
CREATE TABLE hold(id TEXT PRIMARY KEY, what TEXT NOT NULL, item TEXT NOT NULL,
  since INTEGER NOT NULL, lifted INTEGER, detail TEXT NOT NULL) STRICT;
CREATE INDEX hold_open ON hold(since) WHERE lifted IS NULL;
${ovenRunTable}
CREATE TABLE ledger(id INTEGER PRIMARY KEY, record TEXT NOT NULL, hash BLOB NOT NULL) STRICT;
CREATE TABLE ledger_anchor(id INTEGER PRIMARY KEY, hash BLOB NOT NULL) STRICT;
CREATE TABLE outbox(id INTEGER PRIMARY KEY, occurrence TEXT NOT NULL, step INTEGER NOT NULL,
  channel TEXT NOT NULL, due INTEGER NOT NULL, tries INTEGER NOT NULL, done INTEGER, cause TEXT,
  UNIQUE(occurrence, step, channel)) STRICT;
${outboxWhole}
CREATE TABLE run(id INTEGER PRIMARY KEY, started INTEGER NOT NULL, last_alive INTEGER NOT NULL,
  judged_to INTEGER NOT NULL, stopped INTEGER) STRICT;
`;

/** Tables looked at after a run that did not stop; `body`, the bulk, has checksums of its own. */
export const checkedTables = [
  'signal',
  'input',
  'seq_floor',
  'segment',
  'chunk',
  'command',
  'snapshot',
  'site_revision',
  'occurrence',
  'hold',
  'oven_run',
  'ledger',
  'ledger_anchor',
  'outbox',
  'run',
] as const;

/** What a backup gives a store begun anew: what people set, and what must not be forgotten. */
/** Since this schema they have not changed: a backup of it still gives them. */
export const settingsSince = 1;
export const settingsTables = ['signal', 'site_revision', 'hold'] as const;

/**
 * Makes an empty file a store, whole or not at all. The transaction is deferred, because
 * auto_vacuum must be set before the first page is made, and in the same transaction.
 */
export function createSchema(db: DatabaseSync): void {
  try {
    db.exec(`BEGIN;
PRAGMA auto_vacuum = INCREMENTAL;
PRAGMA application_id = ${applicationId};
PRAGMA user_version = ${schemaVersion};
${tables}
COMMIT`);
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

/** Number a pragma answers with. */
export function pragmaNumber(db: DatabaseSync, name: string): number {
  const row = db.prepare(`PRAGMA ${name}`).get();
  const value = row === undefined ? undefined : Object.values(row)[0];
  if (typeof value !== 'number') throw new Error(`PRAGMA ${name} gave no number`);
  return value;
}

/**
 * Settings of a connection that writes. Throws STORE_NO_WAL where the file system has no shared
 * memory for the write-ahead log (sqlite.org/wal.html, "All processes … on the same host").
 */
export function prepareToWrite(db: DatabaseSync, path: string): void {
  const mode = db.prepare('PRAGMA journal_mode = WAL').get();
  if (mode?.journal_mode !== 'wal') throw new AgentError('STORE_NO_WAL', { path });
  db.exec(`PRAGMA synchronous = FULL;
PRAGMA journal_size_limit = 16777216;
PRAGMA temp_store = MEMORY`);
}
