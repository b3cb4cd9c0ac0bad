/**
 * From the command to the first judged sample, on an empty folder, as built. Floor: a bare Node
 * process. And the memory it takes then, before and after 20 s of 500 readings a second.
 */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import mqtt from 'mqtt';
import { stringify } from 'yaml';
import { type Figure, median } from './report.ts';
import { plainSource } from './simulate.ts';

const top = fileURLToPath(new URL('../..', import.meta.url));
const main = join(top, 'dist', 'agent', 'cli', 'main.js');
/** For a small box: less memory, about a tenth fewer messages a second. */
const sparing = ['--max-semi-space-size=4'];

interface Started {
  readonly pid: number;
  readonly page: string;
  readonly port: number;
  stop(): Promise<void>;
}

async function started(
  signals: number,
  folder: string,
  flags: readonly string[] = [],
): Promise<Started> {
  const site = join(folder, 'site.yaml');
  writeFileSync(site, stringify(plainSource(signals).site));
  const words = ['run', '--site', site, '--data', join(folder, 'data')];
  const free = ['--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0'];
  const agent = spawn(process.execPath, [...flags, main, ...words, ...free], {
    stdio: ['ignore', 'pipe', 'inherit'],
    cwd: top,
  });
  const [line] = (await once(createInterface(agent.stdout!), 'line')) as [string];
  const found = /page (\S+) {2}mqtt mqtt:\/\/127\.0\.0\.1:(\d+)/.exec(line)!;
  return {
    pid: agent.pid!,
    page: found[1]!,
    port: Number(found[2]),
    async stop() {
      agent.kill('SIGTERM');
      await once(agent, 'exit');
    },
  };
}

async function judged(page: string): Promise<boolean> {
  const answer = await fetch(`${page}/api/alarms`);
  return ((await answer.json()) as { alarms: unknown[] }).alarms.length > 0;
}

/** Seconds to the first judged sample. */
async function oneStart(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-start-'));
  const begun = performance.now();
  const agent = await started(50, folder);
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${agent.port}`);
  client.publish('line/station/probe', '{"v":99.5}');
  while (!(await judged(agent.page))) await new Promise((resolve) => setTimeout(resolve, 5));
  const seconds = (performance.now() - begun) / 1_000;
  client.end(true);
  await agent.stop();
  rmSync(folder, { recursive: true });
  return seconds;
}

const residentMb = (pid: number): number =>
  (Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) * 1_024) / 1e6;

/** MB at the start, and after 20 s of 500 readings a second. */
async function memoryWith(flags: readonly string[]): Promise<{ atStart: number; after: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-memory-'));
  const agent = await started(500, folder, flags);
  const atStart = residentMb(agent.pid);
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${agent.port}`);
  let i = 0;
  const timer = setInterval(() => {
    for (let n = 0; n < 10; n += 1, i += 1)
      client.publish(`line/station/t${i % 500}`, `{"v":${(20 + (i % 50) / 10).toFixed(1)}}`);
  }, 20);
  await new Promise((resolve) => setTimeout(resolve, 20_000));
  const after = residentMb(agent.pid);
  clearInterval(timer);
  client.end(true);
  await agent.stop();
  rmSync(folder, { recursive: true });
  return { atStart, after };
}

async function memory(): Promise<Figure> {
  const plain = await memoryWith([]);
  const small = await memoryWith(sparing);
  const hourMb = (500 * 3_600 * 26) / 1e6;
  const mb = (n: number): string => `${Math.round(n)} MB`;
  return {
    name: 'memory, built, 500 signals at 1 Hz',
    budget: 'under 200 MB',
    floor: '45 MB, a bare Node process',
    figure: mb(plain.after + hourMb),
    ratio: null,
    met: plain.after + hourMb < 200,
    note:
      `${mb(plain.atStart)} at the start, ${mb(plain.after)} after 20 s, and ${mb(hourMb)} for the open ` +
      `hour when it is full; with ${sparing.join(' ')} ${mb(small.after + hourMb)} in all`,
  };
}

export async function startTime(): Promise<Figure[]> {
  const built = spawnSync('npm', ['run', '--silent', 'build'], { cwd: top, stdio: 'inherit' });
  if (built.status !== 0) throw new Error('the build failed');
  const floors: number[] = [];
  const figures: number[] = [];
  for (let i = 0; i < 6; i += 1) {
    const begun = performance.now();
    spawnSync(process.execPath, ['-e', '0']);
    const floor = (performance.now() - begun) / 1_000;
    const figure = await oneStart();
    if (i === 0) continue;
    floors.push(floor);
    figures.push(figure);
  }
  const figure = median(figures);
  return [
    {
      name: 'start, built, empty store, to the first judged sample',
      budget: 'under 2 s',
      floor: `${median(floors).toFixed(2)} s, a bare Node process`,
      figure: `${figure.toFixed(2)} s`,
      ratio: null,
      met: figure < 2,
    },
    await memory(),
  ];
}
