import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import {
  applicationId,
  checkedTables,
  pragmaNumber,
  prepareToWrite,
  schemaVersion,
  settingsTables,
} from '#agent/store/schema.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { turnOf } from './turns.ts';

test('a fresh file carries its mark, version and way of giving space back', () => {
  const store = openAt(freshFolder());
  store.close();
  const db = new DatabaseSync(store.path);
  expect(pragmaNumber(db, 'application_id')).toBe(applicationId);
  expect(pragmaNumber(db, 'user_version')).toBe(schemaVersion);
  expect(pragmaNumber(db, 'auto_vacuum')).toBe(2); // incremental
  expect(db.prepare('PRAGMA journal_mode').get()).toEqual({ journal_mode: 'wal' });
  db.close();
});

test('a writing connection syncs every commit and keeps the log small', () => {
  const store = openAt(freshFolder());
  store.close();
  const db = new DatabaseSync(store.path);
  prepareToWrite(db, store.path);
  expect(pragmaNumber(db, 'synchronous')).toBe(2); // full
  expect(pragmaNumber(db, 'journal_size_limit')).toBe(16_777_216);
  db.close();
});

test('every table is strict, and all but the bulk are checked after a crash', () => {
  const store = openAt(freshFolder());
  store.close();
  const db = new DatabaseSync(store.path);
  const rows = db.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table'").all();
  const names = rows.map((row) => String(row.name));
  expect(rows.filter((row) => !String(row.sql).includes('STRICT'))).toEqual([]);
  expect(names.filter((name) => name !== 'body').sort()).toEqual([...checkedTables].sort());
  expect(settingsTables.filter((name) => !names.includes(name))).toEqual([]);
  db.close();
});

test('the write-ahead log is cut back while turns go on', () => {
  const store = openRunning(freshFolder());
  const turn = turnOf(1);
  for (let i = 0; i < 700; i += 1) {
    const body = Buffer.alloc(40_000, i);
    store.commit({ ...turn, inputs: [{ ...turn.inputs[0]!, seq: store.lastSeq + 1, body }] });
  }
  expect(store.sizes().fileBytes).toBeGreaterThan(28_000_000);
  expect(store.sizes().walBytes).toBeLessThanOrEqual(16_777_216);
  store.close();
});
