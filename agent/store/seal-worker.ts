/**
 * The thread that encodes a segment: it reads shared columns, answers once, and ends.
 */
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { encodeColumn } from './chunk.ts';
import type { OpenColumn } from './contract.ts';

export interface ColumnToSeal {
  readonly signal: number;
  readonly digits: number | null;
  readonly epoch: number;
  /** Its arrays lie in shared memory. */
  readonly column: OpenColumn;
}

/** On Linux this moves this thread only (setpriority(2), "C library/kernel differences"). */
setPriority(0, 10);

const columns: readonly ColumnToSeal[] = workerData;
const chunks = columns.flatMap(({ signal, digits, epoch, column }) =>
  encodeColumn(signal, digits, epoch, column),
);
const memory = chunks.flatMap(({ data, minutes }) => [data.buffer, minutes.buffer]);
parentPort?.postMessage(chunks, memory as ArrayBuffer[]);
