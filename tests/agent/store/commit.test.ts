import { statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { HoldRow, OccurrenceRow } from '#agent/store/contract.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { countTo, noted, storedSeqs, turnOf } from './turns.ts';

const occurrence: OccurrenceRow = {
  id: 'a/b/warm@1000',
  rule: 'a/b/warm',
  state: 'unacknowledged',
  raised: 1_000,
  closed: null,
  detail: '{}',
};
const hold: HoldRow = {
  id: 'h1',
  what: 'container',
  item: 'drum 7',
  since: 1_000,
  lifted: null,
  detail: '{}',
};

describe('a turn', () => {
  test('is there after a restart, whole', () => {
    const folder = freshFolder();
    const store = openRunning(folder);
    for (const seq of countTo(5)) store.commit(turnOf(seq, [noted(seq)]));
    const head = store.ledgerHead;
    store.stopRun(11_000);
    store.close();
    const again = openAt(folder);
    expect(again.findings).toEqual([]);
    expect(storedSeqs(again)).toEqual(countTo(5));
    expect(again.lastSeq).toBe(5);
    expect(Buffer.from(again.ledgerHead.hash)).toEqual(Buffer.from(head.hash));
    expect([...again.read.ledgerAfter(3)]).toEqual([
      { id: 4, record: '{"id":4,"seq":4,"type":"test"}' },
      { id: 5, record: '{"id":5,"seq":5,"type":"test"}' },
    ]);
    expect(again.previousRun).toMatchObject({
      lastAlive: 10_100,
      judgedTo: 10_100,
      stopped: 11_000,
    });
    again.close();
  });

  test('returns the number of its last ledger record', () => {
    const store = openRunning(freshFolder());
    expect(store.commit(turnOf(1))).toBe(0);
    expect(store.commit(turnOf(2, [noted(2), noted(3)]))).toBe(2);
    store.close();
  });

  test('that fails leaves nothing: no row, no chain link, no open transaction', () => {
    const store = openRunning(freshFolder());
    store.commit(turnOf(1, [noted(1)]));
    const head = store.ledgerHead;
    const wrong = { ...turnOf(2, [noted(2)]), occurrences: [{ ...occurrence, raised: 1.5 }] };
    expect(() => store.commit(wrong)).toThrow(/cannot store REAL value/);
    expect(store.ledgerHead).toBe(head);
    expect(store.lastSeq).toBe(1);
    store.commit(turnOf(2, [noted(2)]));
    expect(storedSeqs(store)).toEqual([1, 2]);
    expect([...store.read.ledgerAfter(0)]).toHaveLength(2);
    store.close();
  });

  test('must follow the last, and needs a run', () => {
    const store = openAt(freshFolder());
    expect(() => store.commit(turnOf(1))).toThrow(/startRun/);
    store.startRun(1_000);
    store.commit(turnOf(3));
    expect(() => store.commit(turnOf(3))).toThrow(RangeError);
    expect(() => store.commit(turnOf(2))).toThrow(RangeError);
    store.close();
  });

  test('upserts occurrences and holds', () => {
    const store = openRunning(freshFolder());
    store.commit({ ...turnOf(1), occurrences: [occurrence], holds: [hold] });
    expect(store.read.openOccurrences()).toEqual([occurrence]);
    expect(store.read.openHolds()).toEqual([hold]);
    const closed = { ...occurrence, state: 'normal', closed: 5_000 };
    store.commit({ ...turnOf(2), occurrences: [closed], holds: [{ ...hold, lifted: 6_000 }] });
    expect(store.read.openOccurrences()).toEqual([]);
    expect(store.read.occurrence(occurrence.id)).toEqual(closed);
    expect(store.read.occurrence('none')).toBeNull();
    expect(store.read.openHolds()).toEqual([]);
    expect(store.read.holds()).toEqual([{ ...hold, lifted: 6_000 }]);
    store.close();
  });
});

test('occurrences of a time are those that stood in it', () => {
  const store = openRunning(freshFolder());
  const stood = (id: string, raised: number, closed: number | null): OccurrenceRow => ({
    ...occurrence,
    id,
    raised,
    closed,
  });
  const rows = [stood('a', 100, 200), stood('b', 150, null), stood('c', 300, 400)];
  store.commit({ ...turnOf(1), occurrences: rows });
  const between = (from: number, to: number): string[] =>
    store.read.occurrencesBetween(from, to).map((row) => row.id);
  expect(between(0, 100)).toEqual([]);
  expect(between(0, 101)).toEqual(['a']);
  expect(between(200, 300)).toEqual(['a', 'b']);
  expect(between(201, 300)).toEqual(['b']);
  expect(between(201, 301)).toEqual(['b', 'c']);
  expect(between(500, 600)).toEqual(['b']);
  store.close();
});

test('a run that never committed does not hide the gap before it', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  store.commit(turnOf(1));
  store.close();
  const killed = openAt(folder);
  expect(killed.previousRun).toMatchObject({ lastAlive: 10_020, judgedTo: 10_020, stopped: null });
  killed.startRun(500_000);
  killed.close();
  const again = openAt(folder);
  expect(again.previousRun).toMatchObject({
    started: 500_000,
    lastAlive: 10_020,
    judgedTo: 10_020,
  });
  again.close();
});

