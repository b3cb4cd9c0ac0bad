/** What waits for a person: decisions on holds, resets, shelves about to end, entries rules need, rounds. */
import type { HoldView } from '../../agent/web/contract.ts';
import { Entry } from '../parts/entry.tsx';
import { Needs } from '../parts/needs.tsx';
import { Rounds } from '../parts/rounds.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { say } from '../text/say.ts';
import { HoldReason, holdName, reasonWords } from './holds.tsx';

export function Due() {
  const holds = useBoard((board) => board.holds);
  const alarms = useBoard((board) => board.alarms);
  const coverage = useBoard((board) => board.coverage);
  const standing = [...holds.values()].filter(({ lifted }) => lifted === null);
  const reset = [...alarms.values()].filter(({ state }) => state === 'latched-acknowledged');
  const shelved = [...alarms.values()].filter(({ state }) => state === 'shelved');
  const needs = (coverage?.stations ?? [])
    .flatMap(({ rules }) => rules)
    .filter((rule) => rule.needs.length > 0);
  const nothing = standing.length + reset.length + shelved.length + needs.length === 0;
  return (
    <article>
      <h1>{say('due')}</h1>
      {nothing ? <p class="empty">{say('dueNothing')}</p> : null}
      <Rounds />
      {standing.length === 0 ? null : (
        <section>
          <h2>{say('dueHolds')}</h2>
          <ul class="plain-list">
            {[...Map.groupBy(standing, holdName)].map(([name, holds]) => (
              <li key={name}>
                <a href={to('holds')}>{name}</a>
                <Reasons holds={holds} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Alarms title={say('dueReset')} alarms={reset} />
      <Alarms title={say('dueShelves')} alarms={shelved} />
      {shelved.length === 0 ? null : <a href={to('aside')}>{say('putAside')}</a>}
      <Needs rules={needs} />
    </article>
  );
}

/** What is held for several reasons is one thing to decide on. */
function Reasons({ holds }: { readonly holds: readonly HoldView[] }) {
  const rules = useBoard((board) => board.rules);
  return (
    <>
      {[...Map.groupBy(holds, (hold) => reasonWords(hold, rules).text).values()].map(([first]) => (
        <HoldReason key={first!.id} hold={first!} />
      ))}
    </>
  );
}

interface AlarmsProps {
  readonly title: string;
  readonly alarms: readonly Parameters<typeof Entry>[0]['alarm'][];
}

const Alarms = ({ title, alarms }: AlarmsProps) =>
  alarms.length === 0 ? null : (
    <section>
      <h2>{title}</h2>
      <ul class="entries">
        {alarms.map((alarm) => (
          <Entry key={alarm.occurrence} alarm={alarm} short />
        ))}
      </ul>
    </section>
  );
