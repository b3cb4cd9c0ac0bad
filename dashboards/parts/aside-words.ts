/** Since when and until when an alarm is put aside, in words. */
import type { AsideView } from '../../agent/web/contract.ts';
import { clock } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { personText } from './alarm-facts.tsx';

type AsideWhen = Pick<AsideView, 'state' | 'since' | 'until' | 'by'>;

export function asideSince({ since, by }: AsideWhen, now: number): string {
  if (since === null) return say('asideUnknown');
  const who = by === null ? say('asidePlant') : personText(by);
  return say('asideSince', { clock: clock(since, now), by: who });
}

export function asideEnd({ state, until }: AsideWhen, now: number, once = false): string {
  if (until !== null) return say(once ? 'asideOnce' : 'asideUntil', { clock: clock(until, now) });
  return say(state === 'out-of-service' ? 'asideOpen' : 'asidePlantEnds');
}
