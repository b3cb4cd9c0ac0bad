/** Shelved, suppressed by design, out of service: what nobody is told of, since when, why, until when. */
import type { AsideView } from '../../agent/web/contract.ts';
import { AsideNow } from '../parts/aside-now.tsx';
import { asideEnd, asideSince } from '../parts/aside-words.ts';
import { BringBack, TakeOutAnother } from '../parts/out-of-service.tsx';
import { Outcome } from '../parts/outcome.tsx';
import { to } from '../router.ts';
import { unshelvePath } from '../state/answers.ts';
import { useBoard } from '../state/board.ts';
import { useCommand } from '../state/command.ts';
import { useNow } from '../state/link.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

const order = ['out-of-service', 'shelved', 'suppressed-by-design'] as const;

export function Aside() {
  const aside = useBoard((board) => board.aside);
  const all = [...aside.values()];
  return (
    <article>
      <h1>{say('putAside')}</h1>
      <p class={all.length === 0 ? 'empty' : 'hint'}>
        {say(all.length === 0 ? 'putAsideNone' : 'putAsideSays')}
      </p>
      {order.map((state) => (
        <Those key={state} state={state} all={all.filter((each) => each.state === state)} />
      ))}
      <TakeOutAnother />
    </article>
  );
}

interface ThoseProps {
  readonly state: (typeof order)[number];
  readonly all: readonly AsideView[];
}

const Those = ({ state, all }: ThoseProps) =>
  all.length === 0 ? null : (
    <section>
      <h2>{say('asideState')[state]}</h2>
      <ul class="entries">
        {all.map((each) => (
          <One key={each.rule} one={each} />
        ))}
      </ul>
    </section>
  );

function One({ one }: { readonly one: AsideView }) {
  const now = useNow(60_000);
  const { rule, occurrence, state, reason } = one;
  return (
    <li class="entry entry-still">
      <strong class="aside-name">{placeName(rule)}</strong>
      <p>{reason}</p>
      <p>
        <AsideNow aside={one} />
      </p>
      <p class="hint">{asideSince(one, now)}</p>
      <p>{asideEnd(one, now, one.one_shot)}</p>
      {occurrence === null ? null : (
        <p>
          <a href={to('alarm', occurrence)}>{say('openAlarm')}</a>
        </p>
      )}
      {state === 'shelved' ? <EndShelf rule={rule} /> : null}
      {state === 'out-of-service' ? <BringBack id={rule} /> : null}
    </li>
  );
}

function EndShelf({ rule }: { readonly rule: string }) {
  const command = useCommand();
  return (
    <div class="action">
      <button type="button" onClick={() => void command.send(unshelvePath(rule), {})}>
        {say('unshelve')}
      </button>
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
    </div>
  );
}
