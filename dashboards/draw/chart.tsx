/**
 * A signal over time: lowest to highest as a band, the mean in ink, limits solid, the forecast
 * dotted, gaps open, unusable readings hatched, readings in doubt hollow, alarms as bars at the foot;
 * a legend names each that is there.
 */
import { useEffect, useRef } from 'preact/hooks';
import type { AlarmView, Series, SignalView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { controlOf } from '../judge/control.ts';
import { limitsOf } from '../judge/limits.ts';
import { AgentText, Around, here } from '../parts/agent-text.tsx';
import { NotRead, ReadFailed } from '../parts/not-read.tsx';
import { get } from '../state/api.ts';
import { useBoard } from '../state/board.ts';
import { nowMs, useNow, useStale } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { useRead } from '../state/read.ts';
import { span } from '../text/clock.ts';
import { ownName } from '../text/names.ts';
import { displayOf, quantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { LegendList } from './legend.tsx';
import type { Drawn } from './plot.ts';
import { type Columns, columnsOf, legendOf, summaryOf } from './series.ts';

interface ChartProps {
  readonly signal: SignalView;
  readonly spanMs: number;
}

export const chartPoints = 1_000;

/** Drawn anew this often at most: a fiftieth of the span, but not under 10 s. */
const refreshMs = (spanMs: number): number => Math.max(10_000, spanMs / 50);

interface Loaded {
  readonly series: Series;
  readonly since: number;
  readonly until: number;
}

export function Chart({ signal, spanMs }: ChartProps) {
  const stale = useStale();
  const turn = useNow(refreshMs(spanMs));
  const last = useRef<Loaded | null>(null);
  const read = useRead(async (): Promise<Loaded> => {
    // What stood when the agent was last heard goes on standing.
    if (stale && last.current !== null) return last.current;
    const until = Math.round(nowMs()) + 1;
    const since = until - spanMs;
    const query = `since=${since}&until=${until}&points=${chartPoints}`;
    const path = `/api/signals/${encodeURIComponent(signal.id)}/series?${query}`;
    last.current = { series: await get<Series>(path), since, until };
    return last.current;
  }, [signal.id, spanMs, stale, turn]);
  const loaded = read.found;
  if (loaded === null) return <NotRead read={read} />;
  const columns = columnsOf(
    loaded.series,
    displayOf(signal).of,
    spanMs / chartPoints,
    signal.expect_every_ms,
  );
  return (
    <figure class="chart">
      <ReadFailed read={read} />
      <Plot signal={signal} loaded={loaded} columns={columns} />
      <Legend signal={signal} columns={columns} />
      <figcaption>{summaryText(signal, loaded.series, spanMs)}</figcaption>
      <Doubt series={loaded.series} />
      {loaded.series.damage.map(({ from, reason }) => (
        <p key={from}>
          <Around sentence={say('damaged', { reason: here })} words={<AgentText text={reason} />} />
        </p>
      ))}
    </figure>
  );
}

function Doubt({ series }: { readonly series: Series }) {
  const n = series.uncertain.reduce((sum, each) => sum + each, 0);
  return n === 0 ? null : <p>{say('chartDoubt', { n })}</p>;
}

function summaryText(signal: SignalView, series: Series, spanMs: number): string {
  const summary = summaryOf(series);
  if (summary === null) return say('chartEmpty');
  const text = (value: number): string => quantity(value, signal, signal.resolution);
  return say('chartSays', {
    name: ownName(signal.id),
    span: span(spanMs),
    low: text(summary.low),
    high: text(summary.high),
    mean: text(summary.mean),
  });
}

interface LegendProps {
  readonly signal: SignalView;
  readonly columns: Columns;
}

function Legend({ signal, columns }: LegendProps) {
  const alarms = useBoard((board) => board.alarms);
  const stale = useStale();
  const on = [...alarms.values()].filter((alarm) => alarm.signal === signal.id);
  const { low, high } = limitsOf(signal);
  return (
    <LegendList
      items={legendOf(columns, {
        limits: low.length + high.length,
        forecast: forecastAmong(on, stale) !== null,
        open: on.some((alarm) => !isAnswered(alarm)),
        answered: on.some(isAnswered),
      })}
    />
  );
}

interface PlotProps {
  readonly signal: SignalView;
  readonly loaded: Loaded;
  readonly columns: Columns;
}

/** The library that draws comes when the first chart does. */
function Plot({ signal, loaded, columns }: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const drawn = useRef<Drawn | null>(null);
  const alarms = useBoard((board) => board.alarms);
  const stale = useStale();
  const rules = useBoard((board) => board.rules);
  const preferences = usePreferences();
  const { series, since, until } = loaded;
  useEffect(() => {
    let wanted = true;
    const on = [...alarms.values()].filter((alarm) => alarm.signal === signal.id);
    const what = {
      signal,
      columns,
      since,
      until,
      alarms: on,
      forecast: forecastAmong(on, stale),
      control: controlOf(signal, on, rules),
    };
    void import('./plot.ts').then(({ draw }) => {
      if (!wanted || place.current === null) return;
      performance.mark('chart-arrived');
      drawn.current = draw(place.current, what, drawn.current);
    });
    return () => {
      wanted = false;
    };
  }, [loaded, alarms, rules, stale, preferences, signal.judged_at]);
  useEffect(
    () => () => {
      drawn.current?.remove();
      drawn.current = null;
    },
    [],
  );
  return (
    <div
      class="plot"
      ref={place}
      role="img"
      aria-label={summaryText(signal, series, until - since)}
    />
  );
}

/** The forecast of an open alarm on the signal, while it lies ahead. */
function forecastAmong(alarms: readonly AlarmView[], stale: boolean): AlarmView['evidence'] | null {
  if (stale) return null;
  const now = nowMs();
  return (
    alarms.find(
      ({ state, evidence }) =>
        state !== 'normal' && evidence.earliest !== null && evidence.earliest > now,
    )?.evidence ?? null
  );
}
