/** What became of a command: refused with its reason, or not sent with what to do. */
import type { CommandState } from '../state/command.ts';
import { say } from '../text/say.ts';

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
          {say('done')}
        </p>
      );
    default:
      return null;
  }
}
