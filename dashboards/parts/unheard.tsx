/** Signals that have never been heard: what is not judged without them, and where they should come. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { to } from '../router.ts';
import { placeName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';

type Signal = NonNullable<CoverageView['unheard']>[number];

/** So many by name; the rest is on the page of what is watched. */
const shownMax = 6;

interface UnheardProps {
  readonly coverage: CoverageView | null;
  /** Those that keep a hazard to people from being watched; else the others. */
  readonly people: boolean;
  /** Signals of which an alarm speaks already. */
  readonly spokenFor: ReadonlySet<string>;
}

export function Unheard({ coverage, people, spokenFor }: UnheardProps) {
  const all = (coverage?.unheard ?? []).filter(
    ({ signal, to_people: ofPeople }) => ofPeople === people && !spokenFor.has(signal),
  );
  if (all.length === 0) return null;
  return (
    <section class={people ? 'band band-people' : 'band'}>
      <h2 class="band-title">{say(people ? 'unheardPeopleTitle' : 'unheardTitle')}</h2>
      <ul class="plain-list">
        {all.slice(0, shownMax).map((each) => (
          <UnheardRow key={each.signal} unheard={each} />
        ))}
      </ul>
      {all.length <= shownMax ? null : (
        <p>
          <a href={to('coverage')}>{say('unheardMore', { n: all.length - shownMax })}</a>
        </p>
      )}
    </section>
  );
}

export function unheardText({ signal, because }: Signal): string {
  const facts = { signal: placeName(signal) };
  return because === 'no-place-heard'
    ? say('unheardPlace', facts)
    : say('unheardSays', { ...facts, because: say('unheardBecause')[because] });
}

export function mendText({ because, topic }: Signal): string {
  if (because === 'never-entered' || topic === null) return say('unheardByHand');
  return say(because === 'too-late' ? 'unheardLate' : 'unheardTopic', { topic });
}

/** A wildcard has no page of its own before a place is heard. */
const pageOf = ({ signal, because }: Signal): string =>
  because === 'no-place-heard'
    ? to('station', signal.split('/').slice(0, 2).join('/'))
    : to('signal', signal);

export const UnheardRow = ({ unheard }: { readonly unheard: Signal }) => (
  <li>
    <a href={pageOf(unheard)}>{unheardText(unheard)}</a>
    <span class="hint">{say('unheardRules', { rules: ruleNames(unheard.rules).join('; ') })}</span>
    <span class="hint">{mendText(unheard)}</span>
  </li>
);
