/**
 * The thread that looks at the shared memory: the same file called while the same thing is judged,
 * look after look, does not come back.
 *
 * Looks are counted and not the clock, so that a computer that slept is no rule that hangs.
 */
import { writeSync } from 'node:fs';
import { parentPort, receiveMessageOnPort, workerData } from 'node:worker_threads';
import { writeStopped } from './stopped.ts';
import { cell, endedBy, mark, type Named, type WatchdogWork } from './watchdog.ts';

const { shared, folder, stillMs }: WatchdogWork = workerData;
const cells = new Int32Array(shared);
const marks = new Float64Array(shared);
const looks = 10;
const names = new Map<number, string>();

function meet(): void {
  for (;;) {
    const received: { readonly message: Named } | undefined = receiveMessageOnPort(parentPort!);
    if (received === undefined) return;
    names.set(received.message.number, received.message.extension);
  }
}

function end(called: number): void {
  meet();
  const extension = names.get(called) ?? '';
  const [at, turn] = [marks[mark.at]!, marks[mark.turn]!];
  const why = `it did not come back within ${stillMs / 1_000} s`;
  try {
    writeStopped(folder, { extension, why, at: Number.isNaN(at) ? null : at, turn });
  } finally {
    const time = new Date().toISOString();
    const msg = 'own rules did not come back; the agent ends, and starts again without them';
    writeSync(2, `${JSON.stringify({ level: 60, time, extension, why, msg })}\n`);
    process.kill(process.pid, endedBy);
  }
}

let still = 0;
let last: readonly number[] = [];
while (Atomics.wait(cells, cell.end, 0, stillMs / looks) === 'timed-out') {
  const called = Atomics.load(cells, cell.called);
  const now = [called, marks[mark.at]!, marks[mark.turn]!];
  still = called !== 0 && now.every((each, i) => Object.is(each, last[i])) ? still + 1 : 0;
  last = now;
  if (still === looks) end(called);
}
