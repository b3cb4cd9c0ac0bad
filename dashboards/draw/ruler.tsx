/**
 * A value as a ruler: the allowed window an open gap between two hatched banks, the value a needle,
 * the last hour falling below it, the forecast dotted above.
 *
 * Always true: a needle without a present value is hollow; nothing is told by colour; what the
 * picture shows stands in words beside it, and is its label.
 */
import type { ComponentChild } from 'preact';
import { useId } from 'preact/hooks';
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';
import { isIdle } from '../judge/gates.ts';
import { limitsOf, limitsWith, ownLimit, type SideLimits } from '../judge/limits.ts';
import { readingState } from '../judge/reading.ts';
import { isState } from '../judge/states.ts';
import { readBoard, useBoard, useTold } from '../state/board.ts';
import { nowMs, useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { type TrailPoint, trailMs, useTrail, useTrailUnread } from '../state/trail.ts';
import { span } from '../text/clock.ts';
import { valueText } from '../text/difference.ts';
import { ownName } from '../text/names.ts';
import { numberText } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { limitsText, notJudgedText } from './limit-words.ts';
import { rulerDisplay } from './ruler-display.ts';
import { type Marks, placeOn, type Scale, scaleFor, scaleOfLimits } from './scale.ts';
import { StateLine } from './state-line.tsx';

export interface Forecast {
  readonly limit: number;
  readonly earliest: number;
  readonly latest: number;
}

/** The forecast of an alarm while it is one: ahead of now, on a page that is not stale. */
export function forecastOf({ evidence }: AlarmView, now: number, stale: boolean): Forecast | null {
  const { limit, earliest, latest } = evidence;
  if (stale || limit === null || earliest === null || latest === null || earliest <= now)
    return null;
  return { limit, earliest, latest };
}

interface RulerProps {
  readonly signal: SignalView;
  readonly forecast?: Forecast | null;
  /** The alarm it is drawn for: its own limit is marked too. */
  readonly alarm?: AlarmView;
}

/** A level, a speed or a share below nothing is none; temperatures have no such end. */
const canBeNegative = (unit: string): boolean => /^(Cel|K)/.test(unit);

const percent = (x: number): string => `${x}%`;

/** A state has no distance to anything: it is said in words. */
export function Ruler(props: RulerProps) {
  const rules = useBoard((board) => board.rules);
  return isState(props.signal, rules) ? <StateLine signal={props.signal} /> : <Drawn {...props} />;
}

function Drawn({ signal, forecast = null, alarm }: RulerProps) {
  usePreferences();
  const now = useNow(10_000);
  const points = useTrail(signal.id);
  const unread = useTrailUnread(signal.id);
  // Silence begins between two readings: looked for each second, not when the picture moves on.
  const state = useTold(() => readingState(signal, nowMs()).kind);
  const last = signal.value ?? points.findLast(([, value]) => value !== null)?.[1] ?? null;
  const own = alarm === undefined ? null : ownLimit(alarm, signal);
  const limits = limitsWith(limitsOf(signal), own);
  const rules = useBoard((board) => board.rules);
  // Told each second: a gate's signal is another one than this.
  const idle = useTold(
    () => own === null && isIdle(signal, { rules, signals: readBoard().signals }),
  );
  const words = limitsText(signal, limits, own, rules);
  const limitWords = idle ? notJudgedText(words, signal, rules) : words;
  const how = rulerDisplay(signal, [...limits.low, ...limits.high, last ?? 0]);
  const marks = marksOf(limits, how.of);
  const value = last === null ? null : how.of(last);
  const seen = points.flatMap(([, each]) => (each === null ? [] : [how.of(each)]));
  const ahead = forecast === null ? [] : [how.of(forecast.limit)];
  const extent = seen.length === 0 ? [] : [Math.min(...seen), Math.max(...seen)];
  const values = [...extent, ...ahead, ...(value === null ? [] : [value])];
  const scale =
    values.length === 0
      ? scaleOfLimits(marks)
      : scaleFor(marks, values, canBeNegative(signal.unit));
  const hollow = state !== 'usable';
  return (
    <figure class="ruler">
      <svg
        role="img"
        aria-label={describe(signal, limitWords, last, scale, how.symbol)}
        class={`ruler-picture${forecast === null ? '' : ' ruler-ahead'}`}
      >
        <Banks marks={marks} scale={scale} />
        <Trail points={points} scale={scale} of={how.of} now={now} />
        {forecast === null || value === null ? null : (
          <Ahead
            from={value}
            limit={how.of(forecast.limit)}
            forecast={forecast}
            scale={scale}
            now={now}
          />
        )}
        {value === null ? null : <Needle x={placeOn(scale, value)} hollow={hollow} />}
      </svg>
      <figcaption class="ruler-ends">
        <span>{endText(scale.from, scale)}</span>
        <span>{limitWords}</span>
        <span>
          {endText(scale.to, scale)} {how.symbol}
        </span>
      </figcaption>
      {unread ? <p class="hint">{say('trailUnread')}</p> : null}
    </figure>
  );
}

const endText = (end: number, { from, to }: Scale): string =>
  numberText(end, Math.max(0, Math.min(4, 1 - Math.floor(Math.log10(to - from)))));

const marksOf = ({ low, high }: SideLimits, of: (value: number) => number): Marks => ({
  low: low.map(of),
  high: high.map(of),
});

function describe(
  signal: SignalView,
  limits: string,
  last: number | null,
  scale: Scale,
  symbol: string,
): string {
  const name = ownName(signal.id);
  if (last === null) return say('rulerEmpty', { name, limits });
  const value = valueText(last, signal);
  const [from, to] = [endText(scale.from, scale), `${endText(scale.to, scale)} ${symbol}`];
  return `${say('rulerSays', { name, value, limits, from, to })} ${say('trailSays', { span: span(trailMs) })}`;
}

/** From each limit outward; beyond the second limit the hatch is crossed. */
export function Banks({ marks, scale }: { readonly marks: Marks; readonly scale: Scale }) {
  const id = useId().replaceAll(':', '');
  const [low = null, high = null] = [marks.low[0], marks.high[0]];
  const bank = (from: number, until: number, pattern: string): ComponentChild => (
    <rect
      class="bank"
      x={percent(from)}
      width={percent(Math.max(0, until - from))}
      fill={`url(#${pattern}${id})`}
    />
  );
  const edge = (value: number): ComponentChild => (
    <rect key={value} class="bank-edge" x={percent(placeOn(scale, value))} />
  );
  // Beyond the last of several; of those between, the edges tell.
  const lowLow = marks.low.length > 1 ? marks.low.at(-1)! : null;
  const highHigh = marks.high.length > 1 ? marks.high.at(-1)! : null;
  return (
    <>
      <defs>
        <pattern
          id={`hatch${id}`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line class="hatch" y2="7" />
        </pattern>
        <pattern
          id={`cross${id}`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <line class="hatch" y2="7" />
        </pattern>
      </defs>
      <rect class="base" width="100%" />
      {low === null ? null : bank(0, placeOn(scale, low), 'hatch')}
      {lowLow === null ? null : bank(0, placeOn(scale, lowLow), 'cross')}
      {high === null ? null : bank(placeOn(scale, high), 100, 'hatch')}
      {highHigh === null ? null : bank(placeOn(scale, highHigh), 100, 'cross')}
      {[...marks.low, ...marks.high].map(edge)}
    </>
  );
}

export function Needle({ x, hollow }: { readonly x: number; readonly hollow: boolean }) {
  return (
    <g class={hollow ? 'needle hollow' : 'needle'}>
      <rect class="needle-halo" x={percent(x)} />
      <rect class="needle-line" x={percent(x)} />
      <circle class="needle-head" cx={percent(x)} r="7" />
    </g>
  );
}

interface TrailProps {
  readonly points: readonly TrailPoint[];
  readonly scale: Scale;
  readonly of: (value: number) => number;
  readonly now: number;
}

/** A stretch without a reading is a gap in the trail: longer than three of its usual steps. */
function Trail({ points, scale, of, now }: TrailProps) {
  const steps = points.slice(1).map(([at], i) => at - points[i]![0]);
  const usual = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  let path = '';
  let before: number | null = null;
  for (const [at, value] of points) {
    if (value === null) {
      before = null;
      continue;
    }
    const x = placeOn(scale, of(value)).toFixed(2);
    const y = (Math.min(1, Math.max(0, (now - at) / trailMs)) * 100).toFixed(2);
    path +=
      before === null || at - before > Math.max(3 * usual, 30_000) ? `M${x} ${y}` : `L${x} ${y}`;
    before = at;
  }
  return (
    <g class="trail-place">
      <svg
        class="trail"
        height="2.5rem"
        viewBox="0 0 100 100"
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        <path d={path} vector-effect="non-scaling-stroke" />
      </svg>
    </g>
  );
}

interface AheadProps {
  readonly from: number;
  readonly limit: number;
  readonly forecast: Forecast;
  readonly scale: Scale;
  readonly now: number;
}

/** Time upward: the two dotted lines meet the limit at the earliest and at the latest. */
function Ahead({ from, limit, forecast, scale, now }: AheadProps) {
  const [x0, x1] = [placeOn(scale, from), placeOn(scale, limit)];
  const reach = Math.max(1, forecast.latest - now);
  const y = 100 - (Math.max(0, forecast.earliest - now) / reach) * 100;
  return (
    <svg
      class="ahead"
      height="2.25rem"
      viewBox="0 0 100 100"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path d={`M${x0} 100L${x1} ${y}`} vector-effect="non-scaling-stroke" />
      <path d={`M${x0} 100L${x1} 0`} vector-effect="non-scaling-stroke" />
      <path class="ahead-limit" d={`M${x1} ${y}L${x1} 0`} vector-effect="non-scaling-stroke" />
    </svg>
  );
}
