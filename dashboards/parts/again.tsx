/** A change that may need the password once more: it is asked for, then the change is sent again. */
import { useState } from 'preact/hooks';
import { Refused } from '../state/api.ts';
import type { CommandState } from '../state/command.ts';
import { proveAgain, refusal } from '../state/door.ts';
import { say } from '../text/say.ts';
import { Outcome } from './outcome.tsx';
import { PasswordField } from './password-field.tsx';

export interface Change {
  readonly state: CommandState;
  /** The password is asked for. */
  readonly asks: boolean;
  readonly run: (act: () => Promise<void>) => Promise<void>;
  readonly prove: (password: string) => Promise<void>;
}

export function useChange(): Change {
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const [waiting, setWaiting] = useState<(() => Promise<void>) | null>(null);
  const run = async (act: () => Promise<void>): Promise<void> => {
    setState({ kind: 'sending' });
    try {
      await act();
      setWaiting(null);
      setState({ kind: 'done' });
    } catch (error) {
      const isAsked = error instanceof Refused && error.problem.code === 'PEOPLE_AGAIN_NEEDED';
      setWaiting(() => (isAsked ? act : null));
      setState(isAsked ? { kind: 'idle' } : refusal(error));
    }
  };
  const prove = async (password: string): Promise<void> => {
    if (waiting === null) return;
    setState({ kind: 'sending' });
    try {
      await proveAgain(password);
    } catch (error) {
      setState(refusal(error));
      return;
    }
    await run(waiting);
  };
  return { state, asks: waiting !== null, run, prove };
}

/** What became of a change; the password is asked for in its place. */
export function ChangeOutcome({ change }: { readonly change: Change }) {
  const [password, setPassword] = useState('');
  const send = (event: Event): void => {
    event.preventDefault();
    void change.prove(password).then(() => setPassword(''));
  };
  if (!change.asks) return <Outcome state={change.state} noAnswer={say('notSentOther')} />;
  return (
    <form class="form outcome" onSubmit={send}>
      <p>{say('againWhat')}</p>
      <PasswordField
        label={say('again')}
        value={password}
        set={setPassword}
        kind="current-password"
      />
      <Outcome state={change.state} noAnswer={say('notSentOther')} />
      <button type="submit">{say('againSend')}</button>
    </form>
  );
}
