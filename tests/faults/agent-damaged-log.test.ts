/**
 * The write-ahead log of a killed agent cut or changed: it starts, keeps what is sound, and names
 * what is gone.
 */
import { readFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { pathsOf } from '#agent/store/data-folder.ts';
import { readHighWater } from '#agent/store/high-water.ts';
import { verifyFolder } from '#agent/store/verify-folder.ts';
import type { Health } from '#agent/web/contract.ts';
import { startAgentProcess } from '#tests/agent-process.ts';
import { expectJudgedAlike, expectKept, ledgerOf, storedKeys } from './afterwards.ts';
import { seededInteger } from './chance.ts';
import { coreOn, sourceOf } from './core-on.ts';
import { type Crashed, crashedFolder, logOf, onDamagedCopy } from './crashed-folder.ts';

/** Sequence numbers of the rows that can be read. */
function rowsOf(folder: string): number[] {
  const db = new DatabaseSync(pathsOf(folder).database, { readOnly: true });
  try {
    return db
      .prepare('SELECT seq FROM input ORDER BY seq')
      .all()
      .map(({ seq }) => Number(seq));
  } finally {
    db.close();
  }
}

const lastKnown = (folder: string): number => {
  const mark = readHighWater(pathsOf(folder).highWater);
  if (mark === null || mark === 'unreadable') throw new Error('no high water');
  return mark.seq;
};

const healthOf = async (page: string): Promise<Health> =>
  (await (await fetch(`${page}/api/health`)).json()) as Health;

const findingsOf = (folder: string): Record<string, unknown>[] =>
  ledgerOf(folder)
    .filter(({ type }) => type === 'finding')
    .map(({ finding }) => finding as Record<string, unknown>);

/** Starts on a damaged copy; how many rows it has left. */
async function startDamaged(crashed: Crashed, damage: (log: Buffer) => Buffer): Promise<number> {
  const source = await sourceOf(crashed.site);
  const last = lastKnown(crashed.folder);
  return onDamagedCopy(crashed.folder, damage, async (copy) => {
    const open = coreOn(source, copy);
    const { findings } = open.core.store;
    const reads = open.core.store.read;
    const left = [...reads.inputsAfter(0, () => expect.fail('a damaged row'))]
      .map(({ seq }) => seq)
      .filter((seq) => seq <= last);
    expect(left).toEqual(left.map((_, i) => i + 1));
    const lost = findings.filter(({ kind }) => kind === 'lost');
    const range = { kind: 'lost', fromSeq: left.length + 1, toSeq: last };
    expect(lost).toEqual(left.length === last ? [] : [range]);
    await open.publish('hall/1/plain', '7.0001');
    open.stop();
    // What was found stands in the ledger, and the folder goes on from there.
    expect(findingsOf(copy)).toEqual(findings);
    expect(verifyFolder(copy)).toMatchObject({ ok: true });
    const stored = storedKeys(copy);
    expect(stored.get('hall/bench/plain-1')).toContain(70_001);
    for (const [signal, sent] of crashed.publishers.sent)
      for (const key of stored.get(signal) ?? [])
        if (key !== 70_001) expect(sent.has(key), `${key} of ${signal}`).toBe(true);
    return left.length;
  });
}

const [headerBytes, frameHeaderBytes] = [32, 24];

/** How much of a log counts, and how many commits it holds (sqlite.org/fileformat.html, 4.1 and 4.2). */
function inForce(log: Buffer): { readonly length: number; readonly commits: number } {
  const frameBytes = frameHeaderBytes + log.readUInt32BE(8);
  const salt = log.subarray(16, 24);
  let [length, commits] = [headerBytes, 0];
  while (length + frameBytes <= log.length) {
    // What an earlier round left behind its end has other salts.
    if (!log.subarray(length + 8, length + 16).equals(salt)) break;
    if (log.readUInt32BE(length + 4) > 0) commits += 1;
    length += frameBytes;
  }
  return { length, commits };
}

/**
 * One whose log holds enough commits to be cut between: it begins anew every thousand pages, and
 * what was taken into the main file just before the end cannot be lost with it.
 */
async function longLog(): Promise<Crashed> {
  for (let trial = 0; trial < 8; trial += 1) {
    const crashed = await crashedFolder(1_000 + 100 * trial);
    const { commits } = inForce(readFileSync(logOf(crashed.folder)));
    const without = await onDamagedCopy(crashed.folder, () => Buffer.alloc(0), rowsOf);
    if (commits >= 40 && lastKnown(crashed.folder) - without.length >= 40) return crashed;
  }
  throw new Error('no log was long enough');
}

test('cut or flipped at 100 random places', { timeout: 180_000 }, async ({ annotate }) => {
  const seed = 20_261_127;
  await annotate(`seed ${seed}`);
  const crashed = await longLog();
  const { length } = inForce(readFileSync(logOf(crashed.folder)));
  const place = seededInteger(seed, 0, length - 1);
  const mask = seededInteger(seed + 1, 1, 255);
  const kept = new Set<number>();
  for (let trial = 0; trial < 100; trial += 1) {
    const at = place();
    const damage = (log: Buffer): Buffer => {
      if (trial % 2 === 0) return log.subarray(0, at);
      log[at]! ^= mask();
      return log;
    };
    kept.add(
      await startDamaged(crashed, damage).catch((cause) => {
        throw new Error(`${trial % 2 === 0 ? 'cut' : 'flipped'} at ${at} of ${length}`, { cause });
      }),
    );
  }
  // The places were spread over the log, or this test shows nothing.
  expect(kept.size).toBeGreaterThan(20);
});

test('cut while all of it had just been taken into the main file: nothing is lost', {
  timeout: 120_000,
}, async ({ annotate }) => {
  const seed = 20_261_128;
  await annotate(`seed ${seed}`);
  const crashed = await crashedFolder(500, (folder) => {
    const db = new DatabaseSync(pathsOf(folder).database);
    const taken = db.prepare('PRAGMA wal_checkpoint(PASSIVE)').get()!;
    expect(taken.checkpointed).toBe(taken.log);
    db.close();
  });
  const { length } = readFileSync(logOf(crashed.folder));
  const place = seededInteger(seed, 1, length - 1);
  const source = await sourceOf(crashed.site);
  const kinds = new Set<string>();
  for (let trial = 0; trial < 40; trial += 1) {
    const at = place();
    await onDamagedCopy(
      crashed.folder,
      (log) => log.subarray(0, at),
      async (copy) => {
        const open = coreOn(source, copy);
        for (const { kind } of open.core.store.findings) kinds.add(kind);
        await open.publish('hall/1/plain', '7.0001');
        open.stop();
        crashed.publishers.sent.get('hall/bench/plain-1')!.add(70_001);
        expectKept(copy, crashed.publishers);
        await expectJudgedAlike(copy, crashed.site);
      },
    ).catch((cause) => {
      throw new Error(`cut at ${at} of ${length}`, { cause });
    });
  }
  expect([...kinds]).toEqual(['log-unreadable']);
});

test('a running agent says what was lost', { timeout: 120_000 }, async () => {
  const crashed = await longLog();
  const { length } = inForce(readFileSync(logOf(crashed.folder)));
  const last = lastKnown(crashed.folder);
  // The last tenth of a log may hold the ledger's records only.
  for (const share of [0.1, 0.3, 0.5]) {
    const cut = (log: Buffer): Buffer => log.subarray(0, Math.floor(length * share));
    await onDamagedCopy(crashed.folder, cut, async (copy) => {
      const agent = await startAgentProcess({ site: crashed.site, folder: copy });
      const health = await healthOf(agent.page);
      expect(health.parts.record).toBe('out-of-specification');
      expect((await agent.stop()).code).toBe(0);
      const rows = rowsOf(copy).filter((seq) => seq <= last);
      expect(rows.length).toBeLessThan(last);
      expect(health.notes.record).toContain(
        `Records ${rows.length + 1} to ${last} of the input log were lost to disk damage.`,
      );
      expect(findingsOf(copy)).toContainEqual({
        kind: 'lost',
        fromSeq: rows.length + 1,
        toSeq: last,
      });
    });
  }
});

test('garbage after the last commit loses nothing', { timeout: 60_000 }, async () => {
  const crashed = await crashedFolder(600);
  const garbage = Buffer.alloc(9_000, 0x5a);
  const append = (log: Buffer): Buffer => Buffer.concat([log, garbage]);
  await onDamagedCopy(crashed.folder, append, async (copy) => {
    const agent = await startAgentProcess({ site: crashed.site, folder: copy });
    const health = await healthOf(agent.page);
    expect(health.parts.record).toBe('good');
    expect(await agent.stop()).toMatchObject({ code: 0, stderr: '' });
    expect(findingsOf(copy)).toEqual([]);
    expectKept(copy, crashed.publishers);
    await expectJudgedAlike(copy, crashed.site);
  });
});
