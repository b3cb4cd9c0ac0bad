/** The limits of each signal's armed bands, for rulers and tables: of several, the one met first. */
import type { Plan } from '#rules/plan/plan.ts';
import type { SignalView } from '../web/contract.ts';

export const noLimits: SignalView['limits'] = {
  low_low: null,
  low: null,
  high: null,
  high_high: null,
};

/** Of two limits on one side, the one met first. */
const highest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.max(a, b);
const lowest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b);

/** By index of the signal. */
export function rulerLimits(plan: Plan): ReadonlyMap<number, SignalView['limits']> {
  const found = new Map<number, SignalView['limits']>();
  for (const rule of plan.rules) {
    const limits = rule.kind.limits?.(rule.settings);
    const index = rule.inputs[0]!;
    if (limits === undefined) continue;
    const known = found.get(index) ?? noLimits;
    found.set(index, {
      low_low: highest(known.low_low, limits.lowLow),
      low: highest(known.low, limits.low),
      high: lowest(known.high, limits.high),
      high_high: lowest(known.high_high, limits.highHigh),
    });
  }
  return found;
}
