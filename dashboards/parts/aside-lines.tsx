/** What is put aside, in one compact line each: by whom, until when, what, why. */
import type { AsideView } from '../../agent/web/contract.ts';
import { to } from '../router.ts';
import { useNow } from '../state/link.ts';
import { clock } from '../text/clock.ts';
import { placeName, ruleName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { personText } from './alarm-facts.tsx';

/** Those first whose condition holds now, then by when they end. */
const inOrder = (a: AsideView, b: AsideView): number =>
  Number(b.stands) - Number(a.stands) ||
  (a.until ?? Number.POSITIVE_INFINITY) - (b.until ?? Number.POSITIVE_INFINITY) ||
  (a.rule < b.rule ? -1 : 1);

export function AsideLines({ aside }: { readonly aside: readonly AsideView[] }) {
  const now = useNow(60_000);
  if (aside.length === 0) return null;
  return (
    <ul class="plain-list aside-lines">
      {aside.toSorted(inOrder).map((each) => (
        <li key={each.rule}>
          <a href={each.occurrence === null ? to('aside') : to('alarm', each.occurrence)}>
            {lineText(each, now)}
          </a>{' '}
          {each.stands ? <em>{say('asideStands')}</em> : null} {each.reason}
        </li>
      ))}
    </ul>
  );
}

function lineText({ rule, line: of, station, state, by, until }: AsideView, now: number): string {
  const what = `${placeName(`${of}/${station}`)}, ${ruleName(rule)}`;
  if (by === null) return say('asideLinePlant', { what });
  const facts = { what, by: personText(by) };
  if (until === null) return say('asideLineOpen', facts);
  const line = state === 'out-of-service' ? 'asideLineOut' : 'asideLine';
  return say(line, { ...facts, clock: clock(until, now) });
}
