/**
 * An agent's working day for latency benchmarks: 1,000 messages a second, a chart of 90 days asked for
 * without pause, a replay of the same folder; and what the disk itself takes for a write meanwhile.
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
import { plainSource } from './simulate.ts';

export const signals = 50;
const days = 90;
const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

/** Ninety days of ten of the site's signals at 1 Hz, up to an hour ago. */
export function history(): RecordBuilder {
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

export const connected = (port: number): Promise<MqttClient> =>
  mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);

/** A thousand messages a second on the other signals, until stopped. */
export async function load(port: number): Promise<() => void> {
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
export function charts(page: string): () => number {
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
export function bareSyncs(folder: string): () => Promise<number[]> {
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

export function replaying(folder: string): ChildProcess {
  const site = join(folder, 'bench-site.yaml');
  writeFileSync(site, stringify(plainSource(signals).site));
  const words = ['--conditions=forebond-source', 'agent/cli/main.ts', 'replay'];
  return spawn(process.execPath, [...words, '--site', site, '--from', folder], {
    stdio: 'ignore',
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
  });
}
