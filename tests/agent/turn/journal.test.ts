import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { inputKind } from '#agent/store/contract.ts';
import { Journal } from '#agent/turn/journal.ts';
import { FakeStore, failed, full } from './fake-store.ts';

const body = (bytes = 10): Uint8Array => new Uint8Array(bytes);

function scene() {
  const store = new FakeStore();
  store.lastSeq = 40;
  const rowed: number[] = [];
  const journal = new Journal(store, 7, ({ seq }) => rowed.push(seq));
  const row = (owed = false, bytes = 10) =>
    journal.row(1_000, inputKind.samples, body(bytes), owed);
  const owe = (name: string) => journal.owe(() => store.story.push(name));
  return { store, journal, rowed, row, owe, story: store.story };
}

const entry = (text: string) => ({
  ledger: { type: 'transition', text },
  occurrences: [{ id: 'a', rule: 'r', state: text, raised: 1, closed: null, detail: '{}' }],
  holds: [],
});

describe('what is committed', () => {
  test('an acknowledgement comes after the commit that holds its message, once', () => {
    const { journal, row, owe, story } = scene();
    row(true);
    owe('first');
    row(true);
    owe('second');
    expect(story).toEqual([]);
    expect(journal.commit(1_020, 1_000)).toBe(true);
    expect(story).toEqual(['kept', 'first', 'second']);
    journal.commit(1_040, 1_020);
    expect(story).toEqual(['kept', 'first', 'second', 'kept']);
  });

  test('what is owed while acknowledgements are given waits for the next commit', () => {
    const { journal, row, owe, story } = scene();
    row(true);
    journal.owe(() => {
      row(true);
      owe('later');
    });
    journal.commit(1_020, 1_000);
    expect([story, journal.owing, journal.state.waitingRows]).toEqual([['kept'], 1, 1]);
    journal.commit(1_040, 1_020);
    expect(story).toEqual(['kept', 'kept', 'later']);
  });

  test('rows keep their order and copies of their bodies; numbers go on from the disk', () => {
    const { journal, store, rowed } = scene();
    const shared = Uint8Array.of(1);
    expect(journal.row(1_000, inputKind.samples, shared, false)).toBe(41);
    shared[0] = 2;
    expect(journal.row(1_020, inputKind.command, shared, false)).toBe(42);
    shared[0] = 3;
    journal.commit(1_020, 1_020);
    expect(store.rows.map(({ seq, body }) => [seq, body[0]])).toEqual([
      [41, 1],
      [42, 2],
    ]);
    expect(rowed).toEqual([41, 42]);
    expect(journal.lastSeq).toBe(42);
  });

  test('of an occurrence the last word is written, in the ledger every record', () => {
    const { journal, store } = scene();
    journal.entry(entry('raised'));
    journal.entry(entry('returned'));
    journal.record({ type: 'clock' });
    journal.commit(1_020, 1_000);
    expect(store.turns[0]!.occurrences.map(({ state }) => state)).toEqual(['returned']);
    expect(store.ledger.map(({ type, text }) => text ?? type)).toEqual([
      'raised',
      'returned',
      'clock',
    ]);
    expect(journal.ledgerId).toBe(3);
  });
});

describe('when it is time', () => {
  test('at once where somebody waits or something happened', () => {
    const waits = scene();
    waits.journal.commit(0, 1_000);
    expect(waits.journal.due(1_000)).toBe(false);
    waits.owe('sensor');
    expect(waits.journal.due(1_000)).toBe(true);
    const happened = scene();
    happened.journal.commit(0, 1_000);
    happened.journal.entry(entry('raised'));
    expect(happened.journal.due(1_000)).toBe(true);
  });

  test('else once a second, and seldom where there is nothing to write', () => {
    const { journal, row } = scene();
    journal.commit(0, 10_000);
    expect(journal.due(10_000 + limits.idleCommitMs - 1)).toBe(false);
    expect(journal.due(10_000 + limits.idleCommitMs)).toBe(true);
    row();
    expect(journal.due(10_000 + limits.lazyCommitMs - 1)).toBe(false);
    expect(journal.due(10_000 + limits.lazyCommitMs)).toBe(true);
  });

  test('a disk that refused is asked again once a second, whoever waits', () => {
    const { journal, store, owe } = scene();
    store.refusal = failed();
    owe('sensor');
    journal.commit(0, 10_000);
    expect(journal.due(10_000 + limits.commitRetryMs - 1)).toBe(false);
    expect(journal.due(10_000 + limits.commitRetryMs)).toBe(true);
  });
});

