/**
 * Whether the files this agent writes are still the ones in the folder.
 *
 * A file that is deleted or replaced while it is open can be written for ever, and nothing of it
 * is there afterwards; SQLite does not notice. So the files' identities are compared with those
 * noted when they were opened. Only names are looked at: opening them would drop SQLite's locks.
 */
import { type BigIntStats, statSync } from 'node:fs';
import { basename } from 'node:path';
import { AgentError } from '../errors.ts';
import type { FolderPaths } from './data-folder.ts';

type State = 'there' | 'gone' | 'replaced';

export class Presence {
  private readonly paths: FolderPaths;
  private readonly known = new Map<string, string>();

  /** The files must be open. */
  constructor(paths: FolderPaths) {
    this.paths = paths;
    for (const path of [paths.database, paths.lock]) this.accept(path);
  }

  /** The log is made with the first write, and stays until the database is closed. */
  written(): void {
    const log = `${this.paths.database}-wal`;
    if (!this.known.has(log)) this.accept(log);
  }

  /** The file as it is now is the one this agent writes. */
  accept(path: string): void {
    const identity = identityOf(path);
    if (identity !== null) this.known.set(path, identity);
  }

  /** What is missing of the record; null where all is in its place. */
  missing(): AgentError | null {
    for (const path of [this.paths.database, `${this.paths.database}-wal`]) {
      const state = this.stateOf(path);
      if (state !== 'there') return takenAway(path, state);
    }
    return null;
  }

  lock(): State {
    return this.stateOf(this.paths.lock);
  }

  private stateOf(path: string): State {
    const known = this.known.get(path);
    if (known === undefined) return 'there';
    const now = identityOf(path);
    if (now === null) return 'gone';
    return now === known ? 'there' : 'replaced';
  }
}

export const takenAway = (path: string, state: 'gone' | 'replaced'): AgentError =>
  new AgentError('STORE_TAKEN_AWAY', {
    path,
    name: basename(path),
    state: state === 'gone' ? 'is gone' : 'has been replaced by another',
  });

/** Null where there is no file; what cannot be looked at is taken for gone. */
function identityOf(path: string): string | null {
  let found: BigIntStats | undefined;
  try {
    found = statSync(path, { bigint: true, throwIfNoEntry: false });
  } catch {
    return null;
  }
  return found === undefined ? null : `${found.dev} ${found.ino}`;
}
