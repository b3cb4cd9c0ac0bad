/** The thread that replays one of the two sites of a comparison, and says now and then how far it is. */
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { AlarmStories, type AlarmStory } from '#rules/alarm/alarm-story.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import type { ReplayEnd } from '../replay/replay.ts';
import { type ReplayJob, replayJob } from './replay-job.ts';

export interface Replayed {
  readonly stories: readonly AlarmStory[];
  /** Ids of its rules. */
  readonly rules: readonly string[];
  readonly units: Readonly<Record<string, string>>;
  readonly end: ReplayEnd;
}

export type CompareNews =
  | { readonly kind: 'progress'; readonly atMs: EpochMs }
  | { readonly kind: 'line'; readonly line: string }
  | { readonly kind: 'done'; readonly replayed: Replayed }
  /** The input or the data is at fault. */
  | { readonly kind: 'failed'; readonly line: string }
  | { readonly kind: 'fault'; readonly words: string };

const progressEveryMs = 500;

/** On Linux this moves this thread only (setpriority(2), "C library/kernel differences"). */
setPriority(0, 10);

const tell = (news: CompareNews): void => parentPort?.postMessage(news);

async function replayed(job: ReplayJob): Promise<Replayed> {
  const stories = new AlarmStories();
  let rules: readonly string[] = [];
  let units: Readonly<Record<string, string>> = {};
  let toldAt = performance.now();
  const end = await replayJob(job, {
    begin: (compiled) => {
      rules = compiled.rules.map((card) => card.id);
      units = Object.fromEntries(compiled.plan.signals.map(({ id, unit }) => [id, unit]));
    },
    emit: (effect) => stories.take(effect),
    damage: ({ reason, signal }) =>
      tell({ kind: 'line', line: `damaged: ${signal ?? 'some signals'}: ${reason}` }),
    complain: (line) => tell({ kind: 'line', line }),
    progress: (atMs) => {
      const now = performance.now();
      if (now - toldAt < progressEveryMs) return;
      toldAt = now;
      tell({ kind: 'progress', atMs });
    },
  });
  return { stories: stories.list(), rules, units, end };
}

try {
  tell({ kind: 'done', replayed: await replayed(workerData) });
} catch (error) {
  if (error instanceof AgentError) tell({ kind: 'failed', line: `${error.message} ${error.fix}` });
  else tell({ kind: 'fault', words: error instanceof Error ? (error.stack ?? '') : String(error) });
}