describe('a disk that refuses', () => {
  test('nothing is lost or acknowledged; all of it is there once it takes it', () => {
    const { journal, store, row, owe, story } = scene();
    row(true);
    owe('sensor');
    journal.entry(entry('raised'));
    store.refusal = full();
    expect(journal.commit(1_020, 1_000)).toBe(false);
    row(true);
    owe('other');
    expect(journal.commit(1_040, 2_000)).toBe(false);
    expect(story).toEqual([]);
    expect(store.relieved).toBe(2);
    expect(journal.state).toMatchObject({
      refusal: { code: 'STORE_DISK_FULL' },
      sinceMs: 1_000,
      waitingRows: 2,
    });
    store.refusal = null;
    expect(journal.commit(1_060, 3_000)).toBe(true);
    expect(story).toEqual(['kept', 'sensor', 'other']);
    expect(store.rows.map(({ seq }) => seq)).toEqual([41, 42]);
    expect(journal.state).toMatchObject({ refusal: null, sinceMs: null, waitingRows: 0 });
  });

  test('space is given up only where it is full', () => {
    const { journal, store, row } = scene();
    row();
    store.refusal = failed();
    journal.commit(1_020, 1_000);
    expect(store.relieved).toBe(0);
    expect(journal.state.refusal?.code).toBe('STORE_DISK_FAILED');
  });

  test('a relief that fails is no other fault: the disk refuses, that is all', () => {
    const { journal, store, row } = scene();
    row();
    store.refusal = full();
    store.relieve = () => {
      throw failed();
    };
    expect(journal.commit(1_020, 1_000)).toBe(false);
    expect(journal.state.refusal?.code).toBe('STORE_DISK_FULL');
  });

  test('a fault of our own is no refusal', () => {
    const { journal, store } = scene();
    store.refusal = new RangeError('input 3 does not follow 7');
    expect(() => journal.commit(1_020, 1_000)).toThrow(RangeError);
  });

  test('what people were told before it was kept is marked so, and nothing else', () => {
    const { journal, store } = scene();
    store.refusal = full();
    journal.record({ type: 'clock' });
    journal.entry(entry('raised'));
    journal.commit(1_020, 1_000);
    journal.toldBeforeKept();
    journal.entry(entry('returned'));
    store.refusal = null;
    journal.commit(1_040, 2_000);
    expect(store.ledger).toEqual([
      { type: 'clock' },
      { type: 'transition', text: 'raised', told_before_kept: true },
      { type: 'transition', text: 'returned' },
    ]);
  });

  test('short of memory it gives up the oldest samples nobody waits for, never anything else', () => {
    const { journal, store, row } = scene();
    const quarter = limits.backlogBytesMax / 4;
    store.refusal = full();
    row(true, quarter);
    for (const kind of [inputKind.site, inputKind.command, inputKind.gap])
      journal.row(1_000, kind, body(), false);
    row(false, quarter);
    row(false, quarter);
    row(true, quarter);
    row(false, quarter);
    journal.commit(1_020, 1_000);
    expect(journal.state).toMatchObject({ droppedRows: 2, waitingRows: 6 });
    expect(journal.state.waitingBytes).toBe(3 * quarter + 30);
    store.refusal = null;
    journal.commit(1_040, 2_000);
    expect(store.rows.map(({ seq }) => seq)).toEqual([41, 42, 43, 44, 47, 48]);
  });
});
