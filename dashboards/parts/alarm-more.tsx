/** What else can be done with an alarm, behind "more": pass it on, a shelf, its end, a reset, out of service. */
import { useState } from 'preact/hooks';
import type { AlarmView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { passOnPath, resetPath, shelvePath, unshelvePath } from '../state/answers.ts';
import { useBoard } from '../state/board.ts';
import { useCommand } from '../state/command.ts';
import { span } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';
import { BringBack, TakeOut } from './out-of-service.tsx';
import { Outcome } from './outcome.tsx';
import { ReasonField } from './reason-field.tsx';

const shelfMinutes = [15, 60, 240, 480, 1_440] as const;

export function AlarmMore({ alarm }: { readonly alarm: AlarmView }) {
  const { state, occurrence } = alarm;
  const kept = useBoard((board) => board.kept);
  if (state === 'normal' || kept !== null) return null;
  const waits = !isAnswered(alarm) && !state.startsWith('returned-');
  return (
    <details class="more">
      <summary>{say('more')}</summary>
      {waits ? (
        <Action text={say('passOn')} what={say('passOnWhat')} path={passOnPath(occurrence)} />
      ) : null}
      <Shelf alarm={alarm} />
      <Reset alarm={alarm} />
      {state === 'out-of-service' ? <BringBack id={occurrence} /> : <TakeOut id={occurrence} />}
    </details>
  );
}

interface AboutProps {
  readonly alarm: AlarmView;
}

function Shelf({ alarm }: AboutProps) {
  const { state, occurrence, shelf_minutes_max: minutesMax } = alarm;
  if (state === 'shelved')
    return <Action text={say('unshelve')} what={null} path={unshelvePath(occurrence)} />;
  if (state === 'suppressed-by-design' || state === 'out-of-service') return null;
  if (minutesMax === null) return <p>{say('noShelf')}</p>;
  return <Shelve alarm={alarm} minutesMax={minutesMax} />;
}

function Reset({ alarm }: AboutProps) {
  if (alarm.state === 'latched-acknowledged') return <ResetForm alarm={alarm} />;
  return alarm.latching ? <p>{say('resetNotYet')}</p> : null;
}

function ResetForm({ alarm }: AboutProps) {
  const command = useCommand();
  const [reason, setReason] = useState('');
  const send = (event: Event): void => {
    event.preventDefault();
    void command.send(resetPath(alarm.occurrence), { reason });
  };
  const managed = alarm.shelf_minutes_max === null;
  return (
    <form class="form" onSubmit={send}>
      <p>{say('resetWhat')}</p>
      {managed ? <p class="hint">{say('resetManaged')}</p> : null}
      <ReasonField reason={reason} setReason={setReason} letters={managed ? 10 : 3} />
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
      <button type="submit">{say('reset')}</button>
    </form>
  );
}

interface ActionProps {
  readonly text: string;
  readonly what: string | null;
  readonly path: string;
}

function Action({ text, what, path }: ActionProps) {
  const command = useCommand();
  return (
    <div class="action">
      {what === null ? null : <p>{what}</p>}
      <button type="button" onClick={() => void command.send(path, {})}>
        {text}
      </button>
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
    </div>
  );
}

/** No longer than the site allows for its priority; that length itself where none of the usual fits. */
function lengths(minutesMax: number): readonly number[] {
  const within = shelfMinutes.filter((each) => each <= minutesMax);
  return within.length === 0 ? [minutesMax] : within;
}

function Shelve({ alarm, minutesMax }: AboutProps & { readonly minutesMax: number }) {
  const command = useCommand();
  const choices = lengths(minutesMax);
  const [minutes, setMinutes] = useState(String(choices[0]));
  const [reason, setReason] = useState('');
  const [once, setOnce] = useState(false);
  const stands = alarm.state === 'unacknowledged' || alarm.state === 'acknowledged';
  const send = (event: Event): void => {
    event.preventDefault();
    const one_shot = once && stands;
    const body = { minutes: Number(minutes), reason, ...(one_shot ? { one_shot } : {}) };
    void command.send(shelvePath(alarm.occurrence), body);
  };
  return (
    <form class="form" onSubmit={send}>
      <p>{say('shelveWhat')}</p>
      <Choice
        legend={say('minutes')}
        name="minutes"
        value={minutes}
        choices={choices.map((each) => [String(each), span(each * 60_000)])}
        choose={setMinutes}
      />
      {stands ? (
        <label class="tick">
          <input
            type="checkbox"
            checked={once}
            onChange={(event) => setOnce(event.currentTarget.checked)}
          />
          {say('shelveOnce')}
        </label>
      ) : null}
      <ReasonField reason={reason} setReason={setReason} />
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
      <button type="submit">{say('shelve')}</button>
    </form>
  );
}
