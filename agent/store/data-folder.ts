/**
 * The data folder: names of its files, and who may read them (only the agent's own account).
 *
 * While a database is open, no other code of the same process may open its file with node:fs:
 * closing that descriptor would drop SQLite's locks (POSIX advisory locks belong to the process).
 */
import { chmodSync, closeSync, existsSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, refuseOthers } from './folder-use.ts';

export interface FolderPaths {
  readonly folder: string;
  readonly database: string;
  readonly lock: string;
  readonly highWater: string;
  readonly ballast: string;
  readonly backups: string;
  /** Stands while the database has been seen to be damaged; the next start checks all of it. */
  readonly damaged: string;
}

export const pathsOf = (folder: string): FolderPaths => ({
  folder,
  database: join(folder, 'forebond.db'),
  lock: join(folder, 'agent.lock'),
  highWater: join(folder, 'high-water'),
  ballast: join(folder, 'ballast'),
  backups: join(folder, 'backups'),
  damaged: join(folder, 'damaged'),
});

/**
 * Makes the folder, 0700, or closes the one that was there to others; gives back the folders made.
 * Throws FOLDER_TAKEN where it holds somebody else's files, FOLDER_UNUSABLE.
 */
export function prepareFolder(paths: FolderPaths): string[] {
  refuseOthers(paths.folder);
  const made = makeFolder(paths.folder);
  const { mode, uid } = statSync(paths.folder);
  if ((mode & 0o077) !== 0 && uid === process.geteuid?.()) chmodSync(paths.folder, 0o700);
  return made;
}

/** Makes an empty file, 0600, if there is none: SQLite gives its journals the mode of the main file. */
export function touchPrivate(path: string): void {
  closeSync(openSync(path, 'a', 0o600));
}

/** First bytes of a file, fewer if it is shorter, none if it is not there. */
export function firstBytes(path: string, count: number): Buffer {
  if (!existsSync(path)) return Buffer.alloc(0);
  const fd = openSync(path, 'r');
  try {
    const bytes = Buffer.alloc(Math.min(count, fstatSync(fd).size));
    return bytes.subarray(0, readSync(fd, bytes, 0, bytes.length, 0));
  } finally {
    closeSync(fd);
  }
}

/** Size of a file; 0 if it is not there. */
export const fileBytes = (path: string): number =>
  statSync(path, { throwIfNoEntry: false })?.size ?? 0;

/** `2026-11-25T09:32:12.345Z` as `20261125T093212Z`, for names of files. */
export const stampOf = (atMs: number): string =>
  new Date(atMs).toISOString().replace(/[-:]|\.\d+/g, '');
