/** Tokens of programs: listed, added, ended. */
import { useState } from 'preact/hooks';
import type { TokenAddedView, TokenView } from '../../agent/web/contract.ts';
import { get, post } from '../state/api.ts';
import { useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { clock } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { ChangeOutcome, useChange } from './again.tsx';
import { NotRead } from './not-read.tsx';
import { RoleChoice, type RoleName } from './role-choice.tsx';

const daysDefault = 90;

export function Tokens() {
  const now = useNow(60_000);
  const change = useChange();
  const read = useRead(() => get<{ tokens: TokenView[] }>('/api/tokens'), []);
  const tokens = read.failed === null ? read.found?.tokens : undefined;
  const remove = (id: string): Promise<void> =>
    change.run(async () => {
      await post(`/api/tokens/${encodeURIComponent(id)}/remove`, {});
      read.again();
    });
  return (
    <section>
      <h2>{say('tokens')}</h2>
      <p>{say('tokensSays')}</p>
      <NotRead read={read} />
      {tokens?.length === 0 ? <p class="empty">{say('tokenNone')}</p> : null}
      <ul class="entries">
        {(tokens ?? []).map(({ id, label, role, ends }) => (
          <li key={id} class="entry entry-still">
            <strong>{label}</strong>
            <p class="hint">
              {say('tokenUntil', { role: say('role')[role], clock: clock(ends, now) })}
            </p>
            <button
              type="button"
              aria-label={`${say('tokenRemove')}: ${label}`}
              onClick={() => void remove(id)}
            >
              {say('tokenRemove')}
            </button>
          </li>
        ))}
      </ul>
      <ChangeOutcome change={change} />
      {tokens === undefined ? null : <AddToken again={read.again} />}
    </section>
  );
}

function AddToken({ again }: { readonly again: () => void }) {
  const change = useChange();
  const [label, setLabel] = useState('');
  const [days, setDays] = useState(String(daysDefault));
  const [role, setRole] = useState<RoleName>('reader');
  const [secret, setSecret] = useState<string | null>(null);
  const send = (event: Event): void => {
    event.preventDefault();
    void change.run(async () => {
      const added = await post<TokenAddedView>('/api/tokens', { label, role, days: Number(days) });
      setSecret(added.secret);
      setLabel('');
      again();
    });
  };
  return (
    <details class="more">
      <summary>{say('tokenAdd')}</summary>
      <form class="form" onSubmit={send}>
        <label class="field">
          {say('tokenLabel')}
          <input
            required
            maxLength={100}
            value={label}
            onInput={(event) => setLabel(event.currentTarget.value)}
          />
        </label>
        <label class="field">
          {say('tokenDays')}
          <input
            required
            inputMode="numeric"
            pattern="[1-9][0-9]{0,2}"
            value={days}
            onInput={(event) => setDays(event.currentTarget.value)}
          />
        </label>
        <RoleChoice name="token-role" value={role} choose={setRole} />
        <button type="submit">{say('tokenAdd')}</button>
      </form>
      <ChangeOutcome change={change} />
      {secret === null ? null : (
        <label class="field">
          {say('tokenSecret')}
          <input readOnly value={secret} onFocus={(event) => event.currentTarget.select()} />
        </label>
      )}
    </details>
  );
}
