import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import type { Store } from '#agent/store/store-types.ts';
import { freshFolder, openRunning } from './folders.ts';
import { sealOf } from './seals.ts';
import { turnOf } from './turns.ts';

function sealedHours(hours: number): Store {
  const store = openRunning(freshFolder());
  for (let i = 0; i < hours; i += 1) {
    store.commit(turnOf(store.lastSeq + 1));
    store.writeSegment(sealOf(store.lastSeq, store.lastSeq, 40_000));
  }
  return store;
}

const bodies = (store: Store): { id: number; raw: number; minutes: number }[] => {
  const db = new DatabaseSync(store.path, { readOnly: true });
  const rows = db
    .prepare('SELECT id, data IS NOT NULL AS raw, length(minutes) AS minutes FROM body ORDER BY id')
    .all();
  db.close();
  return rows.map((row) => ({
    id: Number(row.id),
    raw: Number(row.raw),
    minutes: Number(row.minutes),
  }));
};

test('raw samples go oldest first, a slice a call; their minutes stay', () => {
  const store = sealedHours(10);
  expect(store.dropOldestBodies(0, 3)).toBe(3);
  expect(bodies(store).map((body) => body.raw)).toEqual([0, 0, 0, ...Array(17).fill(1)]);
  expect(store.dropOldestBodies(0, 5)).toBe(5);
  expect(bodies(store).map((body) => body.raw)).toEqual([
    ...Array(8).fill(0),
    ...Array(12).fill(1),
  ]);
  expect(bodies(store).every((body) => body.minutes > 0)).toBe(true);
  store.close();
});

test('it stops at the budget, and when nothing raw is left', () => {
  const store = sealedHours(10);
  const { usedBytes } = store.sizes();
  expect(store.dropOldestBodies(usedBytes)).toBe(0);
  const budget = usedBytes - 200_000;
  let slices = 0;
  while (store.dropOldestBodies(budget, 2) > 0) slices += 1;
  expect(slices).toBe(3);
  expect(store.sizes().usedBytes).toBeLessThanOrEqual(budget);
  while (store.dropOldestBodies(0, 50) > 0);
  expect(bodies(store).every((body) => body.raw === 0)).toBe(true);
  expect(store.dropOldestBodies(0)).toBe(0);
  store.close();
});

test('the file gets shorter by what went', () => {
  const store = sealedHours(20);
  const before = store.sizes();
  store.dropOldestBodies(0, 40);
  const after = store.sizes();
  // 40,000 bytes are nine pages of their own and a rest beside others.
  expect(before.fileBytes - after.fileBytes).toBeGreaterThanOrEqual(40 * 9 * 4_096);
  expect(after.fileBytes - after.usedBytes).toBeLessThan(8 * 4_096);
  store.close();
});
