/**
 * What the disk's refusals are called: every way SQLite and the system report them, in three codes.
 *
 * Anything else (a constraint, a misuse) is our own fault and passes through unchanged.
 */
import { AgentError } from '../errors.ts';

/** Primary result codes, sqlite.org/rescode.html. */
const sqlite = {
  ioError: 10,
  corrupt: 11,
  full: 13,
  cannotOpen: 14,
  readOnly: 8,
  notADatabase: 26,
};
const failedCodes: readonly number[] = [sqlite.ioError, sqlite.cannotOpen, sqlite.readOnly];
/** SQLITE_IOERR_SHMSIZE: no room to enlarge the log's shared memory (seen on a full tmpfs). */
const noRoomForShared = 4_874;
const fullNames = ['ENOSPC', 'EDQUOT'];
/** ENOENT: a file or folder that was there is gone. */
const failedNames = [
  'EIO',
  'EROFS',
  'ENXIO',
  'ENODEV',
  'EMFILE',
  'ENFILE',
  'EACCES',
  'EPERM',
  'ENOENT',
  'ENOTDIR',
];

/** SQLite's primary result code, or null if it is no error of SQLite. */
export function sqliteCode(error: unknown): number | null {
  if (!(error instanceof Error) || !('errcode' in error)) return null;
  return typeof error.errcode === 'number' ? error.errcode & 0xff : null;
}

/** Damage of the file itself, not of one access to it. */
export function isDamage(error: unknown): boolean {
  if (error instanceof AgentError) return error.code === 'STORE_DAMAGED';
  const code = sqliteCode(error);
  return code === sqlite.corrupt || code === sqlite.notADatabase;
}

/** The error to throw in place of `error`. */
export function diskError(error: unknown, path: string): unknown {
  if (!(error instanceof Error)) return error;
  const code = sqliteCode(error);
  const name = 'code' in error && typeof error.code === 'string' ? error.code : '';
  const noRoom = 'errcode' in error && error.errcode === noRoomForShared;
  if (code === sqlite.full || noRoom || fullNames.includes(name)) {
    return new AgentError('STORE_DISK_FULL', { path }, error);
  }
  if (isDamage(error)) {
    return new AgentError('STORE_DAMAGED', { path, reason: error.message }, error);
  }
  if ((code !== null && failedCodes.includes(code)) || failedNames.includes(name)) {
    return new AgentError('STORE_DISK_FAILED', { path, reason: error.message }, error);
  }
  return error;
}

/** Runs `work`, with the disk's refusals under their own names. */
export function onDisk<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw diskError(error, path);
  }
}
