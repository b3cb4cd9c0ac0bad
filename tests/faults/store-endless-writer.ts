/**
 * A process that commits turns until it is killed, saying each one's number once it is on disk.
 *
 * Arguments: the data folder, and how many turns to commit at most.
 */
import { writeSync } from 'node:fs';
import { openStore } from '#agent/store/store.ts';
import { noted, turnOf } from '#tests/agent/store/turns.ts';

const [folder = '', most = '1000000'] = process.argv.slice(2);
const store = openStore(folder, { now: Date.now, ballastBytes: 0 });
store.startRun(1_000);
const last = store.lastSeq + Number(most);
writeSync(1, `${store.lastSeq}\n`);
while (store.lastSeq < last) {
  const seq = store.lastSeq + 1;
  store.commit(turnOf(seq, [noted(seq)]));
  writeSync(1, `${seq}\n`);
  if (seq % 10 === 0) store.note();
}
store.stopRun(2_000);
store.close();
writeSync(1, 'stopped\n');
