/** When it was: now, or a date and time in the site's time zone; what lies far back is asked about once. */
import { useState } from 'preact/hooks';
import { nowMs } from '../state/link.ts';
import { clock, foreignZone, siteTime, span } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';

export interface When {
  readonly choice: string;
  readonly text: string;
  /** The text that is being asked about. */
  readonly asked: string | null;
}

export const useWhen = () => useState<When>({ choice: 'now', text: '', asked: null });

/** What goes over the wire: nothing for now, else epoch milliseconds. */
export const atOf = ({ choice, text }: When): { at?: number } =>
  choice === 'now' ? {} : { at: siteTime(text) };

/** A slip in a date is believed and kept: so far back it is asked about. Judgement. */
const dayMs = 86_400_000;

/** When it was, where that lies so far back; else null. */
const farBack = (when: When): number | null => {
  const { at } = atOf(when);
  return at !== undefined && nowMs() - at > dayMs ? at : null;
};

const yesName = 'is-right';

/** May it be sent? Where not, the question stands on the page, with the button that says yes. */
export function isSure(event: SubmitEvent, when: When, setWhen: (when: When) => void): boolean {
  if (farBack(when) === null) return true;
  const { submitter } = event;
  if (submitter instanceof HTMLButtonElement && submitter.name === yesName)
    return when.asked === when.text;
  setWhen({ ...when, asked: when.text });
  return false;
}

interface WhenFieldProps {
  readonly name: string;
  readonly when: When;
  readonly setWhen: (when: When) => void;
}

export function WhenField({ name, when, setWhen }: WhenFieldProps) {
  const zone = foreignZone();
  return (
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
          {zone === null ? say('whenAt') : say('whenAtZone', { zone })}
          <input
            required
            type="datetime-local"
            value={when.text}
            onInput={(event) => setWhen({ ...when, text: event.currentTarget.value })}
          />
        </label>
      )}
      <FarBack when={when} />
    </>
  );
}

/** In years where it is one or more. */
const yearMs = 365 * dayMs;

function FarBack({ when }: Pick<WhenFieldProps, 'when'>) {
  const at = farBack(when);
  if (at === null || when.asked !== when.text) return null;
  const now = nowMs();
  return (
    <div class="outcome" role="alert">
      <p>
        {now - at < yearMs
          ? say('farBack', { clock: clock(at, now), span: span(now - at) })
          : say('farBackYears', { clock: clock(at, now), n: Math.floor((now - at) / yearMs) })}
      </p>
      <button type="submit" name={yesName}>
        {say('farBackYes')}
      </button>
    </div>
  );
}
