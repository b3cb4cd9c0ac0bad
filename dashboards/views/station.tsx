/** One station: its readings as rulers, its alarms, and plainly what nobody watches here. */
import type { SignalView } from '../../agent/web/contract.ts';
import { Ruler } from '../draw/ruler.tsx';
import { journey, type StationPlace, stationId } from '../judge/journey.ts';
import { hasLimits } from '../judge/limits.ts';
import { isState } from '../judge/states.ts';
import { AgentText, Around, here } from '../parts/agent-text.tsx';
import { Entry } from '../parts/entry.tsx';
import { Needs } from '../parts/needs.tsx';
import { NotWorkedOut } from '../parts/not-worked-out.tsx';
import { Reading } from '../parts/reading.tsx';
import { stationCards, stationSignals, WorstMargin } from '../parts/station-words.tsx';
import { Strip } from '../parts/strip.tsx';
import { WhyNot } from '../parts/why-not.tsx';
import { WriteDown } from '../parts/write-down.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { ownName, ruleName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function StationPage({ id }: { readonly id: string }) {
  const coverage = useBoard((board) => board.coverage);
  const stations = coverage?.stations ?? [];
  const station = stations.find((each) => stationId(each) === id);
  if (station === undefined) return <p class="empty">{say('unknownStation')}</p>;
  return (
    <>
      <Strip stations={journey(stations.filter((each) => each.line === station.line))} here={id} />
      <Station key={id} station={station} />
    </>
  );
}

function Station({ station }: { readonly station: StationPlace }) {
  const signals = useBoard((board) => board.signals);
  const now = useNow();
  usePreferences();
  const own = stationSignals(signals, station);
  return (
    <article class="station">
      <h1>{ownName(station.station)}</h1>
      <WorstMargin signals={own} now={now} />
      <div class="station-columns">
        <div>
          <AlarmsHere station={station} />
          <h2>{say('readings')}</h2>
          <ul class="signals">
            {own.map((signal) => (
              <SignalRow key={signal.id} signal={signal} />
            ))}
          </ul>
          <WriteDown station={stationId(station)} signals={own} />
        </div>
        <div>
          <NotWatched station={station} />
          <Waiting station={station} />
        </div>
      </div>
    </article>
  );
}

function AlarmsHere({ station }: { readonly station: StationPlace }) {
  const alarms = useBoard((board) => board.alarms);
  const coverage = useBoard((board) => board.coverage);
  const rules = useBoard((board) => board.rules);
  const now = useNow(10_000);
  const cards = stationCards(alarms, station, { coverage, rules }, now);
  if (cards.length === 0) return null;
  return (
    <>
      <h2>{say('alarmsHere')}</h2>
      <ul class="entries">
        {cards.map(({ worst, also }) => (
          <Entry key={worst.occurrence} alarm={worst} also={also} short />
        ))}
      </ul>
    </>
  );
}

function SignalRow({ signal }: { readonly signal: SignalView }) {
  const rules = useBoard((board) => board.rules);
  const isDrawn = hasLimits(signal) || isState(signal, rules);
  return (
    <li class="signal-row">
      <div class="signal-head">
        <a href={to('signal', signal.id)}>{ownName(signal.id)}</a>
        <Reading signal={signal} />
      </div>
      {isDrawn ? <Ruler signal={signal} /> : null}
    </li>
  );
}

/** Not watched, or not by all that should. */
function NotWatched({ station }: { readonly station: StationPlace }) {
  const coverage = useBoard((board) => board.coverage);
  const missing = station.hazards.filter(
    ({ state, aside = [], unheard = [] }) =>
      state === 'not-watched' || aside.length > 0 || unheard.length > 0,
  );
  if (missing.length === 0 || coverage === null) return null;
  return (
    <section>
      <h2>{say('notWatchedHere')}</h2>
      <ul class="plain-list">
        {missing.map((hazard) => (
          <li key={hazard.hazard}>
            <AgentText text={hazard.hazard} />{' '}
            {hazard.to_people ? <em>{say('toPeople')}</em> : null}
            <WhyNot hazard={hazard} coverage={coverage} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Rules that wait for a number, and those that would mean nothing here. */
function Waiting({ station }: { readonly station: StationPlace }) {
  return (
    <>
      <Needs rules={station.rules} here />
      <NotWorkedOut stations={[station]} />
      {station.moot.length === 0 ? null : (
        <section>
          <h2>{say('moot')}</h2>
          <ul class="plain-list">
            {station.moot.map(({ rule, why }) => (
              <li key={rule}>
                <Around
                  sentence={say('mootEach', { rule: ruleName(rule), why: here })}
                  words={<span lang="en">{why}</span>}
                />
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
