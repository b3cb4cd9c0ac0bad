/** Every hazard of every station: watched and by what, not watched and why. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { journey, stationId } from '../judge/journey.ts';
import { SensorCare } from '../parts/sensor-care.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { placeName, ruleNames } from '../text/names.ts';
import { say } from '../text/say.ts';

type Hazard = CoverageView['stations'][number]['hazards'][number];

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
                  <HazardRow key={hazard.hazard} hazard={hazard} />
                ))}
            </ul>
          </section>
        ))}
      </div>
    </article>
  );
}

function HazardRow({ hazard }: { readonly hazard: Hazard }) {
  const { state, to_people, why, rules } = hazard;
  return (
    <li class={`hazard hazard-${state}`}>
      <span class="hazard-state">{say('hazardState')[state]}</span>
      <span>
        {hazard.hazard} {to_people ? <em>{say('toPeople')}</em> : null}
        <span class="hint">
          {state === 'not-watched'
            ? (why ?? '')
            : say('watchedBy', { rules: ruleNames(rules).join('; ') })}
        </span>
      </span>
    </li>
  );
}
