/** When it was: now, or a date and time. */
import { useState } from 'preact/hooks';
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';

export interface When {
  readonly choice: string;
  readonly text: string;
}

export const useWhen = () => useState<When>({ choice: 'now', text: '' });

/** What goes over the wire: nothing for now, else epoch milliseconds. */
export const atOf = ({ choice, text }: When): { at?: number } =>
  choice === 'now' ? {} : { at: new Date(text).getTime() };

interface WhenFieldProps {
  readonly name: string;
  readonly when: When;
  readonly setWhen: (when: When) => void;
}

export const WhenField = ({ name, when, setWhen }: WhenFieldProps) => (
  <>
    <Choice
      legend={say('whenLegend')}
      name={name}
      value={when.choice}
      choices={Object.entries(say('when'))}
      choose={(choice) => setWhen({ ...when, choice })}
    />
    {when.choice === 'now' ? null : (
      <label class="field">
        {say('whenAt')}
        <input
          required
          type="datetime-local"
          value={when.text}
          onInput={(event) => setWhen({ ...when, text: event.currentTarget.value })}
        />
      </label>
    )}
  </>
);
