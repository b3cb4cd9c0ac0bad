import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { prepareToWrite } from '#agent/store/schema.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { sealOf } from './seals.ts';
import { countTo, noted, storedSeqs, turnOf } from './turns.ts';

const refusal = (code: string) => expect.objectContaining({ code });
const database = (folder: string): string => join(folder, 'forebond.db');

describe('the lock', () => {
  test('one agent a folder, in this process and from another', () => {
    const folder = freshFolder();
    const store = openAt(folder);
    expect(() => openAt(folder)).toThrow(refusal('STORE_LOCKED'));
    const script = `import { openStore } from '#agent/store/store.ts';
      try { openStore(process.argv[1], { now: Date.now }); } catch (error) { console.log(error.code); }`;
    const flags = ['--conditions=forebond-source', '--input-type=module', '-e', script, folder];
    // The refused attempt above must not have weakened the lock either.
    const other = spawnSync(process.execPath, flags, { encoding: 'utf8' });
    expect([other.stdout.trim(), other.stderr]).toEqual(['STORE_LOCKED', '']);
    store.close();
    openAt(folder).close();
  });
  test('a refused opening gives it up again', () => {
    const folder = freshFolder();
    openAt(folder).close();
    const db = new DatabaseSync(database(folder));
    db.exec('PRAGMA user_version = 99');
    db.close();
    expect(() => openAt(folder)).toThrow(refusal('STORE_NEWER'));
    expect(() => openAt(folder)).toThrow(refusal('STORE_NEWER'));
  });
});

describe('what is no store is refused and left as it was', () => {
  const foreign: [string, (path: string) => void][] = [
    ['a text file', (path) => writeFileSync(path, 'Dear diary,\n'.repeat(400))],
    ['a short text file', (path) => writeFileSync(path, 'hello')],
    [
      'the database of something else',
      (path) => {
        const db = new DatabaseSync(path);
        db.exec('CREATE TABLE songs(name TEXT); PRAGMA application_id = 77');
        db.close();
      },
    ],
  ];
  for (const [name, make] of foreign) {
    test(name, () => {
      const folder = freshFolder();
      mkdirSync(folder);
      make(database(folder));
      const before = readFileSync(database(folder));
      expect(() => openAt(folder)).toThrow(refusal('STORE_NOT_A_STORE'));
      expect(readFileSync(database(folder))).toEqual(before);
      expect(readdirSync(folder)).toEqual(['forebond.db']);
    });
  }
  test('a file where the folder should be', () => {
    const folder = freshFolder();
    writeFileSync(folder, 'a file');
    expect(() => openAt(folder)).toThrow(refusal('FOLDER_UNUSABLE'));
    expect(readFileSync(folder, 'utf8')).toBe('a file');
  });
  test('a text file in place of the lock', () => {
    const folder = freshFolder();
    mkdirSync(folder);
    writeFileSync(join(folder, 'agent.lock'), 'Dear diary,\n'.repeat(400));
    expect(() => openAt(folder)).toThrow(refusal('STORE_NOT_A_STORE'));
  });
});

test('a file system without shared memory for the log is refused', () => {
  const path = database(freshFolder());
  mkdirSync(join(path, '..'));
  // SQLite's `unix-none` file layer has no shared memory, as some network shares have none.
  const db = new DatabaseSync(new URL(`file://${path}?vfs=unix-none`));
  db.exec('CREATE TABLE t(a)');
  expect(() => prepareToWrite(db, path)).toThrow(refusal('STORE_NO_WAL'));
  db.close();
});

/** A store with 40 turns, a signal, a hold and, if asked, a backup; stopped cleanly. */
async function filled(backup: boolean): Promise<string> {
  const folder = freshFolder();
  const store = openRunning(folder);
  const signal = { name: 'a/b/wall', unit: 'Cel', digits: 1, kind: 'measured' } as const;
  store.registerSignals([{ ...signal, name: 'a/b/first' }, signal]);
  store.keepSiteRevision('aa', 'site: one');
  const hold = { id: 'h', what: 'container', item: 'drum 7', since: 5, lifted: null, detail: '{}' };
  store.commit({ ...turnOf(1), holds: [hold] });
  for (const seq of countTo(39)) store.commit(turnOf(seq + 1, [noted(seq)]));
  if (backup) {
    mkdirSync(join(folder, 'backups'));
    await store.backup(join(folder, 'backups', 'daily.db'));
    expect(statSync(join(folder, 'backups', 'daily.db')).mode & 0o777).toBe(0o600);
  }
  store.stopRun(9_000);
  store.close();
  return folder;
}

const overwrite = (path: string, at: number, bytes: number): void => {
  const content = readFileSync(path);
  content.fill(0xa5, at, Math.min(content.length, at + bytes));
  writeFileSync(path, content);
};

