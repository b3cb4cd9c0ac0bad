/** The part's journey: each station a cell with its worst margin and its most urgent sentence. */
import { journey, type StationPlace, stationId } from '../judge/journey.ts';
import {
  MostUrgent,
  NothingHere,
  stationCards,
  stationSignals,
  WorstMargin,
} from '../parts/station-words.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { ownOf } from '../text/lookup.ts';
import { ownName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function LinePage({ line }: { readonly line: string | null }) {
  const coverage = useBoard((board) => board.coverage);
  const stations = coverage?.stations ?? [];
  const lines = [...new Set(stations.map((station) => station.line))];
  const shown = line === null ? lines : lines.filter((each) => each === line);
  return (
    <>
      {shown.map((each) => (
        <section key={each} class="journey">
          <h1>{ownName(each)}</h1>
          <ol class="cells">
            {journey(stations.filter((station) => station.line === each)).map((station) => (
              <Cell key={stationId(station)} station={station} />
            ))}
          </ol>
        </section>
      ))}
    </>
  );
}

const kindText = (kind: string): string =>
  ownOf<string>(say('kind'), kind) ?? kind.replaceAll('-', ' ');

function Cell({ station }: { readonly station: StationPlace }) {
  const signals = useBoard((board) => board.signals);
  const alarms = useBoard((board) => board.alarms);
  const coverage = useBoard((board) => board.coverage);
  const rules = useBoard((board) => board.rules);
  const now = useNow();
  usePreferences();
  const urgent = stationCards(alarms, station, { coverage, rules }, now);
  return (
    <li class="cell">
      <h2>
        <a href={to('station', stationId(station))}>{ownName(station.station)}</a>
        <small>{kindText(station.kind)}</small>
      </h2>
      {urgent.length === 0 ? <NothingHere station={station} /> : <MostUrgent cards={urgent} />}
      <WorstMargin signals={stationSignals(signals, station)} now={now} />
    </li>
  );
}
