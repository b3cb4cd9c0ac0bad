import { rmSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import type { Turn } from '#agent/store/contract.ts';
import type { Store } from '#agent/store/store-types.ts';
import { openAt, openRunning } from './folders.ts';
import { sealOf } from './seals.ts';
import { noMountBecause, smallDisk } from './small-disk.ts';
import { noted, turnOf } from './turns.ts';

const megabyte = 1_048_576;
const because = noMountBecause();

function fill(disk: string): void {
  const free = statfsSync(disk);
  try {
    writeFileSync(join(disk, 'other'), Buffer.alloc(free.bavail * free.bsize + megabyte));
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
  }
}

const bulky = (seq: number): Turn => {
  const turn = turnOf(seq, [noted(seq)]);
  return { ...turn, inputs: [{ ...turn.inputs[0]!, body: Buffer.alloc(20_000, seq & 0xff) }] };
};

/** Commits until the disk refuses; the code it refused with. */
function commitUntilRefused(store: Store): string {
  for (let turns = 0; turns < 5_000; turns += 1) {
    try {
      store.commit(bulky(store.lastSeq + 1));
    } catch (error) {
      if (error instanceof AgentError) return error.code;
      throw error;
    }
  }
  throw new Error('a disk of a few megabytes took 100 MB');
}

function rowsWhole(store: Store): number {
  let next = 1;
  for (const row of store.read.inputsAfter(0, (bad) => expect.fail(`row ${bad.seq} is damaged`))) {
    expect(row.seq).toBe(next);
    expect(Buffer.from(row.body).equals(Buffer.alloc(20_000, next & 0xff))).toBe(true);
    next += 1;
  }
  return next - 1;
}

// Only root may mount a disk of its own; the name below says why where it was skipped.
describe.skipIf(because !== null)(
  `a full disk${because === null ? '' : ` (skipped: ${because})`}`,
  () => {
    test('refuses the turn whole, keeps all before it, and takes it again when there is room', () => {
      const disk = smallDisk(8);
      const folder = join(disk, 'data');
      const store = openRunning(folder);
      store.commit(bulky(1));
      fill(disk);
      const code = commitUntilRefused(store);
      expect(code).toBe('STORE_DISK_FULL');
      const { lastSeq, ledgerHead } = store;
      for (let again = 0; again < 3; again += 1) {
        expect(() => store.commit(bulky(lastSeq + 1))).toThrow(/is full/);
        expect([store.lastSeq, store.ledgerHead]).toEqual([lastSeq, ledgerHead]);
      }
      expect(rowsWhole(store)).toBe(lastSeq);
      rmSync(join(disk, 'other'));
      store.commit(bulky(lastSeq + 1));
      expect(rowsWhole(store)).toBe(lastSeq + 1);
      store.stopRun(9_000);
      store.close();
      const later = openAt(folder);
      expect(later.findings).toEqual([]);
      expect(rowsWhole(later)).toBe(lastSeq + 1);
      expect(later.ledgerHead.id).toBe(lastSeq + 1);
      later.close();
    });

    test('the ballast and the oldest raw samples make room; the ballast comes back later', () => {
      const disk = smallDisk(16);
      const store = openRunning(join(disk, 'data'), { ballastBytes: 3 * megabyte });
      expect(store.findings).toEqual([]);
      expect(store.sizes().ballastBytes).toBe(3 * megabyte);
      for (let i = 0; i < 20; i += 1) {
        store.commit(bulky(store.lastSeq + 1));
        store.writeSegment(sealOf(store.lastSeq, store.lastSeq, 50_000));
      }
      fill(disk);
      expect(commitUntilRefused(store)).toBe('STORE_DISK_FULL');
      // On the full disk itself not even a delete works: space must come from outside.
      expect(() => store.deleteDead()).toThrow(/is full/);
      const used = store.sizes().usedBytes;
      expect(store.relieve()).toEqual({ ballastReleased: true, bodiesDropped: 40 });
      expect(store.sizes().usedBytes).toBeLessThan(used - 1.5 * megabyte);
      expect(store.deleteDead()).toBe(20);
      store.commit(bulky(store.lastSeq + 1));
      expect(store.tendBallast()).toBe(false);
      rmSync(join(disk, 'other'));
      const answers = [store.tendBallast(), store.tendBallast(), store.tendBallast()];
      expect(answers).toEqual([false, false, true]);
      expect(store.sizes().ballastBytes).toBe(3 * megabyte);
      store.close();
    });

    test('a disk filled while the agent was away: it opens by giving up the ballast', () => {
      const disk = smallDisk(12);
      const folder = join(disk, 'data');
      const store = openRunning(folder, { ballastBytes: 2 * megabyte });
      store.commit(bulky(1));
      store.stopRun(9_000);
      store.close();
      fill(disk);
      const again = openRunning(folder, { ballastBytes: 2 * megabyte });
      again.commit(bulky(2));
      expect(rowsWhole(again)).toBe(2);
      expect(again.sizes().ballastBytes).toBe(0);
      again.close();
    });

    test('a disk without room for a ballast is said', () => {
      const store = openAt(join(smallDisk(4), 'data'), { ballastBytes: 3 * megabyte });
      expect(store.findings).toEqual([{ kind: 'no-ballast', why: expect.any(String) }]);
      store.close();
    });

    test('an empty folder on a full disk cannot begin, and says why', () => {
      const disk = smallDisk(2);
      fill(disk);
      expect(() => openRunning(join(disk, 'data'))).toThrow(
        expect.objectContaining({ code: 'STORE_DISK_FULL' }),
      );
    });

    test('the reserve of the disk is kept by dropping raw samples before it is full', () => {
      const disk = smallDisk(32);
      const store = openRunning(join(disk, 'data'));
      for (let i = 0; i < 40; i += 1) {
        store.commit(turnOf(store.lastSeq + 1));
        store.writeSegment(sealOf(store.lastSeq, store.lastSeq, 100_000));
      }
      const budget = 100 * megabyte;
      expect(store.dropOldestBodies(budget)).toBe(0);
      const { bavail, bsize } = statfsSync(disk);
      writeFileSync(join(disk, 'other'), Buffer.alloc(bavail * bsize - megabyte));
      // 5 % of 32 MB is 1.6 MB; 1 MB is free.
      const before = statSync(store.path).size;
      for (let slice = 0; slice < 60 && store.dropOldestBodies(budget, 2) > 0; slice += 1);
      expect(store.sizes().diskFreeBytes).toBeGreaterThanOrEqual(1.6 * megabyte);
      expect(statSync(store.path).size).toBeLessThan(before);
      expect(store.sizes().usedBytes).toBeGreaterThan(5 * megabyte);
      store.close();
    });
  },
);
