/** The marks a chart has beside its curve: limits, forecast, alarms, and what readings were worth. */
import type uPlot from 'uplot';
import type { AlarmView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import type { Side } from '../judge/limits.ts';
import { colours } from './colours.ts';
import type { Charted } from './plot.ts';
import type { Columns, Stretch } from './series.ts';

export interface Limit {
  readonly value: number;
  readonly side: Side;
  readonly text: string;
}

export function drawLimit(plot: uPlot, { value, text }: Limit, font: string): void {
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
  ctx.setLineDash([]);
  ctx.font = font.replace(/^\d+/, (px) => String(Number(px) * devicePixelRatio));
  // At the left: what happens now is at the right.
  ctx.textAlign = 'left';
  ctx.textBaseline = y - bbox.top < 24 * devicePixelRatio ? 'top' : 'bottom';
  ctx.lineWidth = 4 * devicePixelRatio;
  ctx.strokeStyle = surface;
  ctx.fillStyle = ink;
  const x = bbox.left + 4 * devicePixelRatio;
  const gap = (ctx.textBaseline === 'top' ? 3 : -3) * devicePixelRatio;
  ctx.strokeText(text, x, y + gap);
  ctx.fillText(text, x, y + gap);
  ctx.restore();
}

/** Dashed: what is usual here, by a baseline that was given or learned. */
export function drawUsual(plot: uPlot, usual: Limit, font: string): void {
  plot.ctx.save();
  plot.ctx.setLineDash([8 * devicePixelRatio, 5 * devicePixelRatio]);
  drawLimit(plot, usual, font);
  plot.ctx.restore();
}

/** Dotted from the last value to the limit, at the earliest and at the latest. */
export function drawForecast(
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
export function drawAlarm(plot: uPlot, alarm: AlarmView, until: number): void {
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
export function drawBank(plot: uPlot, { value, side }: Limit): void {
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

/**
 * Readings in doubt: the line is hollow there. Drawn over the curve, thick in ink and then thinner in
 * the ground’s colour, within the stretch alone.
 */
export function drawDoubtful(plot: uPlot, { doubtful, times, mean }: Columns): void {
  const { ctx, bbox } = plot;
  const { ink, surface } = colours();
  for (const [from, to] of doubtful) {
    const x0 = Math.max(bbox.left, plot.valToPos(from, 'x', true) - 3 * devicePixelRatio);
    const x1 = Math.min(
      bbox.left + bbox.width,
      plot.valToPos(to, 'x', true) + 3 * devicePixelRatio,
    );
    if (x1 <= x0) continue;
    ctx.save();
    ctx.beginPath();
    ctx.rect(x0, bbox.top, x1 - x0, bbox.height);
    ctx.clip();
    ctx.lineCap = 'round';
    const within = (i: number): boolean => times[i]! >= from && times[i]! <= to;
    const path = pathOf(plot, times, mean, (i) => within(i - 1) || within(i) || within(i + 1));
    for (const [stroke, px] of [
      [ink, 7],
      [surface, 3.5],
    ] as const) {
      ctx.strokeStyle = stroke;
      ctx.lineWidth = px * devicePixelRatio;
      ctx.stroke(path);
    }
    ctx.restore();
  }
}

/** The curve through the rows that are asked for; broken where there is no value. */
function pathOf(
  plot: uPlot,
  times: readonly number[],
  values: readonly (number | null)[],
  asked: (row: number) => boolean,
): Path2D {
  const path = new Path2D();
  let isOn = false;
  for (const [i, value] of values.entries()) {
    if (value === null || !asked(i)) {
      isOn = false;
      continue;
    }
    const [x, y] = [plot.valToPos(times[i]!, 'x', true), plot.valToPos(value, 'y', true)];
    if (isOn) path.lineTo(x, y);
    else {
      path.moveTo(x, y);
      path.lineTo(x, y);
    }
    isOn = true;
  }
  return path;
}

/** Some of a stretch was not usable: the same hatch, along the top alone. */
export function drawPartly(plot: uPlot, { partly }: Columns): void {
  const { bbox } = plot;
  for (const stretch of partly)
    hatchOver(plot, stretch, Math.min(bbox.height, 14 * devicePixelRatio));
}

/** Where readings came that were not usable: the gap is hatched the other way. */
export function drawUnusable(plot: uPlot, { unusable }: Columns): void {
  for (const stretch of unusable) hatchOver(plot, stretch, plot.bbox.height);
}

function hatchOver(plot: uPlot, [from, to]: Stretch, height: number): void {
  const { ctx, bbox } = plot;
  const x0 = Math.max(bbox.left, plot.valToPos(from, 'x', true));
  const x1 = Math.min(bbox.left + bbox.width, plot.valToPos(to, 'x', true));
  const width = x1 <= x0 ? 0 : Math.max(x1 - x0, 3 * devicePixelRatio);
  hatch(ctx, { x: x0, y: bbox.top, width, height }, colours().edge, -1);
}
