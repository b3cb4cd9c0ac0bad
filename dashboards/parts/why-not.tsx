/** Why a hazard is not watched, or not by all its rules. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { useNow } from '../state/link.ts';
import { ruleName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { asideEnd, asideSince } from './aside-words.ts';
import { mendText, unheardText } from './unheard.tsx';

type Hazard = CoverageView['stations'][number]['hazards'][number];

export interface HazardProps {
  readonly hazard: Hazard;
  readonly coverage: CoverageView;
}

/** Put aside, never heard, else what the agent says. */
export function WhyNot({ hazard, coverage }: HazardProps) {
  const now = useNow(60_000);
  const { state, why = null, aside = [], unheard = [] } = hazard;
  const silent = (coverage.unheard ?? []).filter(({ signal }) => unheard.includes(signal));
  if (aside.length === 0 && silent.length === 0)
    return state !== 'not-watched' || why === null ? null : (
      <span class="hint" lang="en">
        {why}
      </span>
    );
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
      {silent.map((each) => (
        <span key={each.signal} class="hint">
          {unheardText(each)} {mendText(each)}
        </span>
      ))}
    </>
  );
}
