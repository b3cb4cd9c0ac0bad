/**
 * Three bands: people can be hurt; before the shift ends; can wait.
 *
 * Always true: a lost signal on a hazard to people ranks with that hazard; the signal word and
 * the priority stay two facts, and neither is derived from the other.
 */
import type { AlarmView, CoverageView, RuleView } from '../../agent/web/contract.ts';

export type Band = 'people' | 'shift' | 'wait';
export const bands: readonly Band[] = ['people', 'shift', 'wait'];

export interface Known {
  readonly coverage: CoverageView | null;
  readonly rules: ReadonlyMap<string, RuleView>;
}

/** Stand in no band: nobody is asked to act on them now. */
const aside: readonly string[] = ['normal', 'shelved', 'suppressed-by-design', 'out-of-service'];

/** One that was raised again is spoken for by the newer. */
export const isSuperseded = (alarm: AlarmView): boolean => alarm.superseded_by !== null;
export const isOpen = (alarm: AlarmView): boolean =>
  !aside.includes(alarm.state) && !isSuperseded(alarm);
export const isAside = (alarm: AlarmView): boolean =>
  alarm.state !== 'normal' && aside.includes(alarm.state) && !isSuperseded(alarm);
export const isAnswered = (alarm: AlarmView): boolean => !alarm.state.includes('unacknowledged');
/** Its condition has gone, and it stays for an answer or a reset. */
export const isOver = (alarm: AlarmView): boolean =>
  alarm.judgeable && /^(returned|latched)-/.test(alarm.state);

function peopleRules({ coverage }: Known): ReadonlySet<string> {
  const hazards = coverage?.stations.flatMap((station) => station.hazards) ?? [];
  return new Set(hazards.filter((hazard) => hazard.to_people).flatMap((hazard) => hazard.rules));
}

/** Can people be hurt by what this alarm is about, or by what it keeps from being seen? */
export function isPeople(alarm: AlarmView, known: Known): boolean {
  if (alarm.label.word !== 'NOTICE') return true;
  const ofPeople = peopleRules(known);
  if (ofPeople.has(alarm.rule)) return true;
  const { rules } = known;
  if (rules.get(alarm.rule)?.kind !== 'lost') return false;
  return [...ofPeople].some((rule) => rules.get(rule)?.signals.includes(alarm.signal));
}

/** When it starts to matter: the earliest its limit is reached, or since when the condition holds. */
export const mattersAt = ({ evidence, raised }: AlarmView): number =>
  evidence.earliest ?? evidence.since ?? raised;

/** `shiftEnd`: engine time. What is over can wait for its answer; a high priority is for this shift. */
export function bandOf(alarm: AlarmView, known: Known, shiftEnd: number): Band {
  if (isPeople(alarm, known)) return 'people';
  if (isOver(alarm)) return 'wait';
  if (alarm.priority === 'high') return 'shift';
  return alarm.priority === 'medium' && mattersAt(alarm) < shiftEnd ? 'shift' : 'wait';
}
