import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { verifyFolder } from '#agent/store/verify-folder.ts';
import { freshFolder, openRunning } from './folders.ts';
import { countTo, noted, turnOf } from './turns.ts';

function recorded(records: number): string {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (const seq of countTo(records)) store.commit(turnOf(seq, [noted(seq)]));
  store.stopRun(9_000);
  store.close();
  return folder;
}

const change = (folder: string, sql: string): void => {
  const db = new DatabaseSync(join(folder, 'forebond.db'));
  db.exec(sql);
  db.close();
};

test('a stopped store, and one an agent is writing', () => {
  const folder = recorded(12);
  expect(verifyFolder(folder)).toMatchObject({ ok: true, count: 12 });
  const store = openRunning(folder);
  store.commit(turnOf(13, [noted(13)]));
  store.note();
  store.commit(turnOf(14, [noted(14)]));
  expect(verifyFolder(folder)).toMatchObject({ ok: true, count: 14 });
  // The reader's coming and going has not touched the writer.
  store.commit(turnOf(15, [noted(15)]));
  store.close();
  expect(verifyFolder(folder)).toMatchObject({ ok: true, count: 15 });
});

test('an end cut off shows against the high water', () => {
  const folder = recorded(12);
  change(folder, 'DELETE FROM ledger WHERE id > 10');
  expect(verifyFolder(folder)).toEqual({ ok: false, id: 11, why: 'missing' });
});

test('a loss that a start entered is told, with when and what', () => {
  const folder = recorded(3);
  expect(verifyFolder(folder)).toMatchObject({ ok: true, noted: [] });
  const store = openRunning(folder);
  const finding = { kind: 'lost', fromSeq: 120, toSeq: 133 };
  const [at, words] = [9_500, 'Records 120 to 133 were lost.'];
  const harmless = { kind: 'migrated', from: 1, to: 2, backup: 'old.db' };
  store.commit(turnOf(4, [{ type: 'finding', at, finding, words }]));
  store.commit(turnOf(5, [{ type: 'finding', at, finding: harmless, words: 'It was migrated.' }]));
  store.close();
  expect(verifyFolder(folder)).toMatchObject({
    ok: true,
    count: 5,
    noted: [{ id: 4, at, words, ofLedger: false }],
  });
});

test('nothing of the folder is written by verifying', () => {
  const folder = recorded(3);
  const path = join(folder, 'forebond.db');
  const before = readFileSync(path);
  chmodSync(path, 0o400);
  verifyFolder(folder);
  expect(readFileSync(path).equals(before)).toBe(true);
});

test('what is no store is refused', () => {
  const refused = (code: string) => expect.objectContaining({ code });
  const folder = freshFolder();
  expect(() => verifyFolder(folder)).toThrow(refused('FOLDER_MISSING'));
  mkdirSync(folder);
  expect(() => verifyFolder(folder)).toThrow(refused('STORE_EMPTY'));
  const emptied = recorded(1);
  rmSync(join(emptied, 'forebond.db'));
  expect(() => verifyFolder(emptied)).toThrow(refused('STORE_GONE'));
  const other = recorded(1);
  writeFileSync(join(other, 'forebond.db'), 'Dear diary,\n'.repeat(400));
  expect(() => verifyFolder(other)).toThrow();
});

describe('a checkpoint', () => {
  const file = (text: string): string => {
    const path = freshFolder();
    writeFileSync(path, text);
    return path;
  };
  const headOf = (folder: string): { id: number; hash: string } => {
    const verdict = verifyFolder(folder);
    if (!verdict.ok) throw new Error('the ledger was not whole to begin with');
    return { id: verdict.head.id, hash: Buffer.from(verdict.head.hash).toString('hex') };
  };
  test('that lies on the chain', () => {
    const folder = recorded(12);
    expect(verifyFolder(folder, file(JSON.stringify(headOf(folder))))).toMatchObject({ ok: true });
  });
  test('beyond the end, and of another chain', () => {
    const folder = recorded(12);
    const { id, hash } = headOf(folder);
    const beyond = file(JSON.stringify({ id: id + 3, hash }));
    expect(verifyFolder(folder, beyond)).toEqual({ ok: false, id: 13, why: 'missing' });
    const other = file(JSON.stringify({ id: 6, hash }));
    expect(verifyFolder(folder, other)).toEqual({ ok: false, id: 6, why: 'changed' });
  });
  test.each([
    ['no JSON', 'twelve'],
    ['no object', '12'],
    ['no id', `{"hash":"${'0'.repeat(64)}"}`],
    ['an id that is no number', `{"id":"12","hash":"${'0'.repeat(64)}"}`],
    ['a short hash', '{"id":12,"hash":"00"}'],
  ])('that is none: %s', (_, text) => {
    const folder = recorded(1);
    const refused = expect.objectContaining({ code: 'STORE_CHECKPOINT_INVALID' });
    expect(() => verifyFolder(folder, file(text))).toThrow(refused);
    expect(() => verifyFolder(folder, `${folder}-none`)).toThrow(refused);
  });
});
