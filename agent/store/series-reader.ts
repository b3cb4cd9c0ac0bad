/**
 * Charts without delaying an alarm: questions go to a thread and come back.
 *
 * Always true: every question is answered or refused, also when the thread dies; the next
 * question begins another.
 */
import { Worker } from 'node:worker_threads';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { workerFile } from '../worker-file.ts';
import type { Answer, Question } from './query-worker.ts';
import type { SeriesAnswer, SeriesRequest } from './series.ts';

interface Waiting {
  resolve(answer: SeriesAnswer): void;
  reject(error: Error): void;
}

export class SeriesReader {
  private readonly folder: string;
  private readonly file: URL;
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();
  private lastId = 0;

  /** `file`: what the thread runs. */
  constructor(folder: string, file = workerFile('./query-worker.ts', import.meta.url)) {
    this.folder = folder;
    this.file = file;
  }

  /** Rejects with AgentError: STORE_READER_BUSY, STORE_READER_FAILED. */
  series(request: SeriesRequest): Promise<SeriesAnswer> {
    if (this.waiting.size >= limits.seriesWaitingRequestsMax) {
      return Promise.reject(new AgentError('STORE_READER_BUSY', { waiting: this.waiting.size }));
    }
    const { promise, resolve, reject } = Promise.withResolvers<SeriesAnswer>();
    this.lastId += 1;
    this.worker ??= this.begin();
    const question: Question = { id: this.lastId, request };
    this.worker.postMessage(question);
    this.waiting.set(this.lastId, { resolve, reject });
    return promise;
  }

  /** Ends the thread; what still waits is refused. */
  async close(): Promise<void> {
    const { worker } = this;
    this.worker = null;
    this.refuseAll(new Error('the store is closing'));
    await worker?.terminate();
  }

  private begin(): Worker {
    const worker = new Worker(this.file, { workerData: this.folder, name: 'series' });
    worker.on('message', (answer: Answer) => this.answered(answer));
    const ended = (error: Error): void => {
      if (this.worker !== worker) return;
      this.worker = null;
      this.refuseAll(error);
    };
    worker.once('error', ended);
    worker.once('exit', (code) => ended(new Error(`its thread ended with code ${code}`)));
    return worker;
  }

  private answered(answer: Answer): void {
    const waiting = this.waiting.get(answer.id);
    this.waiting.delete(answer.id);
    if ('answer' in answer) waiting?.resolve(answer.answer);
    else waiting?.reject(new AgentError('STORE_READER_FAILED', { reason: answer.failed }));
  }

  private refuseAll(cause: Error): void {
    for (const { reject } of this.waiting.values()) {
      reject(new AgentError('STORE_READER_FAILED', { reason: cause.message }, cause));
    }
    this.waiting.clear();
  }
}
