/** Milder alarms of a reading that has a worse one: a line each, a tap from its own answer. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow, useStale } from '../state/link.ts';
import { ruleName } from '../text/names.ts';
import { plainQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { Answered, whenText } from './alarm-facts.tsx';

export const Also = ({ alarms }: { readonly alarms: readonly AlarmView[] }) =>
  alarms.length === 0 ? null : (
    <div class="also">
      <span class="also-title">{say('also')}</span>
      <ul>
        {alarms.map((alarm) => (
          <One key={alarm.occurrence} alarm={alarm} />
        ))}
      </ul>
    </div>
  );

function One({ alarm }: { readonly alarm: AlarmView }) {
  const signal = useBoard((board) => board.signals.get(alarm.signal));
  const now = useNow(10_000);
  const stale = useStale();
  const { limit, unit } = alarm.evidence;
  const rule = ruleName(alarm.rule);
  return (
    <li>
      <a href={to('alarm', alarm.occurrence)}>
        {limit === null
          ? rule
          : say('alsoEach', {
              rule,
              limit: plainQuantity(limit, signal?.unit === unit ? signal : unit),
            })}
      </a>
      <span>{whenText(alarm, signal, now, stale)}</span>
      <Answered alarm={alarm} />
    </li>
  );
}
