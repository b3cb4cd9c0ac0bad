/**
 * A process that opens a store, commits four turns and stops, on a disk that may fail.
 *
 * Says on its own line: `tries N` before a turn's first attempt, `N` once it is committed, and a
 * refusal's code. Anything but a refusal by name ends it with a stack trace.
 */
import { writeSync } from 'node:fs';
import { AgentError } from '#agent/errors.ts';
import { openStore } from '#agent/store/store.ts';
import type { Store } from '#agent/store/store-types.ts';
import { noted, turnOf } from '#tests/agent/store/turns.ts';

const [folder = ''] = process.argv.slice(2);
const say = (line: string | number): void => {
  writeSync(1, `${line}\n`);
};

/** True if the disk let it; a turn is tried three times, as a beat would try again. */
function attempt(work: () => void, times: number): boolean {
  for (let time = 0; time < times; time += 1) {
    try {
      work();
      return true;
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      say(error.code);
    }
  }
  return false;
}

function run(store: Store): void {
  if (!attempt(() => store.startRun(1_000), 3)) return;
  for (let turn = 0; turn < 4; turn += 1) {
    const seq = store.lastSeq + 1;
    say(`tries ${seq}`);
    if (!attempt(() => store.commit(turnOf(seq, [noted(seq)])), 3)) return;
    say(seq);
    attempt(() => store.note(), 1);
  }
  attempt(() => store.stopRun(20_000), 3);
}

let store: Store | null = null;
attempt(() => {
  store = openStore(folder, { now: Date.now, ballastBytes: 65_536 });
}, 1);
if (store !== null) {
  const open: Store = store;
  run(open);
  attempt(() => open.close(), 1);
}
say('end');
