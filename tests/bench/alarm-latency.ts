/**
 * From a publish to its alarm on the live stream, at 1,000 messages a second, while a 90-day chart
 * is asked for without pause and a replay of the folder runs. Floor: a publish to an open HTTP
 * answer through the broker library alone, with nothing else going on.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import mqtt, { type MqttClient } from 'mqtt';
import { stringify } from 'yaml';
import { SampleBatch } from '../../rules/signal/sample.ts';
import { processColumn } from '../agent/store/patterns.ts';
import { RecordBuilder } from '../agent/store/record-builder.ts';
import { child, heard, released } from './children.ts';
import type { Figure } from './report.ts';
import { plainSource } from './simulate.ts';

const signals = 50;
const days = 90;
const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const probes = 400;
const budgetMs = 50;

/** Ninety days of ten of the site's signals at 1 Hz, up to an hour ago. */
function history(): RecordBuilder {
  const record = new RecordBuilder(
    Array.from({ length: 10 }, (_, i) => ({
      ...{ id: i + 1, unit: 'Cel', digits: 1, kind: 'measured' as const },
      name: `line/station/t${i}`,
    })),
  );
  const made = Array.from({ length: 10 }, (_, i) =>
    Array.from({ length: 24 }, (_, hour) => processColumn(3_600, { seed: i * 24 + hour })),
  );
  const begin = Math.floor(Date.now() / hourMs) * hourMs - days * dayMs - hourMs;
  const batch = new SampleBatch(3_600);
  for (let hour = 0; hour < days * 24; hour += 1) {
    for (let i = 0; i < 10; i += 1) {
      const column = made[i]![hour % 24]!;
      const first = column.at[0]!;
      batch.clear();
      for (let n = 0; n < column.count; n += 1) {
        const at = begin + hour * hourMs + (column.at[n]! - first);
        batch.push(i, at, at, column.value[n]!, 0, 0);
      }
      record.derived(batch);
    }
    record.samples(begin + (hour + 1) * hourMs, []);
    record.seal();
  }
  record.db.exec('DELETE FROM snapshot');
  return record;
}

const connected = (port: number): Promise<MqttClient> =>
  mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);

/** Milliseconds from each probe's publish to its event. */
async function probe(port: number, stream: string, seen: RegExp): Promise<number[]> {
  const client = await connected(port);
  const abort = new AbortController();
  const answer = await fetch(stream, { signal: abort.signal });
  const reader = answer.body!.getReader();
  const decoder = new TextDecoder();
  const times: number[] = [];
  const waiting: ((at: number) => void)[] = [];
  const reading = (async () => {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      const text = decoder.decode(value);
      for (const _ of text.matchAll(seen)) waiting.shift()?.(performance.now());
    }
  })().catch(() => {});
  for (let i = 0; i < probes; i += 1) {
    const came = new Promise<number>((resolve) => waiting.push(resolve));
    const sent = performance.now();
    client.publish('line/station/probe', i % 2 === 0 ? '{"v":99.5}' : '{"v":20.5}');
    times.push((await came) - sent);
    await new Promise((resolve) => setTimeout(resolve, 20 + (i % 17)));
  }
  abort.abort();
  await reading;
  await client.endAsync();
  return times.sort((a, b) => a - b);
}

/** A thousand messages a second on the other signals, until stopped. */
async function load(port: number): Promise<() => void> {
  const client = await connected(port);
  let i = 0;
  const timer = setInterval(() => {
    for (let n = 0; n < 20; n += 1, i += 1)
      client.publish(`line/station/t${i % signals}`, `{"v":${(20 + (i % 50) / 10).toFixed(1)}}`);
  }, 20);
  return () => {
    clearInterval(timer);
    client.end(true);
  };
}

/** Charts of 90 days, one after the other, until stopped; returns how many there were. */
function charts(page: string): () => number {
  let count = 0;
  let stopped = false;
  void (async () => {
    while (!stopped) {
      const id = encodeURIComponent(`line/station/t${count % 10}`);
      const since = Date.now() - days * dayMs;
      const answer = await fetch(`${page}/api/signals/${id}/series?since=${since}&points=1000`);
      await answer.arrayBuffer();
      if (answer.ok) count += 1;
    }
  })();
  return () => {
    stopped = true;
    return count;
  };
}

/** Bare writes of 4 kB with their fsync on the same disk, until stopped; returns their times, sorted. */
function bareSyncs(folder: string): () => Promise<number[]> {
  const times: number[] = [];
  let stopped = false;
  const running = (async () => {
    const file = await open(join(folder, 'bare-sync'), 'w');
    const page = Buffer.alloc(4_096);
    while (!stopped) {
      const begun = performance.now();
      await file.write(page, 0, page.length, 0);
      await file.datasync();
      times.push(performance.now() - begun);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    await file.close();
  })();
  return async () => {
    stopped = true;
    await running;
    return times.sort((a, b) => a - b);
  };
}

function replaying(folder: string): ChildProcess {
  const site = join(folder, 'bench-site.yaml');
  writeFileSync(site, stringify(plainSource(signals).site));
  const words = ['--conditions=forebond-source', 'agent/cli/main.ts', 'replay'];
  return spawn(process.execPath, [...words, '--site', site, '--from', folder], {
    stdio: 'ignore',
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
  });
}

export async function alarmLatency(): Promise<Figure[]> {
  const floor = child('./floor-broker.ts');
  const bare = await heard<{ port: number; page: string }>(floor);
  const floors = await probe(bare.port, bare.page, /event: alarm/g);
  await released(floor);
  const record = history();
  try {
    const agent = child('./agent-process.ts', [String(signals), record.folder]);
    const { port, page } = await heard<{ port: number; page: string }>(agent);
    const stopLoad = await load(port);
    const stopCharts = charts(page);
    const replay = replaying(record.folder);
    await new Promise((resolve) => setTimeout(resolve, 2_000));
    const stopSyncs = bareSyncs(record.folder);
    const times = await probe(port, `${page}/api/stream`, /event: alarm/g);
    const syncs = await stopSyncs();
    const ranOn = replay.exitCode === null;
    replay.kill('SIGKILL');
    const charted = stopCharts();
    stopLoad();
    await released(agent);
    return [figureOf(times, floors, syncs, charted, ranOn)];
  } finally {
    record.dispose();
  }
}

function figureOf(
  times: readonly number[],
  floors: readonly number[],
  syncs: readonly number[],
  charted: number,
  replayRanOn: boolean,
): Figure {
  const at = (list: readonly number[], share: number): number =>
    list[Math.min(list.length - 1, Math.floor(list.length * share))]!;
  const p99 = at(times, 0.99);
  return {
    name: 'publish to alarm on the live stream, p99, at 1,000 msg/s',
    budget: `under ${budgetMs} ms`,
    floor: `${at(floors, 0.99).toFixed(1)} ms (median ${at(floors, 0.5).toFixed(1)})`,
    figure: `${p99.toFixed(1)} ms`,
    ratio: null,
    met: p99 < budgetMs,
    note:
      `median ${at(times, 0.5).toFixed(1)} ms, of which 10 is the mean wait for the beat; ` +
      `a bare write and fsync on that disk meanwhile ${at(syncs, 0.5).toFixed(1)} ms, ` +
      `p99 ${at(syncs, 0.99).toFixed(1)}; ` +
      `${charted} charts of 90 days meanwhile; the replay ${replayRanOn ? 'ran throughout' : 'ended early'}`,
  };
}
