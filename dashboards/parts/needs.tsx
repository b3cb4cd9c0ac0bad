/** What rules wait for in the site file: each thing once, with the rules or stations that wait for it. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { type Need, needsOf } from '../judge/needs.ts';
import { to } from '../router.ts';
import { placeName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';
import { NeedText } from './agent-text.tsx';

interface NeedsProps {
  readonly rules: readonly CoverageView['stations'][number]['rules'][number][];
  /** Of one station, whose rules are named; of several, the stations are. */
  readonly here?: boolean;
}

export function Needs({ rules, here = false }: NeedsProps) {
  const needs = needsOf(rules);
  return (
    <>
      <Group title="notArmed" needs={needs.filter(({ arms }) => arms)} here={here} />
      <Group title="unconfirmed" needs={needs.filter(({ arms }) => !arms)} here={here} />
    </>
  );
}

interface GroupProps {
  readonly title: 'notArmed' | 'unconfirmed';
  readonly needs: readonly Need[];
  readonly here: boolean;
}

const Group = ({ title, needs, here }: GroupProps) =>
  needs.length === 0 ? null : (
    <section>
      <h2>{say(title)}</h2>
      <p>{say(title === 'notArmed' ? 'notArmedSays' : 'unconfirmedSays')}</p>
      <ul class="plain-list">
        {needs.map((need) => (
          <li key={need.what}>
            <NeedText need={need.what} />.{' '}
            {here ? <ForRules need={need} /> : <ForStations need={need} />}
            <Places need={need} />
          </li>
        ))}
      </ul>
    </section>
  );

const ForRules = ({ need }: { readonly need: Need }) => (
  <span class="hint">{say('needsFor', { rules: ruleNames(need.rules).join('; ') })}</span>
);

const stationOf = (rule: string): string => rule.split('/').slice(0, 2).join('/');

const ForStations = ({ need }: { readonly need: Need }) => (
  <span class="need-stations">
    {[...Map.groupBy(need.rules, stationOf)].map(([station, { length }]) => (
      <a key={station} href={to('station', station)}>
        {say('needsCount', { station: placeName(station), n: length })}
      </a>
    ))}
  </span>
);

const Places = ({ need: { wheres } }: { readonly need: Need }) => (
  <>
    {wheres.map(({ rule, setting }) => (
      <span key={`${rule} ${setting}`} class="hint">
        {rule === null ? say('needsWhereTop', { setting }) : say('needsWhere', { setting, rule })}
      </span>
    ))}
  </>
);
