/** You: who is signed in here and where else, signing out, another password. */
import { useState } from 'preact/hooks';
import { Outcome } from '../parts/outcome.tsx';
import { OwnSessions } from '../parts/own-sessions.tsx';
import { PasswordField } from '../parts/password-field.tsx';
import { to } from '../router.ts';
import type { CommandState } from '../state/command.ts';
import { changePassword, refusal, signOut } from '../state/door.ts';
import { mayDo, useSession } from '../state/session.ts';
import { say } from '../text/say.ts';

/** Said before it is tried; the agent holds to its own. */
const passwordCharsMin = 15;

export function Me() {
  const session = useSession();
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const person = session.me?.person ?? null;
  const leave = (everywhere: boolean) => (): void => {
    setState({ kind: 'sending' });
    signOut(everywhere).catch((error) => setState(refusal(error)));
  };
  return (
    <article>
      <h1>{say('me')}</h1>
      <p>
        {person === null
          ? say('noPeople')
          : say('signedInAs', { name: person.name, role: say('role')[person.role] })}
      </p>
      {mayDo(session, 'listPeople') ? (
        <p>
          <a class="action" href={to('people')}>
            {say('peopleHere')}
          </a>
        </p>
      ) : null}
      {person === null ? null : (
        <div class="form">
          <button type="button" onClick={leave(false)}>
            {say('signOut')}
          </button>
          <button type="button" onClick={leave(true)}>
            {say('signOutAll')}
          </button>
          <p class="hint">{say('signOutAllWhat')}</p>
          <Outcome state={state} noAnswer={say('notSentOther')} />
          <ChangePassword />
        </div>
      )}
      {person === null ? null : <OwnSessions />}
    </article>
  );
}

function ChangePassword() {
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const send = async (event: Event): Promise<void> => {
    event.preventDefault();
    setState({ kind: 'sending' });
    try {
      await changePassword(current, next);
      setCurrent('');
      setNext('');
      setState({ kind: 'done' });
    } catch (error) {
      setState(refusal(error));
    }
  };
  return (
    <details class="more">
      <summary>{say('passwordChange')}</summary>
      <form class="form" onSubmit={(event) => void send(event)}>
        <p>{say('passwordChangeWhat')}</p>
        <PasswordField
          label={say('passwordCurrent')}
          value={current}
          set={setCurrent}
          kind="current-password"
        />
        <PasswordField
          label={say('passwordNew')}
          value={next}
          set={setNext}
          kind="new-password"
          charsMin={passwordCharsMin}
        />
        <Outcome state={state} noAnswer={say('notSentOther')} />
        <button type="submit">{say('passwordChange')}</button>
      </form>
    </details>
  );
}
