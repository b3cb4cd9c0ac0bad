/** How far a value is from its nearest limit, and which of a station's values is nearest to one. */
import type { SignalView } from '../../agent/web/contract.ts';
import { isMeant, judgedNow, type Line } from './gates.ts';
import { limitsOf } from './limits.ts';
import { isUsable } from './reading.ts';

export interface Margin {
  readonly side: 'low' | 'high';
  readonly limit: number;
  /** Canonical units; below 0 past the limit. */
  readonly left: number;
  /** Of what there is to lose: 1 is the middle of the window, 0 the limit. For comparing alone. */
  readonly share: number;
}

/**
 * What half a window is worth where there is only one limit: 20 K for temperatures, a quarter of
 * the limit for the rest. For ordering stations alone; our judgement, no published source.
 */
const halfWindow = (unit: string, limit: number): number =>
  unit === 'Cel' || unit === 'K' ? 20 : Math.max(Math.abs(limit) / 4, Number.EPSILON);

export function marginOf(signal: SignalView): Margin | null {
  const { value, unit } = signal;
  if (value === null) return null;
  const limits = limitsOf(signal);
  const [low = null, high = null] = [limits.low[0], limits.high[0]];
  const half = low !== null && high !== null ? Math.max((high - low) / 2, Number.EPSILON) : null;
  const margins: Margin[] = [];
  if (low !== null)
    margins.push({
      side: 'low',
      limit: low,
      left: value - low,
      share: (value - low) / (half ?? halfWindow(unit, low)),
    });
  if (high !== null)
    margins.push({
      side: 'high',
      limit: high,
      left: high - value,
      share: (high - value) / (half ?? halfWindow(unit, high)),
    });
  return margins.sort((a, b) => a.share - b.share)[0] ?? null;
}

/** Does any of these have a limit that it is judged by now, whatever it reads? */
export const anyJudged = (signals: readonly SignalView[], line: Line): boolean =>
  signals.some((signal) => signal.unit !== '1' && judgedNow(signal, line).judged_at.length > 0);

/** The rules that judge one of these now, of readings or states, by their ids; not those that watch for silence. */
export function judgingRules(signals: readonly SignalView[], line: Line): string[] {
  const ids = new Set(signals.map(({ id }) => id));
  return [...line.rules.values()]
    .filter(
      (rule) =>
        rule.kind !== 'lost' &&
        rule.signals.some((id) => ids.has(id)) &&
        line.idle?.has(rule.id) !== true &&
        isMeant(rule, line),
    )
    .map(({ id }) => id);
}

/** The usable signal nearest to a limit that it is judged by now, or past it. */
export function worstMargin(
  signals: readonly SignalView[],
  line: Line,
  now: number,
): { readonly signal: SignalView; readonly margin: Margin } | null {
  return (
    signals
      // A state of the line, as running or not, has no way to go to its limit.
      .filter((signal) => signal.unit !== '1' && isUsable(signal, now))
      .flatMap((signal) => {
        const margin = marginOf(judgedNow(signal, line));
        return margin === null ? [] : [{ signal, margin }];
      })
      .sort((a, b) => a.margin.share - b.margin.share)[0] ?? null
  );
}
