/** One thing that happened to an alarm, in words. */
import { endedBy } from '#rules/alarm/ended-by.ts';
import type { AlarmView } from '../../agent/web/contract.ts';
import { wasReached } from '../judge/reached.ts';
import { say } from '../text/say.ts';

type Step = AlarmView['transitions'][number];

export function transitionText(step: Step, { told }: Pick<AlarmView, 'told'>): string {
  if (step.again === undefined)
    return step.reason === endedBy.gate
      ? say('transitionUnjudged')
      : say('transition')[step.transition];
  if (!wasReached(told, step.at)) return say(step.again === 0 ? 'untoldLate' : 'untoldAgain');
  return say(step.again === 0 ? 'toldLate' : 'toldAgain');
}

/** Why, where the words do not say it already. */
export const transitionReason = ({ reason }: Step): string | null =>
  reason === endedBy.gate ? null : reason;
