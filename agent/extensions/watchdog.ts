/**
 * A thread that sees whether own rules come back. Where they do not, nobody else in the process can
 * say so: it writes a note for the next start and ends the process.
 *
 * It looks at shared memory only, so that a call costs a few stores.
 */
import { Worker } from 'node:worker_threads';
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import { workerFile } from '../worker-file.ts';

/** What the process is ended with. Nothing else sends it; whoever supervises starts it again. */
export const endedBy = 'SIGALRM';

/** Places in the shared memory: the file's number (0 for none) and the word to end, in whole numbers of 32 bits; */
export const cell = { called: 0, end: 1 } as const;
/** … and what is being judged, in doubles behind them. */
export const mark = { at: 1, turn: 2 } as const;
const bytes = 24;

export interface WatchdogWork {
  readonly shared: SharedArrayBuffer;
  readonly folder: string;
  readonly stillMs: number;
}

export interface Named {
  readonly number: number;
  readonly extension: string;
}

export class Watchdog {
  private readonly folder: string;
  private readonly shared = new SharedArrayBuffer(bytes);
  private readonly cells = new Int32Array(this.shared);
  private readonly marks = new Float64Array(this.shared);
  private readonly numbers = new Map<string, number>();
  private worker: Worker | null = null;

  constructor(folder: string) {
    this.folder = folder;
  }

  /** A call begins; `at` NaN where nothing new is being judged. */
  enter(extension: string, at: EpochMs, turn: number): void {
    this.marks[mark.at] = at;
    this.marks[mark.turn] = turn;
    Atomics.store(this.cells, cell.called, this.numbers.get(extension) ?? this.name(extension));
  }

  leave(): void {
    Atomics.store(this.cells, cell.called, 0);
  }

  async close(): Promise<void> {
    Atomics.store(this.cells, cell.end, 1);
    Atomics.notify(this.cells, cell.end);
    await this.worker?.terminate();
  }

  private name(extension: string): number {
    this.worker ??= this.start();
    const number = this.numbers.size + 1;
    this.numbers.set(extension, number);
    this.worker.postMessage({ number, extension } satisfies Named);
    return number;
  }

  private start(): Worker {
    const { shared, folder } = this;
    const work: WatchdogWork = { shared, folder, stillMs: limits.extensionStillMs };
    const worker = new Worker(workerFile('./watchdog-worker.ts', import.meta.url), {
      workerData: work,
      name: 'watchdog',
    });
    worker.unref();
    return worker;
  }
}
