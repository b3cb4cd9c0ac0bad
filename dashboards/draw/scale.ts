/** The scale a value is drawn on: what of it must be seen, rounded outward to whole steps. */

/** Limits, the one met first first. */
export interface Marks {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export interface Scale {
  readonly from: number;
  readonly to: number;
}

/** 1, 2 or 5 times a power of ten, at least `rough`. */
export function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((each) => each * power >= rough * 0.999_999) ?? 10;
  return step * power;
}

/** Beyond a window by this share of it, so that its banks are seen. */
const bankShare = 0.35;
const leastSpan = 1e-6;

/**
 * A scale that shows the window, its banks and `values`; where there is one limit, the way to it.
 * It moves in whole steps, so that it stands while a value wanders.
 */
export function scaleFor(marks: Marks, values: readonly number[], canBeNegative = true): Scale {
  const [low = null, high = null] = [marks.low[0], marks.high[0]];
  const limits = [...marks.low, ...marks.high];
  const all = [...limits, ...values];
  if (all.length === 0) return { from: 0, to: 1 };
  let from = Math.min(...all);
  let to = Math.max(...all);
  const window = low !== null && high !== null ? high - low : (to - from) * 1.25;
  const least = Math.max(leastSpan, Math.abs(limits[0] ?? values[0] ?? 1) * 0.05);
  const room = Math.max(window, least) * bankShare;
  if (low !== null || limits.length === 0) from -= room;
  else from -= room / 3;
  if (high !== null || limits.length === 0) to += room;
  else to += room / 3;
  const step = niceStep((to - from) / 12);
  const low0 = !canBeNegative && Math.min(...all) >= 0 ? Math.max(0, from) : from;
  return { from: Math.floor(low0 / step) * step, to: Math.ceil(to / step) * step };
}

/**
 * A scale of limits alone, while there is no reading: they with room beyond; where they leave one side free,
 * from nothing on. Its ends are round.
 */
export function scaleOfLimits({ low, high }: Marks): Scale {
  const limits = [...low, ...high];
  const open = low.length === 0 || high.length === 0 || new Set(limits).size < 2;
  const all = limits.every((each) => each === 0) ? [-1, 1] : open ? [0, ...limits] : limits;
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = (most - least) / 4;
  const step = niceStep(room);
  const from = limits.includes(least) ? least - room : least;
  const to = limits.includes(most) ? most + room : most;
  return {
    from: rounded(Math.floor(from / step) * step),
    to: rounded(Math.ceil(to / step) * step),
  };
}

/** Without the dust that 3 times 0.1 leaves. */
const rounded = (value: number): number => Number(value.toPrecision(12));

/** Per cent of the scale's width, kept on it. */
export const placeOn = ({ from, to }: Scale, value: number): number =>
  Math.min(100, Math.max(0, ((value - from) / (to - from)) * 100));
