/** Holds: what is stopped, by whom and why; setting one, and lifting one with what becomes of it. */
import { useState } from 'preact/hooks';
import { ownItemName } from '#rules/alarm/sentence.ts';
import { dispositions, holdWhats, sameThing } from '#rules/hold/hold.ts';
import type { HoldView, RuleView } from '../../agent/web/contract.ts';
import { personText } from '../parts/alarm-facts.tsx';
import { Choice } from '../parts/choice.tsx';
import { Outcome } from '../parts/outcome.tsx';
import { ReasonField } from '../parts/reason-field.tsx';
import { Said } from '../parts/said.tsx';
import { to } from '../router.ts';
import { holdsPath, liftPath } from '../state/answers.ts';
import { useBoard } from '../state/board.ts';
import { useCommand } from '../state/command.ts';
import { useNow } from '../state/link.ts';
import { clock } from '../text/clock.ts';
import { ruleWords, type Words } from '../text/label.ts';
import { isId, placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

const byText = (by: string): string =>
  by.startsWith('rule:')
    ? say('heldByRule', { rule: placeName(by.slice('rule:'.length)) })
    : personText(by);

/** What a rule stopped without knowing its name is what was at its station then. */
export function holdName({ what, item }: HoldView): string {
  const kind = say('holdWhat')[what];
  if (isId(item)) return say('holdAt', { what: kind, place: placeName(item) });
  // "Rack 23", not "Rack rack-23".
  return say('holdFor', { what: kind, item: ownItemName(item, what) ?? item });
}

export function Holds({ item }: { readonly item: string | null }) {
  const holds = useBoard((board) => board.holds);
  const all = [...holds.values()].sort((a, b) => b.since - a.since);
  const standing = all.filter(({ lifted }) => lifted === null);
  const lifted = all.filter((hold) => hold.lifted !== null);
  return (
    <article>
      <h1>{say('holds')}</h1>
      {standing.length === 0 ? <p class="empty">{say('holdsNone')}</p> : null}
      <ul class="entries">
        {standing.map((hold) => (
          <Standing key={hold.id} hold={hold} />
        ))}
      </ul>
      <SetHold item={item ?? ''} />
      {lifted.length === 0 ? null : (
        <section>
          <h2>{say('holdsLifted')}</h2>
          <ul class="plain-list">
            {lifted.map((hold) => (
              <Lifted key={hold.id} hold={hold} />
            ))}
          </ul>
        </section>
      )}
    </article>
  );
}

/** A rule gives its own id for a reason; people are told what that rule is about. */
export function HoldReason({ hold }: { readonly hold: HoldView }) {
  const rules = useBoard((board) => board.rules);
  return (
    <p>
      <Said words={reasonWords(hold, rules)} />
    </p>
  );
}

export function reasonWords({ reason }: HoldView, rules: ReadonlyMap<string, RuleView>): Words {
  const rule = rules.get(reason);
  return rule === undefined ? { text: reason } : ruleWords(rule).consequence;
}

/** Other holds that stand on the same thing. */
function useOthers(hold: HoldView): number {
  const holds = useBoard((board) => board.holds);
  return [...holds.values()].filter(
    (other) => other.lifted === null && other.id !== hold.id && sameThing(other, hold),
  ).length;
}

function Standing({ hold }: { readonly hold: HoldView }) {
  const now = useNow(60_000);
  const others = useOthers(hold);
  return (
    <li class="entry entry-still">
      <strong class="hold-name">{holdName(hold)}</strong>
      <HoldReason hold={hold} />
      <p class="hint">{say('heldSince', { clock: clock(hold.since, now), by: byText(hold.by) })}</p>
      {others === 0 ? null : <p>{say('holdOthers', { count: String(others + 1) })}</p>}
      {hold.occurrence === null ? null : (
        <p>
          <a href={to('alarm', hold.occurrence)}>{say('openAlarm')}</a>
        </p>
      )}
      <LiftHold hold={hold} />
    </li>
  );
}

function Lifted({ hold }: { readonly hold: HoldView }) {
  const now = useNow(60_000);
  const others = useOthers(hold);
  const { lifted } = hold;
  if (lifted === null) return null;
  return (
    <li>
      <strong>{holdName(hold)}</strong>{' '}
      {say('liftedAt', {
        disposition: say('disposition')[lifted.disposition],
        clock: clock(lifted.at, now),
        by: personText(lifted.by),
        reason: lifted.reason,
      })}
      {others === 0 ? null : <strong> {say('holdStill', { count: String(others) })}</strong>}
    </li>
  );
}

function LiftHold({ hold }: { readonly hold: HoldView }) {
  const command = useCommand();
  const [disposition, setDisposition] = useState('');
  const [reason, setReason] = useState('');
  const send = (event: Event): void => {
    event.preventDefault();
    void command.send(liftPath(hold.id), { disposition, reason });
  };
  return (
    <details class="more">
      <summary>{say('lift')}</summary>
      <form class="form" onSubmit={send}>
        <p>{say('liftWhat')}</p>
        <Choice
          legend={say('dispositionLegend')}
          name={`disposition-${hold.id}`}
          value={disposition}
          choices={dispositions.map((each) => [each, say('disposition')[each]])}
          choose={setDisposition}
        />
        <ReasonField reason={reason} setReason={setReason} />
        <Outcome state={command.state} noAnswer={say('notSentOther')} />
        <button type="submit">{say('lift')}</button>
      </form>
    </details>
  );
}

function SetHold({ item: given }: { readonly item: string }) {
  const command = useCommand();
  const [what, setWhat] = useState('rack');
  const [item, setItem] = useState(given);
  const [reason, setReason] = useState('');
  const send = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (!(await command.send(holdsPath, { what, item, reason }))) return;
    setItem('');
    setReason('');
  };
  return (
    <details class="more">
      <summary>{say('setHold')}</summary>
      <form class="form" onSubmit={(event) => void send(event)}>
        <Choice
          legend={say('holdWhatLegend')}
          name="what"
          value={what}
          choices={holdWhats.map((each) => [each, say('holdWhat')[each]])}
          choose={setWhat}
        />
        <label class="field">
          {say('holdItem')}
          <input
            required
            maxLength={100}
            value={item}
            onInput={(event) => setItem(event.currentTarget.value)}
          />
        </label>
        <ReasonField reason={reason} setReason={setReason} />
        <Outcome state={command.state} noAnswer={say('notSentOther')} />
        <button type="submit">{say('setHold')}</button>
      </form>
    </details>
  );
}
