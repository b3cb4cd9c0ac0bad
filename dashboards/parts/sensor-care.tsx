/** Sensors that need somebody: what they send cannot be used, or their calibration is over. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { clock } from '../text/clock.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

interface SensorCareProps {
  readonly coverage: CoverageView;
}

export const SensorCare = ({ coverage }: SensorCareProps) => (
  <>
    <Refused topics={coverage.refused ?? []} now={coverage.at} />
    <Overdue stations={coverage.stations} />
  </>
);

type RefusedTopics = NonNullable<CoverageView['refused']>;

interface RefusedProps {
  readonly topics: RefusedTopics;
  readonly now: number;
}

const Refused = ({ topics, now }: RefusedProps) =>
  topics.length === 0 ? null : (
    <section>
      <h2>{say('refusedTitle')}</h2>
      <p>{say('refusedSays')}</p>
      <ul class="plain-list">
        {topics.map(({ topic, messages, count }) => {
          const last = messages.at(-1);
          if (last === undefined) return null;
          return (
            <li key={topic}>
              {say('refusedRow', { topic, why: last.why, fix: last.fix })}
              <span class="hint">{say('refusedBegan', { begins: last.begins })}</span>
              <span class="hint">
                {say('refusedFrom', {
                  from: last.from ?? say('refusedNobody'),
                  clock: clock(last.at, now),
                  count: String(count),
                })}
                <Sought message={last} />
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );

/** Where the site file says to look, and what stood there. */
const Sought = ({ message }: { readonly message: RefusedTopics[number]['messages'][number] }) =>
  message.looked_for === null || message.found === null ? null : (
    <> {say('refusedFound', { pointer: message.looked_for, found: message.found })}</>
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
