/**
 * Heat dose of a metal part: how long it was at or above a temperature.
 *
 * Between two readings the temperature is taken to run straight from one to the other; the
 * crossing is interpolated. By definition, no source.
 */

/**
 * Milliseconds at or above `limit` on the straight line from (`fromMs`, `from`) to (`toMs`, `to`).
 * Times in ms, `toMs` not before `fromMs`; temperatures and limit in one unit; 0 to toMs - fromMs.
 */
export function msAtOrAbove(
  fromMs: number,
  from: number,
  toMs: number,
  to: number,
  limit: number,
): number {
  const span = toMs - fromMs;
  if (from >= limit && to >= limit) return span;
  if (from < limit && to < limit) return 0;
  const share = (Math.max(from, to) - limit) / Math.abs(to - from);
  return span * share;
}
