/**
 * Alarms that come and go too fast to act on. They are for whoever tunes the rule, not for a phone;
 * the list of alarms shows them as any other.
 *
 * Chattering: the third raise within a minute and each one after it that is again the third
 * (rules/alarm/flood.ts has the source). Fleeting: the alarm was over within a minute, answered by
 * nobody, three times in a row within a day; its next raise is taken for another one. Three in a row
 * is ours, common practice, no published source. What hurts people and what is highly managed is never either.
 */
import type { EpochMs } from '../signal/sample.ts';
import { chatteredAt, chatterGuidance } from './flood.ts';

export type Nuisance = 'chattering' | 'fleeting';

/** Shorter than this, and gone before anybody answered, an alarm is fleeting. Judgement. */
export const fleetingMs = 60_000;
/** So many fleeting ones in a row, and the next is expected to be one. */
export const fleetingTimes = 3;
export const fleetingWithinMs = 86_400_000;
/** A raise that was not told goes on for so long: then it is told after all. */
export const provenMs = Math.max(chatterGuidance.windowMs, fleetingMs);

/** What an alarm remembers of how it came and went. Plain data. */
export interface Restless {
  /** Its last raises that were to be told, oldest first; as many as a chatter takes. */
  readonly raises: readonly EpochMs[];
  /** When those in a row went that were fleeting, oldest first; as many as count. */
  readonly fleeting: readonly EpochMs[];
}

export const restlessBegin: Restless = { raises: [], fleeting: [] };

export function raisedAgain(before: Restless, at: EpochMs): Restless {
  return { ...before, raises: [...before.raises, at].slice(-chatterGuidance.times) };
}

/** What its newest raise is; null for an alarm as it should be. */
export function nuisanceOf({ raises, fleeting }: Restless): Nuisance | null {
  if (chatteredAt(raises) !== null) return 'chattering';
  const sinceMs = (raises.at(-1) ?? 0) - fleetingWithinMs;
  return fleeting.length === fleetingTimes && fleeting[0]! > sinceMs ? 'fleeting' : null;
}

/** It is over at `at`; answered: somebody had it. */
export function wentAway(before: Restless, at: EpochMs, answered: boolean): Restless {
  if (!wasFleeting(before, at, answered)) return { ...before, fleeting: [] };
  return { ...before, fleeting: [...before.fleeting, at].slice(-fleetingTimes) };
}

export function wasFleeting({ raises }: Restless, at: EpochMs, answered: boolean): boolean {
  const raised = raises.at(-1);
  return !answered && raised !== undefined && at - raised < fleetingMs;
}
