/**
 * Holding the data folder for as long as the agent runs, whatever is done to its files meanwhile.
 *
 * Always true: while a file of the store is not in its place nothing is said to be kept; a lock
 * that was removed is made again within a second, before another agent can take it.
 */
import { existsSync } from 'node:fs';
import { AgentError } from '../errors.ts';
import type { FolderPaths } from './data-folder.ts';
import { type Lock, takeLock } from './lock.ts';
import { Presence, takenAway } from './presence.ts';

export class HeldFolder {
  lost: AgentError | null = null;
  private readonly paths: FolderPaths;
  private readonly presence: Presence;
  private lock: Lock;

  constructor(paths: FolderPaths, lock: Lock) {
    this.paths = paths;
    this.lock = lock;
    this.presence = new Presence(paths);
  }

  /** True where the lock was made again. Throws what is lost. */
  attend(): boolean {
    // Where the folder itself is gone there is nothing to hold.
    const lock = existsSync(this.paths.folder) ? this.keepLock() : 'held';
    this.lost = lock instanceof AgentError ? lock : this.presence.missing();
    if (this.lost !== null) throw this.lost;
    return lock === 'made again';
  }

  /** Something has been written. */
  written(): void {
    this.presence.written();
  }

  require(): void {
    if (this.lost !== null) throw this.lost;
  }

  release(): void {
    this.lock.release();
  }

  private keepLock(): 'held' | 'made again' | AgentError {
    const state = this.presence.lock();
    if (state === 'there') return 'held';
    try {
      const lock = takeLock(this.paths);
      this.lock.release();
      this.lock = lock;
      this.presence.accept(this.paths.lock);
      return 'made again';
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      const { folder, lock } = this.paths;
      return error.code === 'STORE_LOCKED'
        ? new AgentError('STORE_TWO_AGENTS', { path: folder }, error)
        : takenAway(lock, 'replaced');
    }
  }
}
