/**
 * Opens the main file: fresh, as it is, migrated, or, where it cannot be read, begun anew.
 *
 * A file that never was a store is left alone and refused. A store that cannot be read is moved
 * aside under its date, never deleted; the new one takes its settings from the newest backup.
 */
import { existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';
import { commitsBehindDamage } from './cut-log.ts';
import { type FolderPaths, fileBytes, firstBytes, stampOf, touchPrivate } from './data-folder.ts';
import { diskError, isDamage, onDisk } from './disk-error.ts';
import { readHighWater } from './high-water.ts';
import { migrate } from './migrate.ts';
import { quickCheck, setAsideBadLog } from './quick-check.ts';
import { type Recovered, recover } from './recovery.ts';
import { hasBackup, restoreSettings } from './restore-settings.ts';
import { applicationId, createSchema, pragmaNumber, prepareToWrite } from './schema.ts';
import type { Finding } from './store-types.ts';

const magic = 'SQLite format 3\0';
/** Offset of the application id, sqlite.org/fileformat.html section 1.3. */
const applicationIdAt = 68;
const headerBytes = 100;

/** What is there before SQLite is let near it. */
type Found = 'nothing' | 'gone' | 'sqlite' | 'damaged-header' | 'foreign';

export interface Opened {
  readonly db: DatabaseSync;
  readonly recovered: Recovered;
  /** Nothing was there: this is a first start. */
  readonly begun: boolean;
}

/** Under the lock. Throws STORE_NOT_A_STORE, STORE_NEWER, STORE_TOO_OLD, STORE_NO_WAL, or the disk's refusals. */
export function openDatabase(paths: FolderPaths, atMs: number): Opened {
  const found = look(paths);
  if (found === 'foreign') throw new AgentError('STORE_NOT_A_STORE', { path: paths.database });
  if (found === 'damaged-header') return beginAnew(paths, atMs, 'its header is damaged');
  if (found === 'gone') return beginAnew(paths, atMs, null);
  touchPrivate(paths.database);
  const aside = onDisk(paths.database, () => setAsideBadLog(paths, atMs));
  const behind = onDisk(paths.database, () => commitsBehindDamage(paths.database));
  const db = connect(paths.database);
  try {
    const migrated = makeReady(db, paths, atMs);
    const damage = quickCheck(db, paths);
    if (damage !== null) throw new DamagedStore(damage);
    const findings = [aside, migrated].filter((finding) => finding !== null);
    const recovered = withCut(recoverWith(db, paths, findings), behind);
    // Or the next start would count them once more.
    if (behind > 0) db.exec('PRAGMA wal_checkpoint(TRUNCATE)');
    return { db, recovered, begun: found === 'nothing' };
  } catch (error) {
    if (db.isOpen) db.close();
    if (error instanceof DamagedStore) return beginAnew(paths, atMs, error.message);
    if (isDamage(error)) return beginAnew(paths, atMs, reasonOf(error));
    throw diskError(error, paths.database);
  }
}

class DamagedStore extends Error {}

/** Commits that the log had behind its damage, where nothing else names what was lost. */
function withCut(recovered: Recovered, behind: number): Recovered {
  const { findings, lastSeq } = recovered;
  const named = findings.some(({ kind }) => kind === 'lost' || kind === 'ledger-lost');
  // One alone may be what a refusing disk left of what was never whole: nobody was told that it is kept.
  if (named || behind < 2) return recovered;
  // With the damaged one, and without the last, which the end may have come over.
  const cut: Finding = { kind: 'log-cut', afterSeq: lastSeq, commits: behind };
  return { ...recovered, findings: [...findings, cut] };
}

function look(paths: FolderPaths): Found {
  const head = firstBytes(paths.database, headerBytes);
  const mark = readHighWater(paths.highWater);
  const wasStore = mark !== null && mark !== 'unreadable' && mark.seq + mark.ledgerId > 0;
  if (head.length === 0) return wasStore || hasBackup(paths) ? 'gone' : 'nothing';
  if (head.toString('latin1', 0, magic.length) === magic) return 'sqlite';
  const marked =
    head.length === headerBytes && head.readUInt32BE(applicationIdAt) === applicationId;
  const hasLog = fileBytes(`${paths.database}-wal`) > 0;
  return wasStore || marked || hasLog ? 'damaged-header' : 'foreign';
}

const connect = (path: string): DatabaseSync => new DatabaseSync(path, { timeout: 1_000 });

function makeReady(db: DatabaseSync, paths: FolderPaths, atMs: number) {
  if (pragmaNumber(db, 'page_count') === 0) createSchema(db);
  if (pragmaNumber(db, 'application_id') !== applicationId) {
    throw new AgentError('STORE_NOT_A_STORE', { path: paths.database });
  }
  const migrated = migrate(db, paths, atMs);
  prepareToWrite(db, paths.database);
  return migrated;
}

function recoverWith(db: DatabaseSync, paths: FolderPaths, findings: Finding[]): Recovered {
  const recovered = recover(db, readHighWater(paths.highWater));
  return { ...recovered, findings: [...findings, ...recovered.findings] };
}

/** `why` it cannot be read; null where it is simply not there. */
function beginAnew(paths: FolderPaths, atMs: number, why: string | null): Opened {
  const movedTo = moveAside(paths, atMs);
  touchPrivate(paths.database);
  const db = connect(paths.database);
  try {
    makeReady(db, paths, atMs);
    const restoredFrom = restoreSettings(db, paths);
    if (why === null) return { db, recovered: recoverGone(db, paths, restoredFrom), begun: false };
    const finding: Finding = { kind: 'unreadable', movedTo, why, restoredFrom };
    return { db, recovered: recoverWith(db, paths, [finding]), begun: false };
  } catch (error) {
    db.close();
    throw diskError(error, paths.database);
  }
}

/** All that was in it is missing, which is said once, and not as damage. */
function recoverGone(db: DatabaseSync, paths: FolderPaths, restoredFrom: string | null): Recovered {
  const mark = readHighWater(paths.highWater);
  const { seq: toSeq, ledgerId: toId } =
    mark === null || mark === 'unreadable' ? { seq: 0, ledgerId: 0 } : mark;
  const recovered = recover(db, mark);
  const others = recovered.findings.filter(({ kind }) => kind !== 'lost' && kind !== 'ledger-lost');
  const gone: Finding = { kind: 'gone', path: paths.database, toSeq, toId, restoredFrom };
  return { ...recovered, findings: [gone, ...others] };
}

const unreadablePrefix = 'forebond-unreadable-';

/** Names of databases moved aside that still stand in the folder. */
export const unreadableIn = ({ folder }: FolderPaths): string[] =>
  readdirSync(folder).filter((name) => name.startsWith(unreadablePrefix) && name.endsWith('.db'));

/** The log goes along, under the name SQLite would look for; the shared memory is only a cache. */
function moveAside(paths: FolderPaths, atMs: number): string | null {
  const name = `${unreadablePrefix}${stampOf(atMs)}.db`;
  const target = join(paths.folder, name);
  const hadFile = fileBytes(paths.database) > 0;
  const log = `${paths.database}-wal`;
  if (existsSync(log)) renameSync(log, `${target}-wal`);
  rmSync(`${paths.database}-shm`, { force: true });
  rmSync(paths.damaged, { force: true });
  if (!hadFile) return null;
  renameSync(paths.database, target);
  return basename(target);
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : 'unknown');
