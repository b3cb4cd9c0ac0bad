/** Processes of a benchmark: started, heard, ended. */
import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** `env`: beside this process's own. */
export const child = (
  name: string,
  words: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
): ChildProcess =>
  fork(fileURLToPath(new URL(name, import.meta.url)), words, { env: { ...process.env, ...env } });

/** The next message of a child. Rejects when it ends before. */
export function heard<T>(from: ChildProcess): Promise<T> {
  return new Promise((resolve, reject) => {
    const ended = (code: number | null): void =>
      reject(new Error(`a process of the benchmark ended with ${code}`));
    from.once('exit', ended);
    from.once('message', (message) => {
      from.off('exit', ended);
      resolve(message as T);
    });
  });
}

/** Lets a child finish by itself. */
export async function released(from: ChildProcess): Promise<void> {
  const gone = new Promise((resolve) => from.once('exit', resolve));
  from.disconnect();
  await gone;
}
