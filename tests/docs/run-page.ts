/**
 * Runs the shell blocks of one documentation page, in order, as a reader would.
 *
 * Each page gets a folder of its own that looks like the top of the project: everything in it is
 * a link, save `data`, so that what the commands write stays there. The ports that the pages
 * name are replaced by free ones, so that a page can run beside a real agent.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Block, missingLine } from './blocks.ts';

/** Ports as the pages name them. */
const namedPorts = ['8620', '1883'] as const;
const stepMsMax = 180_000;

async function freePort(): Promise<string> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('no port was given');
  return String(address.port);
}

interface Run {
  readonly child: ChildProcess;
  readonly output: () => string;
  readonly ended: Promise<number | null>;
}

function start(script: string, folder: string, ports: ReadonlyMap<string, string>): Run {
  let text = script;
  for (const [named, free] of ports)
    text = text.replaceAll(new RegExp(`\\b${named}\\b`, 'g'), free);
  const child = spawn('bash', ['-euo', 'pipefail', '-c', text], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'pipe'],
    detached: true, // a group of its own, so that all of it can be ended
    env: {
      ...process.env,
      FOREBOND_HTTP: `127.0.0.1:${ports.get('8620')}`,
      FOREBOND_MQTT: `127.0.0.1:${ports.get('1883')}`,
    },
  });
  const pieces: string[] = [];
  child.stdout.on('data', (piece: Buffer) => pieces.push(piece.toString('utf8')));
  child.stderr.on('data', (piece: Buffer) => pieces.push(piece.toString('utf8')));
  const ended = once(child, 'close').then(([code]) => code as number | null);
  return { child, output: () => pieces.join(''), ended };
}

const within = <T>(promise: Promise<T>, otherwise: () => string): Promise<T> => {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(otherwise())), stepMsMax);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
};

async function ready(run: Run): Promise<void> {
  const said = new Promise<void>((resolve, reject) => {
    const look = (): void => {
      if (/^ready\b/m.test(run.output())) resolve();
    };
    run.child.stdout?.on('data', look);
    run.child.on('close', (code) => {
      reject(new Error(`it ended with ${code} and never said ready:\n${run.output()}`));
    });
  });
  await within(said, () => `it did not say ready in ${stepMsMax} ms:\n${run.output()}`);
}

async function runBlock(block: Block, run: Run): Promise<void> {
  if (block.treatment === 'stays') await ready(run);
  else {
    const code = await within(run.ended, () => `it did not end in ${stepMsMax} ms`);
    if ((code === 0) === (block.treatment === 'fails')) {
      throw new Error(`it ended with ${code}:\n${run.output()}`);
    }
  }
  const missing = missingLine(block.shown, run.output());
  if (missing !== null) throw new Error(`the page shows "${missing}"; it said:\n${run.output()}`);
}

/** Runs the blocks; throws with the line of the page at the first that does not do what it says. */
export async function runPage(top: string, path: string, blocks: readonly Block[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-page-'));
  for (const name of readdirSync(top)) {
    if (name !== 'data') symlinkSync(join(top, name), join(folder, name));
  }
  const ports = new Map<string, string>();
  for (const named of namedPorts) ports.set(named, await freePort());
  const runs: Run[] = [];
  try {
    for (const block of blocks) {
      if (block.treatment === 'by-hand') continue;
      const run = start(block.script, folder, ports);
      runs.push(run);
      await runBlock(block, run).catch((error: Error) => {
        throw new Error(`${path}:${block.line}: ${block.script}\n${error.message}`);
      });
    }
  } finally {
    await endAll(runs);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Asks what still runs to end, the last started first, as Ctrl-C would. */
async function endAll(runs: readonly Run[]): Promise<void> {
  for (const run of [...runs].reverse()) {
    if (run.child.exitCode !== null || run.child.pid === undefined) continue;
    process.kill(-run.child.pid, 'SIGINT');
    await within(run.ended, () => `it ran on after Ctrl-C:\n${run.output()}`);
  }
}
