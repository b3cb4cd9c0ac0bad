/**
 * What a highly managed alarm asks of whoever closes it or puts it out of service: a reason that
 * says something, an end, and for a reset that it is over. Who may is asked at the door
 * (agent/people/rights.ts).
 */
import type { EpochMs } from '../signal/sample.ts';

/** Fewer letters say nothing; judgement. */
export const reasonLettersMin = 10;
/** A day: whoever comes next shift looks again; judgement. */
export const outOfServiceMsMost = 86_400_000;

export interface ManagedAsked {
  readonly reason?: string;
  readonly untilMs?: EpochMs;
}

export interface ManagedNow {
  readonly now: EpochMs;
  /** A reading it needs cannot be used. */
  readonly unjudged: boolean;
  /** Its value is past the limit, though a delay may not be over. */
  readonly past: boolean;
}

/** Why it may not be done so; null where it may. */
export function managedRefusal(
  verb: 'reset' | 'remove-from-service',
  { reason = '', untilMs }: ManagedAsked,
  { now, unjudged, past }: ManagedNow,
): string | null {
  if (verb === 'reset' && unjudged)
    return 'nobody can tell whether it is over: a reading it needs cannot be used';
  if (verb === 'reset' && past) return 'its value is past the limit again';
  if (reason.trim().length < reasonLettersMin)
    return `it is highly managed, so handled with special care: give a reason of ${reasonLettersMin} letters or more`;
  if (verb === 'reset') return null;
  if (untilMs === undefined || untilMs <= now)
    return 'it is highly managed, so handled with special care: out of service it needs an end that lies ahead';
  return untilMs - now > outOfServiceMsMost
    ? 'it is highly managed, so handled with special care: it may be out of service for at most 24 h'
    : null;
}
