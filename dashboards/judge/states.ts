/** Signals that are a state, 1 or 0, as running or not: they are words, and have no way to go to a limit. */
import type { RuleView, SignalView } from '../../agent/web/contract.ts';

type State = Pick<SignalView, 'id' | 'kind' | 'unit' | 'value' | 'yes_no'>;

/** Told by the agent; or 1 or 0, and rules are switched by it. */
export function isState(
  { id, unit, value, yes_no: told }: State,
  rules: ReadonlyMap<string, RuleView>,
): boolean {
  if (told === true) return true;
  if (unit !== '1' || (value !== 0 && value !== 1)) return false;
  return [...rules.values()].some(({ gates }) => gates.some(({ signal }) => signal === id));
}

export type StateWord = 'on' | 'off' | 'yes' | 'no';

/** A machine is on or off; what somebody looked for is there or not. */
export function wordOf(value: number, { kind }: Pick<SignalView, 'kind'>): StateWord {
  if (kind === 'manual') return value === 1 ? 'yes' : 'no';
  return value === 1 ? 'on' : 'off';
}

/** null for any other signal, and without a value. */
export const stateWord = (signal: State, rules: ReadonlyMap<string, RuleView>): StateWord | null =>
  signal.value !== null && isState(signal, rules) ? wordOf(signal.value, signal) : null;

type Point = readonly [at: number, value: number | null];

/**
 * Since when it has been as it is, as far back as `points` (oldest first) show it without a gap in which
 * nobody could tell. `whole`: it was so all that time, so perhaps for longer.
 */
export function stateSince(
  points: readonly Point[],
  value: number,
): { readonly at: number; readonly whole: boolean } | null {
  let at: number | null = null;
  for (const [when, each] of points.toReversed()) {
    if (each !== value) return at === null ? null : { at, whole: false };
    at = when;
  }
  return at === null ? null : { at, whole: true };
}
