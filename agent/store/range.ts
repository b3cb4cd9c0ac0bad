/**
 * Samples of chosen signals over a span of their own time, as an export wants them.
 *
 * Always true: in the order (at, signal by name, arrival), late data in its place; sealed and open
 * are of one moment, whatever a running agent seals meanwhile; no read transaction lasts longer
 * than fetching some rows. Of the open hour there is what the log holds, and of derived signals what
 * `openDerived` makes anew in the same read transaction.
 */
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { orderBy } from './chunk.ts';
import { Column } from './columns.ts';
import type { StoredSignal } from './contract.ts';
import { Merge, type MergeSource } from './merge.ts';
import { ReadOnlyStore } from './read-only.ts';
import { loadOpenLog } from './stretch.ts';
import { SweptSignal } from './swept-signal.ts';

export interface RangeRequest {
  /** Names; empty: every signal there is. */
  readonly signals: readonly string[];
  readonly sinceMs: EpochMs;
  /** Not included. */
  readonly untilMs: EpochMs;
}

export type RangeItem =
  /** `batch.signal` is the place in `signals`; holds until the next item is asked for. */
  | {
      readonly kind: 'samples';
      readonly batch: SampleBatch;
      readonly signals: readonly StoredSignal[];
    }
  /** Could not be read and is left out; null where it may have been any signal. */
  | {
      readonly kind: 'damage';
      readonly signal: string | null;
      readonly fromMs: EpochMs;
      readonly toMs: EpochMs;
      readonly reason: string;
    };

const sliceMs = limits.sealEveryMs;

/** Derived samples that are not sealed yet, by the id of their signal. */
export type OpenDerived = (folder: string, store: ReadOnlyStore) => ReadonlyMap<number, Column>;
const none: OpenDerived = () => new Map();

/**
 * Without `openDerived` derived signals begin with the last seal.
 * Throws AgentError: STORE_SIGNAL_UNKNOWN, and as opening a store for reading does.
 */
export function* readRange(
  folder: string,
  request: RangeRequest,
  openDerived = none,
): Generator<RangeItem> {
  const store = ReadOnlyStore.open(folder);
  try {
    yield* rangeOf(store, request, () => openDerived(folder, store));
  } finally {
    store.close();
  }
}

function* rangeOf(
  store: ReadOnlyStore,
  request: RangeRequest,
  openDerived: () => ReadonlyMap<number, Column>,
): Generator<RangeItem> {
  const { sinceMs, untilMs } = request;
  const { signals, swept, damage } = store.atOnce(() => begin(store, request, openDerived));
  for (const each of damage) yield { kind: 'damage', signal: null, ...each };
  const merge = new Merge('at');
  const sources: (MergeSource & { readonly column: Column })[] = signals.map((_, index) => ({
    index,
    column: new Column(),
    next: 0,
  }));
  for (let endMs = sinceMs; ; ) {
    const startMs = swept.reduce((next, signal) => Math.min(next, signal.nextMs()), untilMs);
    const fromMs = Math.max(endMs, startMs);
    if (fromMs >= untilMs) return;
    endMs = Math.min(untilMs, fromMs + sliceMs);
    for (const [i, signal] of swept.entries()) {
      const { column } = sources[i]!;
      column.count = 0;
      sources[i]!.next = 0;
      const { name } = signals[i]!;
      for (const each of signal.take(fromMs, endMs, column)) {
        yield { kind: 'damage', signal: name, ...each };
      }
      orderBy('at', column);
    }
    for (const batch of merge.before(sources, endMs)) yield { kind: 'samples', batch, signals };
  }
}

/** One moment of the store: which segments there are, and all that is not sealed. */
function begin(
  store: ReadOnlyStore,
  { signals: names, sinceMs, untilMs }: RangeRequest,
  openDerived: () => ReadonlyMap<number, Column>,
) {
  const all = store.signals();
  const unknown = names.find((name) => !all.some((signal) => signal.name === name));
  if (unknown !== undefined) throw new AgentError('STORE_SIGNAL_UNKNOWN', { name: unknown });
  const signals = names.length === 0 ? all : all.filter(({ name }) => names.includes(name));
  const row = store.db.prepare('SELECT max(id) AS id FROM segment').get();
  const lastSegment = Number(row?.id ?? 0);
  const open = new Map(signals.map((signal) => [signal.id, new Column()]));
  const loaded = loadOpenLog(store, store.sealedSeq(), (_, id) => open.get(id) ?? null);
  // Judging again is worth it only where somebody asks for what it makes.
  const derived = signals.some(({ kind }) => kind === 'derived') ? openDerived() : null;
  const swept = signals.map(({ id }) => {
    const column = open.get(id)!;
    const made = derived?.get(id);
    if (made !== undefined) column.append(made);
    orderBy('at', column);
    return new SweptSignal(store, id, { sinceMs, untilMs, lastSegment }, column);
  });
  const damage = loaded.damage
    .filter(({ fromMs, toMs }) => toMs >= sinceMs && fromMs < untilMs)
    .map(({ fromMs, toMs, reason }) => ({ fromMs, toMs, reason }));
  return { signals, swept, damage };
}
