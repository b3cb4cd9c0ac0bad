/** Draws a chart into a place, or draws it anew where one stands; the only file that knows uPlot. */
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { AlarmView, Series, SignalView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { limitsOf } from '../judge/limits.ts';
import { readBoard } from '../state/board.ts';
import { clock, hourMinute } from '../text/clock.ts';
import { displayOf, numberText, plainQuantity } from '../text/quantity.ts';
import { colours, remPx } from './colours.ts';
import { type Columns, columnsOf } from './series.ts';

export interface Charted {
  readonly signal: SignalView;
  readonly series: Series;
  readonly since: number;
  readonly until: number;
  readonly alarms: readonly AlarmView[];
  readonly forecast: AlarmView['evidence'] | null;
}

export interface Drawn {
  readonly remove: () => void;
}

interface Limit {
  readonly value: number;
  readonly side: 'low' | 'high';
  readonly text: string;
}

const chartPoints = 1_000;

export function draw(place: HTMLElement, what: Charted, before: Drawn | null): Drawn {
  before?.remove();
  const { signal, series, since, until, forecast } = what;
  const how = displayOf(signal);
  const stepMs = (until - since) / chartPoints;
  const columns = columnsOf(series, how.of, stepMs, signal.expect_every_ms);
  const limits = drawnLimits(signal, how.of);
  const end =
    forecast?.latest == null ? until : Math.min(forecast.latest, until + (until - since) / 2);
  const plot = new uPlot(
    options(place, what, columns, limits, [since / 1_000, end / 1_000], how.of),
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

const heightPx = (width: number): number => Math.round(Math.min(380, Math.max(220, width * 0.55)));

function drawnLimits(signal: SignalView, of: (value: number) => number): Limit[] {
  const { low, high } = limitsOf(signal);
  const limit = (value: number, side: Limit['side']): Limit => ({
    value: of(value),
    side,
    text: plainQuantity(value, signal),
  });
  return [...low.map((each) => limit(each, 'low')), ...high.map((each) => limit(each, 'high'))];
}

function options(
  place: HTMLElement,
  what: Charted,
  columns: Columns,
  limits: readonly Limit[],
  [from, to]: readonly [number, number],
  of: (value: number) => number,
): uPlot.Options {
  const { ink, quiet, line, slate } = colours();
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
      y: { range: (_, low, high) => rangeOf(low, high, limits) },
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
          drawDoubtful(plot, columns);
        },
      ],
      draw: [
        (plot) => {
          for (const limit of limits) drawLimit(plot, limit, font);
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

function drawLimit(plot: uPlot, { value, text }: Limit, font: string): void {
  const { ctx, bbox } = plot;
  const y = plot.valToPos(value, 'y', true);
  if (y < bbox.top || y > bbox.top + bbox.height) return;
  const { ink, surface } = colours();
  ctx.save();
  ctx.strokeStyle = ink;
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(bbox.left, y);
  ctx.lineTo(bbox.left + bbox.width, y);
  ctx.stroke();
  ctx.font = font.replace(/^\d+/, (px) => String(Number(px) * devicePixelRatio));
  ctx.textAlign = 'right';
  ctx.textBaseline = y - bbox.top < 24 * devicePixelRatio ? 'top' : 'bottom';
  ctx.lineWidth = 4 * devicePixelRatio;
  ctx.strokeStyle = surface;
  ctx.fillStyle = ink;
  const x = bbox.left + bbox.width - 4 * devicePixelRatio;
  const gap = (ctx.textBaseline === 'top' ? 3 : -3) * devicePixelRatio;
  ctx.strokeText(text, x, y + gap);
  ctx.fillText(text, x, y + gap);
  ctx.restore();
}

/** Dotted from the last value to the limit, at the earliest and at the latest. */
function drawForecast(
  plot: uPlot,
  { signal, forecast, until }: Charted,
  of: (value: number) => number,
): void {
  if (forecast === null || signal.value === null || forecast.limit === null) return;
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  ctx.strokeStyle = colours().ink;
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.setLineDash([2 * devicePixelRatio, 4 * devicePixelRatio]);
  for (const at of [forecast.earliest, forecast.latest]) {
    if (at === null) continue;
    ctx.beginPath();
    ctx.moveTo(plot.valToPos(until / 1_000, 'x', true), plot.valToPos(of(signal.value), 'y', true));
    ctx.lineTo(plot.valToPos(at / 1_000, 'x', true), plot.valToPos(of(forecast.limit), 'y', true));
    ctx.stroke();
  }
  ctx.restore();
}

/** Filled while nobody has answered, outlined after. */
function drawAlarm(plot: uPlot, alarm: AlarmView, until: number): void {
  const { ctx, bbox } = plot;
  const clamp = (x: number): number => Math.min(bbox.left + bbox.width, Math.max(bbox.left, x));
  const x0 = clamp(plot.valToPos(alarm.raised / 1_000, 'x', true));
  const x1 = clamp(plot.valToPos((alarm.returned ?? until) / 1_000, 'x', true));
  if (x1 <= bbox.left) return;
  const height = 8 * devicePixelRatio;
  const y = bbox.top + bbox.height - height;
  ctx.save();
  ctx.strokeStyle = colours().ink;
  ctx.fillStyle = colours().ink;
  ctx.lineWidth = 2 * devicePixelRatio;
  const width = Math.max(4 * devicePixelRatio, x1 - x0);
  if (isAnswered(alarm)) ctx.strokeRect(x0, y, width, height);
  else ctx.fillRect(x0, y, width, height);
  ctx.restore();
}

/** Beyond a limit the ground is hatched, as a ruler's bank is. */
function drawBank(plot: uPlot, { value, side }: Limit): void {
  const { left, top, width, height } = plot.bbox;
  const at = Math.min(top + height, Math.max(top, plot.valToPos(value, 'y', true)));
  const [y0, y1] = side === 'high' ? [top, at] : [at, top + height];
  hatch(plot.ctx, { x: left, y: y0, width, height: y1 - y0 }, colours().line, 1);
}

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** `lean`: 1 rises to the right, -1 falls. */
function hatch(ctx: CanvasRenderingContext2D, area: Area, stroke: string, lean: 1 | -1): void {
  const { x, y, width, height } = area;
  if (width <= 0 || height <= 0) return;
  ctx.save();
  ctx.beginPath();
  ctx.rect(x, y, width, height);
  ctx.clip();
  ctx.strokeStyle = stroke;
  ctx.lineWidth = 1.5 * devicePixelRatio;
  ctx.beginPath();
  for (let from = x - height; from < x + width; from += 8 * devicePixelRatio) {
    ctx.moveTo(from, lean > 0 ? y + height : y);
    ctx.lineTo(from + height, lean > 0 ? y : y + height);
  }
  ctx.stroke();
  ctx.restore();
}

/** Where readings are in doubt: a broken line along the foot, under the curve they are part of. */
function drawDoubtful(plot: uPlot, { doubtful }: Columns): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = colours().edge;
  ctx.lineWidth = 3 * devicePixelRatio;
  ctx.setLineDash([4 * devicePixelRatio, 3 * devicePixelRatio]);
  for (const [from, to] of doubtful) {
    const x0 = Math.max(bbox.left, plot.valToPos(from, 'x', true));
    const x1 = Math.min(bbox.left + bbox.width, plot.valToPos(to, 'x', true));
    const y = bbox.top + bbox.height - 2 * devicePixelRatio;
    ctx.beginPath();
    ctx.moveTo(x0, y);
    ctx.lineTo(x1, y);
    if (x1 > x0) ctx.stroke();
  }
  ctx.restore();
}

/** Where readings came that were not usable: the gap is hatched the other way. */
function drawUnusable(plot: uPlot, { unusable }: Columns): void {
  const { ctx, bbox } = plot;
  for (const [from, to] of unusable) {
    const x0 = Math.max(bbox.left, plot.valToPos(from, 'x', true));
    const x1 = Math.min(bbox.left + bbox.width, plot.valToPos(to, 'x', true));
    const width = x1 <= x0 ? 0 : Math.max(x1 - x0, 3 * devicePixelRatio);
    hatch(ctx, { x: x0, y: bbox.top, width, height: bbox.height }, colours().edge, -1);
  }
}
