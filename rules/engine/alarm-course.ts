/** What an alarm notes of its own course: how it comes and goes, and when it is told again. */
import { proving, toldAt } from '../alarm/again.ts';
import type { AlarmEvent } from '../alarm/lifecycle.ts';
import {
  type Nuisance,
  nuisanceOf,
  provenMs,
  raisedAgain,
  wasFleeting,
  wentAway,
} from '../alarm/nuisance.ts';
import type { PlanRule } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Alarm } from './alarm.ts';

/**
 * What this raise or return is, where it comes and goes too fast to act on; null for all else. What
 * was told to nobody counts for nothing.
 */
export function noteRestless(
  alarm: Alarm,
  { hazardToPeople, class: of }: PlanRule,
  event: AlarmEvent,
  answered: boolean,
  now: EpochMs,
): Nuisance | null {
  if (hazardToPeople || of.highlyManaged || alarm.state !== alarm.beneath) return null;
  if (event === 'raise') {
    alarm.restless = raisedAgain(alarm.restless, now);
    return nuisanceOf(alarm.restless);
  }
  if (event !== 'clear') return null;
  const fleeting = wasFleeting(alarm.restless, now, answered);
  alarm.restless = wentAway(alarm.restless, now, answered);
  return fleeting ? 'fleeting' : null;
}

/** The time to respond runs from when people are told, while the condition holds. */
export function setAgain(
  alarm: Alarm,
  { respondMs }: PlanRule,
  told: boolean,
  nuisance: Nuisance | null,
  times: number,
  now: EpochMs,
): void {
  if (alarm.state !== 'unacknowledged' && alarm.state !== 'acknowledged') alarm.again = null;
  else if (nuisance !== null) alarm.again = proving(now, provenMs);
  // Whoever takes on what is still being proved has been told by it.
  else if (told || alarm.again?.what === 'proving')
    alarm.again = toldAt(now, respondMs ?? 0, told ? times : 0);
}
