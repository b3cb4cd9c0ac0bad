/** What a transition means to whoever is to be called, and what a chase is then. */
import { type AlarmState, isAnnunciated } from '../alarm/lifecycle.ts';
import type { Effect } from '../input.ts';
import type { Chase, Ending } from './chase.ts';
import type { Group } from './group.ts';

type Transition = Extract<Effect, { kind: 'transition' }>;

/** Nobody is to be called for it now. */
export const quiet = (chase: Chase): Chase => {
  const { newsMs: _, ...rest } = chase;
  return { ...rest, waits: 'nothing', dueMs: null, group: null };
};

export const isGroup = (chase: Chase | undefined): chase is Group => chase?.members !== undefined;

/** States in which somebody is to be called. */
export const isUnanswered = (state: AlarmState): boolean =>
  state === 'unacknowledged' || state === 'latched-unacknowledged';

/** It asks for somebody, as it did not before, or asks again. */
export const calls = ({ from, to, transition }: Transition): boolean =>
  isUnanswered(to) &&
  (transition === 'raised' || transition === 'realarmed' || !isAnnunciated(from));

/** How it ended, and who did it. */
export function endingOf({ transition, by }: Transition): {
  readonly ending: Ending;
  readonly by: string | null;
} {
  const answered =
    transition === 'acknowledged' ||
    transition === 'shelved' ||
    transition === 'removed-from-service';
  return { ending: answered ? 'answered' : 'over', by: by ?? null };
}
