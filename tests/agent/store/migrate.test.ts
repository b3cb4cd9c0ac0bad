import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { pathsOf } from '#agent/store/data-folder.ts';
import { type Migration, migrate, migrations } from '#agent/store/migrate.ts';
import { ReadOnlyStore } from '#agent/store/read-only.ts';
import { applicationId, pragmaNumber, schemaVersion } from '#agent/store/schema.ts';
import { freshFolder, openAt, wallMs } from './folders.ts';
import { turnOf } from './turns.ts';

const hold = { id: 'h', what: 'rack', item: '7', since: 5, lifted: null, detail: '{}' };

/** A store of a schema before the first: one table, two rows. */
function versionZero(): { folder: string; db: DatabaseSync } {
  const folder = freshFolder();
  mkdirSync(folder);
  const db = new DatabaseSync(join(folder, 'forebond.db'));
  db.exec(`PRAGMA application_id = ${applicationId};
    CREATE TABLE old(a INTEGER PRIMARY KEY, b TEXT NOT NULL) STRICT;
    INSERT INTO old VALUES(1, 'one'), (2, 'two')`);
  return { folder, db };
}

const addColumn: Migration = {
  from: 0,
  apply: (db) => db.exec("ALTER TABLE old ADD COLUMN c TEXT NOT NULL DEFAULT 'x'"),
};
const rename: Migration = { from: 1, apply: (db) => db.exec('ALTER TABLE old RENAME TO new') };

describe('an older store', () => {
  test('is copied, then taken up one step after the other', () => {
    const { folder, db } = versionZero();
    const done = migrate(db, pathsOf(folder), wallMs, [rename, addColumn], 2);
    const name = 'before-schema-2-20261125T093212Z.db';
    expect(done).toEqual({ kind: 'migrated', from: 0, to: 2, backup: name });
    expect(pragmaNumber(db, 'user_version')).toBe(2);
    expect(db.prepare('SELECT * FROM new').all()).toEqual([
      { a: 1, b: 'one', c: 'x' },
      { a: 2, b: 'two', c: 'x' },
    ]);
    const file = join(folder, 'backups', name);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const backup = new DatabaseSync(file, { readOnly: true });
    expect(pragmaNumber(backup, 'user_version')).toBe(0);
    expect(backup.prepare('SELECT * FROM old').all()).toEqual([
      { a: 1, b: 'one' },
      { a: 2, b: 'two' },
    ]);
  });
  test('whose step fails is as it was before that step', () => {
    const { folder, db } = versionZero();
    const half: Migration = {
      from: 1,
      apply: (database) => {
        database.exec('ALTER TABLE old RENAME TO new');
        throw new Error('half way');
      },
    };
    expect(() => migrate(db, pathsOf(folder), wallMs, [addColumn, half], 2)).toThrow('half way');
    expect(db.isTransaction).toBe(false);
    expect(pragmaNumber(db, 'user_version')).toBe(1);
    expect(db.prepare('SELECT count(c) AS n FROM old').get()).toEqual({ n: 2 });
  });
  test('without a way up is refused before anything is written', () => {
    const { folder, db } = versionZero();
    expect(() => migrate(db, pathsOf(folder), wallMs, [rename], 2)).toThrow(
      expect.objectContaining({ code: 'STORE_TOO_OLD' }),
    );
    expect(existsSync(join(folder, 'backups'))).toBe(false);
  });
  test('with no way up is refused by opening too, and left alone', () => {
    const { folder, db } = versionZero();
    db.close();
    expect(() => openAt(folder)).toThrow(expect.objectContaining({ code: 'STORE_TOO_OLD' }));
    expect(readdirSync(folder).sort()).toEqual(['forebond.db']);
  });
});

test('a newer store is refused', () => {
  const { folder, db } = versionZero();
  db.exec('PRAGMA user_version = 3');
  expect(() => migrate(db, pathsOf(folder), wallMs, [addColumn], 2)).toThrow(
    expect.objectContaining({ code: 'STORE_NEWER' }),
  );
});

test('a store of this schema needs nothing', () => {
  const { folder, db } = versionZero();
  db.exec('PRAGMA user_version = 2');
  expect(migrate(db, pathsOf(folder), wallMs, [], 2)).toBeNull();
  expect(existsSync(join(folder, 'backups'))).toBe(false);
});

test('a folder of schema 1 is taken up, and keeps what it had', () => {
  const folder = freshFolder();
  const store = openAt(folder);
  store.startRun(1_000);
  store.commit({ ...turnOf(1), holds: [hold] });
  store.close();
  // As the first schema left it: without oven runs, and an outbox that nothing used.
  const old = new DatabaseSync(join(folder, 'forebond.db'));
  old.exec(`DROP TABLE oven_run; DROP INDEX outbox_waiting; DROP INDEX outbox_done;
    ALTER TABLE outbox DROP COLUMN outcome; ALTER TABLE outbox DROP COLUMN detail;
    PRAGMA user_version = 1`);
  old.close();

  const again = openAt(folder);
  expect(again.findings).toContainEqual({
    kind: 'migrated',
    from: 1,
    to: 3,
    backup: expect.stringMatching(/^before-schema-3-/),
  });
  expect(again.read.holds()).toEqual([hold]);
  expect(again.read.ovenRuns(0, 9_000, 10, null)).toEqual([]);
  again.startRun(2_000);
  const run = { id: 'l/o@5', station: 'l/o', opened: 5, closed: null, detail: '{}' };
  again.commit({ ...turnOf(again.lastSeq + 1), ovenRuns: [run] });
  expect(again.read.ovenRun('l/o@5')).toEqual(run);
  again.close();
});

test('a folder of schema 1 is not read by a command that changes nothing, and says what to do', () => {
  const folder = freshFolder();
  openAt(folder).close();
  const db = new DatabaseSync(join(folder, 'forebond.db'));
  for (const [version, code] of [
    [1, 'STORE_OLDER'],
    [0, 'STORE_TOO_OLD'],
    [schemaVersion + 1, 'STORE_NEWER'],
  ] as const) {
    db.exec(`PRAGMA user_version = ${version}`);
    expect(() => ReadOnlyStore.open(folder)).toThrow(expect.objectContaining({ code }));
  }
  db.close();
});

test('oven runs are found by the span they lasted into, by station, newest first', () => {
  const store = openAt(freshFolder());
  store.startRun(1);
  const row = (id: string, station: string, opened: number, closed: number | null) => ({
    id,
    station,
    opened,
    closed,
    detail: '{}',
  });
  const [a, b, c] = [row('a', 'l/o', 10, 20), row('b', 'l/p', 30, 40), row('c', 'l/o', 50, null)];
  store.commit({ ...turnOf(1), ovenRuns: [a, b, c] });
  const ids = (from: number, to: number, limit = 10, station: string | null = null) =>
    store.read.ovenRuns(from, to, limit, station).map(({ id }) => id);
  expect(ids(0, 100)).toEqual(['c', 'b', 'a']);
  expect(ids(20, 50)).toEqual(['b', 'a']);
  expect(ids(21, 51)).toEqual(['c', 'b']);
  expect(ids(41, 50)).toEqual([]);
  expect(ids(0, 100, 2)).toEqual(['c', 'b']);
  expect(ids(0, 100, 10, 'l/o')).toEqual(['c', 'a']);
  store.close();
});

test('every step leads to the next, and the last to this schema', () => {
  const versions = migrations.map((step) => step.from);
  expect(versions).toEqual(versions.map((_, i) => schemaVersion - versions.length + i));
});
