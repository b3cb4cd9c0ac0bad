/** When, by whom and why an alarm was closed. */
import { endedBy } from '#rules/alarm/ended-by.ts';
import type { AlarmView } from '../../agent/web/contract.ts';
import { clock } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { personText } from './alarm-facts.tsx';

const closing: readonly string[] = ['reset', 'acknowledged', 'returned', 'removed'];

/** null for an alarm that is not closed. */
export function closedText({ state, transitions, raised }: AlarmView, now: number): string | null {
  if (state !== 'normal') return null;
  const last = transitions.findLast(({ transition }) => closing.includes(transition));
  const at = { clock: clock(last?.at ?? raised, now) };
  if (last?.transition === 'removed') return say('closedRemoved', at);
  if (last?.reason === endedBy.gate) return say('closedUnjudged', at);
  if (last === undefined || last.by === null) return say('closedItself', at);
  const here = last.by === 'local';
  const facts = { ...at, by: personText(last.by) };
  if (last.reason === null || last.reason === '')
    return say(here ? 'closedHerePlain' : 'closedByPlain', facts);
  return say(here ? 'closedHere' : 'closedBy', { ...facts, reason: last.reason });
}
