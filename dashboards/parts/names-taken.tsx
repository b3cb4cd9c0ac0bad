/** Places of wildcards that nobody watches, because another place has their name. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { placeName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';

type NameTaken = NonNullable<CoverageView['name_taken']>[number];

interface NamesTakenProps {
  readonly coverage: CoverageView | null;
  /** Those of a hazard to people; else the others. */
  readonly people: boolean;
}

export const nameTakenText = ({ topic, owner, signal }: NameTaken): string =>
  `${say('nameTaken', { topic, owner, signal: placeName(signal) })} ${say('nameTakenFix')}`;

/** Also where an alarm of the place stands that has the name: it says nothing of this one. */
export function NamesTaken({ coverage, people }: NamesTakenProps) {
  const all = (coverage?.name_taken ?? []).filter(({ to_people }) => to_people === people);
  if (all.length === 0) return null;
  return (
    <section class={people ? 'band band-people' : 'band'}>
      <h2 class="band-title">{say(people ? 'nameTakenPeopleTitle' : 'nameTakenTitle')}</h2>
      <ul class="plain-list">
        {all.map((each) => (
          <li key={each.topic}>
            {nameTakenText(each)}
            {each.rules.length === 0 ? null : (
              <span class="hint">
                {say('unheardRules', { rules: ruleNames(each.rules).join('; ') })}
              </span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
