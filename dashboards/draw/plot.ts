/** Draws a chart into a place, or draws it anew where one stands; the only file that knows uPlot. */
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';
import type { Control } from '../judge/control.ts';
import { limitsOf } from '../judge/limits.ts';
import { readBoard } from '../state/board.ts';
import { clock, hourMinute } from '../text/clock.ts';
import { displayOf, numberText, plainQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { colours, remPx } from './colours.ts';
import {
  drawAlarm,
  drawBank,
  drawDoubtful,
  drawForecast,
  drawLimit,
  drawPartly,
  drawUnusable,
  drawUsual,
  type Limit,
} from './plot-marks.ts';
import type { Columns } from './series.ts';

export interface Charted {
  readonly signal: SignalView;
  /** In the reader’s unit. */
  readonly columns: Columns;
  readonly since: number;
  readonly until: number;
  readonly alarms: readonly AlarmView[];
  readonly forecast: AlarmView['evidence'] | null;
  /** Its own baseline, while an alarm tells that it was left. */
  readonly control: Control | null;
}

export interface Drawn {
  readonly remove: () => void;
}

export function draw(place: HTMLElement, what: Charted, before: Drawn | null): Drawn {
  before?.remove();
  const { signal, columns, since, until, forecast } = what;
  const how = displayOf(signal);
  const limits = drawnLimits(signal, how.of);
  const usuals = drawnControl(what, how.of);
  const end =
    forecast?.latest == null ? until : Math.min(forecast.latest, until + (until - since) / 2);
  const plot = new uPlot(
    options(place, what, { limits, usuals }, [since / 1_000, end / 1_000], how.of),
    [columns.times, columns.high, columns.low, columns.mean],
    place,
  );
  const resize = new ResizeObserver(() => {
    const width = place.clientWidth;
    if (width > 0 && Math.abs(width - plot.width) > 1)
      plot.setSize({ width, height: heightPx(width) });
  });
  resize.observe(place);
  return {
    remove: () => {
      resize.disconnect();
      plot.destroy();
    },
  };
}

/** In rem, so that a chart keeps its height beside larger text. */
const heightPx = (width: number): number => {
  const rem = remPx();
  return Math.round(Math.min(23.75 * rem, Math.max(13.75 * rem, width * 0.55)));
};

function drawnLimits(signal: SignalView, of: (value: number) => number): Limit[] {
  const { low, high } = limitsOf(signal);
  const limit = (value: number, side: Limit['side']): Limit => ({
    value: of(value),
    side,
    text: plainQuantity(value, signal),
  });
  return [...low.map((each) => limit(each, 'low')), ...high.map((each) => limit(each, 'high'))];
}

/** The centre line and the control limits that were left. */
function drawnControl({ signal, control }: Charted, of: (value: number) => number): Limit[] {
  if (control === null) return [];
  const { centre, low, high } = control;
  const line = (value: number | null, side: Limit['side'], words: string): Limit[] =>
    value === null ? [] : [{ value: of(value), side, text: words }];
  const limit = (value: number | null): string =>
    value === null ? '' : say('controlLimit', { value: plainQuantity(value, signal) });
  return [
    ...line(centre, 'high', say('centreLine', { value: plainQuantity(centre, signal) })),
    ...line(low, 'low', limit(low)),
    ...line(high, 'high', limit(high)),
  ];
}

function options(
  place: HTMLElement,
  what: Charted,
  { limits, usuals }: { readonly limits: readonly Limit[]; readonly usuals: readonly Limit[] },
  [from, to]: readonly [number, number],
  of: (value: number) => number,
): uPlot.Options {
  const { ink, quiet, line, slate } = colours();
  const { columns } = what;
  const font = `${Math.round(remPx() * 0.875)}px system-ui, sans-serif`;
  const width = place.clientWidth || 320;
  const axis = { stroke: quiet, font, grid: { stroke: line, width: 1 }, ticks: { stroke: line } };
  const zone = readBoard().site?.timezone ?? 'UTC';
  return {
    width,
    height: heightPx(width),
    legend: { show: false },
    cursor: { show: false },
    tzDate: (ts) => uPlot.tzDate(new Date(ts * 1_000), zone),
    scales: {
      x: { min: from, max: to, time: true },
      y: { range: (_, low, high) => rangeOf(low, high, [...limits, ...usuals]) },
    },
    axes: [
      {
        ...axis,
        space: remPx() * 5.5,
        values: (_, ticks) => ticks.map((tick) => timeText(tick, to - from)),
      },
      {
        ...axis,
        size: remPx() * 3.6,
        space: remPx() * 2.4,
        values: (_, ticks) => ticks.map((tick) => numberText(tick, digitsOf(ticks))),
      },
    ],
    bands: [{ series: [1, 2], fill: `color-mix(in srgb, ${slate} 35%, transparent)` }],
    series: [
      {},
      { stroke: slate, width: 1, points: { show: false }, spanGaps: false },
      { stroke: slate, width: 1, points: { show: false }, spanGaps: false },
      {
        stroke: ink,
        width: 1.5,
        spanGaps: false,
        points: { show: columns.times.length < 80, size: 4 },
      },
    ],
    hooks: {
      drawAxes: [
        (plot) => {
          for (const limit of limits) drawBank(plot, limit);
          drawUnusable(plot, columns);
          drawPartly(plot, columns);
        },
      ],
      draw: [
        (plot) => {
          drawDoubtful(plot, columns);
          for (const limit of limits) drawLimit(plot, limit, font);
          for (const usual of usuals) drawUsual(plot, usual, font);
          if (what.forecast !== null) drawForecast(plot, what, of);
          for (const alarm of what.alarms) drawAlarm(plot, alarm, what.until);
          performance.mark('chart-drawn');
        },
      ],
    },
  };
}

/** What was measured, and the limits near it. */
function rangeOf(low: number, high: number, limits: readonly Limit[]): [number, number] {
  const values = limits.map(({ value }) => value);
  const known = low === null || high === null ? values : [low, high];
  if (known.length === 0) return [0, 1];
  const [from, to] = [Math.min(...known), Math.max(...known)];
  const reach = Math.max((to - from) * 3, Math.abs(to) * 0.3, 1);
  const near = values.filter((value) => value >= from - reach && value <= to + reach);
  const all = [...known, ...near];
  const pad = Math.max(Math.max(...all) - Math.min(...all), 1e-3) * 0.08;
  return [Math.min(...all) - pad, Math.max(...all) + pad];
}

const dayS = 86_400;

function timeText(tick: number, spanS: number): string {
  const at = tick * 1_000;
  if (spanS <= 2 * dayS) return hourMinute(at);
  const [day = ''] = clock(at, at - 20 * dayS * 1_000).split(/ (?=\S+$)/);
  return day;
}

const digitsOf = (ticks: readonly number[]): number => {
  const step = Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0));
  return step === 0 ? 0 : Math.min(4, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
};
