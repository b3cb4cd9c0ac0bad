/** Acknowledge, fixed at the thumb. An answer the agent has not confirmed is never shown as given. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { acknowledgePath } from '../state/answers.ts';
import { useCommand } from '../state/command.ts';
import { say } from '../text/say.ts';
import { Outcome } from './outcome.tsx';

export function AnswerBar({ alarm }: { readonly alarm: AlarmView }) {
  const command = useCommand();
  const isSending = command.state.kind === 'sending';
  return (
    <section class="answer-bar" aria-label={say('answer')}>
      <Outcome state={command.state} noAnswer={say('notSentWhat')} />
      <button
        type="button"
        class="main-action"
        aria-disabled={isSending}
        onClick={() => command.send(acknowledgePath(alarm.occurrence))}
      >
        {say(isSending ? 'sending' : 'acknowledge')}
      </button>
      <p class="under-action">{say('stopsNothing')}</p>
    </section>
  );
}
