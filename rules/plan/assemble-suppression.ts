/** A rule's suppression by design, its signals by integer; and as its card shows it. */
import type { CardWhile } from './card.ts';
import type { SuppressionDraft, WhileDraft } from './compile-suppression.ts';
import type { SignalDraft } from './draft.ts';
import type { PlanSuppression, PlanWhile } from './plan.ts';

/** `indexOf`: undefined for a signal of a wildcard that was not heard yet; it suppresses nothing. */
export function assembleSuppression(
  suppress: SuppressionDraft | null,
  indexOf: (signal: SignalDraft) => number | undefined,
): { readonly suppress?: PlanSuppression } {
  if (suppress === null) return {};
  const whiles = suppress.whiles.flatMap((each): PlanWhile[] => {
    const { because } = each;
    if (each.gate === undefined) {
      const { from, until, atMostMs } = each;
      return [{ from, until, atMostMs, because }];
    }
    const signal = indexOf(each.gate.signal);
    const { low, high } = each.gate;
    return signal === undefined ? [] : [{ signal, low, high, because }];
  });
  return whiles.length === 0 ? {} : { suppress: { whiles, offDelayMs: suppress.offDelayMs } };
}

export const cardWhiles = (
  suppress: SuppressionDraft | null,
  idOf: (signal: SignalDraft) => string,
): readonly CardWhile[] => (suppress?.whiles ?? []).map((each) => cardWhile(each, idOf));

function cardWhile(each: WhileDraft, idOf: (signal: SignalDraft) => string): CardWhile {
  const { because, signedBy } = each;
  const nothing = { signal: null, low: null, high: null, from: null, until: null, atMostMs: null };
  if (each.gate === undefined) {
    const { from, until, atMostMs } = each;
    return { ...nothing, because, signedBy, from, until, atMostMs };
  }
  const { signal, low, high } = each.gate;
  return {
    ...nothing,
    because,
    signedBy,
    signal: idOf(signal),
    low: finiteOrNull(low),
    high: finiteOrNull(high),
  };
}

const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
