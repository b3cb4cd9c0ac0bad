/**
 * An oven run's profile: time since entry across, this run in ink, the corridor of good runs
 * hatched, limits solid, no reading as a blank.
 */
import { useId } from 'preact/hooks';
import type { RunView, SeriesPoint } from '../../agent/web/contract.ts';
import type { CorridorStep } from '../judge/corridor.ts';
import { clock } from '../text/clock.ts';
import { displayOf, numberText, plainQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { niceStep, type Scale } from './scale.ts';

interface ProfileProps {
  readonly run: RunView;
  readonly unit: string;
  readonly points: readonly SeriesPoint[];
  readonly corridor: readonly CorridorStep[] | null;
  /** The engine's time: how far an open run has come. */
  readonly now: number;
  readonly label: string;
}

export function Profile({ run, unit, points, corridor, now, label }: ProfileProps) {
  const { of, symbol } = displayOf(unit);
  const lengthMs = Math.max(1, (run.closed ?? now) - run.opened, corridor?.at(-1)?.sinceMs ?? 0);
  const limits = [run.limits.above, run.limits.peak].filter((each) => each !== null);
  const seen = points.flatMap(([, low, high]) =>
    low === null || high === null ? [] : [low, high],
  );
  const all = [...seen, ...limits, ...(corridor ?? []).flatMap(({ low, high }) => [low, high])];
  const scale = yScale(all.map(of));
  const x = (sinceMs: number): string => ((sinceMs / lengthMs) * 100).toFixed(2);
  const y = (value: number): string => (100 - placeY(scale, of(value))).toFixed(2);
  return (
    <figure class="profile">
      <div class="profile-ends">
        <span>{`${numberText(scale.to, 0)} ${symbol}`}</span>
        <span>{`${numberText(scale.from, 0)} ${symbol}`}</span>
      </div>
      <div class="profile-field">
        <svg
          class="profile-picture"
          role="img"
          aria-label={label}
          viewBox="0 0 100 100"
          preserveAspectRatio="none"
        >
          {corridor === null ? null : <Corridor steps={corridor} x={x} y={y} />}
          {limits.map((limit) => (
            <path
              key={limit}
              class="profile-limit"
              d={`M0 ${y(limit)}H100`}
              vector-effect="non-scaling-stroke"
            />
          ))}
          <path
            class="profile-run"
            d={runPath(run, points, x, y)}
            vector-effect="non-scaling-stroke"
          />
        </svg>
        {limits.map((limit) => (
          <LimitText
            key={limit}
            atPercent={placeY(scale, of(limit))}
            text={plainQuantity(limit, unit)}
          />
        ))}
      </div>
      <figcaption class="profile-times">
        <span>{say('runEntry', { clock: clock(run.opened, now) })}</span>
        <span>
          {run.closed === null ? say('runNow') : say('runExit', { clock: clock(run.closed, now) })}
        </span>
      </figcaption>
    </figure>
  );
}

/** At the height of its line; the place is set by script, which the content policy allows. */
const LimitText = ({ atPercent, text }: { readonly atPercent: number; readonly text: string }) => (
  <span class="profile-limit-text" style={{ bottom: `${atPercent}%` }}>
    {text}
  </span>
);

const placeY = ({ from, to }: Scale, value: number): number => ((value - from) / (to - from)) * 100;

function yScale(values: readonly number[]): Scale {
  if (values.length === 0) return { from: 0, to: 1 };
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const step = niceStep(Math.max(high - low, 1) / 10);
  return {
    from: Math.floor((low - step / 3) / step) * step,
    to: Math.ceil((high + step / 3) / step) * step,
  };
}

type Place = (value: number) => string;

/** A bucket without a reading, or three missing ones, leave a blank. */
function runPath(run: RunView, points: readonly SeriesPoint[], x: Place, y: Place): string {
  const gaps = points.slice(1).map(([at], i) => at - points[i]![0]);
  const usualMs = gaps.toSorted((a, b) => a - b)[gaps.length >> 1] ?? 0;
  let path = '';
  let before: number | null = null;
  for (const [at, , , mean] of points) {
    if (mean === null) {
      before = null;
      continue;
    }
    const joined = before !== null && at - before <= Math.max(3 * usualMs, 30_000);
    path += `${joined ? 'L' : 'M'}${x(at - run.opened)} ${y(mean)}`;
    before = at;
  }
  return path;
}

interface CorridorProps {
  readonly steps: readonly CorridorStep[];
  readonly x: Place;
  readonly y: Place;
}

function Corridor({ steps, x, y }: CorridorProps) {
  const id = useId().replaceAll(':', '');
  const upper = steps.map(({ sinceMs, high }) => `${x(sinceMs)} ${y(high)}`);
  const lower = steps.map(({ sinceMs, low }) => `${x(sinceMs)} ${y(low)}`).toReversed();
  return (
    <>
      <defs>
        <pattern
          id={`corridor${id}`}
          width="1.6"
          height="4"
          patternUnits="userSpaceOnUse"
          patternTransform="skewX(-20)"
        >
          <rect class="corridor-hatch" width="0.6" height="4" />
        </pattern>
      </defs>
      <path
        class="corridor"
        d={`M${[...upper, ...lower].join('L')}Z`}
        fill={`url(#corridor${id})`}
        vector-effect="non-scaling-stroke"
      />
    </>
  );
}
