/** Where somebody's messages go by e-mail: entered, changed, taken away by leaving it empty. */
import { useState } from 'preact/hooks';
import { say } from '../text/say.ts';
import { type Change, ChangeOutcome, useChange } from './again.tsx';

interface EmailProps {
  /** As the agent has it. */
  readonly email: string | null;
  readonly give: (email: string | null) => Promise<void>;
}

export function EmailForm({ email, give }: EmailProps) {
  const change: Change = useChange();
  const [text, setText] = useState(email ?? '');
  const address = text.trim() === '' ? null : text.trim();
  const send = (event: Event): void => {
    event.preventDefault();
    void change.run(() => give(address));
  };
  return (
    <>
      <form class="form" onSubmit={send}>
        <label class="field">
          {say('email')}
          <span class="hint">{say('emailHint')}</span>
          <input
            type="email"
            maxLength={254}
            autocomplete="off"
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <button type="submit" aria-disabled={address === email}>
          {say('emailSave')}
        </button>
      </form>
      <ChangeOutcome change={change} />
    </>
  );
}
