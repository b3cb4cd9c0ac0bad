/**
 * A whole agent in a process of its own, as people run it: on a site, on free ports, with devices
 * that publish to it.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connectAsync, type MqttClient } from 'mqtt';
import { onTestFinished } from 'vitest';
import { stringify } from 'yaml';
import { deviceAdd } from '#agent/cli/device.ts';

const root = join(import.meta.dirname, '..');
export const agentMain = join(root, 'agent', 'cli', 'main.ts');
/** Compiled code is kept here, so that the second start of many takes a fraction of the first. */
const compileCache = join(root, 'node_modules', '.cache', 'forebond', 'compiled');

export interface AgentStart {
  /** A site file's path, or a site that is written to one. */
  readonly site: string | object;
  readonly folder: string;
  readonly clock?: 'wall' | 'samples';
  readonly words?: readonly string[];
  /** Another program that prints the same line; it gets `words` alone. */
  readonly program?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Give up on `ready` after so long; default 60 s. */
  readonly readyWithinMs?: number;
}

export interface AgentEnd {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface AgentProcess {
  readonly page: string;
  readonly mqtt: string;
  readonly folder: string;
  readonly pid: number;
  /** What it has printed so far. */
  stdout(): string;
  /** What it has logged so far. */
  stderr(): string;
  /** SIGTERM, and its end. */
  stop(): Promise<AgentEnd>;
  /** SIGKILL, and its end. */
  kill(): Promise<AgentEnd>;
  /** Where one is that says `ready` once more, after it was started again. */
  readyAgain(withinMs?: number): Promise<Pick<AgentProcess, 'page' | 'mqtt' | 'folder'>>;
  /** Its end, whatever brings it. */
  readonly ended: Promise<AgentEnd>;
}

/** A folder of one test's own, removed when the test is over. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-agent-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A site object as a file of its own below `folder`. */
export function siteFile(folder: string, site: object): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'site.yaml');
  writeFileSync(path, stringify(site));
  return path;
}

/** Words of the command line that runs an agent on free ports. */
export function runWords(start: AgentStart): string[] {
  const { site, folder } = start;
  const file = typeof site === 'string' ? site : siteFile(`${folder}.site`, site);
  const words = ['run', '--site', file, '--data', folder];
  words.push('--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0', '--clock', start.clock ?? 'wall');
  return [...words, ...(start.words ?? [])];
}

function spawnForebond(
  words: readonly string[],
  env: Readonly<Record<string, string>> = {},
  program = agentMain,
) {
  const child = spawn(process.execPath, ['--conditions=forebond-source', program, ...words], {
    stdio: ['pipe', 'pipe', 'pipe'],
    env: { ...process.env, NODE_COMPILE_CACHE: compileCache, ...env },
  });
  const said = { stdout: '', stderr: '' };
  child.stdout.on('data', (bytes) => {
    said.stdout += String(bytes);
  });
  child.stderr.on('data', (bytes) => {
    said.stderr += String(bytes);
  });
  const ended = once(child, 'close').then(
    ([code, signal]): AgentEnd => ({ code, signal, ...said }),
  );
  return { child, said, ended };
}

/** One command to its end, with `input` on its standard input. */
export function forebond(
  words: readonly string[],
  input = '',
  env: Readonly<Record<string, string>> = {},
): Promise<AgentEnd> {
  const { child, ended } = spawnForebond(words, env);
  child.stdin.end(input);
  return ended;
}

/** Starts an agent and waits until it is ready. Throws with its words where it does not get there. */
export async function startAgentProcess(start: AgentStart): Promise<AgentProcess> {
  const words = start.program === undefined ? runWords(start) : (start.words ?? []);
  const { child, said, ended } = spawnForebond(words, start.env, start.program);
  child.stdin.end();
  try {
    onTestFinished(() => void child.kill('SIGKILL'));
  } catch {
    // Outside a test, whoever started it ends it.
  }
  const ready = await readyLine(child, said, start.readyWithinMs ?? 60_000);
  const [, page, mqtt] = ready;
  const end = (signal: NodeJS.Signals): Promise<AgentEnd> => {
    child.kill(signal);
    return ended;
  };
  return {
    page: page!,
    mqtt: mqtt!,
    folder: start.folder,
    pid: child.pid!,
    stdout: () => said.stdout,
    readyAgain: async (withinMs = 40_000) => {
      const [, again, door] = await readyLine(child, said, withinMs, 1);
      return { page: again!, mqtt: door!, folder: start.folder };
    },
    stderr: () => said.stderr,
    stop: () => end('SIGTERM'),
    kill: () => end('SIGKILL'),
    ended,
  };
}

function readyLine(
  child: ChildProcess,
  said: { readonly stdout: string; readonly stderr: string },
  withinMs: number,
  /** How many such lines came before it. */
  before = 0,
): Promise<RegExpExecArray> {
  const { promise, resolve, reject } = Promise.withResolvers<RegExpExecArray>();
  const look = (): void => {
    const found = [...said.stdout.matchAll(/^ready {2}page (\S+) {2}mqtt (\S+) {2}data /gm)];
    if (found[before] !== undefined) resolve(found[before]);
  };
  const timer = setTimeout(() => {
    child.kill('SIGKILL');
    reject(new Error(`not ready within ${withinMs} ms: ${said.stdout}${said.stderr}`));
  }, withinMs);
  child.stdout!.on('data', look);
  look();
  child.once('close', (code, signal) =>
    reject(
      new Error(`ended (${code ?? signal}) before it was ready: ${said.stdout}${said.stderr}`),
    ),
  );
  return promise.finally(() => clearTimeout(timer));
}

export interface TestDevice {
  readonly username: string;
  readonly password: string;
}

/** A device of this folder that may publish (and read) as given; its secret is made here. */
export async function addDevice(
  folder: string,
  user: string,
  rights: { readonly publish?: readonly string[]; readonly read?: readonly string[] } = {},
): Promise<TestDevice> {
  const { publish = ['#'], read = [] } = rights;
  const { secret } = await deviceAdd(folder, { user, publish, read });
  return { username: user, password: secret! };
}

/** A client of the agent's door, connected; it does not connect again by itself. */
export const connectDevice = (url: string, device: TestDevice): Promise<MqttClient> =>
  connectAsync(url, { ...device, reconnectPeriod: 0, connectTimeout: 10_000 });

/** Publishes with QoS 1 (or as asked); resolves once it is acknowledged. */
export const published = async (
  client: MqttClient,
  topic: string,
  payload: string | Buffer | object,
  qos: 0 | 1 | 2 = 1,
): Promise<void> => {
  const text =
    typeof payload === 'string' || Buffer.isBuffer(payload) ? payload : JSON.stringify(payload);
  await client.publishAsync(topic, text, { qos });
};
