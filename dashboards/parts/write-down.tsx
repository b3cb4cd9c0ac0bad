/** What people write down at a station: that something happened, or a reading by hand. */
import { useState } from 'preact/hooks';
import { unitSymbol } from '#rules/alarm/unit-symbol.ts';
import type { ClockView, MarksView, MarkView, SignalView } from '../../agent/web/contract.ts';
import { marksPath, readingsPath } from '../state/answers.ts';
import { useCommand } from '../state/command.ts';
import { useNow } from '../state/link.ts';
import { useMarks } from '../state/marks.ts';
import { clock } from '../text/clock.ts';
import { ownName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { AgentText, Around, here } from './agent-text.tsx';
import { Choice } from './choice.tsx';
import { clockText } from './clock-text.ts';
import { ReadFailed } from './not-read.tsx';
import { Outcome } from './outcome.tsx';
import { atOf, isSure, useWhen, WhenField } from './when.tsx';

interface WriteDownProps {
  /** `line/station`. */
  readonly station: string;
  readonly signals: readonly SignalView[];
}

export function WriteDown({ station, signals }: WriteDownProps) {
  const read = useMarks(station);
  const marks = read.found;
  const byHand = signals.filter(({ kind }) => kind === 'manual');
  const some = marks !== null && marks.marks.length > 0;
  if (!some && byHand.length === 0 && read.failed === null) return null;
  return (
    <section>
      <h2>{say('writeDown')}</h2>
      <ReadFailed read={read} />
      {some ? <SayMark station={station} marks={marks} /> : null}
      {byHand.length === 0 ? null : <EnterReading signals={byHand} />}
      {marks === null || marks.clocks.length === 0 ? null : <Clocks clocks={marks.clocks} />}
    </section>
  );
}

/** Of several nothing is chosen beforehand: what is written down by a slip of the hand is believed. */
const only = <T,>(of: readonly T[]): T | undefined => (of.length === 1 ? of[0] : undefined);

function SayMark({
  station,
  marks: { marks, clocks },
}: {
  readonly station: string;
  readonly marks: MarksView;
}) {
  const command = useCommand();
  const now = useNow(60_000);
  const [name, setName] = useState(only(marks)?.mark ?? '');
  const [item, setItem] = useState('');
  const [when, setWhen] = useWhen();
  const mark = marks.find((each) => each.mark === name);
  const send = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    if (mark === undefined || !isSure(event, when, setWhen)) return;
    const of = mark.what === null ? {} : { item };
    const said = { station, mark: mark.mark, ...of, ...atOf(when) };
    if (await command.send(marksPath, said)) setItem('');
  };
  return (
    <details class="more">
      <summary>{say('sayMark')}</summary>
      <form class="form" onSubmit={(event) => void send(event)}>
        <Choice
          legend={say('markLegend')}
          name="mark"
          value={name}
          choices={marks.map((each) => [each.mark, ownName(each.mark)])}
          choose={setName}
        />
        {mark === undefined ? null : (
          <>
            <p class="hint">
              <AgentText text={mark.meaning} />{' '}
              <Around
                sentence={say('markByWhom', { who: here })}
                words={<AgentText text={mark.by_whom} />}
              />{' '}
              {mark.last === null ? null : say('markLast', { clock: clock(mark.last.at, now) })}
            </p>
            <ItemField mark={mark} clocks={clocks} item={item} setItem={setItem} />
            <WhenField name="mark-when" when={when} setWhen={setWhen} />
            <Outcome state={command.state} noAnswer={say('notSentOther')} />
            <button type="submit">{say('send')}</button>
          </>
        )}
      </form>
    </details>
  );
}

interface ItemFieldProps {
  readonly mark: MarkView;
  readonly clocks: readonly ClockView[];
  readonly item: string;
  readonly setItem: (item: string) => void;
}

/** With those whose clock runs to choose from. */
function ItemField({ mark, clocks, item, setItem }: ItemFieldProps) {
  if (mark.what === null) return null;
  const known = [...new Set(clocks.flatMap((each) => each.item ?? []))];
  return (
    <label class="field">
      {say('markItem', { what: say('holdWhat')[mark.what] })}
      <input
        required
        maxLength={100}
        list="items-known"
        value={item}
        onInput={(event) => setItem(event.currentTarget.value)}
      />
      <datalist id="items-known">
        {known.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
    </label>
  );
}

function EnterReading({ signals }: { readonly signals: readonly SignalView[] }) {
  const command = useCommand();
  const [id, setId] = useState(only(signals)?.id ?? '');
  const [value, setValue] = useState('');
  const [when, setWhen] = useWhen();
  const signal = signals.find((each) => each.id === id);
  const symbol = signal === undefined ? '' : unitSymbol(signal.written_unit);
  const send = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    if (signal === undefined || !isSure(event, when, setWhen)) return;
    const entered = { signal: id, value: Number(value), unit: signal.written_unit };
    if (await command.send(readingsPath, { ...entered, ...atOf(when) })) setValue('');
  };
  return (
    <details class="more">
      <summary>{say('enterReading')}</summary>
      <form class="form" onSubmit={(event) => void send(event)}>
        <Choice
          legend={say('readingLegend')}
          name="reading"
          value={id}
          choices={signals.map((each) => [each.id, ownName(each.id)])}
          choose={setId}
        />
        {signal === undefined ? null : (
          <>
            <label class="field">
              {symbol === '' ? say('readingBare') : say('readingValue', { unit: symbol })}
              <input
                required
                type="number"
                step="any"
                inputMode="decimal"
                value={value}
                onInput={(event) => setValue(event.currentTarget.value)}
              />
            </label>
            <WhenField name="reading-when" when={when} setWhen={setWhen} />
            <Outcome state={command.state} noAnswer={say('notSentOther')} />
            <button type="submit">{say('send')}</button>
          </>
        )}
      </form>
    </details>
  );
}

function Clocks({ clocks }: { readonly clocks: readonly ClockView[] }) {
  const now = useNow(60_000);
  return (
    <>
      <h2>{say('clocksRunning')}</h2>
      <ul class="plain-list">
        {clocks.map((each) => (
          <li key={`${each.rule} ${each.item ?? ''}`}>{clockText(each, now)}</li>
        ))}
      </ul>
    </>
  );
}
