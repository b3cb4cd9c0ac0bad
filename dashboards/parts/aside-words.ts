/** What is put aside, in words: by whom, since when, until when, and what holds beneath. */
import type { AsideView, SignalView } from '../../agent/web/contract.ts';
import { isUsable } from '../judge/reading.ts';
import { clock } from '../text/clock.ts';
import { placeName, ruleName } from '../text/names.ts';
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

/** In one line: by whom, until when, what. */
export function asideLine(
  { rule, line: of, station, state, by, until }: AsideView,
  now: number,
): string {
  const what = `${placeName(`${of}/${station}`)}, ${ruleName(rule)}`;
  if (by === null) return say('asideLinePlant', { what });
  const here = by === 'local';
  const facts = { what, by: personText(by) };
  if (until === null) return say(here ? 'asideLineOpenHere' : 'asideLineOpen', facts);
  const timed = { ...facts, clock: clock(until, now) };
  if (state === 'out-of-service') return say(here ? 'asideLineOutHere' : 'asideLineOut', timed);
  return say(here ? 'asideLineHere' : 'asideLine', timed);
}

/** Of a sensor that is silent or not usable nobody can tell whether the condition holds. `now`: the engine's time. */
export function asideNow(
  { signal, stands }: AsideView,
  signals: ReadonlyMap<string, SignalView>,
  now: number,
): string | null {
  const sensor = signals.get(signal);
  if (sensor !== undefined && !isUsable(sensor, now)) return say('asideBlind');
  return stands ? say('asideStands') : null;
}
