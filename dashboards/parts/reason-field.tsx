/** Why somebody does it, in a few words; kept on record. */
import { say } from '../text/say.ts';

interface ReasonProps {
  readonly reason: string;
  readonly setReason: (reason: string) => void;
  /** At least so many letters. */
  readonly letters?: number;
}

export const ReasonField = ({ reason, setReason, letters = 3 }: ReasonProps) => (
  <label class="field">
    {say('reason')}
    <span class="hint">{say('reasonHint')}</span>
    <input
      required
      minLength={letters}
      maxLength={500}
      value={reason}
      onInput={(event) => setReason(event.currentTarget.value)}
    />
  </label>
);
