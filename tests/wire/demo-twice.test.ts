/**
 * The demo started twice on one folder: the second start refuses in one line and touches nothing,
 * whether the first runs already or is still making its history; the first goes on.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { agentMain } from '../agent-process.ts';

const parent = mkdtempSync(join(tmpdir(), 'forebond-demo-twice-'));
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) if (child.exitCode === null) child.kill('SIGKILL');
  rmSync(parent, { recursive: true, force: true });
});

class Demo {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  out = '';
  log = '';

  constructor(data: string, ...words: string[]) {
    const line = ['--conditions=forebond-source', agentMain, 'demo', '--data', data];
    const doors = ['--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0'];
    this.child = spawn(process.execPath, [...line, ...doors, ...words], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    children.push(this.child);
    this.ended = once(this.child, 'close').then(([code]) => code);
    this.child.stdout!.on('data', (piece) => {
      this.out += String(piece);
    });
    this.child.stderr!.on('data', (piece) => {
      this.log += String(piece);
    });
  }

  get page(): string | undefined {
    return /^ready {2}page (\S+)/.exec(this.out)?.[1];
  }

  async stop(): Promise<number | null> {
    this.child.kill('SIGINT');
    return this.ended;
  }
}

async function until(
  what: string,
  first: Demo,
  is: () => boolean | Promise<boolean>,
): Promise<void> {
  for (let tries = 0; tries < 900; tries += 1) {
    if (await is()) return;
    if (first.child.exitCode !== null) throw new Error(`ended before ${what}: ${first.log}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`never came: ${what}; ${first.log}`);
}

const ready = (demo: Demo): Promise<void> => until('ready', demo, () => demo.page !== undefined);

/** The newest time of any sample. */
async function newestAt(page: string): Promise<number> {
  const answer = await fetch(new URL('/api/signals', page));
  const { signals } = (await answer.json()) as { signals: { at: number | null }[] };
  return Math.max(...signals.map(({ at }) => at ?? 0));
}

describe('the demo, started twice', () => {
  test('while it runs, a second start refuses and the first goes on', async () => {
    const data = join(parent, 'running');
    const first = new Demo(data, '--no-history');
    await ready(first);
    const devices = readFileSync(join(data, 'devices.json'), 'utf8');
    const mark = readFileSync(join(data, 'demo.json'), 'utf8');

    const second = new Demo(data, '--no-history', '--seed', '7');
    expect(await second.ended).toBe(1);
    expect(second.out).toBe('');
    expect(second.log.trim()).toBe(
      `Another agent holds the data folder ${data}. Stop it first, or give this one another folder with --data.`,
    );

    expect(readFileSync(join(data, 'devices.json'), 'utf8')).toBe(devices);
    expect(readFileSync(join(data, 'demo.json'), 'utf8')).toBe(mark);
    // The door looks at its devices every second or two; a changed list would end the gateways.
    const then = await newestAt(first.page!);
    await until('samples of well after the second start', first, async () => {
      return (await newestAt(first.page!)) > then + 4_000;
    });
    expect(first.log).not.toMatch(/changed|"level":[45]0/);
    expect(await first.stop()).toBe(0);
  }, 120_000);

  test('while it makes its history, a second start refuses and leaves that alone', async () => {
    const data = join(parent, 'making');
    const making = (): string[] =>
      readdirSync(parent).filter((name) => name.startsWith('making.making-'));
    const first = new Demo(data);
    await until('its making', first, () => making().length === 1);
    const second = new Demo(data);
    expect(await second.ended).toBe(1);
    expect(second.log).toContain('is being made by another start');
    expect(second.out).toBe('');
    expect(making()).toEqual([`making.making-${first.child.pid}`]);
    // It goes on: asked to stop, it is there to hear it, and clears up behind itself.
    expect(first.child.exitCode).toBe(null);
    expect(await first.stop()).toBe(0);
    expect(making()).toEqual([]);
  }, 120_000);
});
