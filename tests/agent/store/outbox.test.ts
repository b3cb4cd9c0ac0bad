import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import type { OutboxRow } from '#agent/store/contract.ts';
import { outboxWhole } from '#agent/store/schema.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { turnOf } from './turns.ts';

const row: OutboxRow = {
  occurrence: 'l/s/r@1',
  step: 0,
  channel: 'push/anna',
  due: 10,
  tries: 0,
  done: null,
  outcome: null,
  cause: null,
  detail: '{}',
};
const second = { ...row, step: 1, channel: 'email/ben' };

test('what waits to be told is there after the store is opened again, in its order', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  store.commit({ ...turnOf(1), outbox: [second, row] });
  store.close();
  const again = openAt(folder);
  expect(again.read.waitingOutbox()).toEqual([second, row]);
  expect(again.read.outboxOf(row.occurrence)).toHaveLength(2);
  again.close();
});

test('a row of the same name takes the place of the one before, and what is done waits no more', () => {
  const store = openRunning(freshFolder());
  store.commit({ ...turnOf(1), outbox: [row] });
  const done = { ...row, tries: 1, done: 20, outcome: 'delivered' };
  store.commit({ ...turnOf(2), outbox: [done] });
  expect(store.read.waitingOutbox()).toEqual([]);
  expect(store.read.outboxOf(row.occurrence)).toEqual([done]);
  store.close();
});

test('what is done leaves after its time; what waits does not', () => {
  const store = openRunning(freshFolder());
  const done = { ...row, done: 20_000, outcome: 'delivered' };
  store.commit({ ...turnOf(1), outbox: [done, second] });
  const edge = 20_000 + limits.outboxDoneKeptMs;
  const other = { ...row, occurrence: 'l/s/r@2' };
  store.commit({ ...turnOf(2), aliveAt: edge, outbox: [other] });
  expect(store.read.outboxOf(row.occurrence)).toEqual([done, second]);
  store.commit({ ...turnOf(3), aliveAt: edge + 1, outbox: [other] });
  expect(store.read.outboxOf(row.occurrence)).toEqual([second]);
  store.close();
});

test('a turn that fails leaves nothing to tell', () => {
  const store = openRunning(freshFolder());
  const wrong = { ...turnOf(1), outbox: [row, { ...second, due: 1.5 }] };
  expect(() => store.commit(wrong)).toThrow(/cannot store REAL value/);
  expect(store.read.waitingOutbox()).toEqual([]);
  store.close();
});

test('the outbox of a store of schema 2 becomes the one of a fresh store', () => {
  const columns = (db: DatabaseSync): unknown[] =>
    db.prepare("SELECT name, type FROM pragma_table_info('outbox')").all();
  const old = new DatabaseSync(':memory:');
  old.exec(`CREATE TABLE outbox(id INTEGER PRIMARY KEY, occurrence TEXT NOT NULL,
    step INTEGER NOT NULL, channel TEXT NOT NULL, due INTEGER NOT NULL, tries INTEGER NOT NULL,
    done INTEGER, cause TEXT, UNIQUE(occurrence, step, channel)) STRICT`);
  old.exec(outboxWhole);
  const store = openAt(freshFolder());
  store.close();
  const fresh = new DatabaseSync(store.path);
  expect(columns(old)).toEqual(columns(fresh));
  fresh.close();
});
