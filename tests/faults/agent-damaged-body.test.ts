/** A byte flipped in a sealed body: that chunk is bad and named, everything else serves. */
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { pathsOf } from '#agent/store/data-folder.ts';
import type { Series } from '#agent/web/contract.ts';
import {
  addDevice,
  forebond,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { storedKeys } from './afterwards.ts';
import { Publishers } from './publishers.ts';
import { smallWorks } from './small-works.ts';

const program = join(import.meta.dirname, 'tuned-agent.ts');
const damagedSignal = 'hall/bench/own-2';

interface Chunk {
  readonly t0: number;
  readonly t1: number;
  readonly n: number;
  readonly body: number;
}

/** Flips a byte in the middle of one chunk of the signal that stands between others. */
function flip(folder: string): Chunk {
  const db = new DatabaseSync(pathsOf(folder).database);
  try {
    const chunks = db
      .prepare(
        `SELECT t0, t1, n, body FROM chunk
         WHERE signal = (SELECT id FROM signal WHERE name = ?) ORDER BY segment, part`,
      )
      .all(damagedSignal) as unknown as Chunk[];
    expect(chunks.length).toBeGreaterThan(3);
    const chunk = chunks[1]!;
    const data = db.prepare('SELECT data FROM body WHERE id = ?').get(chunk.body)!.data;
    const flipped = Buffer.from(data as Uint8Array);
    flipped[flipped.length >> 1]! ^= 0x10;
    db.prepare('UPDATE body SET data = ? WHERE id = ?').run(flipped, chunk.body);
    return chunk;
  } finally {
    db.close();
  }
}

const countOf = ({ points }: Series): number => points.reduce((sum, point) => sum + point[4], 0);

const jsonLines = (text: string): Record<string, unknown>[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

/** A folder of several segments, stopped in order; how to start an agent on it again. */
async function sealedFolder() {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  const words = [JSON.stringify({ site, folder, sealEveryMs: 300, ballastBytes: 0 })];
  const start = { site, folder, program, words };
  const agent = await startAgentProcess(start);
  const publishers = new Publishers();
  await publishers.start(agent.mqtt, device);
  await wait(2_500);
  await publishers.stop();
  // The hold of sensors with their own time passes; all is judged.
  await wait(2_500);
  expect(await agent.stop()).toMatchObject({ code: 0, stderr: '' });
  return { folder, site, start };
}

test('the chunk is bad and named, the rest serves', { timeout: 60_000 }, async () => {
  const { folder, site, start } = await sealedFolder();
  const whole = storedKeys(folder);
  const chunk = flip(folder);

  const again = await startAgentProcess(start);
  const series = async (signal: string, since: number, until: number, points: number) => {
    const url = `${again.page}/api/signals/${encodeURIComponent(signal)}/series`;
    const answer = await fetch(`${url}?since=${since}&until=${until}&points=${points}`);
    expect(answer.status).toBe(200);
    return (await answer.json()) as Series;
  };
  const { t0, t1 } = chunk;
  const from = t0 - 60_000;
  const to = t1 + 60_000;
  // Fine enough that the samples themselves are wanted.
  const damaged = await series(damagedSignal, from, to, 5_000);
  expect(damaged.damage).toEqual([{ from: t0, to: t1, reason: expect.stringMatching(/\w/) }]);
  const outside = damaged.points.filter(([at]) => at < t0 - 60_000 || at > t1 + 60_000);
  expect(outside).toEqual([]);
  for (const [signal, keys] of whole) {
    if (signal === damagedSignal || !signal.startsWith('hall/bench/')) continue;
    const other = await series(signal, from, to, 5_000);
    expect(other.damage, signal).toEqual([]);
    expect(countOf(other), signal).toBeGreaterThanOrEqual(keys.length);
  }
  // Its other chunks stand sample by sample; the damaged one by its minute summaries.
  expect(countOf(damaged)).toBeGreaterThanOrEqual(whole.get(damagedSignal)!.length);
  const health = (await (await fetch(`${again.page}/api/health`)).json()) as {
    readonly notes: Readonly<Record<string, string>>;
  };
  expect(health.notes.record).toContain(damagedSignal);
  await again.stop();

  const replayed = await forebond(['replay', '--site', site, '--from', folder, '--json']);
  expect(replayed.code).toBe(0);
  const lines = jsonLines(replayed.stdout);
  expect(lines.filter((line) => 'damage' in line)).toEqual([
    { damage: expect.stringMatching(/\w/), signal: damagedSignal, from: t0, to: t1 },
  ]);
  const total = [...whole.values()].reduce((sum, keys) => sum + keys.length, 0);
  expect(lines.at(-1)!.samples).toBeGreaterThanOrEqual(total - chunk.n);
  const rules = new Set(lines.map(({ rule }) => rule));
  expect(rules).toContain('hall/bench/own-1-warm');
  expect(rules).toContain(`${damagedSignal}-warm`);

  const exported = await forebond(['export', '--data', folder]);
  expect(exported.code).toBe(1);
  expect(exported.stderr).toContain(damagedSignal);
  expect(exported.stderr.trim().split('\n')).toHaveLength(1);
  const rows = exported.stdout.split('\r\n').filter((row) => row.includes(`,${damagedSignal},`));
  expect(rows).toHaveLength(whole.get(damagedSignal)!.length - chunk.n);
});
