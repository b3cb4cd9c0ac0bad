/**
 * What a signal's latest reading is worth: missing data is a state of its own, never a blank.
 */
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';

export type ReadingState =
  /** Nothing came since the agent started. */
  | { readonly kind: 'none' }
  /** Silent for longer than it promised. */
  | { readonly kind: 'silent'; readonly since: number }
  | { readonly kind: 'unusable'; readonly cause: string; readonly at: number }
  | { readonly kind: 'usable'; readonly at: number; readonly uncertain: string | null };

/** Missed this many times what was promised, a signal counts as lost: as the agent's own rule has it. */
const missedMax = 3;

/** `now`: the engine's time. */
export function readingState(signal: SignalView, now: number): ReadingState {
  const { at, quality, expect_every_ms: everyMs } = signal;
  if (at === null || quality === null) return { kind: 'none' };
  if (everyMs !== null && now - at > missedMax * everyMs) return { kind: 'silent', since: at };
  if (quality.grade === 'bad') return { kind: 'unusable', cause: quality.cause ?? '', at };
  return { kind: 'usable', at, uncertain: quality.grade === 'uncertain' ? quality.cause : null };
}

/**
 * Is what the sensor reads now past the limit that an alarm is about? At the limit itself only where its rule
 * has it so. `now`: the engine's time.
 */
export function isPastLimit(
  { rule, evidence }: AlarmView,
  signal: SignalView,
  now: number,
): boolean {
  const { limit, side, unit } = evidence;
  const { value } = signal;
  if (limit === null || side === null || value === null) return false;
  if (signal.unit !== unit || !isUsable(signal, now)) return false;
  if (value === limit)
    return signal.judged_at.some((each) => each.rule === rule && each.at_limit === true);
  return side === 'high' ? value > limit : value < limit;
}

export const isUsable = (signal: SignalView, now: number): boolean =>
  readingState(signal, now).kind === 'usable';
