/** One signal: its value now, its record over a chosen time, and where the number comes from. */
import type { RuleView, SignalView } from '../../agent/web/contract.ts';
import { Chart } from '../draw/chart.tsx';
import { Ruler } from '../draw/ruler.tsx';
import { Entry } from '../parts/entry.tsx';
import { Reading } from '../parts/reading.tsx';
import { RuleWhy } from '../parts/rule-why.tsx';
import { cardsOf } from '../parts/station-words.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { span as spanText } from '../text/clock.ts';
import { placeName, ruleName } from '../text/names.ts';
import { differenceText } from '../text/quantity.ts';
import { say } from '../text/say.ts';

const hourMs = 3_600_000;
const spans = [
  ['h1', hourMs],
  ['h8', 8 * hourMs],
  ['d1', 24 * hourMs],
  ['d7', 168 * hourMs],
  ['d90', 2_160 * hourMs],
] as const;

interface SignalPageProps {
  readonly id: string;
  readonly span: string | null;
}

export function SignalPage({ id, span }: SignalPageProps) {
  const signal = useBoard((board) => board.signals.get(id));
  usePreferences();
  if (signal === undefined) return <p class="empty">{say('unknownSignal')}</p>;
  const [chosen, spanMs] = spans.find(([name]) => name === span) ?? spans[1];
  return (
    <article class="signal">
      <h1>{placeName(id)}</h1>
      <div class="signal-now">
        <Reading signal={signal} />
      </div>
      <Ruler signal={signal} />
      <nav class="spans" aria-label={say('spans')}>
        {spans.map(([name]) => (
          <a
            key={name}
            href={`${to('signal', id)}?span=${name}`}
            aria-current={name === chosen ? 'true' : undefined}
          >
            {say('span')[name]}
          </a>
        ))}
      </nav>
      <Chart key={chosen} signal={signal} spanMs={spanMs} />
      <AlarmsOn id={id} />
      <Source signal={signal} />
    </article>
  );
}

function AlarmsOn({ id }: { readonly id: string }) {
  const alarms = useBoard((board) => board.alarms);
  const coverage = useBoard((board) => board.coverage);
  const rules = useBoard((board) => board.rules);
  const now = useNow(10_000);
  const here = [...alarms.values()].filter((alarm) => alarm.signal === id);
  const cards = cardsOf(here, { coverage, rules }, now);
  if (cards.length === 0) return null;
  return (
    <ul class="entries">
      {cards.map(({ worst, also }) => (
        <Entry key={worst.occurrence} alarm={worst} also={also} short />
      ))}
    </ul>
  );
}

function Source({ signal }: { readonly signal: SignalView }) {
  const rules = useBoard((board) => board.rules);
  const { resolution, expect_every_ms: everyMs, kind } = signal;
  const judging = [...rules.values()].filter((rule) => rule.signals.includes(signal.id));
  return (
    <section>
      <h2>{say('where')}</h2>
      <p>
        {say(kind)}{' '}
        {resolution === null
          ? null
          : say('resolution', { step: differenceText(resolution, signal, resolution) })}{' '}
        {everyMs === null ? null : say('expectEvery', { span: spanText(everyMs) })}
      </p>
      {judging.length === 0 ? null : <h2>{say('judgedBy')}</h2>}
      {judging.map((rule) => (
        <Judging key={rule.id} rule={rule} />
      ))}
    </section>
  );
}

const Judging = ({ rule }: { readonly rule: RuleView }) => (
  <details class="more">
    <summary>{ruleName(rule.id)}</summary>
    <RuleWhy rule={rule} />
  </details>
);
