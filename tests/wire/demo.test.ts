/**
 * The demo as a program of its own, an hour in minutes: its gateways get in, its alarms come in all
 * three bands, it stops whole, a second start finds what the first left, and another's folder is
 * left alone.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { demoSource } from '../agent/demo/recorded-day.ts';
import { top } from '../tidy/source.ts';
import { ledgerLines, replayedLines } from './simulated-agent.ts';

const parent = mkdtempSync(join(tmpdir(), 'forebond-demo-'));
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) if (child.exitCode === null) child.kill('SIGKILL');
  rmSync(parent, { recursive: true, force: true });
});

interface Running {
  readonly child: ChildProcess;
  readonly page: string;
  readonly log: () => string;
}

function begin(data: string, ...words: string[]): { child: ChildProcess; log: () => string } {
  const child = spawn(
    process.execPath,
    [
      ...['--conditions=forebond-source', join(top, 'agent/cli/main.ts'), 'demo', '--data', data],
      ...['--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0', ...words],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  children.push(child);
  let text = '';
  child.stderr.on('data', (piece: Buffer) => {
    text += piece.toString();
  });
  return { child, log: () => text };
}

async function start(data: string, ...words: string[]): Promise<Running> {
  const { child, log } = begin(data, ...words);
  const said = await Promise.race([
    once(child.stdout!, 'data').then(([piece]) => String(piece)),
    once(child, 'close').then(([code]) => `ended with ${code}: ${log()}`),
  ]);
  const page = /^ready {2}page (\S+) {2}mqtt \S+ {2}data /.exec(said)?.[1];
  if (page === undefined) throw new Error(said);
  return { child, page, log };
}

async function stop({ child }: { child: ChildProcess }): Promise<number | null> {
  child.kill('SIGINT');
  if (child.exitCode === null) await once(child, 'close');
  return child.exitCode;
}

interface Alarm {
  readonly rule: string;
  readonly state: string;
  readonly priority: string;
}

const get = async <T>(page: string, path: string): Promise<T> => {
  const answer = await fetch(new URL(path, page));
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  return (await answer.json()) as T;
};

async function until(what: string, is: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 300; tries += 1) {
    if (await is()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`never came: ${what}`);
}

describe('the demo', () => {
  const data = join(parent, 'demo');

  test('comes up without its history, raises alarms in all three bands, and stops whole', async () => {
    const demo = await start(data, '--no-history', '--speed', '30');
    const raised = async (): Promise<string[]> => {
      const { alarms } = await get<{ alarms: Alarm[] }>(demo.page, '/api/alarms');
      return alarms.map(({ rule }) => rule);
    };
    const bands = [
      'bushings-1/booth-1/exhaust-airflow',
      'bushings-1/air-1/header-low',
      'bushings-1/prep-1/blast-pressure',
    ];
    await until(`all of ${bands}`, async () => {
      const rules = await raised();
      return bands.every((rule) => rules.includes(rule));
    });
    const { signals } = await get<{ signals: { id: string; quality?: unknown }[] }>(
      demo.page,
      '/api/signals',
    );
    expect(signals.map(({ id }) => id)).toContain('bushings-1/residue-1/surface-floor');
    expect(await stop(demo)).toBe(0);
    expect(demo.log()).not.toContain('"level":50');
  });

  test('what it left is judged again to the same', async () => {
    const { effects } = ledgerLines(data);
    expect(effects.length).toBeGreaterThan(5);
    expect(replayedLines(await demoSource(), data)).toEqual(effects);
  });

  test('a second start goes on where the first ended, and makes no history', async () => {
    const before = readFileSync(join(data, 'demo.json'), 'utf8');
    const demo = await start(data);
    await until('a sample', async () => {
      const { signals } = await get<{ signals: { id: string; value: number | null }[] }>(
        demo.page,
        '/api/signals',
      );
      return signals.some(({ value }) => value !== null);
    });
    expect(await stop(demo)).toBe(0);
    expect(demo.log()).not.toContain('history');
    expect(readFileSync(join(data, 'demo.json'), 'utf8')).toBe(before);
    expect(replayedLines(await demoSource(), data)).toEqual(ledgerLines(data).effects);
  });

  test('a folder that is not its own is left alone', async () => {
    const other = join(parent, 'plant');
    mkdirSync(other);
    writeFileSync(join(other, 'notes'), 'mine');
    const { child, log } = begin(other, '--no-history');
    const [code] = await once(child, 'close');
    expect(code).toBe(1);
    expect(log()).toContain('holds something that the demo line did not make');
    expect(readdirSync(other)).toEqual(['notes']);
  });

  test('stopped while it makes its history, it leaves nothing; killed, the next start clears up', async () => {
    const fresh = join(parent, 'fresh');
    const asked = begin(fresh);
    await until('its making', async () => asked.log().includes('making a week'));
    expect(await stop(asked)).toBe(0);
    expect(existsSync(fresh)).toBe(false);
    const killed = begin(fresh);
    const making = (): string[] =>
      readdirSync(parent).filter((name) => name.startsWith('fresh.making-'));
    await until('its folder', async () => making().length === 1);
    killed.child.kill('SIGKILL');
    await once(killed.child, 'close');
    expect(making()).toHaveLength(1);
    const next = await start(fresh, '--no-history');
    expect(making()).toEqual([]);
    expect(await stop(next)).toBe(0);
  });
});
