/** What else can be done with an alarm, behind "more": a shelf, its end, a reset. */
import { useState } from 'preact/hooks';
import type { AlarmView } from '../../agent/web/contract.ts';
import { resetPath, shelvePath, unshelvePath } from '../state/answers.ts';
import { type Command, useCommand } from '../state/command.ts';
import { span } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';
import { Outcome } from './outcome.tsx';

const shelfMinutes = [15, 60, 240, 480] as const;

export function AlarmMore({ alarm }: { readonly alarm: AlarmView }) {
  const command = useCommand();
  const { state, occurrence } = alarm;
  if (state === 'normal' || state === 'suppressed-by-design' || state === 'out-of-service')
    return null;
  return (
    <details class="more">
      <summary>{say('more')}</summary>
      {state === 'shelved' ? (
        <Action
          text={say('unshelve')}
          what={null}
          run={() => command.send(unshelvePath(occurrence), {})}
        />
      ) : alarm.highly_managed ? (
        <p>{say('noShelf')}</p>
      ) : (
        <Shelve occurrence={occurrence} command={command} />
      )}
      {state === 'latched-acknowledged' ? (
        <Action
          text={say('reset')}
          what={say('resetWhat')}
          run={() => command.send(resetPath(occurrence), {})}
        />
      ) : alarm.latching ? (
        <p>{say('resetNotYet')}</p>
      ) : null}
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
    </details>
  );
}

interface ActionProps {
  readonly text: string;
  readonly what: string | null;
  readonly run: () => unknown;
}

const Action = ({ text, what, run }: ActionProps) => (
  <div class="action">
    {what === null ? null : <p>{what}</p>}
    <button type="button" onClick={() => void run()}>
      {text}
    </button>
  </div>
);

interface ShelveProps {
  readonly occurrence: string;
  readonly command: Command;
}

function Shelve({ occurrence, command }: ShelveProps) {
  const [minutes, setMinutes] = useState('60');
  const [reason, setReason] = useState('');
  const send = (event: Event): void => {
    event.preventDefault();
    void command.send(shelvePath(occurrence), { minutes: Number(minutes), reason });
  };
  return (
    <form class="form" onSubmit={send}>
      <p>{say('shelveWhat')}</p>
      <Choice
        legend={say('minutes')}
        name="minutes"
        value={minutes}
        choices={shelfMinutes.map((each) => [String(each), span(each * 60_000)])}
        choose={setMinutes}
      />
      <label class="field">
        {say('reason')}
        <span class="hint">{say('reasonHint')}</span>
        <input
          required
          minLength={3}
          maxLength={200}
          value={reason}
          onInput={(event) => setReason(event.currentTarget.value)}
        />
      </label>
      <button type="submit">{say('shelve')}</button>
    </form>
  );
}
