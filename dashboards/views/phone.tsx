/** My phone: push on or off, and a message to try it. */
import { useEffect, useState } from 'preact/hooks';
import type { MeView } from '../../agent/web/contract.ts';
import { Around, here } from '../parts/agent-text.tsx';
import { EmailForm } from '../parts/email-form.tsx';
import { NoAnswer, post, Refused } from '../state/api.ts';
import { NoAddress, type PushNow, pushNow, pushOff, pushOn, pushTest } from '../state/push.ts';
import { setMe, useSession } from '../state/session.ts';
import { say } from '../text/say.ts';

/** `agent`: the words are the agent's own. */
interface Why {
  readonly text: string;
  readonly agent: boolean;
}

const refusalOf = ({ problem: { detail: why, fix } }: Refused): Why => ({
  text: say('refused', { why, fix }),
  agent: true,
});

const whyOf = (error: unknown): Why => {
  if (error instanceof Refused) return refusalOf(error);
  if (error instanceof NoAddress) return { text: say('phoneRefused'), agent: false };
  if (error instanceof NoAnswer) return { text: say('phoneNoAnswer'), agent: false };
  throw error;
};

interface Said {
  readonly role: 'alert' | 'status';
  /** With `here` in it where `why` stands. */
  readonly text: string;
  readonly why: Why;
}
const nothing: Why = { text: '', agent: false };

export function Phone() {
  const [now, setNow] = useState<PushNow | null>(null);
  const [said, setSaid] = useState<Said | null>(null);
  const [busy, setBusy] = useState(false);
  const tell = (error: unknown): void =>
    setSaid({ role: 'alert', text: say('phoneFailed', { why: here }), why: whyOf(error) });
  useEffect(() => {
    let wanted = true;
    pushNow()
      .then((found) => wanted && setNow(found))
      .catch((error: unknown) => {
        if (!wanted) return;
        setSaid(
          error instanceof Refused
            ? { role: 'alert', text: here, why: refusalOf(error) }
            : { role: 'alert', text: say('phoneUnread'), why: nothing },
        );
      });
    return () => {
      wanted = false;
    };
  }, []);
  /** One at a time; a second tap while one is under way does nothing. */
  const run = async (what: () => Promise<void>): Promise<void> => {
    if (busy) return;
    setBusy(true);
    setSaid(null);
    try {
      await what();
    } catch (error) {
      tell(error);
    } finally {
      setBusy(false);
    }
  };
  const change = (to: () => Promise<PushNow>) => () => run(async () => setNow(await to()));
  const test = () =>
    run(async () => {
      const { outcome, cause } = await pushTest();
      const role = outcome === 'delivered' ? 'status' : 'alert';
      const text = `${say('testOutcome')[outcome]} ${here}`;
      setSaid({ role, text, why: { text: cause ?? '', agent: true } });
    });
  return (
    <article>
      <h1>{say('myPhone')}</h1>
      <p>{say('phoneSays')}</p>
      <p role="status">
        <strong>{now === null ? say('phoneReading') : say('phoneState')[now.state]}</strong>
      </p>
      {now?.devices ? <p>{say('phoneDevices', { n: now.devices })}</p> : null}
      <div class="form">
        {now?.state === 'off' ? (
          <button type="button" class="main-action" aria-disabled={busy} onClick={change(pushOn)}>
            {say('phoneOn')}
          </button>
        ) : null}
        {now?.state === 'on' ? (
          <>
            <p>{say('phoneTestWhat')}</p>
            <button type="button" class="main-action" aria-disabled={busy} onClick={test}>
              {say('phoneTest')}
            </button>
            <button type="button" aria-disabled={busy} onClick={change(pushOff)}>
              {say('phoneOff')}
            </button>
          </>
        ) : null}
      </div>
      {said === null ? null : (
        <p class="outcome" role={said.role}>
          <Around
            sentence={said.text}
            words={<span lang={said.why.agent ? 'en' : undefined}>{said.why.text}</span>}
          />
        </p>
      )}
      <OwnEmail />
    </article>
  );
}

/** The other way to be told. Without people there is nobody whose address it would be. */
function OwnEmail() {
  const person = useSession().me?.person ?? null;
  const give = async (email: string | null): Promise<void> =>
    setMe(await post<MeView>('/api/me', { email }));
  return person === null ? null : <EmailForm email={person.email} give={give} />;
}
