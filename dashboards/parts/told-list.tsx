/** Who was told of an alarm, by which way, and who could not be, with the cause. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { useNow } from '../state/link.ts';
import { clock } from '../text/clock.ts';
import { ownOf } from '../text/lookup.ts';
import { say } from '../text/say.ts';
import { personText } from './alarm-facts.tsx';

type Telling = AlarmView['told'][number];

const ofTable = (table: Readonly<Record<string, string>>, word: string): string =>
  ownOf(table, word) ?? word;

export function ToldList({ told }: { readonly told: AlarmView['told'] }) {
  const now = useNow(60_000);
  if (told.length === 0) return null;
  return (
    <section>
      <h2>{say('whoWasTold')}</h2>
      <ol class="transitions">
        {told.map((telling, i) => (
          <li key={`${telling.at} ${i}`}>
            <span class="when-at">{clock(telling.at, now)}</span>
            <Each telling={telling} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Each({ telling: { person, to, channel, outcome, cause } }: { readonly telling: Telling }) {
  const who = person === null ? (to ?? '') : personText(person);
  const by = ofTable(say('toldWay'), channel);
  return (
    <span>
      {say('toldEach', { who, by, what: ofTable(say('toldOutcome'), outcome) })}
      {cause === null ? null : (
        <>
          {' '}
          <span lang="en">{cause}</span>
        </>
      )}
    </span>
  );
}
