/**
 * An alarm that says when a limit will be reached, with what its rule makes of it now: the forecast
 * of the raise is old news after some minutes. The ledger keeps what was seen at the raise.
 */
import type { Occurrence } from '../alarms/occurrence.ts';
import type { Core } from './core.ts';

export interface Present {
  readonly occurrence: Occurrence;
  /** It told a time at the raise, and nobody can tell one now. */
  readonly vanished: boolean;
}

/**
 * The occurrence with the forecast of now, where its rule has one it is confident of; else as it
 * was kept, and whether its time has vanished.
 */
export function presentForecast(core: Core, occurrence: Occurrence): Present {
  const told = occurrence.evidence.earliestMs !== undefined;
  const engine = core.live.running;
  if (!told || occurrence.closed !== null || engine === null)
    return { occurrence, vanished: false };
  const rule = engine.present.rules.find(({ plan }) => plan.id === occurrence.rule);
  if (rule === undefined || rule.severity === 0 || !rule.judged)
    return { occurrence, vanished: true };
  const evidence = rule.kind.evidence(rule.settings, rule.memory);
  return evidence.earliestMs === undefined
    ? { occurrence, vanished: true }
    : { occurrence: { ...occurrence, evidence, evidenceAt: engine.now }, vanished: false };
}

/** Alarms that stand and say when a limit will be reached. */
export const forecasting = (core: Core): Occurrence[] =>
  core.desk.open().filter(({ evidence }) => evidence.earliestMs !== undefined);
