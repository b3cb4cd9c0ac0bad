/** A clock that runs since somebody wrote something down, in a sentence. */
import type { ClockView } from '../../agent/web/contract.ts';
import { clock } from '../text/clock.ts';
import { itemText, ownName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function clockText({ item, mark, since, said, due }: ClockView, now: number): string {
  const over = now >= due;
  const facts = { mark: ownName(mark), due: clock(due, now) };
  if (!said) return over ? say('clockNeverOver', facts) : say('clockNever', facts);
  const last = { ...facts, clock: clock(since, now) };
  if (item === null) return over ? say('clockPlaceOver', last) : say('clockPlace', last);
  const whole = { ...last, item: itemText(item), mark: last.mark.toLowerCase() };
  return over ? say('clockOver', whole) : say('clockRuns', whole);
}
