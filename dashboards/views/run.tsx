/** One oven run: its profile against the corridor of good runs, and its figures against their limits. */
import { useState } from 'preact/hooks';
import type { RunProfileView, RunView } from '../../agent/web/contract.ts';
import { PlainRuler } from '../draw/plain-ruler.tsx';
import { Profile } from '../draw/profile.tsx';
import { type CorridorStep, corridorOf, isGood, profilePoints } from '../judge/corridor.ts';
import { NotRead } from '../parts/not-read.tsx';
import { to } from '../router.ts';
import { get } from '../state/api.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { useRead } from '../state/read.ts';
import { span } from '../text/clock.ts';
import { placeName } from '../text/names.ts';
import { displayOf, plainQuantity, quantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { type RunsAnswer, runName, runsPath, verdictText } from './runs.tsx';

const goodRunsMax = 12;
const runPoints = 400;
const corridorPoints = 120;

interface Loaded {
  readonly shown: RunProfileView;
  readonly corridor: readonly CorridorStep[] | null;
  /** Of the same oven, newest first. */
  readonly beside: readonly RunView[];
}

const profilePath = (id: string, points: number): string =>
  `/api/runs/${encodeURIComponent(id)}?points=${points}`;

/** The run, its neighbours, and the latest good ones besides itself. */
async function load(id: string): Promise<Loaded> {
  const shown = await get<RunProfileView>(profilePath(id, runPoints));
  const station = `${shown.run.line}/${shown.run.station}`;
  const { runs } = await get<RunsAnswer>(runsPath(station));
  const good = runs.filter((run) => isGood(run) && run.id !== id).slice(0, goodRunsMax);
  const profiles = await Promise.all(
    good.map((run) => get<RunProfileView>(profilePath(run.id, corridorPoints))),
  );
  return { shown, corridor: corridorOf(profiles), beside: runs };
}

export function RunPage({ id }: { readonly id: string }) {
  const [isOver, setOver] = useState(false);
  const turn = useNow(isOver ? 3_600_000 : 15_000);
  const read = useRead(async () => {
    const found = await load(id);
    setOver(found.shown.run.closed !== null);
    return found;
  }, [id, turn]);
  const { found, failed } = read;
  if (failed?.kind === 'refused' && failed.code === 'WEB_RUN_UNKNOWN')
    return <p class="empty">{say('unknownRun')}</p>;
  return (
    <>
      <NotRead read={read} />
      {found === null ? null : <Run loaded={found} />}
    </>
  );
}

function Run({ loaded }: { readonly loaded: Loaded }) {
  const { shown, corridor, beside } = loaded;
  const { run, profile } = shown;
  const now = useNow(10_000);
  usePreferences();
  const first = profile[0];
  return (
    <article class="signal">
      <h1>{runName(run, now)}</h1>
      <p class="verdict">{verdictText(run)}</p>
      {first === undefined ? (
        <p class="empty">{say('chartEmpty')}</p>
      ) : (
        <>
          <p>{say('runProfile', { name: placeName(first.signal) })}</p>
          <Profile
            run={run}
            unit={first.unit}
            points={profilePoints(shown)}
            corridor={corridor}
            now={now}
            label={say('runProfile', { name: placeName(first.signal) })}
          />
          <p class="hint">{say(corridor === null ? 'runNoCorridor' : 'runCorridor')}</p>
        </>
      )}
      <Figures run={run} />
      <Turn run={run} beside={beside} />
    </article>
  );
}

const minutes = (ms: number | null): number | null => (ms === null ? null : ms / 60_000);

function Figures({ run }: { readonly run: RunView }) {
  const { limits, peak } = run;
  const degrees = displayOf('Cel');
  const rise = run.steepest_per_min;
  return (
    <div class="figures">
      {limits.above === null || run.above_ms === null ? null : (
        <PlainRuler
          name={say('runAbove', { temperature: plainQuantity(limits.above, 'Cel') })}
          text={span(run.above_ms)}
          value={minutes(run.above_ms)}
          low={minutes(limits.above_for_ms)}
          high={null}
        />
      )}
      {peak === null ? null : (
        <PlainRuler
          name={say('runPeak')}
          text={quantity(peak, 'Cel', 0.1)}
          value={degrees.of(peak)}
          low={null}
          high={limits.peak === null ? null : degrees.of(limits.peak)}
        />
      )}
      {limits.upper === null || run.upper_ms === null ? null : (
        <PlainRuler
          name={say('runAbove', { temperature: plainQuantity(limits.upper, 'Cel') })}
          text={span(run.upper_ms)}
          value={minutes(run.upper_ms)}
          low={null}
          high={minutes(limits.upper_for_ms)}
        />
      )}
      {rise === null ? null : (
        <PlainRuler
          name={say('runRise')}
          text={quantity(rise, 'K/min', 0.1)}
          value={null}
          low={null}
          high={null}
        />
      )}
      {run.unobserved_ms === null || run.unobserved_ms === 0 ? null : (
        <PlainRuler
          name={say('runUnobserved')}
          text={span(run.unobserved_ms)}
          value={null}
          low={null}
          high={null}
        />
      )}
    </div>
  );
}

function Turn({ run, beside }: { readonly run: RunView; readonly beside: readonly RunView[] }) {
  const at = beside.findIndex(({ id }) => id === run.id);
  const previous = at < 0 ? undefined : beside[at + 1];
  const next = at < 0 ? undefined : beside[at - 1];
  return (
    <nav class="turn" aria-label={say('runs')}>
      {previous === undefined ? null : <a href={to('run', previous.id)}>{say('previousRun')}</a>}
      {next === undefined ? null : <a href={to('run', next.id)}>{say('nextRun')}</a>}
      <a href={to('runs')}>{say('runs')}</a>
    </nav>
  );
}