describe('a store that cannot be read is moved aside and begun anew', () => {
  const damages: [string, (path: string) => void][] = [
    ['the first page overwritten', (path) => overwrite(path, 0, 4_096)],
    ['the magic overwritten', (path) => overwrite(path, 0, 16)],
    ['the header after the magic overwritten', (path) => overwrite(path, 16, 20)],
    ['cut to half a page', (path) => truncateSync(path, 2_048)],
    ['every page but the first overwritten', (path) => overwrite(path, 4_096, 1 << 20)],
  ];
  for (const [name, damage] of damages) {
    test(name, async () => {
      const folder = await filled(true);
      damage(database(folder));
      const damaged = readFileSync(database(folder));
      const store = openAt(folder);
      const moved = 'forebond-unreadable-20261125T093212Z.db';
      expect(store.findings).toEqual([
        { kind: 'unreadable', movedTo: moved, why: expect.any(String), restoredFrom: 'daily.db' },
        { kind: 'lost', fromSeq: 1, toSeq: 40 },
        { kind: 'ledger-lost', fromId: 1, toId: 39 },
      ]);
      expect(readFileSync(join(folder, moved))).toEqual(damaged);
      expect(store.read.signals().map((signal) => signal.name)).toEqual(['a/b/first', 'a/b/wall']);
      expect(store.read.siteRevision('aa')?.text).toBe('site: one');
      expect(store.read.openHolds().map((hold) => hold.item)).toEqual(['drum 7']);
      store.startRun(10_000);
      expect(store.lastSeq).toBe(40);
      store.commit(turnOf(41, [noted(41)]));
      store.stopRun(11_000);
      store.close();
      const again = openAt(folder);
      expect(again.findings).toEqual([]);
      expect(storedSeqs(again)).toEqual([41]);
      again.close();
    });
  }
  test.each([
    ['gone altogether', (path: string) => rmSync(path)],
    ['empty', (path: string) => truncateSync(path, 0)],
  ])('%s, and no backup: said to be gone, once, and not as damage', async (_, take) => {
    const folder = await filled(false);
    take(database(folder));
    const store = openAt(folder);
    expect(store.findings).toEqual([
      { kind: 'gone', path: database(folder), toSeq: 40, toId: 39, restoredFrom: null },
    ]);
    expect(store.read.signals()).toEqual([]);
    // None of its numbers is given twice.
    expect(store.lastSeq).toBe(40);
    store.close();
  });
  test('gone with the high water: its backup shows that there was one', async () => {
    const folder = await filled(true);
    rmSync(database(folder));
    rmSync(join(folder, 'high-water'));
    const store = openAt(folder);
    expect(store.findings).toEqual([
      { kind: 'gone', path: database(folder), toSeq: 0, toId: 0, restoredFrom: 'daily.db' },
    ]);
    expect(store.read.openHolds().map((hold) => hold.item)).toEqual(['drum 7']);
    store.close();
  });
  test('a backup of the first schema gives its settings too', async () => {
    const folder = await filled(true);
    const backup = new DatabaseSync(join(folder, 'backups', 'daily.db'));
    backup.exec('DROP TABLE oven_run; PRAGMA user_version = 1');
    backup.close();
    overwrite(database(folder), 0, 4_096);
    const store = openAt(folder);
    expect(store.findings[0]).toMatchObject({ kind: 'unreadable', restoredFrom: 'daily.db' });
    expect(store.read.holds()).toHaveLength(1);
    store.close();
  });
  test('a backup that cannot be read gives way to the one before', async () => {
    const folder = await filled(true);
    const older = join(folder, 'backups', 'older.db');
    copyFileSync(join(folder, 'backups', 'daily.db'), older);
    writeFileSync(
      join(folder, 'backups', 'daily.db'),
      'not a database at all, just a text'.repeat(99),
    );
    overwrite(database(folder), 0, 4_096);
    const store = openAt(folder);
    expect(store.findings[0]).toMatchObject({ kind: 'unreadable', restoredFrom: 'older.db' });
    store.close();
  });
  test('an inner page overwritten is found after a run that did not stop', () => {
    const folder = freshFolder();
    const store = openRunning(folder);
    for (const seq of countTo(400)) store.commit(turnOf(seq, [noted(seq)]));
    store.close();
    const db = new DatabaseSync(database(folder));
    const root = db.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'ledger'").get();
    db.close();
    overwrite(database(folder), (Number(root!.rootpage) - 1) * 4_096, 512);
    const again = openAt(folder);
    expect(again.findings[0]).toMatchObject({ kind: 'unreadable' });
    again.close();
  });
  test('damage met while writing has the whole file checked at the next start', () => {
    const folder = freshFolder();
    const store = openRunning(folder);
    for (const seq of countTo(400)) store.commit(turnOf(seq));
    store.stopRun(9_000);
    store.close();
    const db = new DatabaseSync(database(folder));
    // The one table that a start after a clean stop does not look at: it grows for ever.
    const root = db.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'chunk'").get();
    db.close();
    overwrite(database(folder), (Number(root!.rootpage) - 1) * 4_096, 512);
    const met = openAt(folder);
    expect(met.findings).toEqual([]);
    met.startRun(10_000);
    expect(() => met.writeSegment(sealOf(1, 400))).toThrow(refusal('STORE_DAMAGED'));
    met.stopRun(11_000);
    met.close();
    expect(existsSync(join(folder, 'damaged'))).toBe(true);
    const again = openAt(folder);
    expect(again.findings[0]).toMatchObject({ kind: 'unreadable' });
    expect(existsSync(join(folder, 'damaged'))).toBe(false);
    again.close();
  });
});
