/** Whoever passes an alarm on hears who is asked now, and that they must go themselves where it is nobody. */
import { onRungs } from '../notify/ladder.ts';
import type { Core } from './core.ts';
import { outranked } from './telling.ts';

export interface Asked {
  /** Names, without whoever passed it on. */
  readonly people: readonly string[];
  /** Anybody else could be told of it, now or later. */
  readonly canBeTold: boolean;
}

/** Asked before it is passed on; `by`: the person who cannot take it. */
export function askedNow(core: Core, occurrence: string, by: string): Asked {
  const { telling } = core;
  const chase = telling?.chases().find((each) => each.occurrence === occurrence);
  if (telling === null || chase === undefined) return { people: [], canBeTold: false };
  const ladder = telling.ladder(chase);
  const others = (people: readonly { id: string; name: string }[]): string[] =>
    people.filter(({ id }) => id !== by).map(({ name }) => name);
  const due = (chase.waits === 'answer' || chase.waits === 'turn') && !outranked(core, occurrence);
  return {
    people: due ? others(onRungs(ladder, [chase.rung, chase.rung])) : [],
    canBeTold: others(ladder.rungs.flat()).length > 0,
  };
}

export const askedNote = ({ people, canBeTold }: Asked): string => {
  if (people.length > 0) return `Asked now: ${people.join(', ')}.`;
  const why = canBeTold ? 'Nobody else is told of it now.' : 'Nobody can be told.';
  return `${why} Go and fetch somebody.`;
};
