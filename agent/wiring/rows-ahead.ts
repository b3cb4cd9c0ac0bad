/** What of the open log, besides samples, lies ahead of a row: how far the samples before it may be judged. */
import type { EpochMs } from '#rules/signal/sample.ts';
import { type InputRow, inputKind } from '../store/contract.ts';

export interface Ahead {
  /** The first moment of this and the inputs behind it, as far as the clock's next step back. */
  readonly soonest: EpochMs;
}

/** Last first: the one at the end is the next. */
export function othersAhead(rows: Iterable<InputRow>): Ahead[] {
  const others: Pick<InputRow, 'kind' | 'judged'>[] = [];
  for (const { kind, judged } of rows)
    if (kind !== inputKind.samples) others.push({ kind, judged });
  others.reverse();
  let soonest = Number.POSITIVE_INFINITY;
  return others.map(({ kind, judged }) => {
    soonest = kind === inputKind.rebase ? judged : Math.min(soonest, judged);
    return { soonest };
  });
}
