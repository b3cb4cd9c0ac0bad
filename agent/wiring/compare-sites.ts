/** Two sites over the same data, each in a thread of its own: neither waits for the other. */
import { Worker } from 'node:worker_threads';
import type { EpochMs } from '#rules/signal/sample.ts';
import { workerFile } from '../worker-file.ts';
import type { CompareNews, Replayed } from './compare-worker.ts';
import type { ReplayJob } from './replay-job.ts';

export type { Replayed } from './compare-worker.ts';

export interface CompareSinks {
  /** How far the one that is behind is. */
  readonly progress: (atMs: EpochMs) => void;
  /** One line for people; said by both, it is said once. */
  readonly complain: (line: string) => void;
}

/** What could not be read, in words for people: no fault of the program. */
export class ReplayFailed extends Error {}

/** Rejects with ReplayFailed, or with the fault of a thread. */
export async function compareSites(
  jobs: readonly [ReplayJob, ReplayJob],
  sinks: CompareSinks,
): Promise<[Replayed, Replayed]> {
  const said = new Set<string>();
  const complain = (line: string): void => {
    if (said.has(line)) return;
    said.add(line);
    sinks.complain(line);
  };
  const at: [EpochMs, EpochMs] = [0, 0];
  const stop = new AbortController();
  const replay = (side: 0 | 1): Promise<Replayed> =>
    inThread(jobs[side], stop.signal, complain, (atMs) => {
      at[side] = atMs;
      if (at[0] > 0 && at[1] > 0) sinks.progress(Math.min(...at));
    });
  try {
    return await Promise.all([replay(0), replay(1)]);
  } finally {
    stop.abort();
  }
}

function inThread(
  job: ReplayJob,
  stop: AbortSignal,
  complain: (line: string) => void,
  progress: (atMs: EpochMs) => void,
): Promise<Replayed> {
  const { promise, resolve, reject } = Promise.withResolvers<Replayed>();
  const file = workerFile('./compare-worker.ts', import.meta.url);
  const worker = new Worker(file, { workerData: job, name: 'replay' });
  stop.addEventListener('abort', () => void worker.terminate());
  worker.on('message', (news: CompareNews) => {
    if (news.kind === 'progress') progress(news.atMs);
    else if (news.kind === 'line') complain(news.line);
    else if (news.kind === 'done') resolve(news.replayed);
    else if (news.kind === 'failed') reject(new ReplayFailed(news.line));
    else reject(new Error(news.words));
  });
  worker.once('error', reject);
  worker.once('exit', (code) => reject(new Error(`the thread ended with code ${code}`)));
  return promise;
}
