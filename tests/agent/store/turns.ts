/**
 * The turns the store's tests write, free of the test runner: child processes write them too.
 */
import { inputKind, type LedgerBody, type Turn } from '#agent/store/contract.ts';
import type { Store } from '#agent/store/store-types.ts';

/** The body every test row carries: it says its own number, so that a mix-up shows. */
export const bodyOf = (seq: number): Buffer => Buffer.from(`row ${seq} ${'x'.repeat(seq % 200)}`);

/** One beat of one input row, with what it put into the ledger. */
export function turnOf(seq: number, ledger: readonly LedgerBody[] = []): Turn {
  const judged = 10_000 + seq * 20;
  return {
    inputs: [{ seq, judged, kind: inputKind.samples, body: bodyOf(seq) }],
    ledger,
    occurrences: [],
    holds: [],
    judgedTo: judged,
    aliveAt: judged,
  };
}

export const noted = (seq: number): LedgerBody => ({ type: 'test', seq });

/** All rows of the input log, each checked to be what `turnOf` wrote. */
export function storedSeqs(store: Store): number[] {
  const seqs: number[] = [];
  const rows = store.read.inputsAfter(0, (row) => {
    throw new Error(`row ${row.seq} is damaged`);
  });
  for (const row of rows) {
    if (!bodyOf(row.seq).equals(row.body)) throw new Error(`row ${row.seq} holds another body`);
    seqs.push(row.seq);
  }
  return seqs;
}

export const countTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);
