/** Sensors that need somebody: what they send cannot be used, or their calibration is over. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

interface SensorCareProps {
  readonly coverage: CoverageView;
}

export const SensorCare = ({ coverage }: SensorCareProps) => (
  <>
    <Refused topics={coverage.refused ?? []} />
    <Overdue stations={coverage.stations} />
  </>
);

const Refused = ({ topics }: { readonly topics: NonNullable<CoverageView['refused']> }) =>
  topics.length === 0 ? null : (
    <section>
      <h2>{say('refusedTitle')}</h2>
      <p>{say('refusedSays')}</p>
      <ul class="plain-list">
        {topics.map(({ topic, messages }) => {
          const last = messages.at(-1);
          if (last === undefined) return null;
          return (
            <li key={topic}>
              {say('refusedRow', { topic, why: last.why, fix: last.fix })}
              <span class="hint">{say('refusedBegan', { begins: last.begins })}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );

function Overdue({ stations }: { readonly stations: CoverageView['stations'] }) {
  const overdue = stations
    .flatMap(({ calibrations = [] }) => calibrations)
    .filter((each) => each.overdue);
  if (overdue.length === 0) return null;
  return (
    <section>
      <h2>{say('calibrationTitle')}</h2>
      <p>{say('calibrationSays')}</p>
      <ul class="plain-list">
        {overdue.map(({ signal, calibrated, last_day }) => (
          <li key={signal}>
            {say('calibrationRow', {
              signal: placeName(signal),
              day: calibrated,
              last: last_day ?? '',
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}
