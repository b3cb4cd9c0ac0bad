/**
 * The store, open: one database file in one data folder, written by one agent.
 *
 * Opening takes the lock, then the file, then compares it with the high water; what was found
 * wrong is handed to the caller as data. Closing undoes the same in reverse.
 */
import { renameSync, rmSync } from 'node:fs';
import { backup, type DatabaseSync } from 'node:sqlite';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { Ballast, ballastFindings } from './ballast.ts';
import type { StoredSignal, Turn } from './contract.ts';
import { type FolderPaths, pathsOf, prepareFolder, touchPrivate } from './data-folder.ts';
import { diskError, onDisk } from './disk-error.ts';
import { removeEmpty } from './folder-use.ts';
import { HeldFolder } from './held-folder.ts';
import { type HighWater, HighWaterFile } from './high-water.ts';
import { storedHead } from './ledger.ts';
import { type Lock, takeLock, waitForLostLock } from './lock.ts';
import { openDatabase, unreadableIn } from './open-database.ts';
import { markDamaged } from './quick-check.ts';
import type { Recovered } from './recovery.ts';
import { Retention } from './retention.ts';
import { SegmentWriter } from './segment-writer.ts';
import { SettingsBackup } from './settings-backup.ts';
import { signalIds } from './signal-table.ts';
import { lastRun, storeReader } from './store-reader.ts';
import type {
  Finding,
  LedgerHead,
  RunRow,
  Seal,
  Store,
  StoreOptions,
  StoreReader,
  StoreSizes,
} from './store-types.ts';
import { Transactions } from './transaction.ts';
import { TurnWriter } from './turn-writer.ts';

export type { Finding, LedgerHead, RunRow, Seal, Store, StoreOptions, StoreReader, StoreSizes };

/**
 * Opens the data folder, making it if need be.
 * Throws AgentError: STORE_LOCKED, FOLDER_TAKEN, FOLDER_UNUSABLE, STORE_NOT_A_STORE, STORE_NEWER,
 * STORE_TOO_OLD, STORE_NO_WAL, STORE_DISK_FULL, STORE_DISK_FAILED. On a full disk the ballast is
 * given up and opening retried.
 */
export function openStore(folder: string, options: StoreOptions): Store {
  const paths = pathsOf(folder);
  return onDisk(folder, () => {
    const ballast = new Ballast(paths.ballast, folder, options.ballastBytes ?? limits.ballastBytes);
    try {
      return openLocked(paths, ballast, options);
    } catch (error) {
      const full = diskError(error, folder);
      if (!isFull(full) || !ballast.release()) throw full;
      return openLocked(paths, ballast, options);
    }
  });
}

const isFull = (error: unknown): boolean =>
  error instanceof AgentError && error.code === 'STORE_DISK_FULL';

function openLocked(paths: FolderPaths, ballast: Ballast, options: StoreOptions): Store {
  const madeFolders = prepareFolder(paths);
  try {
    waitForLostLock(paths);
    const lock = takeLock(paths);
    try {
      const { db, recovered, begun } = openDatabase(paths, options.now());
      try {
        return new OpenStore(paths, { lock, ballast, db, recovered, begun, madeFolders });
      } catch (error) {
        db.close();
        throw error;
      }
    } catch (error) {
      lock.undo();
      throw error;
    }
  } catch (error) {
    removeEmpty(madeFolders);
    throw error;
  }
}

interface Parts {
  readonly lock: Lock;
  readonly ballast: Ballast;
  readonly db: DatabaseSync;
  readonly recovered: Recovered;
  /** There was no store before. */
  readonly begun: boolean;
  readonly madeFolders: readonly string[];
}

class OpenStore implements Store {
  readonly folder: string;
  readonly path: string;
  readonly findings: readonly Finding[];
  readonly setAside: readonly string[];
  readonly read: StoreReader;
  readonly previousRun: RunRow | null;
  private readonly paths: FolderPaths;
  private readonly parts: Parts;
  private readonly transactions: Transactions;
  private readonly turns: TurnWriter;
  private readonly segments: SegmentWriter;
  private readonly retention: Retention;
  private readonly highWater: HighWaterFile;
  private readonly held: HeldFolder;
  private readonly settings: SettingsBackup;
  private run: number | null = null;
  private committed = false;

  constructor(paths: FolderPaths, parts: Parts) {
    const { db, recovered } = parts;
    this.folder = paths.folder;
    this.path = paths.database;
    this.paths = paths;
    this.parts = parts;
    this.read = storeReader(db);
    this.previousRun = lastRun(db);
    this.held = new HeldFolder(paths, parts.lock);
    this.transactions = new Transactions(
      db,
      this.path,
      () => this.noteDamage(),
      () => this.held.require(),
    );
    this.settings = new SettingsBackup(db, paths);
    const { lastSeq, floorSeq, sealedSeq } = recovered;
    this.turns = new TurnWriter(db, this.transactions, { lastSeq, floorSeq, head: storedHead(db) });
    this.segments = new SegmentWriter(db, this.transactions, sealedSeq);
    this.retention = new Retention(db, this.path, this.folder, this.transactions);
    this.highWater = new HighWaterFile(paths.highWater);
    this.findings = [...recovered.findings, ...ballastFindings(parts.ballast)];
    this.setAside = unreadableIn(paths);
  }

