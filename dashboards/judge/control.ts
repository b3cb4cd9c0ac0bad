/**
 * What a signal is charted against while an alarm tells that it has left its own baseline: the centre
 * line, and the control limits where the rule has a distance. Both may be learned, and are then in no
 * site file; they stand as the alarm's evidence has them, and no longer than the alarm.
 */
import type { AlarmView, RuleView, SignalView } from '../../agent/web/contract.ts';

export interface Control {
  /** Canonical. */
  readonly centre: number;
  /** null where the rule judges by runs and no distance. */
  readonly low: number | null;
  readonly high: number | null;
}

/** Kinds that compare a value with a baseline of its own. */
const charting: readonly string[] = ['chart', 'drift'];

/** Of several the first; null where none stands open. */
export function controlOf(
  signal: Pick<SignalView, 'id' | 'unit'>,
  alarms: Iterable<AlarmView>,
  rules: ReadonlyMap<string, Pick<RuleView, 'kind'>>,
): Control | null {
  for (const alarm of alarms) {
    const { reference, allowed, unit } = alarm.evidence;
    const kind = rules.get(alarm.rule)?.kind ?? '';
    if (alarm.signal !== signal.id || alarm.state === 'normal' || !charting.includes(kind))
      continue;
    if (reference === null || unit !== signal.unit) continue;
    return {
      centre: reference,
      low: allowed === null ? null : reference - allowed,
      high: allowed === null ? null : reference + allowed,
    };
  }
  return null;
}
