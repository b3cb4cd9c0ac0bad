/**
 * The corridor of good runs: at each moment since entry, from the lowest to the highest that runs
 * dried as they should have been.
 */
import type { RunProfileView, RunView, SeriesPoint } from '../../agent/web/contract.ts';

export interface CorridorStep {
  readonly sinceMs: number;
  readonly low: number;
  readonly high: number;
}

/** Closed, and neither too little nor too much. */
export const isGood = ({ closed, under, over }: RunView): boolean =>
  closed !== null && under === false && over === false;

/** Fewer would draw one run's accident as the rule; our judgement, no published source. */
export const goodRunsMin = 3;
const steps = 120;

/** The profile of the metal, or of the first zone where nobody measures the metal. */
export const profilePoints = ({ profile }: RunProfileView): readonly SeriesPoint[] =>
  profile[0]?.points ?? [];

/** Null with fewer than three runs. A step has the runs that still had a reading then. */
export function corridorOf(runs: readonly RunProfileView[]): readonly CorridorStep[] | null {
  if (runs.length < goodRunsMin) return null;
  const longest = Math.max(...runs.map(({ run }) => (run.closed ?? run.opened) - run.opened));
  const stepMs = Math.max(1, longest / steps);
  const low: number[] = [];
  const high: number[] = [];
  for (const one of runs) {
    for (const [at, min, max] of profilePoints(one)) {
      const step = Math.floor((at - one.run.opened) / stepMs);
      if (min === null || max === null || step < 0) continue;
      low[step] = Math.min(low[step] ?? Number.POSITIVE_INFINITY, min);
      high[step] = Math.max(high[step] ?? Number.NEGATIVE_INFINITY, max);
    }
  }
  return Object.keys(low).map((key) => {
    const step = Number(key);
    return { sinceMs: (step + 0.5) * stepMs, low: low[step]!, high: high[step]! };
  });
}
