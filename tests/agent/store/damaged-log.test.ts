/**
 * The write-ahead log cut or flipped at random places after a crash: the store starts, keeps an
 * unbroken beginning, and names exactly the rows that are gone.
 */
import { cpSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { verifyLedger } from '#agent/store/ledger.ts';
import type { Finding } from '#agent/store/store-types.ts';
import { freshFolder, openAt, openRunning } from './folders.ts';
import { countTo, noted, storedSeqs, turnOf } from './turns.ts';

const turns = 60;
let copies = 0;

/** A data folder as a crash leaves it: every turn noted, the log never taken into the main file. */
function crashed(): string {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (const seq of countTo(turns)) store.commit(turnOf(seq, [noted(seq)]));
  store.note();
  const copy = `${folder}-crashed`;
  cpSync(folder, copy, { recursive: true });
  store.close();
  return copy;
}

/** Opens a copy whose log was damaged; how many turns are left. */
function openDamaged(original: string, damage: (log: string) => void): number {
  copies += 1;
  const folder = `${original}-${copies}`;
  cpSync(original, folder, { recursive: true });
  damage(join(folder, 'forebond.db-wal'));
  const store = openAt(folder);
  try {
    const left = storedSeqs(store);
    expect(left).toEqual(countTo(left.length));
    const lost = store.findings.find((finding) => finding.kind === 'lost');
    const whole = left.length === turns;
    expect(lost).toEqual(
      whole ? undefined : { kind: 'lost', fromSeq: left.length + 1, toSeq: turns },
    );
    expect(store.ledgerHead.id).toBe(left.length);
    expect(store.findings.some((finding) => finding.kind === 'ledger-lost')).toBe(!whole);
    const reader = new DatabaseSync(store.path, { readOnly: true });
    expect(verifyLedger(reader)).toMatchObject({ ok: true, count: left.length });
    reader.close();
    return left.length;
  } finally {
    store.close();
    rmSync(folder, { recursive: true });
  }
}

test('flipped at 100 random places', () => {
  const folder = crashed();
  const bytes = readFileSync(join(folder, 'forebond.db-wal'));
  const kept = new Set<number>();
  const place = fc.record({
    at: fc.integer({ min: 0, max: bytes.length - 1 }),
    mask: fc.integer({ min: 1, max: 255 }),
  });
  fc.assert(
    fc.property(place, ({ at, mask }) => {
      const flip = (log: string): void => {
        const flipped = Buffer.from(bytes);
        flipped[at]! ^= mask;
        writeFileSync(log, flipped);
      };
      kept.add(openDamaged(folder, flip));
    }),
    { numRuns: 100, seed: 20_261_125 },
  );
  // The places were spread over the log, or this test shows nothing.
  expect(kept.size).toBeGreaterThan(20);
});

test('cut at 100 random places', () => {
  const folder = crashed();
  const length = readFileSync(join(folder, 'forebond.db-wal')).length;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: length - 1 }), (at) => {
      expect(openDamaged(folder, (log) => truncateSync(log, at))).toBeLessThan(turns);
    }),
    { numRuns: 100, seed: 20_261_126 },
  );
});

test('removed altogether', () => {
  expect(openDamaged(crashed(), (log) => rmSync(log))).toBe(0);
});

test('garbage after the last commit loses nothing', () => {
  const folder = crashed();
  const bytes = readFileSync(join(folder, 'forebond.db-wal'));
  const garbage = Buffer.alloc(9_000, 0x5a);
  const append = (log: string): void => writeFileSync(log, Buffer.concat([bytes, garbage]));
  expect(openDamaged(folder, append)).toBe(turns);
});

/** Where each frame of a log begins that ends a commit (sqlite.org/fileformat.html, 4.1). */
function commitFrames(log: Buffer): number[] {
  const frameBytes = 24 + log.readUInt32BE(8);
  const frames = Array.from(
    { length: (log.length - 32) / frameBytes },
    (_, i) => 32 + i * frameBytes,
  );
  return frames.filter((at) => log.readUInt32BE(at + 4) > 0);
}

test('a power cut that took the last second of the high water: what the log had behind its damage is counted', () => {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (const seq of countTo(20)) store.commit(turnOf(seq, [noted(seq)]));
  store.note();
  const mark = readFileSync(join(folder, 'high-water'));
  for (const seq of countTo(8)) store.commit(turnOf(20 + seq, [noted(20 + seq)]));
  const original = `${folder}-crashed`;
  cpSync(folder, original, { recursive: true });
  store.close();
  const path = join(original, 'forebond.db-wal');
  const whole = readFileSync(path);
  const begin = commitFrames(whole);
  const opened = (damage: (log: Buffer) => Buffer): Finding[] => {
    writeFileSync(path, damage(Buffer.from(whole)));
    copies += 1;
    const copy = `${original}-${copies}`;
    cpSync(original, copy, { recursive: true });
    writeFileSync(join(copy, 'high-water'), mark);
    const first = openAt(copy);
    const found = [...first.findings];
    // Found once: what was behind the damage is not there to be found again.
    first.startRun(99_000);
    first.commit(turnOf(first.lastSeq + 1));
    const again = `${copy}-again`;
    cpSync(copy, again, { recursive: true });
    first.close();
    const second = openAt(again);
    expect(second.findings).toEqual([]);
    second.close();
    return found;
  };
  const flipIn =
    (commit: number) =>
    (log: Buffer): Buffer => {
      log[begin.at(-commit)! + 100]! ^= 1;
      return log;
    };
  expect(opened((log) => log)).toEqual([]);
  // The fifth from the end, its own commit among those behind.
  expect(opened(flipIn(5))).toEqual([{ kind: 'log-cut', afterSeq: 23, commits: 4 }]);
  expect(opened(flipIn(3))).toEqual([{ kind: 'log-cut', afterSeq: 25, commits: 2 }]);
  // The last two may be what a refusing disk left, and nobody was told of.
  expect(opened(flipIn(2))).toEqual([]);
  expect(opened(flipIn(1))).toEqual([]);
  expect(opened((log) => log.subarray(0, begin.at(-1)! + 50))).toEqual([]);
});
