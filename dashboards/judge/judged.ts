/**
 * What an alarm's rule judges, worked out from what the signals read now: the reading itself, or how far
 * apart several are. Of rates, times and means there is no present value to show.
 */
import type { AlarmView, RuleView, SignalView } from '../../agent/web/contract.ts';
import { isUsable } from './reading.ts';

export type Judged =
  | { readonly kind: 'reading' }
  /** `value`: canonical difference, in K where the signals are temperatures; null where one is not usable. */
  | { readonly kind: 'apart'; readonly value: number | null; readonly allowed: number | null }
  /** `value`: how much hotter than the air beside it, K; null where it is not usable. */
  | { readonly kind: 'excess'; readonly value: number | null; readonly allowed: number | null }
  | { readonly kind: 'other' };

/** Rules that hold the latest reading against something. */
const ofReadings: readonly string[] = ['band', 'approach', 'present', 'stuck', 'deviation'];

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

/** The farthest from the median of the others; of two, from each other. */
const stray = (values: readonly number[]): number =>
  Math.max(
    ...values.map((value, i) => Math.abs(value - median(values.filter((_, other) => other !== i)))),
  );

/** By rule kind: how far apart, from the readings in the order of the rule's signals. */
const differences: Readonly<Record<string, (values: readonly number[]) => number>> = {
  disagree: (values) => Math.max(...values) - Math.min(...values),
  stray,
  // Its first signal is the excess over the air itself.
  'self-heat': ([excess = 0]) => excess,
};

export function judgedOf(
  { evidence }: AlarmView,
  rule: RuleView | undefined,
  signals: ReadonlyMap<string, SignalView>,
  now: number,
): Judged {
  if (rule === undefined) return { kind: 'other' };
  if (ofReadings.includes(rule.kind)) return { kind: 'reading' };
  const differ = differences[rule.kind];
  if (differ === undefined) return { kind: 'other' };
  const values = rule.signals.flatMap((id) => {
    const signal = signals.get(id);
    return signal === undefined || signal.value === null || !isUsable(signal, now)
      ? []
      : [signal.value];
  });
  const isWhole = values.length === rule.signals.length && values.length > 1;
  const allowed = evidence.allowed ?? evidence.limit;
  const kind = rule.kind === 'self-heat' ? 'excess' : 'apart';
  return { kind, value: isWhole ? differ(values) : null, allowed };
}
