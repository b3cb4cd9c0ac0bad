/** A password as it is typed: masked unless asked otherwise, open to pasting and to password stores. */
import { useId, useState } from 'preact/hooks';
import { say } from '../text/say.ts';

interface PasswordProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  /** A new one is offered to be made and kept by the browser. */
  readonly kind: 'current-password' | 'new-password';
  readonly charsMin?: number;
}

export function PasswordField({ label, value, set, kind, charsMin }: PasswordProps) {
  const [shown, setShown] = useState(false);
  const id = useId();
  const typed = {
    id,
    required: true,
    autocomplete: kind,
    autocapitalize: 'none',
    spellcheck: false,
    value,
    onInput: (event: { readonly currentTarget: { readonly value: string } }) =>
      set(event.currentTarget.value),
  } as const;
  return (
    <>
      <label class="field" htmlFor={id}>
        {label}
        {charsMin === undefined ? null : (
          <span class="hint">{say('passwordHint', { n: charsMin })}</span>
        )}
        {shown ? <input type="text" {...typed} /> : <input type="password" {...typed} />}
      </label>
      <label class="tick">
        <input
          type="checkbox"
          checked={shown}
          onChange={(event) => setShown(event.currentTarget.checked)}
        />
        {say('showPassword')}
      </label>
    </>
  );
}
