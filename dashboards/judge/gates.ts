/** Rules are judged only while the line is in a state that they are meant for: their gates hold. */
import type { RuleView, SignalView } from '../../agent/web/contract.ts';

export interface Line {
  readonly rules: ReadonlyMap<string, RuleView>;
  readonly signals: ReadonlyMap<string, SignalView>;
  /** Rules that judge nothing now, or of which nobody is told. */
  readonly idle?: ReadonlySet<string>;
}

/** A gate that cannot be read hides nothing. */
function holds({ signal, low, high }: RuleView['gates'][number], { signals }: Line): boolean {
  const value = signals.get(signal)?.value ?? null;
  if (value === null) return true;
  return (low === null || value >= low) && (high === null || value <= high);
}

/** Is the line in a state that the rule is meant for? */
export const isMeant = (rule: RuleView | undefined, line: Line): boolean =>
  (rule?.gates ?? []).every((gate) => holds(gate, line));

/** The signal with the limits that it is held against now. */
export function judgedNow(signal: SignalView, line: Line): SignalView {
  const judged = signal.judged_at.filter(
    ({ rule }) => line.idle?.has(rule) !== true && isMeant(line.rules.get(rule), line),
  );
  return judged.length === signal.judged_at.length ? signal : { ...signal, judged_at: judged };
}

/** It has limits, and none of them is judged now. */
export const isIdle = (signal: SignalView, line: Line): boolean =>
  signal.judged_at.length > 0 && judgedNow(signal, line).judged_at.length === 0;
