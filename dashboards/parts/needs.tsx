/** Rules that wait for an entry in the site file; those that wait for the same one stand together. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

type Readiness = CoverageView['stations'][number]['rules'][number];

interface NeedsProps {
  readonly title: string;
  readonly rules: readonly Readiness[];
}

export function Needs({ title, rules }: NeedsProps) {
  if (rules.length === 0) return null;
  const byNeed = Map.groupBy(rules, ({ readiness, needs }) => `${readiness} ${needs.join('; ')}`);
  return (
    <section>
      <h2>{title}</h2>
      <ul class="plain-list">
        {[...byNeed].map(([key, alike]) => (
          <li key={key}>
            {say(alike[0]?.readiness === 'not-armed' ? 'needs' : 'confirm', {
              needs: alike[0]?.needs.join('; ') ?? '',
            })}
            <span class="hint">
              {say('needsFor', { rules: alike.map(({ rule }) => placeName(rule)).join(', ') })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
