/**
 * What a plant of 500 signals at 1 Hz, QoS 0, costs the disk and the memory: two simulated hours
 * with their seals, through the whole core.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Figure } from './report.ts';
import { bytesWritten, plainSource, plainTopics, simulate } from './simulate.ts';

const signals = 500;
const hours = 5;

export async function storeWear(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-wear-'));
  try {
    return await measure(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function measure(folder: string): Promise<Figure[]> {
  const run = simulate(folder, plainSource(signals), plainTopics(signals));
  const begun = bytesWritten();
  const started = performance.now();
  const rss: number[] = [];
  for (let hour = 0; hour < hours; hour += 1) {
    for (let second = 0; second < 3_600; second += 1) run.second();
    await run.core.sealIfDue(true);
    rss.push(process.memoryUsage.rss() / 1e6);
  }
  const seconds = (performance.now() - started) / 1_000;
  while (run.core.store.deleteDead() > 0);
  const perDay = ((bytesWritten() - begun) / hours) * 24;
  const samples = signals * 3_600 * hours;
  const chunks = run.core.store.sizes().usedBytes;
  run.close();
  const growth = rss.at(-1)! - rss[1]!;
  return [
    {
      name: 'bytes written a day, 500 signals, 1 Hz, QoS 0',
      budget: 'at most 5 GB',
      floor: `${((samples * 8 * 24) / hours / 1e9).toFixed(2)} GB of bare doubles`,
      figure: `${(perDay / 1e9).toFixed(2)} GB`,
      ratio: null,
      met: perDay <= 5e9,
      note: 'as the kernel counts writes to the disk (0 where the folder is in memory); log, seals, snapshots',
    },
    {
      name: 'bytes a sample, sealed, all tables',
      budget: 'at most 1.5',
      floor: '8 bytes, a bare double',
      figure: (chunks / samples).toFixed(2),
      ratio: null,
      met: chunks / samples <= 1.5,
    },
    {
      name: `growth of memory over ${hours} simulated hours, 500 signals, 1 Hz`,
      budget: 'flat',
      floor: 'none',
      figure: `${Math.round(growth)} MB from the second hour on`,
      ratio: null,
      met: growth < 20,
      note: `by hour, as fast as it goes: ${rss.map((mb) => `${Math.round(mb)} MB`).join(', ')}`,
    },
    {
      name: 'a simulated second of 500 readings through the core',
      budget: 'none; for orientation',
      floor: '1 s of real time',
      figure: `${((seconds / hours / 3_600) * 1e3).toFixed(2)} ms`,
      ratio: null,
      met: true,
      note: `${Math.round(samples / seconds / 1e3)} thousand samples a second, commits and seals included`,
    },
  ];
}
