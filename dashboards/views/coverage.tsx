/** Every hazard of every station: watched and by what, not watched and why. */

import { journey, stationId } from '../judge/journey.ts';
import { AgentText } from '../parts/agent-text.tsx';
import { NotWorkedOut } from '../parts/not-worked-out.tsx';
import { SensorCare } from '../parts/sensor-care.tsx';
import { type HazardProps, WhyNot } from '../parts/why-not.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { placeName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';

const order = ['not-watched', 'unjudged', 'watched'];

export function CoveragePage() {
  const coverage = useBoard((board) => board.coverage);
  if (coverage === null) return null;
  return (
    <article>
      <h1>{say('coverage')}</h1>
      <p>{say('coverageSays')}</p>
      <SensorCare coverage={coverage} />
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
      <NotWorkedOut stations={coverage.stations} />
    </article>
  );
}

function HazardRow({ hazard, coverage }: HazardProps) {
  const { state, to_people, unread = [] } = hazard;
  const rules = hazard.rules.filter((id) => unread.every(({ rule }) => rule !== id));
  return (
    <li class={`hazard hazard-${state}`}>
      <span class="hazard-state">{say('hazardState')[state]}</span>
      <span>
        <AgentText text={hazard.hazard} /> {to_people ? <em>{say('toPeople')}</em> : null}
        {rules.length === 0 || state === 'not-watched' ? null : (
          <span class="hint">{say('watchedBy', { rules: ruleNames(rules).join('; ') })}</span>
        )}
        <WhyNot hazard={hazard} coverage={coverage} />
      </span>
    </li>
  );
}
