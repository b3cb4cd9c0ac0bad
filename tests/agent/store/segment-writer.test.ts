import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import type { Store } from '#agent/store/store-types.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { sealOf } from './seals.ts';
import { countTo, storedSeqs, turnOf } from './turns.ts';

function commitTo(store: Store, last: number): void {
  while (store.lastSeq < last) store.commit(turnOf(store.lastSeq + 1));
}

const rowsOf = (store: Store, sql: string): unknown[] => {
  const db = new DatabaseSync(store.path, { readOnly: true });
  const rows = db.prepare(sql).all();
  db.close();
  return rows;
};

test('a seal is there whole: segment, chunks, bodies, snapshot, commands', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  commitTo(store, 20);
  const seal = sealOf(1, 20);
  store.writeSegment(seal);
  store.close();
  const again = openAt(folder);
  expect(again.sealedSeq).toBe(20);
  expect(again.lastSeq).toBe(20);
  expect(again.read.segments()).toEqual([
    { id: 1, firstSeq: 1, lastSeq: 20, judgedFrom: 10_020, judgedTo: 10_400 },
  ]);
  const [snapshot] = again.read.snapshots();
  expect(snapshot).toMatchObject({ seq: 20, judged: 10_400, format: 1, revision: 'aa' });
  expect(Buffer.from(snapshot!.state).toString()).toBe('state at 20');
  expect([...again.read.commandsAfter(0)]).toEqual([
    { seq: 20, judged: 10_400, body: '{"seq":20}' },
  ]);
  const chunks = rowsOf(again, 'SELECT * FROM chunk JOIN body ON body.id = chunk.body');
  expect(chunks).toHaveLength(2);
  const { data, minutes, crc, codec } = seal.segment.chunks[1]!;
  expect(chunks[1]).toMatchObject({
    signal: 2,
    segment: 1,
    t0: 19_500,
    t1: 20_000,
    n: 3,
    bad: 1,
    late: 0,
    lo: 1.5,
    hi: 2.5,
    sum: 4,
    crc,
    codec,
    data: new Uint8Array(data),
    minutes: new Uint8Array(minutes),
  });
  again.close();
});

test('a seal that fails leaves nothing of itself', () => {
  const store = openRunning(freshFolder());
  commitTo(store, 20);
  const seal = sealOf(1, 20);
  const [first] = seal.segment.chunks;
  const twice = { ...seal, segment: { ...seal.segment, chunks: [first!, first!] } };
  expect(() => store.writeSegment(twice)).toThrow(/UNIQUE/);
  expect(store.sealedSeq).toBe(0);
  expect(rowsOf(store, 'SELECT * FROM body UNION ALL SELECT id,0,0,0,0 FROM segment')).toEqual([]);
  store.writeSegment(seal);
  expect(() => store.writeSegment(sealOf(20, 30))).toThrow(RangeError);
  expect(() => store.writeSegment(sealOf(30, 29))).toThrow(RangeError);
  store.close();
});

test('sealed inputs are deleted in slices, later ones never', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  commitTo(store, 50);
  expect(store.deleteDead(7)).toBe(0);
  store.writeSegment(sealOf(1, 30));
  const went: number[] = [];
  for (let n = store.deleteDead(7); n > 0; n = store.deleteDead(7)) went.push(n);
  expect(went).toEqual([7, 7, 7, 7, 2]);
  expect(storedSeqs(store)).toEqual(countTo(50).slice(30));
  store.close();
  const again = openAt(folder);
  expect([again.sealedSeq, again.lastSeq]).toEqual([30, 50]);
  again.close();
});

test('a log sealed and deleted to its end still knows its last number', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  commitTo(store, 20);
  store.writeSegment(sealOf(1, 20));
  expect(store.deleteDead()).toBe(20);
  store.close();
  const again = openAt(folder);
  expect(again.findings).toEqual([]);
  expect(again.lastSeq).toBe(20);
  again.close();
});

test('two snapshots are kept; a damaged one is named and the one before it serves', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (const last of [10, 20, 30]) {
    commitTo(store, last);
    store.writeSegment(sealOf(last - 9, last));
  }
  expect(store.read.snapshots().map((snapshot) => snapshot.seq)).toEqual([30, 20]);
  store.close();
  const db = new DatabaseSync(join(folder, 'forebond.db'));
  db.exec("UPDATE snapshot SET state = CAST('state at 31' AS BLOB) WHERE seq = 30");
  db.close();
  const again = openAt(folder);
  expect(again.findings).toEqual([{ kind: 'damaged-snapshot', seq: 30 }]);
  expect(again.read.snapshots().map((snapshot) => snapshot.seq)).toEqual([20]);
  again.close();
});
