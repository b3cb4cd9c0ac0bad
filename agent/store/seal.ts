/**
 * Sealing: frozen columns become the chunks of a segment, encoded by a thread of their own.
 *
 * Always true: the frozen columns are only read, so after a failure they are whole and may be
 * sealed again; the thread lives for one segment and gives its memory back. The caller writes the
 * result in one transaction and then releases the frozen columns.
 */
import { Worker } from 'node:worker_threads';
import { AgentError } from '../errors.ts';
import { workerFile } from '../worker-file.ts';
import type { FrozenColumns } from './columns.ts';
import type { StoredSignal } from './contract.ts';
import type { ColumnToSeal } from './seal-worker.ts';
import type { EncodedChunk, EncodedSegment } from './segment.ts';

const failed = (cause: Error): AgentError =>
  new AgentError('STORE_SEAL_FAILED', { reason: cause.message }, cause);

/**
 * Encodes every frozen column off this thread. Rejects with AgentError STORE_SEAL_FAILED, which
 * names the cause; the frozen columns are unchanged then. `signal` ends the thread early.
 */
export function seal(
  frozen: FrozenColumns,
  signals: readonly StoredSignal[],
  signal?: AbortSignal,
): Promise<EncodedSegment> {
  const columns = columnsToSeal(frozen, signals);
  if (columns instanceof Error) return Promise.reject(failed(columns));
  const { promise, resolve, reject } = Promise.withResolvers<EncodedSegment>();
  const worker = new Worker(workerFile('./seal-worker.ts', import.meta.url), {
    workerData: columns,
    name: 'seal',
  });
  const stop = (): void => {
    reject(failed(new Error('it was stopped')));
    void worker.terminate();
  };
  if (signal?.aborted) stop();
  signal?.addEventListener('abort', stop, { once: true });
  worker.once('message', (chunks: EncodedChunk[]) => resolve({ ...frozen.span, chunks }));
  worker.once('messageerror', (error) => reject(failed(error)));
  worker.once('error', (error: Error) => reject(failed(error)));
  worker.once('exit', (code) => {
    signal?.removeEventListener('abort', stop);
    reject(failed(new Error(`its thread ended with code ${code} and gave no answer`)));
  });
  return promise;
}

function columnsToSeal(
  frozen: FrozenColumns,
  signals: readonly StoredSignal[],
): ColumnToSeal[] | Error {
  const byId = new Map(signals.map((each) => [each.id, each]));
  const columns: ColumnToSeal[] = [];
  for (const [epoch, set] of frozen.epochs.entries()) {
    for (const [id, column] of set.entries()) {
      if (column === undefined) continue;
      const stored = byId.get(id);
      if (stored === undefined)
        return new Error(`there are samples of a signal ${id}, which is not known`);
      columns.push({ signal: id, digits: stored.digits, epoch, column: column.filled() });
    }
  }
  return columns;
}
