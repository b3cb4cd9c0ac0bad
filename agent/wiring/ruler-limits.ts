/** The limits of each signal's armed rules, for rulers and tables: of several, the one met first; and all. */
import type { Plan } from '#rules/plan/plan.ts';
import type { SignalView } from '../web/contract.ts';

type Limits = SignalView['limits'];
type JudgedAt = SignalView['judged_at'][number];

export interface RulerLimits {
  readonly limits: Limits;
  /** In the order of the rules. */
  readonly judgedAt: readonly JudgedAt[];
}

export const noLimits: RulerLimits = {
  limits: { low_low: null, low: null, high: null, high_high: null },
  judgedAt: [],
};

/** Of two limits on one side, the one met first. */
const highest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.max(a, b);
const lowest = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b);

/** By index of the signal. */
export function rulerLimits(plan: Plan): ReadonlyMap<number, RulerLimits> {
  const found = new Map<number, RulerLimits>();
  for (const rule of plan.rules) {
    const own = rule.kind.limits?.(rule.settings);
    const index = rule.inputs[0]!;
    if (own === undefined) continue;
    const { limits, judgedAt } = found.get(index) ?? noLimits;
    const at = (side: JudgedAt['side'], limit: number | null): JudgedAt[] =>
      limit === null
        ? []
        : [{ rule: rule.id, side, limit, ...(own.inclusive === true ? { at_limit: true } : {}) }];
    found.set(index, {
      limits: {
        low_low: highest(limits.low_low, own.lowLow),
        low: highest(limits.low, own.low),
        high: lowest(limits.high, own.high),
        high_high: lowest(limits.high_high, own.highHigh),
      },
      judgedAt: [
        ...judgedAt,
        ...at('low', own.lowLow),
        ...at('low', own.low),
        ...at('high', own.high),
        ...at('high', own.highHigh),
      ],
    });
  }
  return found;
}
