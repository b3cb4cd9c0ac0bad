/** Signed checkpoints and archives of a ledger: whatever is done to either is seen. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { archiveLedger, verifyArchive } from '#agent/store/archive.ts';
import { checkpointKey, signedCheckpoint } from '#agent/store/checkpoint.ts';
import { pathsOf } from '#agent/store/data-folder.ts';
import { openStore } from '#agent/store/store.ts';
import { verifyFolder } from '#agent/store/verify-folder.ts';
import { scratchFolder } from '#tests/agent-process.ts';

const day = 86_400_000;
const begin = Date.UTC(2026, 0, 1);

/** A ledger of one record a day, for ten days. */
function tenDays(): string {
  const folder = scratchFolder();
  const store = openStore(folder, { now: () => begin, ballastBytes: 0 });
  store.startRun(begin);
  for (let i = 0; i < 10; i += 1) {
    const at = begin + i * day;
    store.commit({
      inputs: [],
      ledger: [{ type: 'note', at, words: `day ${i}` }],
      occurrences: [],
      holds: [],
      judgedTo: at,
      aliveAt: at,
    });
  }
  store.close();
  return folder;
}

/** A checkpoint of the ledger as it is, in a file. */
function kept(folder: string, change: object = {}): string {
  const verdict = verifyFolder(folder);
  if (!verdict.ok) throw new Error('it is whole');
  const checkpoint = signedCheckpoint(checkpointKey(folder), 'works', verdict.head, begin);
  const path = join(folder, 'kept.json');
  writeFileSync(path, JSON.stringify({ ...checkpoint, ...change }));
  return path;
}

test('a checkpoint kept elsewhere shows that the end was cut off', () => {
  const folder = tenDays();
  const path = kept(folder);
  expect(verifyFolder(folder, path)).toMatchObject({ ok: true, count: 10 });
  const db = new DatabaseSync(pathsOf(folder).database);
  db.exec('DELETE FROM ledger WHERE id > 8');
  db.close();
  expect(verifyFolder(folder, path)).toMatchObject({ ok: false, id: 9, why: 'missing' });
});

test('a checkpoint that somebody changed, or another folder signed, is none', () => {
  const folder = tenDays();
  expect(() => verifyFolder(folder, kept(folder, { id: 9 }))).toThrow(/signature does not hold/);
  expect(() => verifyFolder(folder, kept(folder, { at: '2026-01-02T00:00:00.000Z' }))).toThrow(
    /signature does not hold/,
  );
  expect(() => verifyFolder(folder, kept(folder, { key: 'AAAA' }))).toThrow(/signature/);
  const other = tenDays();
  checkpointKey(other);
  expect(() => verifyFolder(other, kept(folder))).toThrow(/another data folder signed it/);
});

test('the key is for the agent’s account alone', () => {
  const folder = tenDays();
  checkpointKey(folder);
  expect(statSync(join(folder, 'checkpoint-key.pem')).mode & 0o777).toBe(0o600);
});

test('old records leave for a file, the chain goes on, and the file is held to it', () => {
  const folder = tenDays();
  const path = kept(folder);
  const to = join(folder, 'archive.jsonl');
  expect(archiveLedger(folder, begin + 5 * day, to, begin + 20 * day)).toMatchObject({ count: 5 });
  // Ten, and the record of the archiving.
  expect(verifyFolder(folder, path)).toMatchObject({ ok: true, count: 11 });
  expect(verifyArchive(folder, to)).toBe(true);
  expect(readFileSync(to, 'utf8').split('\n')[1]).toContain('day 0');

  const next = join(folder, 'next.jsonl');
  expect(archiveLedger(folder, begin + 7 * day, next, begin + 20 * day)).toMatchObject({
    count: 2,
  });
  expect([verifyArchive(folder, to), verifyArchive(folder, next)]).toEqual([true, true]);
  expect(verifyFolder(folder, path)).toMatchObject({ ok: true, count: 12 });
  expect(archiveLedger(folder, begin + 7 * day, join(folder, 'none'), begin)).toBeNull();

  writeFileSync(to, readFileSync(to, 'utf8').replace('day 3', 'day 4'));
  expect(verifyArchive(folder, to)).toBe(false);
});

test('nothing is archived that a start needs, nor over a file that is there', () => {
  const folder = tenDays();
  const to = join(folder, 'archive.jsonl');
  expect(() => archiveLedger(folder, begin + 9 * day, to, begin + 20 * day)).toThrow(
    /still needed by the next start/,
  );
  writeFileSync(to, 'mine');
  expect(() => archiveLedger(folder, begin + 5 * day, to, begin + 20 * day)).toThrow(/already/);
  expect(readFileSync(to, 'utf8')).toBe('mine');
  expect(verifyFolder(folder)).toMatchObject({ ok: true, count: 10 });
});

test('not while an agent runs', () => {
  const folder = tenDays();
  const store = openStore(folder, { now: () => begin, ballastBytes: 0 });
  expect(() => archiveLedger(folder, begin + day, join(folder, 'a'), begin)).toThrow(
    expect.objectContaining({ code: 'STORE_LOCKED' }),
  );
  store.close();
});
