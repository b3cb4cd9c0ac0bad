import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { encodeHighWater, HighWaterFile, readHighWater } from '#agent/store/high-water.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { countTo, noted, storedSeqs, turnOf } from './turns.ts';

const mark = {
  seq: 2 ** 48 - 1,
  ledgerId: 0x0102_0304_0506,
  hash16: Uint8Array.from({ length: 16 }, (_, i) => i + 1),
};

describe('the file', () => {
  test('is 32 bytes and reads back', () => {
    const folder = freshFolder();
    mkdirSync(folder);
    const path = join(folder, 'high-water');
    expect(readHighWater(path)).toBeNull();
    const file = new HighWaterFile(path);
    file.note({ ...mark, seq: 7 });
    file.note(mark);
    expect(readHighWater(path)).toEqual(mark);
    file.close({ ...mark, seq: 9 });
    expect(statSync(path).size).toBe(32);
    expect(readHighWater(path)).toEqual({ ...mark, seq: 9 });
  });
  test('layout, byte for byte', () => {
    expect(encodeHighWater(mark).toString('hex', 0, 28)).toBe(
      'ffffffffffff0605040302010102030405060708090a0b0c0d0e0f10',
    );
  });
  test('every flipped bit is noticed', () => {
    const folder = freshFolder();
    mkdirSync(folder);
    const path = join(folder, 'high-water');
    for (let bit = 0; bit < 256; bit += 1) {
      const bytes = encodeHighWater(mark);
      bytes[bit >> 3]! ^= 1 << (bit & 7);
      writeFileSync(path, bytes);
      expect([bit, readHighWater(path)]).toEqual([bit, 'unreadable']);
    }
    writeFileSync(path, encodeHighWater(mark).subarray(0, 31));
    expect(readHighWater(path)).toBe('unreadable');
  });
});

/** A store of 30 turns stopped cleanly, then tampered with. */
function tampered(sql: string): string {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (const seq of countTo(30)) store.commit(turnOf(seq, [noted(seq)]));
  store.stopRun(9_000);
  store.close();
  const db = new DatabaseSync(join(folder, 'forebond.db'));
  db.exec(sql);
  db.close();
  return folder;
}

describe('the database against it', () => {
  test('rows missing at the end are named, once, and their numbers not given again', () => {
    const folder = tampered('DELETE FROM input WHERE seq > 20; DELETE FROM ledger WHERE id > 25');
    const lost = [
      { kind: 'lost', fromSeq: 21, toSeq: 30 },
      { kind: 'ledger-lost', fromId: 26, toId: 30 },
    ];
    const store = openAt(folder);
    expect(store.findings).toEqual(lost);
    expect(store.lastSeq).toBe(30);
    store.startRun(10_000);
    store.note();
    store.close();
    // Nobody has entered the loss anywhere yet: it is said again.
    const second = openRunning(folder);
    expect(second.findings).toEqual(lost);
    second.commit({ ...turnOf(30), inputs: [] });
    second.close();
    const third = openRunning(folder);
    expect(third.findings).toEqual([]);
    expect(third.lastSeq).toBe(30);
    expect(() => third.commit(turnOf(25))).toThrow(RangeError);
    third.commit(turnOf(31));
    expect(storedSeqs(third)).toEqual([...countTo(20), 31]);
    third.close();
  });
  test('another record under the noted number', () => {
    const store = openAt(tampered('UPDATE ledger SET hash = zeroblob(32) WHERE id = 30'));
    expect(store.findings).toEqual([{ kind: 'ledger-differs', id: 30 }]);
    store.close();
  });
  test('a mark that cannot be read is said, until a commit has made a new one', () => {
    const folder = tampered('SELECT 1');
    writeFileSync(join(folder, 'high-water'), 'rubbish, and some more of it so that it is long');
    const store = openRunning(folder);
    expect(store.findings).toEqual([{ kind: 'high-water-unreadable' }]);
    store.commit(turnOf(31));
    store.note();
    store.close();
    const again = openAt(folder);
    expect(again.findings).toEqual([]);
    again.close();
  });
  test('a database ahead of its mark is nothing to speak of: the mark is a second behind', () => {
    const folder = freshFolder();
    const store = openRunning(folder);
    store.commit(turnOf(1));
    store.note();
    const early = readFileSync(join(folder, 'high-water'));
    store.commit(turnOf(2, [noted(2)]));
    store.close();
    writeFileSync(join(folder, 'high-water'), early);
    const again = openAt(folder);
    expect(again.findings).toEqual([]);
    expect(again.lastSeq).toBe(2);
    again.close();
  });
});

test('a commit is noted at once, so that nothing of the last second is lost without a name', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  store.commit(turnOf(1, [noted(1)]));
  expect(readHighWater(join(folder, 'high-water'))).toMatchObject({ seq: 1, ledgerId: 1 });
  store.commit(turnOf(2));
  expect(readHighWater(join(folder, 'high-water'))).toMatchObject({ seq: 2, ledgerId: 1 });
  store.close();
});

test('a flipped row of the log is named with its time, and skipped', () => {
  for (const change of [
    "body = CAST('row 9 xxxxxxxxx' AS BLOB)",
    'judged = judged + 1',
    'kind = 4',
    'crc = crc + 1',
  ]) {
    const folder = tampered(`UPDATE input SET ${change} WHERE seq = 12`);
    const store = openAt(folder);
    const judged = 10_240 + (change.startsWith('judged') ? 1 : 0);
    expect(store.findings).toEqual([{ kind: 'damaged-input', seq: 12, judged }]);
    const skipped: unknown[] = [];
    const seqs = [...store.read.inputsAfter(10, (row) => skipped.push(row))].map((row) => row.seq);
    expect(seqs).toEqual([11, ...countTo(30).slice(12)]);
    expect(skipped).toEqual([{ seq: 12, judged }]);
    store.close();
  }
});
