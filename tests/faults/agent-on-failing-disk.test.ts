/**
 * Every disk operation of a small run of the whole agent failed, one after the other: it carries
 * on or says why not, and what it acknowledged is there.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { scratchFolder, siteFile } from '#tests/agent-process.ts';
import { expectJudgedAlike, judgedThen, storedKeys } from './afterwards.ts';
import { coreOn, sourceOf } from './core-on.ts';
import { buildFailingDisk, type Fault, faultEnvironment } from './failing-disk.ts';
import { type FaultedRun, sentKeys } from './faulted-run.ts';
import { smallWorks } from './small-works.ts';

const program = join(import.meta.dirname, 'agents-on-failing-disk.ts');
/** Processes side by side: most of the time they wait for the disk to be asked again. */
const shards = 6;

interface Series {
  readonly folder: string;
  readonly site: string;
  readonly fault: Pick<Fault, 'error' | 'during'>;
  readonly ackMs: number;
}

/** Runs every `shards`th operation from `first` on. */
async function shard(series: Series, first: number): Promise<FaultedRun[]> {
  const folder = join(series.folder, `shard-${first}`);
  const count = `${folder}.count`;
  const words = [folder, count, series.site, first, shards, series.ackMs].map(String);
  const child = spawn(process.execPath, ['--conditions=forebond-source', program, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...faultEnvironment({ ...series.fault, at: 0, folder }, count) },
  });
  let [stdout, stderr] = ['', ''];
  child.stdout.on('data', (bytes) => {
    stdout += String(bytes);
  });
  child.stderr.on('data', (bytes) => {
    stderr += String(bytes);
  });
  const [code] = await once(child, 'close');
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as FaultedRun);
}

/** What must hold after a run, whatever failed in it. */
async function judge(series: Series, run: FaultedRun): Promise<void> {
  const { folder, site } = series;
  const data = join(folder, `shard-${((run.at - 1) % shards) + 1}`, String(run.at));
  expect(run.faults).toEqual([]);
  const refusals = [null, 'STORE_DISK_FAILED', 'STORE_DISK_FULL', 'DEVICE_FILE_FAILED'];
  expect(refusals).toContain(run.start);
  expect(refusals).toContain(run.stop);
  if (!existsSync(data)) mkdirSync(data);
  const open = coreOn(await sourceOf(site), data);
  const findings = open.core.store.findings.filter(({ kind }) => kind !== 'high-water-unreadable');
  expect(findings).toEqual([]);
  await open.publish('hall/2/plain', '10.9');
  open.stop();
  const stored = storedKeys(data).get('hall/bench/plain-2') ?? [];
  for (const key of run.acknowledged) expect(stored, 'acknowledged').toContain(key);
  expect(stored.at(-1)).toBe(109_000);
  for (const key of stored.slice(0, -1)) expect(sentKeys, 'sent').toContain(key);
  if (run.acknowledged.length === sentKeys.length)
    expect(judgedThen(data).some((record) => record.includes('"transition":"raised"'))).toBe(true);
  await expectJudgedAlike(data, site);
}

async function failEach(fault: Series['fault'], ackMs: number): Promise<FaultedRun[]> {
  buildFailingDisk();
  const parent = scratchFolder();
  const site = siteFile(parent, smallWorks);
  const series = { folder: parent, site, fault, ackMs };
  const runs = (
    await Promise.all(Array.from({ length: shards }, (_, i) => shard(series, i + 1)))
  ).flat();
  runs.sort((a, b) => a.at - b.at);
  for (const run of runs)
    await judge(series, run).catch((cause) => {
      throw new Error(`operation ${run.at} failed: ${JSON.stringify(run)}`, { cause });
    });
  // None was left out.
  const last = runs.filter(({ at, operations }) => operations >= at).at(-1)?.at ?? 0;
  const tried = runs.map(({ at }) => at).filter((at) => at <= last);
  expect(tried).toEqual(tried.map((_, i) => i + 1));
  expect(tried).toHaveLength(last);
  return runs;
}

test('each fails once with EIO', { timeout: 300_000 }, async () => {
  const runs = await failEach({ error: 'EIO' }, 4_000);
  expect(runs.length).toBeGreaterThan(80);
  // A run that started is not put off by one failure: all it was sent is acknowledged.
  for (const run of runs)
    if (run.start === null) expect(run.acknowledged, `operation ${run.at}`).toEqual(sentKeys);
});

test('that one and all after it fail with ENOSPC', { timeout: 300_000 }, async () => {
  const runs = await failEach({ error: 'ENOSPC', during: -1 }, 50);
  expect(runs.length).toBeGreaterThan(80);
});
