/** Out of service for work, with a reason; and back again. For those who may. */
import { useState } from 'preact/hooks';
import { outOfServicePath, returnToServicePath } from '../state/answers.ts';
import { useBoard } from '../state/board.ts';
import { useCommand } from '../state/command.ts';
import { mayDo, useSession } from '../state/session.ts';
import { span } from '../text/clock.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { Choice } from './choice.tsx';
import { Outcome } from './outcome.tsx';
import { ReasonField } from './reason-field.tsx';

/** `id`: an occurrence or a rule. */
export function TakeOut({ id }: { readonly id: string }) {
  const may = mayDo(useSession(), 'removeAlarmFromService');
  if (!may) return <p class="hint">{say('outOfServiceMay')}</p>;
  return (
    <details class="more">
      <summary>{say('outOfServiceDo')}</summary>
      <TakeOutForm id={id} />
    </details>
  );
}

function TakeOutForm({ id, choose }: { readonly id: string; readonly choose?: Choose }) {
  const command = useCommand();
  const [reason, setReason] = useState('');
  const [minutes, setMinutes] = useState(String(outMinutes[0]));
  const send = async (event: Event): Promise<void> => {
    event.preventDefault();
    const end = minutes === '' ? {} : { minutes: Number(minutes) };
    if (await command.send(outOfServicePath(id), { reason, ...end })) setReason('');
  };
  return (
    <form class="form" onSubmit={(event) => void send(event)}>
      <p>{say('outOfServiceWhat')}</p>
      {choose === undefined ? null : <WhichRule rule={id} choose={choose} />}
      <Choice
        legend={say('outOfServiceFor')}
        name="out-minutes"
        value={minutes}
        choices={[
          ...outMinutes.map((each) => [String(each), span(each * 60_000)] as const),
          ['', say('outOfServiceOpen')],
        ]}
        choose={setMinutes}
      />
      <p class="hint">{say('outOfServiceManaged')}</p>
      <ReasonField reason={reason} setReason={setReason} />
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
      <button type="submit">{say('outOfServiceDo')}</button>
    </form>
  );
}

const outMinutes = [60, 240, 480, 1_440] as const;

type Choose = (rule: string) => void;

function WhichRule({ rule, choose }: { readonly rule: string; readonly choose: Choose }) {
  const rules = useBoard((board) => board.rules);
  const armed = [...rules.values()].filter(({ readiness }) => readiness !== 'not-armed');
  return (
    <label class="field">
      {say('outOfServiceWhich')}
      <select required value={rule} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="" />
        {armed.map(({ id }) => (
          <option key={id} value={id}>
            {placeName(id)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Of any rule, also one that has no alarm now. */
export function TakeOutAnother() {
  const [rule, setRule] = useState('');
  if (!mayDo(useSession(), 'removeAlarmFromService'))
    return <p class="hint">{say('outOfServiceMay')}</p>;
  return (
    <details class="more">
      <summary>{say('outOfServiceAnother')}</summary>
      <TakeOutForm id={rule} choose={setRule} />
    </details>
  );
}

export function BringBack({ id }: { readonly id: string }) {
  const command = useCommand();
  if (!mayDo(useSession(), 'returnAlarmToService'))
    return <p class="hint">{say('outOfServiceMay')}</p>;
  return (
    <div class="action">
      <button type="button" onClick={() => void command.send(returnToServicePath(id), {})}>
        {say('backInService')}
      </button>
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
    </div>
  );
}
