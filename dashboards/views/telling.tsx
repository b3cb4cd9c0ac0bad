/** Who would be told of an alarm now: first, next, up to everyone; and what is wrong with it. */
import type { TellingView } from '../../agent/web/contract.ts';
import { AgentText } from '../parts/agent-text.tsx';
import { NotRead } from '../parts/not-read.tsx';
import { get } from '../state/api.ts';
import { useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { hourMinute } from '../text/clock.ts';
import { say } from '../text/say.ts';

export function Telling() {
  const turn = useNow(60_000);
  const read = useRead(() => get<TellingView>('/api/telling'), [turn]);
  return (
    <article>
      <h1>{say('whoIsTold')}</h1>
      <NotRead read={read} />
      {read.found === null ? null : <Ladder telling={read.found} />}
    </article>
  );
}

function Ladder({ telling: { at, rungs, webhooks, causes } }: { readonly telling: TellingView }) {
  const told = rungs.filter(({ people }) => people.length > 0);
  return (
    <>
      <p>{say('whoIsToldSays', { clock: hourMinute(at) })}</p>
      {told.length === 0 ? <p class="empty">{say('whoIsToldNobody')}</p> : null}
      {told.length === 0 ? null : (
        <ol class="steps">
          {told.map(({ people }) => (
            <li key={people.map(({ id }) => id).join(' ')}>
              {people.map(({ id, name, channels }) => (
                <p key={id}>
                  {name}
                  <span class="hint">
                    {' '}
                    {channels.length === 0
                      ? say('whoIsToldNoWay')
                      : channels.map((each) => say('toldWay')[each]).join(', ')}
                  </span>
                </p>
              ))}
            </li>
          ))}
        </ol>
      )}
      {webhooks.length === 0 ? null : <p>{say('whoAlso', { names: webhooks.join(', ') })}</p>}
      {causes.map((cause) => (
        <p key={cause} class="missing">
          <AgentText text={cause} />
        </p>
      ))}
    </>
  );
}
