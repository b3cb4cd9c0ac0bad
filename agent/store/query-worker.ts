/**
 * The thread that answers charts: its own read-only connection, a lower priority than judging.
 */
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { ReadOnlyStore } from './read-only.ts';
import { type SeriesAnswer, type SeriesRequest, seriesOf } from './series.ts';

export interface Question {
  readonly id: number;
  readonly request: SeriesRequest;
}

export type Answer =
  | { readonly id: number; readonly answer: SeriesAnswer }
  | { readonly id: number; readonly failed: string };

/** On Linux this moves this thread only (setpriority(2), "C library/kernel differences"). */
setPriority(0, 10);

let store: ReadOnlyStore | null = null;

function answer({ id, request }: Question): Answer {
  try {
    store ??= ReadOnlyStore.open(workerData);
    return { id, answer: seriesOf(store, request) };
  } catch (error) {
    // The next question opens the store anew: the file may have been set aside meanwhile.
    store?.close();
    store = null;
    return { id, failed: error instanceof Error ? error.message : String(error) };
  }
}

parentPort?.on('message', (question: Question) => parentPort?.postMessage(answer(question)));
