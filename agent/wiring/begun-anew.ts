/**
 * What stood before, where the engine knows nothing of it any more: an alarm that nobody follows is
 * closed and says why; a hold stands on, since only a person may lift it.
 */
import type { Engine } from '#rules/engine.ts';
import type { Command, Input } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { KeptHold } from '../alarms/desk.ts';
import { inputKind } from '../store/contract.ts';
import type { StoreReader } from '../store/store-types.ts';
import type { Core } from './core.ts';
import type { CoreOptions } from './core-options.ts';
import { begunAnewWords } from './finding-words.ts';
import type { SiteAssumed } from './recover.ts';

/** The revision kept for a row of the log: the newest from before it. */
export function revisionFor(read: StoreReader, seq: number): string | null {
  return read.siteRevisions().findLast(({ firstSeq }) => firstSeq <= seq)?.hash ?? null;
}

/** The row that named the site could not be read: which one was taken stands in the ledger. */
export function noteAssumed(core: Core, assumed: SiteAssumed, options: CoreOptions): void {
  const { seq, revision } = assumed;
  const words = `Record ${seq} of the input log, which named the site, could not be read. The revision kept for it was taken, and what follows was judged under that.`;
  core.record({ type: 'site-assumed', at: options.clock.wallMs(), seq, revision, words });
  options.warn({ seq, revision }, words);
}

export function noteBegunAnew(core: Core, options: CoreOptions): void {
  core.record({ type: 'begun-anew', at: options.clock.wallMs(), words: begunAnewWords });
  options.warn({ lastSeq: core.store.lastSeq }, begunAnewWords);
}

/** Why an alarm that stood is closed. */
const anewReason = 'judging began anew';
const againReason = 'judged again from the record, it does not stand';

/** Closes each open occurrence that no alarm of the engine stands for; where none runs, none does. */
export function closeUnfollowed(core: Core, begunAnew: boolean): void {
  const reason = begunAnew ? anewReason : againReason;
  const { desk, journal, live, clock } = core;
  const engine = live.running;
  const at = engine?.now ?? clock.now();
  const followed = new Set(
    engine?.present.alarms.list.flatMap(({ state, occurrence, lastOccurrence }) => [
      occurrence,
      ...(state === 'normal' ? [] : [lastOccurrence]),
    ]),
  );
  for (const { id, rule, state } of desk.open()) {
    if (followed.has(id)) continue;
    const row = desk.close(id, at, reason);
    if (row === null) continue;
    const ledger = {
      type: 'closed-unfollowed',
      ...{ at, occurrence: id, rule, from: state, reason },
    };
    journal.entry({ ledger, occurrences: [row], holds: [] });
  }
}

/** The holds on disk go into an engine that begins: each keeps its id, and no new one gets one of theirs. */
export function carryHolds(core: Core, engine: Engine, bodyOf: (input: Input) => Uint8Array): void {
  for (const command of carriedHolds(core.store.read, engine.now + 1)) {
    core.journal.row(command.judged, inputKind.command, bodyOf(command), false);
    engine.offer(command);
  }
}

function carriedHolds(read: StoreReader, judged: EpochMs): Command[] {
  const open = read.openHolds();
  if (open.length === 0) return [];
  const count = Math.max(...read.holds().map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0)));
  return open.map(({ detail }) => {
    const { id, what, item, by, reason, since, occurrence } = JSON.parse(detail) as KeptHold;
    const carried = { id, since, occurrence, count };
    return { kind: 'command', judged, verb: 'hold', what, item, by, reason, carried };
  });
}
