/**
 * A site with rules of its own is compiled on a thread first: a file that never comes back is found
 * out there, where it can be ended, and not in the agent.
 */
import { Worker } from 'node:worker_threads';
import { limits } from '../../limits.ts';
import { workerFile } from '../../worker-file.ts';
import type { SiteSource } from '../revision.ts';

export interface ProbeWork {
  readonly source: SiteSource;
  /** Which of the files, in the order of their names, is being called; -1 for none. */
  readonly called: SharedArrayBuffer;
}

export interface ProbeFault {
  /** The file, as the site file names it; null where none of them was being called. */
  readonly name: string | null;
  readonly problem: string;
  readonly fix: string;
}

const findLoop = 'Look for a loop without an end in it.';

/** The time was over while no file was being called. */
const busy = (withinMs: number): Omit<ProbeFault, 'name'> => ({
  problem: `could not be tried within ${withinMs / 1_000} s, and none of them held it up`,
  fix: 'The machine is busy, or the site is large: try again.',
});

/** null where all of it comes back. Its kinds are loaded, take their settings and begin. */
export async function probe(
  source: SiteSource,
  withinMs: number = limits.extensionStillMs,
): Promise<ProbeFault | null> {
  const called = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const cell = new Int32Array(called).fill(-1);
  const work: ProbeWork = { source, called };
  const worker = new Worker(workerFile('./probe-worker.ts', import.meta.url), {
    workerData: work,
    name: 'probe',
    stdout: true,
    stderr: true,
  });
  const { promise, resolve, reject } = Promise.withResolvers<Omit<ProbeFault, 'name'> | null>();
  const endless = `does not come back: over ${withinMs / 1_000} s`;
  let timer: NodeJS.Timeout | undefined;
  worker.once('online', () => {
    timer = setTimeout(() => {
      const called = Atomics.load(cell, 0) >= 0;
      resolve(called ? { problem: endless, fix: findLoop } : busy(withinMs));
    }, withinMs);
  });
  worker.once('message', () => resolve(null));
  worker.once('error', (error) =>
    Atomics.load(cell, 0) < 0
      ? reject(error)
      : resolve({ problem: `fails: ${error.message}`, fix: 'Mend what it does there.' }),
  );
  worker.once('exit', () =>
    resolve({ problem: 'ends the process', fix: 'Take process.exit out of it.' }),
  );
  try {
    const problem = await promise;
    if (problem === null) return null;
    const name = Object.keys(source.extensions ?? {}).sort()[Atomics.load(cell, 0)];
    return { name: name ?? null, ...problem };
  } finally {
    clearTimeout(timer);
    await worker.terminate();
  }
}
