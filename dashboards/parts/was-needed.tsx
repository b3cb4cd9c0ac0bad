/** Of an alarm that is over: was it needed? Said once; the answers stand on the page of alarm performance. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { neededPath } from '../state/answers.ts';
import { useCommand } from '../state/command.ts';
import { isSaid, keepSaid } from '../state/needed.ts';
import { say } from '../text/say.ts';
import { Outcome } from './outcome.tsx';

export function WasNeeded({ alarm }: { readonly alarm: AlarmView }) {
  const command = useCommand();
  const { occurrence } = alarm;
  // It is asked once nothing is left to do: answered, and reset where it latched.
  const isOpen = alarm.state !== 'normal' || alarm.returned === null;
  if (isOpen || !alarm.judgeable || alarm.superseded_by !== null) return null;
  const answer = async (needed: boolean): Promise<void> => {
    if (await command.send(neededPath(occurrence), { needed })) keepSaid(occurrence);
  };
  const isNoted = command.state.kind === 'done' || isSaid(occurrence);
  return (
    <section class="was-needed">
      <h2>{say('thisNeeded')}</h2>
      {isNoted ? (
        <p role="status">{say('noted')}</p>
      ) : (
        <>
          <p class="pair">
            <button type="button" onClick={() => void answer(true)}>
              {say('state').yes}
            </button>
            <button type="button" onClick={() => void answer(false)}>
              {say('state').no}
            </button>
          </p>
          <Outcome state={command.state} noAnswer={say('notSentOther')} />
        </>
      )}
    </section>
  );
}
