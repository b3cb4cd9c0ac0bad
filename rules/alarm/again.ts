/**
 * Telling again: nothing improved within the time to respond (ISA-18.2 re-alarm).
 *
 * The time runs from when people were told; taking an alarm on does not stop it, because the
 * plant does not wait for a signature. Halfway it is noted how far the value is, and at the end
 * looked at whether it has turned. A value that has turned is looked at again after another half.
 * What has no value (a lost sensor, a clock that ran out) improves only by returning. Each time it
 * waits twice as long, and not after `timesMax`: who has not acted by then is not helped by a bell.
 * How often is ours, common practice, no published source.
 */
import type { Evidence } from '../kinds/kind.ts';
import type { EpochMs } from '../signal/sample.ts';

/** Told again at most so often after it was last news. */
export const timesMax = 3;

export interface Again {
  readonly dueMs: EpochMs;
  /** `halfway`: note how far it is. `end`: look. `proving`: it was raised as a nuisance and not told. */
  readonly what: 'halfway' | 'end' | 'proving';
  /** How far the value was halfway; null where it has none. */
  readonly away: number | null;
  /** Told again so often. */
  readonly times: number;
}

/** Told at `at`, for the `times`-th time again; null where it is told no more. */
export function toldAt(at: EpochMs, respondMs: number, times: number): Again | null {
  if (respondMs < 2 || times >= timesMax) return null;
  return { dueMs: at + firstHalfMs(respondMs, times), what: 'halfway', away: null, times };
}

export const proving = (at: EpochMs, provenMs: number): Again => ({
  dueMs: at + provenMs,
  what: 'proving',
  away: null,
  times: 0,
});

/** What comes next at `again.dueMs`; null: tell it again. `step`: the value's resolution; one step is no turn. */
export function next(
  again: Again,
  respondMs: number,
  evidence: Evidence,
  step: number,
): Again | null {
  if (again.what === 'proving') return null;
  const away = awayOf(evidence);
  const { times } = again;
  const dueMs = again.dueMs + waitMs(respondMs, times) - firstHalfMs(respondMs, times);
  if (again.what === 'halfway') return { ...again, dueMs, what: 'end', away };
  const turned = again.away !== null && away !== null && again.away - away > 1.5 * step;
  return turned ? { ...again, dueMs, away } : null;
}

const waitMs = (respondMs: number, times: number): number => respondMs * 2 ** times;
const firstHalfMs = (respondMs: number, times: number): number =>
  Math.floor(waitMs(respondMs, times) / 2);

/** How far from well: the less the better; null where no value says. */
export function awayOf({ difference, value, side }: Evidence): number | null {
  if (difference !== undefined) return difference;
  if (value === undefined || side === undefined) return null;
  return side === 'high' ? value : -value;
}
