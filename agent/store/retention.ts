/**
 * Keeps the store inside its space: raw samples go, oldest first, their minute summaries stay.
 *
 * Deleting needs room of its own, so this acts before the disk is full: it holds to the budget and
 * to the disk's reserve, whichever is tighter. One call is one slice; the caller repeats it.
 */
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { limits } from '../limits.ts';
import { fileBytes } from './data-folder.ts';
import { onDisk } from './disk-error.ts';
import { freeSpace, shortfallBytes } from './disk-space.ts';
import { pragmaNumber } from './schema.ts';
import type { StoreSizes } from './store-types.ts';
import type { Transactions } from './transaction.ts';

export class Retention {
  private readonly db: DatabaseSync;
  private readonly path: string;
  private readonly folder: string;
  private readonly transactions: Transactions;
  private readonly drop: StatementSync;

  constructor(db: DatabaseSync, path: string, folder: string, transactions: Transactions) {
    this.db = db;
    this.path = path;
    this.folder = folder;
    this.transactions = transactions;
    this.drop = db.prepare(`UPDATE body SET data = NULL WHERE id IN
      (SELECT id FROM body WHERE data IS NOT NULL ORDER BY id LIMIT ?)`);
  }

  /** `ballastBytes` is passed through. */
  sizes(ballastBytes: number): StoreSizes {
    const space = freeSpace(this.folder);
    const pageBytes = pragmaNumber(this.db, 'page_size');
    const pages = pragmaNumber(this.db, 'page_count');
    return {
      fileBytes: pages * pageBytes,
      walBytes: fileBytes(`${this.path}-wal`),
      usedBytes: (pages - pragmaNumber(this.db, 'freelist_count')) * pageBytes,
      ballastBytes,
      diskFreeBytes: space.freeBytes,
      diskBytes: space.totalBytes,
    };
  }

  /** Returns how many chunks lost their raw samples; 0 when nothing had to go or nothing is left. */
  dropOldest(untilBytes: number, maxBodies: number): number {
    const { usedBytes, fileBytes: size } = this.sizes(0);
    if (this.shortBytes() > 0 && size > usedBytes) this.shrink();
    if (usedBytes <= untilBytes && this.shortBytes() === 0) return 0;
    return this.dropSlice(maxBodies);
  }

  /** Drops one slice whatever the space; used when the disk is full. */
  dropSlice(maxBodies: number): number {
    const dropped = this.transactions.run(() => Number(this.drop.run(maxBodies).changes));
    if (dropped > 0) this.shrink();
    return dropped;
  }

  /** What the disk lacks of its reserve, less what the next checkpoint will give back. */
  private shortBytes(): number {
    const size = pragmaNumber(this.db, 'page_count') * pragmaNumber(this.db, 'page_size');
    const promised = Math.max(0, fileBytes(this.path) - size);
    return Math.max(0, shortfallBytes(freeSpace(this.folder)) - promised);
  }

  /** Gives free pages back to the system; a checkpoint makes the file shorter. */
  private shrink(): void {
    onDisk(this.path, () => {
      this.db.exec(`PRAGMA incremental_vacuum(${limits.vacuumPagesMax})`);
      this.db.exec('PRAGMA wal_checkpoint(PASSIVE)');
    });
  }
}
