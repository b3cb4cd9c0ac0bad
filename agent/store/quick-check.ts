/**
 * Looks for damage in the database before it is used.
 *
 * The log of a run that did not stop may be damaged where the main file is not: of a log whose end is gone,
 * SQLite takes what comes before, also where the main file has all of it already and more, and
 * the two together are then no database. The main file alone is, so it is looked at before
 * anything is written: a connection that may write would take the log in when it closes.
 */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { pathToFileURL } from 'node:url';
import { isDiskRefusal } from '../errors.ts';
import { type FolderPaths, fileBytes, stampOf, touchPrivate } from './data-folder.ts';
import { diskError, isDamage } from './disk-error.ts';
import { type HighWater, readHighWater } from './high-water.ts';
import { storedHead } from './ledger.ts';
import { lastStoredSeq } from './recovery.ts';
import { checkedTables } from './schema.ts';
import { lastRun } from './store-reader.ts';
import type { Finding } from './store-types.ts';

/** The table that grows with time; every other one is checked in a moment at any age of the store. */
const longTable = 'chunk';

/**
 * After damage was seen: all of it. After a run that did not stop: the tables the agent leans on.
 * After one that did: those of them that do not grow for ever. Says what is wrong, or null.
 */
export function quickCheck(db: DatabaseSync, paths: FolderPaths): string | null {
  const run = lastRun(db);
  const stopped = run === null || run.stopped !== null;
  return check(
    db,
    paths,
    checkedTables.filter((name) => !stopped || name !== longTable),
  );
}

function check(
  db: DatabaseSync,
  paths: FolderPaths,
  tables: readonly string[] = checkedTables,
): string | null {
  const whole = existsSync(paths.damaged);
  const found = damageIn(db, whole ? ['3'] : tables);
  if (found === null) rmSync(paths.damaged, { force: true });
  return found;
}

/** Something was malformed: the next start looks at all of the database. */
export function markDamaged(paths: FolderPaths): void {
  try {
    touchPrivate(paths.damaged);
  } catch (error) {
    // The damage itself is what must be told; without its mark the next start looks at less.
    if (!isDiskRefusal(diskError(error, paths.damaged))) throw error;
  }
}

/** What is wrong with the tables, in SQLite's words, or null. */
export function damageIn(
  db: DatabaseSync,
  tables: readonly string[] = checkedTables,
): string | null {
  for (const each of tables.map((table) => `quick_check(${table})`)) {
    const answers = db
      .prepare(`PRAGMA ${each}`)
      .all()
      .map((row) => String(Object.values(row)[0]));
    if (answers[0] !== 'ok') return answers.slice(0, 3).join('; ');
  }
  return null;
}

/**
 * Sets the log aside where the main file alone is sound and the two together are not, or have
 * less than was noted outside them and less than the main file; else null.
 */
export function setAsideBadLog(paths: FolderPaths, atMs: number): Finding | null {
  const log = `${paths.database}-wal`;
  if (fileBytes(log) === 0) return null;
  const both = lookAt(paths, paths.database);
  const mark = readHighWater(paths.highWater);
  const noted = mark === null || mark === 'unreadable' ? nothing : mark;
  if (both.damage === null && reaches(both, noted)) return null;
  const alone = pathToFileURL(paths.database);
  // The log is not looked at: sqlite.org/uri.html.
  alone.searchParams.set('immutable', '1');
  const main = lookAt(paths, alone);
  const fuller = reaches(main, both) && !reaches(both, main);
  if (main.damage !== null || (both.damage === null && !fuller)) return null;
  const movedTo = `forebond-unreadable-${stampOf(atMs)}.db-wal`;
  renameSync(log, join(paths.folder, movedTo));
  rmSync(`${paths.database}-shm`, { force: true });
  return { kind: 'log-unreadable', movedTo, why: both.damage ?? 'its end is gone' };
}

/** How far a database goes. */
type Reach = Pick<HighWater, 'seq' | 'ledgerId'>;

interface Looked extends Reach {
  readonly damage: string | null;
}

const nothing: Reach = { seq: 0, ledgerId: 0 };

const reaches = (one: Reach, other: Reach): boolean =>
  one.seq >= other.seq && one.ledgerId >= other.ledgerId;

function lookAt(paths: FolderPaths, place: string | URL): Looked {
  const db = new DatabaseSync(place, { readOnly: true, timeout: 1_000 });
  try {
    const begun = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'run'").get();
    if (begun === undefined) return { damage: null, ...nothing };
    return { damage: check(db, paths), seq: lastStoredSeq(db), ledgerId: storedHead(db).id };
  } catch (error) {
    if (isDamage(error) && error instanceof Error) return { damage: error.message, ...nothing };
    throw error;
  } finally {
    db.close();
  }
}
