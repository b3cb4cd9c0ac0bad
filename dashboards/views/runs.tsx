/** Oven runs, newest first: which load, how it was dried, and what nobody saw. */
import type { RunView } from '../../agent/web/contract.ts';
import { foldGood, type Runs as RunGroup } from '../judge/fold-runs.ts';
import { NotRead } from '../parts/not-read.tsx';
import { to } from '../router.ts';
import { get } from '../state/api.ts';
import { nowMs, useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { useRead } from '../state/read.ts';
import { clock, span } from '../text/clock.ts';
import { placeName } from '../text/names.ts';
import { plainQuantity, quantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';

export interface RunsAnswer {
  readonly runs: readonly RunView[];
  readonly truncated: boolean;
}

const monthMs = 30 * 86_400_000;
const runsMax = 200;

export const runsPath = (station: string | null): string => {
  const since = Math.max(0, Math.round(nowMs() - monthMs));
  const where = station === null ? '' : `&station=${encodeURIComponent(station)}`;
  return `/api/runs?since=${since}&limit=${runsMax}${where}`;
};

/** What a run was, in one sentence. */
export function verdictText(run: RunView): string {
  const { limits, above_ms: aboveMs } = run;
  if (run.closed === null) return say('runStillIn');
  if (run.under === true) {
    return limits.above === null || limits.above_for_ms === null || aboveMs === null
      ? say('runUnder')
      : say('runUnderBy', {
          reached: span(aboveMs),
          needed: span(limits.above_for_ms),
          temperature: plainQuantity(limits.above, 'Cel'),
        });
  }
  if (run.over === true) return say('runOver');
  if (run.under === false && run.over === false) return say('runGood');
  return run.unobserved_ms === null
    ? say('runUnknown')
    : say('runUnseen', { unseen: span(run.unobserved_ms) });
}

export function Runs() {
  const turn = useNow(60_000);
  usePreferences();
  const read = useRead(() => get<RunsAnswer>(runsPath(null)), [turn]);
  const answer = read.found;
  return (
    <article>
      <h1>{say('runs')}</h1>
      <NotRead read={read} />
      {answer === null ? null : answer.runs.length === 0 ? (
        <p class="empty">{say('runsNone')}</p>
      ) : (
        <ul class="past">
          {foldGood(answer.runs).map(([first, ...others]) =>
            others.length === 0 ? (
              <RunRow key={first.id} run={first} />
            ) : (
              <GoodRuns key={first.id} runs={[first, ...others]} />
            ),
          )}
        </ul>
      )}
      {answer?.truncated ? <p>{say('backMore')}</p> : null}
    </article>
  );
}

/** Many good runs in a row, newest first: what they have to say is that they are good. */
function GoodRuns({ runs }: { readonly runs: RunGroup }) {
  const now = useNow(60_000);
  const last = runs.at(-1)!;
  return (
    <li class="past-alarm">
      <details class="more">
        <summary>
          {say('runsGood', {
            n: runs.length,
            from: clock(last.opened, now),
            to: clock(runs[0].closed ?? now, now),
          })}
        </summary>
        <ul class="past">
          {runs.map((run) => (
            <RunRow key={run.id} run={run} />
          ))}
        </ul>
      </details>
    </li>
  );
}

function RunRow({ run }: { readonly run: RunView }) {
  const now = useNow(60_000);
  return (
    <li class="past-alarm">
      <a href={to('run', run.id)}>{runName(run, now)}</a>
      <span class={run.under === true || run.over === true ? 'missing' : ''}>
        {verdictText(run)}
      </span>
      {run.peak === null ? null : (
        <span class="hint">{say('runPeakIs', { peak: quantity(run.peak, 'Cel', 0.1) })}</span>
      )}
    </li>
  );
}

export const runName = (run: RunView, now: number): string =>
  run.closed === null
    ? say('runSince', {
        oven: placeName(`${run.line}/${run.station}`),
        from: clock(run.opened, now),
      })
    : say('runFromTo', {
        oven: placeName(`${run.line}/${run.station}`),
        from: clock(run.opened, now),
        to: clock(run.closed, now),
      });
