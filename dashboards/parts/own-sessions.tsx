/** Where somebody is signed in: each place with its browser, since when, when last used; and its end. */
import type { OwnSessionsView } from '../../agent/web/contract.ts';
import { get } from '../state/api.ts';
import { useCommand } from '../state/command.ts';
import { useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { clock } from '../text/clock.ts';
import { say } from '../text/say.ts';
import { NotRead } from './not-read.tsx';
import { Outcome } from './outcome.tsx';

type OwnSession = OwnSessionsView['sessions'][number];

export function OwnSessions() {
  const read = useRead(() => get<OwnSessionsView>('/api/me/sessions'), []);
  return (
    <section>
      <h2>{say('sessions')}</h2>
      <NotRead read={read} />
      <ul class="entries">
        {(read.found?.sessions ?? []).map((session) => (
          <Place key={session.id} session={session} again={read.again} />
        ))}
      </ul>
    </section>
  );
}

interface PlaceProps {
  readonly session: OwnSession;
  readonly again: () => void;
}

function Place({ session: { id, on, made, used, here }, again }: PlaceProps) {
  const command = useCommand();
  const now = useNow(60_000);
  const name = on ?? say('sessionUnknown');
  const end = async (): Promise<void> => {
    if (await command.send(`/api/me/sessions/${encodeURIComponent(id)}/end`, {})) again();
  };
  return (
    <li class="entry entry-still">
      <strong>{name}</strong>
      <p class="hint">{say('sessionTimes', { made: clock(made, now), used: clock(used, now) })}</p>
      {here ? (
        <p>{say('sessionHere')}</p>
      ) : (
        <button
          type="button"
          aria-label={`${say('sessionEnd')}: ${name}`}
          onClick={() => void end()}
        >
          {say('sessionEnd')}
        </button>
      )}
      <Outcome state={command.state} noAnswer={say('notSentOther')} />
    </li>
  );
}
