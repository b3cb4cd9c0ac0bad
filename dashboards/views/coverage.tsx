/** Every hazard of every station: watched and by what, not watched and why. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { journey, stationId } from '../judge/journey.ts';
import { asideEnd, asideSince } from '../parts/aside-words.ts';
import { NotWorkedOut } from '../parts/not-worked-out.tsx';
import { SensorCare } from '../parts/sensor-care.tsx';
import { mendText, unheardText } from '../parts/unheard.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { placeName, ruleName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';

type Hazard = CoverageView['stations'][number]['hazards'][number];

interface HazardRowProps {
  readonly hazard: Hazard;
  readonly coverage: CoverageView;
}

const order = ['not-watched', 'unjudged', 'watched'];

export function CoveragePage() {
  const coverage = useBoard((board) => board.coverage);
  if (coverage === null) return null;
  return (
    <article>
      <h1>{say('coverage')}</h1>
      <p>{say('coverageSays')}</p>
      <SensorCare coverage={coverage} />
      <NotWorkedOut stations={coverage.stations} />
      <div class="cover-stations">
        {journey(coverage.stations).map((station) => (
          <section key={stationId(station)}>
            <h2>
              <a href={to('station', stationId(station))}>{placeName(stationId(station))}</a>
            </h2>
            <ul class="hazards">
              {station.hazards
                .toSorted((a, b) => order.indexOf(a.state) - order.indexOf(b.state))
                .map((hazard) => (
                  <HazardRow key={hazard.hazard} hazard={hazard} coverage={coverage} />
                ))}
            </ul>
          </section>
        ))}
      </div>
    </article>
  );
}

function HazardRow({ hazard, coverage }: HazardRowProps) {
  const { state, to_people, rules } = hazard;
  return (
    <li class={`hazard hazard-${state}`}>
      <span class="hazard-state">{say('hazardState')[state]}</span>
      <span>
        {hazard.hazard} {to_people ? <em>{say('toPeople')}</em> : null}
        {rules.length === 0 || state === 'not-watched' ? null : (
          <span class="hint">{say('watchedBy', { rules: ruleNames(rules).join('; ') })}</span>
        )}
        <WhyNot hazard={hazard} coverage={coverage} />
      </span>
    </li>
  );
}

/** What keeps its rules, or some of them, from watching. */
function WhyNot({ hazard, coverage }: HazardRowProps) {
  const now = useNow(60_000);
  const { state, why = null, aside = [], unheard = [] } = hazard;
  const silent = (coverage.unheard ?? []).filter(({ signal }) => unheard.includes(signal));
  if (aside.length === 0 && silent.length === 0)
    return state !== 'not-watched' || why === null ? null : <span class="hint">{why}</span>;
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
