/** Why somebody does it, in a few words; kept on record. */
import { say } from '../text/say.ts';

interface ReasonProps {
  readonly reason: string;
  readonly setReason: (reason: string) => void;
}

export const ReasonField = ({ reason, setReason }: ReasonProps) => (
  <label class="field">
    {say('reason')}
    <span class="hint">{say('reasonHint')}</span>
    <input
      required
      minLength={3}
      maxLength={500}
      value={reason}
      onInput={(event) => setReason(event.currentTarget.value)}
    />
  </label>
);
