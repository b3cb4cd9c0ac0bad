/** People, for administrators: who there is, inviting, another role, a new link, removing. */
import { useState } from 'preact/hooks';
import type { InvitedView, PersonView } from '../../agent/web/contract.ts';
import { type Change, ChangeOutcome, useChange } from '../parts/again.tsx';
import { EmailForm } from '../parts/email-form.tsx';
import { NotRead } from '../parts/not-read.tsx';
import { RoleChoice, type RoleName } from '../parts/role-choice.tsx';
import { Tokens } from '../parts/tokens.tsx';
import { get, post } from '../state/api.ts';
import { nowMs, useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { loadMe, loadNames, mayDo, useSession } from '../state/session.ts';
import { clock } from '../text/clock.ts';
import { say } from '../text/say.ts';

const personPath = (id: string, verb: string): string =>
  `/api/people/${encodeURIComponent(id)}/${verb}`;

export function People() {
  const session = useSession();
  const role = session.me?.person?.role ?? 'reader';
  return (
    <article>
      <h1>{say('peopleHere')}</h1>
      {mayDo(session, 'listPeople') ? (
        <Everybody />
      ) : (
        <p>{say('peopleWho', { role: say('role')[role] })}</p>
      )}
    </article>
  );
}

/** What cannot be read has no forms beside it: whom they would change is not known. */
function Everybody() {
  const [invited, setInvited] = useState<InvitedView | null>(null);
  const read = useRead(() => get<{ people: PersonView[] }>('/api/people'), []);
  const load = async (): Promise<void> => {
    read.again();
    await Promise.all([loadNames(), loadMe()]);
  };
  const show = async (made: InvitedView): Promise<void> => {
    setInvited(made);
    await load();
  };
  const people = read.found?.people ?? [];
  const isKnown = read.found !== null && read.failed === null;
  return (
    <>
      {invited === null ? null : <Link invited={invited} />}
      <NotRead read={read} />
      {isKnown && people.length === 0 ? <p class="empty">{say('personNone')}</p> : null}
      <ul class="entries">
        {isKnown
          ? people.map((person) => (
              <PersonEntry key={person.id} person={person} show={show} load={load} />
            ))
          : null}
      </ul>
      {isKnown ? <Invite show={show} /> : null}
      <Tokens />
    </>
  );
}

function Link({
  invited: { person, link, qr, ends, only_here },
}: {
  readonly invited: InvitedView;
}) {
  const { name } = person;
  return (
    <section class="invited" aria-live="polite">
      <h2>{say('invited', { name })}</h2>
      {only_here ? <p>{say('invitedOnlyHere', { name })}</p> : null}
      <p>
        {say(qr === null ? 'invitedLinkSays' : 'invitedSays', {
          name,
          clock: clock(ends, nowMs()),
        })}
      </p>
      {qr === null ? null : (
        <svg class="qr" viewBox={`0 0 ${qr.size} ${qr.size}`} role="img">
          <title>{say('invitedQr', { name })}</title>
          <rect width={qr.size} height={qr.size} />
          <path d={qr.path} />
        </svg>
      )}
      <label class="field">
        {say('invitedCopy')}
        <input readOnly value={link} onFocus={(event) => event.currentTarget.select()} />
      </label>
    </section>
  );
}

interface EntryProps {
  readonly person: PersonView;
  readonly show: (made: InvitedView) => Promise<void>;
  readonly load: () => Promise<void>;
}

function PersonEntry({ person, show, load }: EntryProps) {
  const now = useNow(60_000);
  const { name, role, email, joined, invited_until: until, sessions } = person;
  const state = joined
    ? say('personJoined', { n: sessions })
    : until === null
      ? say('personWaiting')
      : say('personInvited', { clock: clock(until, now) });
  return (
    <li class="entry entry-still">
      <strong>{name}</strong>
      <p class="hint">
        {say('role')[role]} · {email ?? say('emailNone')} · {state}
      </p>
      <ChangePerson person={person} show={show} load={load} />
    </li>
  );
}

function ChangePerson({ person: { id, name, role, email }, show, load }: EntryProps) {
  const change = useChange();
  const [chosen, setChosen] = useState<RoleName>(role);
  const reset = (): Promise<void> =>
    change.run(async () => show(await post<InvitedView>(personPath(id, 'reset'), {})));
  const give = (): Promise<void> =>
    change.run(async () => {
      await post(personPath(id, 'role'), { role: chosen });
      await load();
    });
  const giveEmail = async (address: string | null): Promise<void> => {
    await post(personPath(id, 'email'), { email: address });
    await load();
  };
  const remove = (): Promise<void> =>
    change.run(async () => {
      await post(personPath(id, 'remove'), {});
      await load();
    });
  return (
    <details class="more">
      <summary>
        {say('personChange')}
        <span class="unseen"> {name}</span>
      </summary>
      <EmailForm email={email} give={giveEmail} />
      <div class="form">
        <RoleChoice name={`role-${id}`} value={chosen} choose={setChosen} />
        <button type="button" onClick={() => void give()} aria-disabled={chosen === role}>
          {say('roleChange')}
        </button>
        <p>{say('personResetWhat', { name })}</p>
        <button type="button" onClick={() => void reset()}>
          {say('personReset')}
        </button>
        <p>{say('personRemoveWhat', { name })}</p>
        <button type="button" onClick={() => void remove()}>
          {say('personRemove', { name })}
        </button>
        <ChangeOutcome change={change} />
      </div>
    </details>
  );
}

function Invite({ show }: { readonly show: (made: InvitedView) => Promise<void> }) {
  const change: Change = useChange();
  const [name, setName] = useState('');
  const [role, setRole] = useState<RoleName>('operator');
  const send = (event: Event): void => {
    event.preventDefault();
    void change.run(async () => {
      const made = await post<InvitedView>('/api/people', { name, role });
      setName('');
      await show(made);
    });
  };
  return (
    <details class="more">
      <summary>{say('invite')}</summary>
      <form class="form" onSubmit={send}>
        <label class="field">
          {say('personName')}
          <input
            required
            maxLength={100}
            autocomplete="off"
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <RoleChoice name="invite-role" value={role} choose={setRole} />
        <button type="submit">{say('inviteSend')}</button>
      </form>
      <ChangeOutcome change={change} />
    </details>
  );
}
