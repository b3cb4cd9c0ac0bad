/** What became of a command: refused with its reason, or not sent with what to do. */
import type { Asked, CommandState } from '../state/command.ts';
import { say } from '../text/say.ts';

/** Of an alarm that was passed on: who is asked now, or that somebody must be fetched. */
export function askedText({ people, can_be_told: canBeTold }: Asked): string {
  if (people.length > 0) return say('passedOnTo', { who: people.join(', ') });
  return say(canBeTold ? 'passedOnNotNow' : 'passedOnNobody');
}

interface OutcomeProps {
  readonly state: CommandState;
  /** What to do where no answer came. */
  readonly noAnswer: string;
}

export function Outcome({ state, noAnswer }: OutcomeProps) {
  switch (state.kind) {
    case 'no-answer':
      return (
        <p class="outcome" role="alert">
          <strong>{say('notSent')}</strong> {noAnswer}
        </p>
      );
    case 'refused':
      return (
        <p class="outcome" role="alert">
          <span lang="en">{say('refused', { why: state.why, fix: state.fix })}</span>
        </p>
      );
    case 'done':
      return (
        <p class="outcome" role="status">
          {state.asked === undefined ? say('done') : askedText(state.asked)}
        </p>
      );
    default:
      return null;
  }
}