test('the log is read in slices and stays readable while commits go on', () => {
  const store = openRunning(freshFolder());
  const inputs = countTo(600).flatMap((seq) => turnOf(seq).inputs);
  store.commit({ ...turnOf(1), inputs });
  const seen: number[] = [];
  for (const row of store.read.inputsAfter(0, () => undefined)) {
    seen.push(row.seq);
    if (row.seq <= 600 && row.seq % 200 === 0) store.commit(turnOf(store.lastSeq + 1));
  }
  expect(seen).toEqual(countTo(603));
  store.close();
});

test('the folder and its files are for their owner alone', () => {
  const folder = freshFolder();
  const store = openRunning(folder, { ballastBytes: 4_096 });
  store.commit(turnOf(1));
  store.note();
  const modeOf = (path: string): string => (statSync(path).mode & 0o777).toString(8);
  expect(modeOf(folder)).toBe('700');
  for (const name of ['forebond.db', 'forebond.db-wal', 'forebond.db-shm', 'agent.lock']) {
    expect([name, modeOf(`${folder}/${name}`)]).toEqual([name, '600']);
  }
  for (const name of ['high-water', 'ballast']) {
    expect([name, modeOf(`${folder}/${name}`)]).toEqual([name, '600']);
  }
  store.close();
});

test('an empty folder that others could read is closed to them; one of other files is refused and left', async () => {
  const { chmodSync, mkdirSync, readdirSync, writeFileSync } = await import('node:fs');
  const empty = freshFolder();
  mkdirSync(empty, { mode: 0o755 });
  openAt(empty).close();
  expect(statSync(empty).mode & 0o777).toBe(0o700);
  const busy = freshFolder();
  mkdirSync(busy);
  chmodSync(busy, 0o755);
  writeFileSync(`${busy}/notes.txt`, 'mine');
  expect(() => openAt(busy)).toThrow(expect.objectContaining({ code: 'FOLDER_TAKEN' }));
  expect(readdirSync(busy)).toEqual(['notes.txt']);
  expect(statSync(busy).mode & 0o777).toBe(0o755);
});

test('signals keep their ids; a changed meaning is refused', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  const wall = { name: 'a/b/wall', unit: 'Cel', digits: 1, kind: 'measured' } as const;
  const dew = { name: 'a/b/dew', unit: 'Cel', digits: 2, kind: 'derived' } as const;
  const [first, second] = store.registerSignals([wall, dew]);
  expect(second!.id).not.toBe(first!.id);
  store.close();
  const again = openAt(folder);
  expect(again.registerSignals([dew, wall])).toEqual([second, first]);
  for (const change of [{ unit: 'K' }, { kind: 'manual' as const }, { digits: null }]) {
    const asked = [
      { ...dew, name: 'a/b/new' },
      { ...wall, ...change },
    ];
    expect(() => again.registerSignals(asked)).toThrow(
      expect.objectContaining({ code: 'STORE_SIGNAL_CHANGED' }),
    );
  }
  expect(again.read.signals()).toEqual([first, second]);
  again.close();
});

test('a site revision is kept once, with the first input it may hold for', () => {
  const store = openRunning(freshFolder());
  store.keepSiteRevision('aa', 'site: one');
  store.commit(turnOf(1));
  store.keepSiteRevision('aa', 'site: another');
  store.keepSiteRevision('bb', 'site: two');
  expect(store.read.siteRevisions()).toEqual([
    { hash: 'aa', firstSeq: 1, text: 'site: one' },
    { hash: 'bb', firstSeq: 2, text: 'site: two' },
  ]);
  expect(store.read.siteRevision('bb')?.text).toBe('site: two');
  expect(store.read.siteRevision('cc')).toBeNull();
  store.close();
});
