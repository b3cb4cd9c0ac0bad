/**
 * Derived samples of the hour that is not sealed yet: they stand in no row of the log, so what is open
 * is judged again from the last seal, as a start does, and nothing is written.
 */
import type { Plan } from '#rules/plan/plan.ts';
import type { SampleBatch } from '#rules/signal/sample.ts';
import { Column } from '../store/columns.ts';
import type { ReadOnlyStore } from '../store/read-only.ts';
import { readRecord } from '../store/reader.ts';
import { storeReader } from '../store/store-reader.ts';
import { revisionFor } from './begun-anew.ts';
import { planOfText } from './plan-book.ts';
import { recover } from './recover.ts';

/** By the stored id of the signal. Empty where nothing is open, or nobody knows under which site it was judged. */
export function openDerived(folder: string, store: ReadOnlyStore): ReadonlyMap<number, Column> {
  const read = storeReader(store.db);
  const derived = new Map<number, Column>();
  const stored = new Map(read.signals().map(({ id, name }) => [name, id]));
  const plans = new Map<string, Plan>();
  const planOf = (revision: string): Plan => {
    const known = plans.get(revision);
    if (known !== undefined) return known;
    const text = read.siteRevision(revision)?.text;
    if (text === undefined) throw new Error(`nobody kept the site revision ${revision}`);
    const plan = planOfText(text);
    plans.set(revision, plan);
    return plan;
  };
  let ids: number[] = [];
  let indexOf: ReadonlyMap<string, number> = new Map();
  const rederived = (batch: SampleBatch): void => {
    const { signal, at, judged, value, quality, flags } = batch;
    for (let i = 0; i < batch.count; i += 1) {
      const id = ids[signal[i]!]!;
      const column = derived.get(id) ?? new Column();
      derived.set(id, column);
      column.push(at[i]!, judged[i]!, value[i]!, quality[i]!, flags[i]!);
    }
  };
  const nothing = (): void => undefined;
  recover(
    {
      read,
      sealedSeq: store.sealedSeq(),
      recordAfter: (fromSeq) =>
        undamaged(readRecord(folder, { fromSeq, indexOf: ({ name }) => indexOf.get(name) ?? -1 })),
      planOf,
      revisionFor: (seq) => revisionFor(read, seq),
      lay: ({ signals }) => {
        ids = signals.map(({ id }) => stored.get(id) ?? -1);
        indexOf = new Map(signals.map(({ id }, i) => [id, i]));
      },
      indexById: () => {
        const index = new Int32Array(Math.max(0, ...stored.values()) + 1).fill(-1);
        for (const [i, id] of ids.entries()) if (id >= 0) index[id] = i;
        return index;
      },
      remember: nothing,
      rederived,
      rebased: nothing,
      damaged: nothing,
    },
    store.judgedTo() ?? 0,
    nothing,
  );
  derived.delete(-1);
  return derived;
}

function* undamaged(items: ReturnType<typeof readRecord>) {
  for (const item of items) if (item.kind !== 'damage') yield item;
}
