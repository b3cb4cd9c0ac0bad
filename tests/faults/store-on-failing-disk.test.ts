/**
 * Every disk operation of a small run failed, one after the other, once and for good.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { verifyLedger } from '#agent/store/ledger.ts';
import { freshFolder, openAt, openRunning } from '#tests/agent/store/folders.ts';
import { countTo, noted, storedSeqs, turnOf } from '#tests/agent/store/turns.ts';
import { type Fault, type FaultRun, runWithFault } from './failing-disk.ts';

const writer = join(import.meta.dirname, 'store-writer.ts');
/** A run has some 120 operations; a count that never ends is a fault of this test. */
const operationsMax = 500;

/** What must hold after a run, whatever failed in it. `before` turns were there at its start. */
function judge(folder: string, before: number, run: FaultRun): void {
  expect(run.stderr, 'refusals are named; nothing else is thrown').toBe('');
  expect(run.stdout).toMatch(/end\n$/);
  const lines = run.stdout.split('\n');
  const committed = lines.filter((line) => /^\d+$/.test(line)).map(Number);
  const tried = lines.filter((line) => line.startsWith('tries')).length;
  const store = openAt(folder);
  try {
    expect(store.findings.filter((finding) => finding.kind !== 'high-water-unreadable')).toEqual(
      [],
    );
    const stored = storedSeqs(store);
    expect(stored).toEqual(countTo(stored.length));
    expect(stored.length).toBeGreaterThanOrEqual(Math.max(before, ...committed));
    expect(stored.length).toBeLessThanOrEqual(before + tried);
    expect(store.ledgerHead.id).toBe(stored.length);
    const reader = new DatabaseSync(store.path, { readOnly: true });
    expect(verifyLedger(reader)).toMatchObject({ ok: true, count: stored.length });
    reader.close();
    // And it goes on from there.
    store.startRun(30_000);
    store.commit(turnOf(stored.length + 1, [noted(stored.length + 1)]));
  } finally {
    store.close();
  }
}

function failEvery(fault: Omit<Fault, 'at' | 'folder'>, before: number): number {
  const folder = freshFolder();
  for (let at = 1; at <= operationsMax; at += 1) {
    rmSync(folder, { recursive: true, force: true });
    if (before > 0) {
      const store = openRunning(folder);
      for (const seq of countTo(before)) store.commit(turnOf(seq, [noted(seq)]));
      store.close();
    }
    const run = runWithFault({ ...fault, at, folder }, writer, [folder]);
    try {
      judge(folder, before, run);
    } catch (error) {
      throw new Error(`operation ${at} failed with ${fault.error}: ${run.stdout}`, {
        cause: error,
      });
    }
    if (run.operations < at) return at - 1;
  }
  throw new Error(`more than ${operationsMax} operations`);
}

describe('each operation in turn', () => {
  test('fails once with EIO, from an empty folder on', { timeout: 240_000 }, () => {
    expect(failEvery({ error: 'EIO' }, 0)).toBeGreaterThan(60);
  });
  test('and all after it fail with ENOSPC, in a store that has been used', {
    timeout: 240_000,
  }, () => {
    expect(failEvery({ error: 'ENOSPC', during: -1 }, 5)).toBeGreaterThan(40);
  });
});

test('the disk that does not fail is no different from none', () => {
  const folder = freshFolder();
  const run = runWithFault({ at: 0, folder }, writer, [folder]);
  expect(run.stdout).toBe('tries 1\n1\ntries 2\n2\ntries 3\n3\ntries 4\n4\nend\n');
  judge(folder, 0, run);
});
