/** Why a hazard is not watched, or not by all its rules. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { useNow } from '../state/link.ts';
import { placeName, ruleName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';
import { WhyText } from './agent-text.tsx';
import { asideEnd, asideSince } from './aside-words.ts';
import { nameTakenText } from './names-taken.tsx';
import { mendText, unheardText } from './unheard.tsx';

type Hazard = CoverageView['stations'][number]['hazards'][number];

/** What the agent says beside what the page says of these in its own words; '' for nothing. */
const besides = (why: string | null, silent: readonly { readonly says: string }[]): string =>
  silent.reduce((left, { says }) => left.replace(says, ''), why ?? '').trim();

export interface HazardProps {
  readonly hazard: Hazard;
  readonly coverage: CoverageView;
}

/** Put aside, never heard, not usable, its name taken, else what the agent says. */
export function WhyNot({ hazard, coverage }: HazardProps) {
  const now = useNow(60_000);
  const { state, rules, why = null, aside = [], unheard = [], unread = [] } = hazard;
  const silent = (coverage.unheard ?? []).filter(({ signal }) => unheard.includes(signal));
  const taken = (coverage.name_taken ?? []).filter(({ topic }) =>
    hazard.name_taken?.includes(topic),
  );
  if ([aside, silent, unread, taken].every(({ length }) => length === 0))
    return state !== 'not-watched' || why === null ? null : (
      <span class="hint">
        <WhyText why={why} />
      </span>
    );
  // Of a hazard with rules the page says all of it itself.
  const signals = [...new Set(unread.flatMap((each) => each.signals))];
  const rest = rules.length > 0 ? '' : besides(why, silent);
  return (
    <>
      {state === 'not-watched' ? null : <span class="hint">{say('notByAll')}</span>}
      {aside.map((each) => (
        <span key={each.rule} class="hint">
          {say('hazardAside', {
            rule: ruleName(each.rule),
            state: say('asideState')[each.state],
            since: asideSince(each, now),
            end: asideEnd(each, now),
          })}{' '}
          {each.reason === '' ? null : say('hazardAsideWhy', { reason: each.reason })}
        </span>
      ))}
      {rest === '' ? null : (
        <span class="hint">
          <WhyText why={rest} />
        </span>
      )}
      {unread.length === 0 ? null : (
        <span class="hint">
          {say('notReadNow', {
            signals: signals.map(placeName).join('; '),
            rules: ruleNames(unread.map(({ rule }) => rule)).join('; '),
          })}
        </span>
      )}
      {taken.map((each) => (
        <span key={each.topic} class="hint">
          {nameTakenText(each)}
        </span>
      ))}
      {silent.map((each) => (
        <span key={each.signal} class="hint">
          {unheardText(each)} {mendText(each)}
        </span>
      ))}
    </>
  );
}
