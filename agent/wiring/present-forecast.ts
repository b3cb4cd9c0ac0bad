/**
 * An alarm with what its rule makes of it now, where what it saw at the raise grows old: when a limit will be
 * reached, and why a sensor gives no usable reading. The ledger keeps what was seen at the raise.
 */
import type { LiveRule } from '#rules/engine/live-rule.ts';
import { type QualityCode, quality } from '#rules/signal/quality.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { Core } from './core.ts';

export interface Present {
  readonly occurrence: Occurrence;
  /** It told a time at the raise, and nobody can tell one now. */
  readonly vanished: boolean;
}

/**
 * The occurrence with the forecast of now, where its rule has one it is confident of, or with why its
 * sensor gives no usable reading now; else as it was kept, and whether its time has vanished.
 */
export function presentForecast(core: Core, occurrence: Occurrence): Present {
  const told = occurrence.evidence.earliestMs !== undefined;
  const engine = core.live.running;
  if (occurrence.closed !== null || engine === null) return { occurrence, vanished: false };
  const rule = engine.present.rules.find(({ plan }) => plan.id === occurrence.rule);
  if (rule !== undefined && isLost(rule))
    return { occurrence: lostNow(core, rule, occurrence), vanished: false };
  if (!told) return { occurrence, vanished: false };
  if (rule === undefined || rule.severity === 0 || !rule.judged)
    return { occurrence, vanished: true };
  const evidence = rule.kind.evidence(rule.settings, rule.memory);
  return evidence.earliestMs === undefined
    ? { occurrence, vanished: true }
    : { occurrence: { ...occurrence, evidence, evidenceAt: engine.now }, vanished: false };
}

const isLost = ({ kind, severity, judged }: LiveRule): boolean =>
  kind.watchesHealth === true && severity > 0 && judged;

/** What comes too late is kept without being judged: the rule itself never hears of it. */
function lostNow(core: Core, { kind, settings, memory }: LiveRule, known: Occurrence): Occurrence {
  const { cause: heard, ...evidence } = kind.evidence(settings, memory);
  const comesLate = core.samples.lateAt(core.signalIndex(known.signal)) !== null;
  const cause = comesLate ? quality.tooLate : heard;
  return { ...known, evidence: { ...evidence, ...(cause === undefined ? {} : { cause }) } };
}

const causesTold = new WeakMap<Core, ReadonlyMap<string, QualityCode | undefined>>();

/**
 * Alarms that stand and say when a limit will be reached; and those of lost sensors whose cause is another
 * than when this was last asked.
 */
export function movedOn(core: Core): Occurrence[] {
  const before = causesTold.get(core);
  const causes = new Map<string, QualityCode | undefined>();
  const moved = core.desk.open().filter((occurrence) => {
    if (occurrence.evidence.earliestMs !== undefined) return true;
    const { cause } = presentForecast(core, occurrence).occurrence.evidence;
    causes.set(occurrence.id, cause);
    const told =
      before?.has(occurrence.id) === true ? before.get(occurrence.id) : occurrence.evidence.cause;
    return cause !== told;
  });
  causesTold.set(core, causes);
  return moved;
}
