/** What is said where no alarm stands. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { say } from './say.ts';

type Hazard = Pick<
  CoverageView['stations'][number]['hazards'][number],
  'to_people' | 'state' | 'unheard' | 'name_taken'
>;

/**
 * Always true: "nothing abnormal" is not said while a hazard to people is not watched, has rules without
 * a usable reading, waits for what has never been heard, or has a place whose name is taken.
 */
export function calmText(hazards: readonly Hazard[]): string {
  const people = hazards.filter((hazard) => hazard.to_people);
  const blind = people.filter(({ state }) => state === 'not-watched').length;
  if (blind > 0) return say('noAlarmPeople', { n: blind });
  const partly = people.filter(
    ({ state, unheard = [], name_taken = [] }) =>
      state === 'unjudged' || unheard.length > 0 || name_taken.length > 0,
  ).length;
  return partly > 0 ? say('noAlarmPartly', { n: partly }) : say('nothingAbnormal');
}
