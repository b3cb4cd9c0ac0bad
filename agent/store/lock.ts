/**
 * One agent a data folder: `agent.lock`, a second SQLite file held in an exclusive transaction.
 *
 * The system gives the lock up with the process, however it ends; nothing is left to clean.
 * The journal is kept in memory, so the lock needs no space on a full disk.
 */
import { existsSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { type FolderPaths, touchPrivate } from './data-folder.ts';
import { diskError, isDamage, sqliteCode } from './disk-error.ts';

const busy = 5;

export interface Lock {
  release(): void;
  /** Releases it, and takes its file away if this lock made it: the folder is as it was. */
  undo(): void;
}

const waitStepMs = 50;

/**
 * A log without a lock: an agent that was killed leaves both. Somebody removed the lock, perhaps
 * under a running agent, which makes it again within a second; it is to come first.
 */
export function waitForLostLock(paths: FolderPaths): void {
  const pause = new Int32Array(new SharedArrayBuffer(4));
  for (let waitedMs = 0; waitedMs < limits.lockWaitMs; waitedMs += waitStepMs) {
    if (existsSync(paths.lock) || !existsSync(`${paths.database}-wal`)) return;
    Atomics.wait(pause, 0, 0, waitStepMs);
  }
}

/** Takes the folder's lock. Throws STORE_LOCKED if another agent holds it. */
export function takeLock(paths: FolderPaths): Lock {
  // An existing file is not touched: it may be this very process that holds it (data-folder.ts).
  const made = !existsSync(paths.lock);
  if (made) touchPrivate(paths.lock);
  const db = new DatabaseSync(paths.lock, { timeout: 0 });
  try {
    db.exec('PRAGMA journal_mode = MEMORY; BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    if (sqliteCode(error) === busy) throw new AgentError('STORE_LOCKED', { path: paths.folder });
    if (isDamage(error)) throw new AgentError('STORE_NOT_A_STORE', { path: paths.lock }, error);
    throw diskError(error, paths.lock);
  }
  return {
    release: () => db.close(),
    undo: () => {
      db.close();
      if (made) rmSync(paths.lock, { force: true });
    },
  };
}
