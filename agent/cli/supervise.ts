/**
 * `run` on a site with rules of its own: the agent is a process of its own below this one, which
 * starts it again where such a rule never came back and ended it.
 *
 * Always true: signals reach it, its end is this one's end, and nothing is left running.
 */
import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { endedBy } from '../extensions/watchdog.ts';

/** Set in the process below. */
const below = 'FOREBOND_SUPERVISED';

/** In the process below: true, and it is asked to stop where the one above is gone. */
export function isSupervised(): boolean {
  if (process.env[below] !== '1') return false;
  process.once('disconnect', () => process.kill(process.pid, 'SIGTERM'));
  process.channel?.unref();
  return true;
}

/** Settles with the exit code. */
export async function supervise(): Promise<number> {
  for (;;) {
    const { code, signal } = await once();
    if (signal !== endedBy) return signal === null ? (code ?? 70) : 128 + constants.signals[signal];
  }
}

interface End {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

function once(): Promise<End> {
  const line = [...process.execArgv, ...process.argv.slice(1)];
  const env = { ...process.env, [below]: '1' };
  const child = spawn(process.execPath, line, {
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
    env,
  });
  const { promise, resolve, reject } = Promise.withResolvers<End>();
  const pass = (signal: NodeJS.Signals): void => void child.kill(signal);
  // A terminal sends Ctrl-C to the whole group; stopping twice is stopping once.
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.on(signal, pass);
  child.once('error', reject);
  child.once('exit', (code, signal) => resolve({ code, signal }));
  return promise.finally(() => {
    for (const signal of signals) process.off(signal, pass);
  });
}