  get lost(): AgentError | null {
    return this.held.lost;
  }

  attend(): boolean {
    return onDisk(this.folder, () => this.held.attend());
  }

  noteDamage(): void {
    markDamaged(this.paths);
  }

  backUpSettings(atMs: EpochMs): boolean {
    this.held.require();
    return this.settings.tend(atMs);
  }

  get lastSeq(): number {
    return this.turns.lastSeq;
  }

  get sealedSeq(): number {
    return this.segments.sealedSeq;
  }

  get ledgerHead(): LedgerHead {
    return this.turns.head;
  }

  startRun(now: EpochMs): RunRow {
    if (this.run !== null) throw new Error('the run has begun already');
    // Until the first commit the last run's marks hold: a crash before it must not hide the gap.
    const lastAlive = this.previousRun?.lastAlive ?? now;
    const judgedTo = this.previousRun?.judgedTo ?? 0;
    const id = this.transactions.run(() =>
      Number(
        this.parts.db
          .prepare('INSERT INTO run(started, last_alive, judged_to) VALUES(?,?,?)')
          .run(now, lastAlive, judgedTo).lastInsertRowid,
      ),
    );
    this.run = id;
    this.held.written();
    return { id, started: now, lastAlive, judgedTo, stopped: null };
  }

  stopRun(now: EpochMs): void {
    const run = this.running();
    this.transactions.run(() =>
      this.parts.db.prepare('UPDATE run SET stopped = ? WHERE id = ?').run(now, run),
    );
    this.run = null;
  }

  commit(turn: Turn): number {
    const id = this.turns.commit(turn, this.running());
    this.committed = true;
    // Said at once: what is lost of the last second, with the process gone, is lost by name.
    this.highWater.jot(this.mark());
    if (turn.holds.length > 0) this.settings.changed();
    return id;
  }

  writeSegment(seal: Seal): void {
    this.segments.write(seal);
  }

  deleteDead(maxRows: number = limits.deadRowsMax): number {
    return this.segments.deleteDead(maxRows);
  }

  registerSignals(signals: readonly Omit<StoredSignal, 'id'>[]): StoredSignal[] {
    this.settings.changed();
    return this.transactions.run(() => signalIds(this.parts.db, signals));
  }

  keepSiteRevision(hash: string, text: string): void {
    this.settings.changed();
    this.transactions.run(() =>
      this.parts.db
        .prepare('INSERT OR IGNORE INTO site_revision(hash, first_seq, text) VALUES(?,?,?)')
        .run(hash, this.lastSeq + 1, text),
    );
  }

  note(): void {
    // Before the first commit the file still says what the last run had: findings rest on it.
    if (this.committed) onDisk(this.folder, () => this.highWater.note(this.mark()));
  }

  sizes(): StoreSizes {
    return onDisk(this.path, () => this.retention.sizes(this.parts.ballast.bytes()));
  }

  dropOldestBodies(untilBytes: number, maxBodies: number = limits.droppedBodiesMax): number {
    return onDisk(this.path, () => this.retention.dropOldest(untilBytes, maxBodies));
  }

  relieve(): { readonly ballastReleased: boolean; readonly bodiesDropped: number } {
    const ballastReleased = onDisk(this.folder, () => this.parts.ballast.release());
    try {
      const bodiesDropped = this.retention.dropSlice(limits.droppedBodiesMax);
      return { ballastReleased, bodiesDropped };
    } catch (error) {
      if (!isFull(error)) throw error;
      return { ballastReleased, bodiesDropped: 0 };
    }
  }

  tendBallast(): boolean {
    return onDisk(this.folder, () => this.parts.ballast.tend());
  }

  async backup(file: string): Promise<void> {
    const part = `${file}.part`;
    try {
      touchPrivate(part);
      await backup(this.parts.db, part);
      renameSync(part, file);
    } catch (error) {
      rmSync(part, { force: true });
      throw diskError(error, file);
    }
  }

  close(): void {
    const { db } = this.parts;
    try {
      onDisk(this.folder, () => this.highWater.close(this.committed ? this.mark() : null));
    } finally {
      db.close();
      this.held.release();
    }
  }

  abandon(): void {
    this.close();
    const { begun, madeFolders } = this.parts;
    if (!begun) return;
    const { database, highWater, ballast, lock, backups } = this.paths;
    for (const path of [database, `${database}-wal`, `${database}-shm`, highWater, ballast, lock])
      rmSync(path, { force: true });
    rmSync(backups, { recursive: true, force: true });
    removeEmpty(madeFolders);
  }

  private mark(): HighWater {
    const { id, hash } = this.turns.head;
    return { seq: this.turns.lastSeq, ledgerId: id, hash16: hash.subarray(0, 16) };
  }

  private running(): number {
    if (this.run === null) throw new Error('the run has not begun: startRun first');
    return this.run;
  }
}
