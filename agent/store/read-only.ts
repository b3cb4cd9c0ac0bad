/**
 * A reader's own connection to a store that another thread or process may be writing.
 *
 * Always true: it never writes; each read transaction is short, because the write-ahead log cannot
 * be cut back while an old state of it is being read.
 */
import { existsSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { inputCrc } from './checksum.ts';
import { type InputRow, inputKind, type StoredSignal } from './contract.ts';
import { fileBytes, pathsOf } from './data-folder.ts';
import { onDisk } from './disk-error.ts';
import { requireFolder } from './folder-use.ts';
import { hasWay } from './migrate.ts';
import { applicationId, pragmaNumber, schemaVersion } from './schema.ts';

/** A writer holds the file for itself only while it opens or closes it. */
const waitMs = 2_000;

export class ReadOnlyStore {
  readonly db: DatabaseSync;
  readonly path: string;

  private constructor(db: DatabaseSync, path: string) {
    this.db = db;
    this.path = path;
  }

  /**
   * Throws AgentError: FOLDER_MISSING, FOLDER_TAKEN, STORE_EMPTY, STORE_GONE, STORE_NOT_A_STORE,
   * STORE_NEWER, STORE_OLDER, STORE_TOO_OLD, STORE_DAMAGED, STORE_DISK_FAILED.
   */
  static open(folder: string): ReadOnlyStore {
    const path = pathsOf(folder).database;
    requireFolder(folder);
    if (!existsSync(path)) {
      const code = fileBytes(pathsOf(folder).highWater) > 0 ? 'STORE_GONE' : 'STORE_EMPTY';
      throw new AgentError(code, { path: folder });
    }
    return onDisk(path, () => {
      const db = new DatabaseSync(path, { readOnly: true, timeout: waitMs });
      try {
        if (pragmaNumber(db, 'application_id') !== applicationId) {
          throw new AgentError('STORE_NOT_A_STORE', { path });
        }
        const found = pragmaNumber(db, 'user_version');
        const code =
          found > schemaVersion ? 'STORE_NEWER' : hasWay(found) ? 'STORE_OLDER' : 'STORE_TOO_OLD';
        if (found !== schemaVersion)
          throw new AgentError(code, { path, found, known: schemaVersion });
        return new ReadOnlyStore(db, path);
      } catch (error) {
        db.close();
        throw error;
      }
    });
  }

  /** `read` sees one state of the store. It must be done when it returns. */
  atOnce<T>(read: () => T): T {
    return onDisk(this.path, () => {
      this.db.exec('BEGIN');
      try {
        return read();
      } finally {
        if (this.db.isTransaction) this.db.exec('COMMIT');
      }
    });
  }

  /** Signals in the order of their names (code units), which is the order of judgement. */
  signals(): StoredSignal[] {
    const rows = this.db.prepare('SELECT id, name, unit, digits, kind FROM signal').all();
    // The table is STRICT: the columns are what the schema says.
    const signals = rows as unknown as StoredSignal[];
    return signals.sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  /** Inputs up to here are sealed; 0 before the first seal. */
  sealedSeq(): number {
    return Number(this.db.prepare('SELECT max(last_seq) AS seq FROM segment').get()?.seq ?? 0);
  }

  /** Every site revision the record names, oldest first. */
  siteRevisions(): { readonly hash: string; readonly text: string }[] {
    const rows = this.db
      .prepare('SELECT hash, text FROM site_revision ORDER BY first_seq, rowid')
      .all();
    return rows as unknown as { hash: string; text: string }[];
  }

  /** The site revision that held before a moment, or holds at the end; null where the record names none. */
  revisionBefore(atMs: EpochMs = Number.MAX_SAFE_INTEGER): string | null {
    const open = this.db
      .prepare(
        `SELECT seq, judged, kind, body, crc FROM input
         WHERE kind = ? AND judged < ? AND seq > (SELECT ifnull(max(last_seq), 0) FROM segment)
         ORDER BY seq DESC`,
      )
      .all(inputKind.site, atMs) as unknown as (InputRow & { crc: number })[];
    // The agent passed a damaged one over as well.
    const sound = open.find((row) => inputCrc(row) === row.crc);
    const body =
      sound === undefined
        ? this.db
            .prepare(
              `SELECT body FROM command WHERE instr(body, '"kind":"site"') > 0 AND judged < ?
               ORDER BY seq DESC LIMIT 1`,
            )
            .get(atMs)?.body
        : new TextDecoder().decode(sound.body);
    return body === undefined ? null : String(JSON.parse(String(body)).revision);
  }

  /** Up to here the last run judged; null before the first. */
  judgedTo(): EpochMs | null {
    const row = this.db.prepare('SELECT judged_to AS at FROM run ORDER BY id DESC LIMIT 1').get();
    return row === undefined ? null : Number(row.at);
  }

  /** How often the clock was set back, judged at or after `sinceMs` of its time. */
  rebases(sinceMs: EpochMs): number {
    const row = this.db
      .prepare(
        `SELECT (SELECT count(*) FROM command
                 WHERE judged >= ?1 AND instr(body, '"kind":"rebase"') > 0)
              + (SELECT count(*) FROM input
                 WHERE judged >= ?1 AND kind = ?2
                   AND seq > (SELECT ifnull(max(last_seq), 0) FROM segment)) AS n`,
      )
      .get(sinceMs, inputKind.rebase);
    return Number(row?.n ?? 0);
  }

  close(): void {
    this.db.close();
  }
}
