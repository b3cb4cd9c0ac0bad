/** How much of a span the agent ran, and so can speak of. */
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Core } from './core.ts';

export interface Ran {
  /** Within the span: from when on there is a record. Its end where there is none. */
  readonly fromMs: EpochMs;
  /** Of the span, the time the agent ran. */
  readonly coveredMs: number;
}

/** More starts than a week has; older ones are not looked at. */
const runsMax = 2_000;

/** Of [`sinceMs`, `untilMs`); the run that goes on lasts until now. */
export function ranWithin(core: Core, sinceMs: EpochMs, untilMs: EpochMs): Ran {
  let coveredMs = 0;
  let fromMs = untilMs;
  const runs = core.store.read.runs(runsMax);
  for (const [i, { started, lastAlive, stopped }] of runs.entries()) {
    const ended = i === 0 && stopped === null ? core.tellingNow : (stopped ?? lastAlive);
    const from = Math.max(started, sinceMs);
    const to = Math.min(ended, untilMs);
    if (to <= from) continue;
    coveredMs += to - from;
    fromMs = Math.min(fromMs, from);
  }
  return { fromMs, coveredMs };
}
