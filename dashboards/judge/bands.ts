/**
 * Three bands of what stands: people can be hurt; before the shift ends; can wait. After them what is
 * over and could only spoil material.
 *
 * Always true: a lost signal on a hazard to people ranks with that hazard; the signal word and
 * the priority stay two facts, and neither is derived from the other.
 */
import { endedBy } from '#rules/alarm/ended-by.ts';
import type { AlarmView, CoverageView, RuleView } from '../../agent/web/contract.ts';

export type Band = 'people' | 'shift' | 'wait' | 'over';
export const bands: readonly Band[] = ['people', 'shift', 'wait', 'over'];

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
/** Its last return was the end of judging, so no all-clear: the plant left the state its rule is meant for. */
export const isUnjudged = ({ transitions }: AlarmView): boolean =>
  transitions.findLast(({ transition }) => transition === 'returned')?.reason === endedBy.gate;
/** Its condition has gone, and it stays for an answer or a reset. */
export const isOver = (alarm: AlarmView): boolean =>
  alarm.judgeable && /^(returned|latched)-/.test(alarm.state);

function peopleRules({ coverage }: Known): ReadonlySet<string> {
  const hazards = coverage?.stations.flatMap((station) => station.hazards) ?? [];
  return new Set(hazards.filter((hazard) => hazard.to_people).flatMap((hazard) => hazard.rules));
}

/** Can people be hurt by what this alarm is about, or by what it keeps from being seen? */
export const isPeople = (alarm: AlarmView, known: Known): boolean =>
  alarm.label.word !== 'NOTICE' || isPeopleRule(alarm, known);

/** The same of a rule, whether an alarm of it stands or not. */
export function isPeopleRule(
  { rule, signal }: { readonly rule: string; readonly signal: string },
  known: Known,
): boolean {
  const ofPeople = peopleRules(known);
  const { rules } = known;
  const own = rules.get(rule);
  if (ofPeople.has(rule) || own?.people === true) return true;
  if (own?.kind !== 'lost') return own !== undefined && own.word !== 'NOTICE';
  return [...ofPeople].some((each) => rules.get(each)?.signals.includes(signal));
}

/** When it starts to matter: the earliest its limit is reached, or since when the condition holds. */
export const mattersAt = ({ evidence, raised }: AlarmView): number =>
  evidence.earliest ?? evidence.since ?? raised;

/**
 * `shiftEnd`: engine time. A high priority is for this shift. What is over comes after all that stands;
 * where people can be hurt a number that went back is no all-clear, and it stays among them.
 */
export function bandOf(alarm: AlarmView, known: Known, shiftEnd: number): Band {
  if (isOver(alarm) && alarm.label.word === 'NOTICE') return 'over';
  if (isPeople(alarm, known)) return 'people';
  if (alarm.priority === 'high') return 'shift';
  return alarm.priority === 'medium' && mattersAt(alarm) < shiftEnd ? 'shift' : 'wait';
}
