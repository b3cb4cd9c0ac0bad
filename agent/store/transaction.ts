/**
 * One write transaction, whole or not at all, with no transaction left open whatever happens.
 */
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { diskError, isDamage } from './disk-error.ts';

export class Transactions {
  private readonly db: DatabaseSync;
  private readonly path: string;
  private readonly begin: StatementSync;
  private readonly commit: StatementSync;

  private readonly damaged: () => void;
  private readonly mayWrite: () => void;

  /**
   * `damaged` is told when SQLite found the file itself malformed; `mayWrite` throws where what
   * would be written could not be kept.
   */
  constructor(
    db: DatabaseSync,
    path: string,
    damaged: () => void,
    mayWrite: () => void = () => undefined,
  ) {
    this.db = db;
    this.path = path;
    this.damaged = damaged;
    this.mayWrite = mayWrite;
    this.begin = db.prepare('BEGIN IMMEDIATE');
    this.commit = db.prepare('COMMIT');
  }

  /** Throws STORE_DISK_FULL, STORE_DISK_FAILED or STORE_DAMAGED where the disk refused; nothing of `work` is there. */
  run<T>(work: () => T): T {
    this.mayWrite();
    try {
      this.begin.run();
      const result = work();
      this.commit.run();
      return result;
    } catch (error) {
      this.leave();
      if (isDamage(error)) this.damaged();
      throw diskError(error, this.path);
    }
  }

  /** SQLite rolls back by itself on some errors and not on others. */
  private leave(): void {
    if (this.db.isTransaction) this.db.exec('ROLLBACK');
  }
}
