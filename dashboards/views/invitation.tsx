/** The page behind the link of an invitation: whom it is for, a password, and the certificate to trust. */
import { useState } from 'preact/hooks';
import type { InvitationView } from '../../agent/web/contract.ts';
import { ReadFailed } from '../parts/not-read.tsx';
import { Outcome } from '../parts/outcome.tsx';
import { PasswordField } from '../parts/password-field.tsx';
import { post } from '../state/api.ts';
import type { CommandState } from '../state/command.ts';
import { accept, refusal } from '../state/door.ts';
import { useRead } from '../state/read.ts';
import { ownName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function Invitation({ secret }: { readonly secret: string }) {
  const read = useRead(() => post<InvitationView>('/api/invitation', { secret }), [secret]);
  const { found, failed } = read;
  const isReading = found === null && failed === null;
  return (
    <article class="door">
      <h1>{say(failed?.kind === 'refused' ? 'invitationNone' : 'invitation')}</h1>
      {isReading ? <p role="status">{say('invitationReading')}</p> : <ReadFailed read={read} />}
      {found === null ? null : <Accept secret={secret} invitation={found} />}
    </article>
  );
}

interface AcceptProps {
  readonly secret: string;
  readonly invitation: InvitationView;
}

function Accept({ secret, invitation }: AcceptProps) {
  const { name, role, site, password_chars_min: charsMin, authority, language } = invitation;
  const [ownNameGiven, setName] = useState('');
  const [password, setPassword] = useState('');
  const [state, setState] = useState<CommandState>({ kind: 'idle' });
  const send = (event: Event): void => {
    event.preventDefault();
    if (state.kind === 'sending') return;
    setState({ kind: 'sending' });
    const first = name === null ? { name: ownNameGiven } : {};
    accept({ secret, password, language, ...first }).catch((error) => setState(refusal(error)));
  };
  const facts = { site: ownName(site), role: say('role')[role] };
  return (
    <>
      <p>
        {name === null ? say('invitationFirst', facts) : say('invitationFor', { name, ...facts })}
      </p>
      <p>{say('invitationSays')}</p>
      <form class="form" onSubmit={send}>
        {name === null ? (
          <label class="field">
            {say('invitationName')}
            <input
              required
              maxLength={100}
              autocomplete="username"
              value={ownNameGiven}
              onInput={(event) => setName(event.currentTarget.value)}
            />
          </label>
        ) : (
          // For the browser's own store of passwords, which asks whose it is.
          <input type="text" autocomplete="username" value={name} readOnly hidden />
        )}
        <PasswordField
          label={say('password')}
          value={password}
          set={setPassword}
          kind="new-password"
          charsMin={charsMin}
        />
        <Outcome state={state} noAnswer={say('notSentOther')} />
        <button type="submit" class="main-action" aria-disabled={state.kind === 'sending'}>
          {say(state.kind === 'sending' ? 'sending' : 'invitationAccept')}
        </button>
      </form>
      {authority === null ? null : (
        <Authority fingerprint={authority.fingerprint} isFirst={name === null} />
      )}
    </>
  );
}

interface AuthorityProps {
  readonly fingerprint: string;
  /** There is no administrator yet who could be asked. */
  readonly isFirst: boolean;
}

export const Authority = ({ fingerprint, isFirst }: AuthorityProps) => (
  <section>
    <h2>{say('authority')}</h2>
    <p>{say(isFirst ? 'authorityFirst' : 'authoritySays')}</p>
    <p class="hint">{say('authorityFingerprint')}</p>
    <p class="fingerprint">{fingerprint}</p>
    <p>
      <a class="action" href="/api/authority.crt" download="forebond-root.crt">
        {say('authorityFetch')}
      </a>
    </p>
    <p class="hint">{say('authorityHow')}</p>
  </section>
);
