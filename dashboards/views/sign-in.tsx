/** Signing in: name and password, and why the page asks. */
import { useState } from 'preact/hooks';
import { Outcome } from '../parts/outcome.tsx';
import { PasswordField } from '../parts/password-field.tsx';
import type { CommandState } from '../state/command.ts';
import { refusal, signIn } from '../state/door.ts';
import { useSession } from '../state/session.ts';
import { say } from '../text/say.ts';

export function SignIn() {
  const { wasIn } = useSession();
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const send = (event: Event): void => {
    event.preventDefault();
    if (state.kind === 'sending') return;
    setState({ kind: 'sending' });
    signIn(name, password).catch((error) => setState(refusal(error)));
  };
  return (
    <article class="door">
      <h1>{say('signIn')}</h1>
      <p>{say(wasIn ? 'signInOver' : 'signInWhat')}</p>
      <form class="form" onSubmit={send}>
        <label class="field">
          {say('personName')}
          <input
            required
            maxLength={100}
            autocomplete="username"
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <PasswordField
          label={say('password')}
          value={password}
          set={setPassword}
          kind="current-password"
        />
        <Outcome state={state} noAnswer={say('notSentOther')} />
        <button type="submit" class="main-action" aria-disabled={state.kind === 'sending'}>
          {say(state.kind === 'sending' ? 'sending' : 'signIn')}
        </button>
      </form>
      <p class="hint">{say('signInForgotten')}</p>
    </article>
  );
}
