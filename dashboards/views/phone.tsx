/** My phone: push on or off, and a message to try it. */
import { useEffect, useState } from 'preact/hooks';
import { NoAnswer, Refused } from '../state/api.ts';
import { NoAddress, type PushNow, pushNow, pushOff, pushOn, pushTest } from '../state/push.ts';
import { say } from '../text/say.ts';

const whyOf = (error: unknown): string => {
  if (error instanceof Refused) return `${error.problem.detail} ${error.problem.fix}`;
  if (error instanceof NoAddress) return say('phoneRefused');
  if (error instanceof NoAnswer) return say('phoneNoAnswer');
  throw error;
};

interface Said {
  readonly role: 'alert' | 'status';
  readonly text: string;
}

export function Phone() {
  const [now, setNow] = useState<PushNow | null>(null);
  const [said, setSaid] = useState<Said | null>(null);
  const [busy, setBusy] = useState(false);
  const tell = (error: unknown): void =>
    setSaid({ role: 'alert', text: say('phoneFailed', { why: whyOf(error) }) });
  useEffect(() => {
    let wanted = true;
    pushNow()
      .then((found) => wanted && setNow(found))
      .catch((error: unknown) => {
        if (!wanted) return;
        const text =
          error instanceof Refused
            ? say('refused', { why: error.problem.detail, fix: error.problem.fix })
            : say('phoneUnread');
        setSaid({ role: 'alert', text });
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
      const text = [say('testOutcome')[outcome], cause ?? ''].join(' ').trim();
      setSaid({ role: outcome === 'delivered' ? 'status' : 'alert', text });
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
          {said.text}
        </p>
      )}
    </article>
  );
}
