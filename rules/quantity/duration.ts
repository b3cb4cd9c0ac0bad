/**
 * Durations as people write them: "250 ms", "90 s", "10 min", "8 h", "30 d".
 */
import type { Parsed } from './quantity.ts';

const shape = /^(\d+(?:\.\d+)?|\.\d+)\s+(ms|s|min|h|d)$/;
const msOf: Readonly<Record<string, number>> = {
  ms: 1,
  s: 1_000,
  min: 60_000,
  h: 3_600_000,
  d: 86_400_000,
};

/** A hundred years: longer is a slip of the pen, and sums of times must stay whole numbers. */
export const durationMsMax = 36_525 * 86_400_000;

/** Whole milliseconds, from 0 to `durationMsMax`; a day is 24 h. Refuses, never repairs. */
export function parseDuration(text: string): Parsed<number> {
  const match = shape.exec(text.trim());
  if (match === null) {
    return {
      ok: false,
      problem: `"${text}" is no duration`,
      fix: 'write a number, a space and ms, s, min, h or d, as "90 s" or "10 min"',
    };
  }
  const durationMs = Math.round(Number(match[1]) * msOf[match[2]!]!);
  if (durationMs > durationMsMax) {
    return {
      ok: false,
      problem: `"${text}" is longer than a hundred years`,
      fix: 'write a shorter duration',
    };
  }
  return { ok: true, value: durationMs };
}
