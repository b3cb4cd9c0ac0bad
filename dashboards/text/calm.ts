/** What is said where no alarm stands. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { say } from './say.ts';

type Hazard = Pick<
  CoverageView['stations'][number]['hazards'][number],
  'to_people' | 'state' | 'unheard'
>;

/**
 * Always true: "nothing abnormal" is not said while a hazard to people is not watched, or waits for what
 * has never been heard.
 */
export function calmText(hazards: readonly Hazard[]): string {
  const people = hazards.filter((hazard) => hazard.to_people);
  const blind = people.filter(({ state }) => state === 'not-watched').length;
  if (blind > 0) return say('noAlarmPeople', { n: blind });
  const partly = people.filter(({ unheard = [] }) => unheard.length > 0).length;
  return partly > 0 ? say('noAlarmPartly', { n: partly }) : say('nothingAbnormal');
}
