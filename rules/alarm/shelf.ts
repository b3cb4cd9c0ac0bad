/**
 * Shelves: an alarm put aside by a person for a time, always with a reason and an end.
 *
 * ISA-18.2 / IEC 62682 ask that shelving be limited in time; how long is the site's choice. The
 * lengths here are ours, common practice, no published source: an hour of what must be acted on
 * at once, a shift, a day.
 */
import type { ShelfMost } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Priority } from './priority.ts';

export const shelfMost: ShelfMost = { high: 3_600_000, medium: 8 * 3_600_000, low: 86_400_000 };

export interface ShelfAsked {
  readonly reason?: string;
  readonly untilMs?: EpochMs;
  readonly oneShot?: true;
}

export interface ShelfAbout {
  readonly now: EpochMs;
  readonly highlyManaged: boolean;
  readonly priority: Priority;
  readonly most: ShelfMost;
  /** The condition holds. */
  readonly stands: boolean;
}

/** Why it may not be shelved so; null where it may. */
export function shelfRefusal(asked: ShelfAsked, about: ShelfAbout): string | null {
  const { now, priority, most } = about;
  if (about.highlyManaged)
    return 'it is highly managed, so handled with special care: nobody may silence it; act on its steps';
  if (asked.untilMs === undefined || asked.untilMs <= now)
    return 'a shelf needs an end that lies ahead';
  if (asked.reason === undefined || asked.reason.trim() === '') return 'a shelf needs a reason';
  if (asked.untilMs - now > most[priority])
    return `an alarm of ${priority} priority may be shelved for at most ${minutesText(most[priority])}`;
  if (asked.oneShot === true && !about.stands)
    return 'a shelf for this once needs an alarm that stands; it has returned';
  return null;
}

const minutesText = (ms: number): string => `${Math.floor(ms / 60_000)} min`;
