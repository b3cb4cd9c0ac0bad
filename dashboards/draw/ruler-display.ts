/** What a ruler is drawn in: as the reader has the signal; a time in the unit that people say it in. */
import type { Display } from '#rules/alarm/reader-units.ts';
import type { SignalView } from '../../agent/web/contract.ts';
import { displayOf } from '../text/quantity.ts';

/** A time is told in a unit from two of it on, as its words are; seconds. */
const longer = [
  ['d', 86_400],
  ['h', 3_600],
  ['min', 60],
] as const;

/** `seen`: limits and values it must show, canonical. */
export function rulerDisplay(
  signal: Pick<SignalView, 'unit' | 'written_unit'>,
  seen: readonly number[],
): Pick<Display, 'symbol' | 'of'> {
  if (signal.unit !== 's') return displayOf(signal);
  const most = Math.max(0, ...seen.map(Math.abs));
  const [symbol, seconds] = longer.find(([, each]) => most >= 2 * each) ?? (['s', 1] as const);
  return { symbol, of: (value) => value / seconds };
}
