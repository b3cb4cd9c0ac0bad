/**
 * One alarm: who can be hurt, what and where, what not to do, how far from trouble, the first
 * steps; then what is behind it.
 */
import type { AlarmView, RuleView } from '../../agent/web/contract.ts';
import { Chart } from '../draw/chart.tsx';
import { isAnswered, isOver } from '../judge/bands.ts';
import { besides } from '../judge/cards.ts';
import { Answered, personText, Untold, When } from '../parts/alarm-facts.tsx';
import { AlarmMore } from '../parts/alarm-more.tsx';
import { AlarmRuler } from '../parts/alarm-ruler.tsx';
import { Also } from '../parts/also.tsx';
import { closedText } from '../parts/closed-words.ts';
import { RuleWhy } from '../parts/rule-why.tsx';
import { Said } from '../parts/said.tsx';
import { SignalWord } from '../parts/signal-word.tsx';
import { ToldList } from '../parts/told-list.tsx';
import { BelowAlarms } from '../parts/top-line.tsx';
import { transitionReason, transitionText } from '../parts/transition-words.ts';
import { WasNeeded } from '../parts/was-needed.tsx';
import { WorseStands } from '../parts/worse-stands.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { trailMs } from '../state/trail.ts';
import { clock } from '../text/clock.ts';
import { alarmSentence, type LabelWords, labelWords } from '../text/label.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function AlarmPage({ occurrence }: { readonly occurrence: string }) {
  const alarm = useBoard((board) => board.alarms.get(occurrence));
  return (
    <>
      {alarm === undefined ? (
        <p class="empty">
          {say('unknownAlarm')} <a href={to('back')}>{say('lookBack')}</a>
        </p>
      ) : (
        <Alarm alarm={alarm} />
      )}
      <BelowAlarms counts />
    </>
  );
}

/** Where people can be hurt the first step stands on the first screen, above the ruler. */

function Alarm({ alarm }: { readonly alarm: AlarmView }) {
  const rules = useBoard((board) => board.rules);
  const words = labelWords(alarm);
  const alarms = useBoard((board) => board.alarms);
  const others = besides(alarm, alarms.values());
  const harm = alarm.label.word !== 'NOTICE';
  const closed = alarm.state === 'normal';
  // A number that went back is no all-clear: it leaves the first screen to the steps.
  const below = harm && isOver(alarm);
  return (
    <article class={harm ? 'alarm alarm-harm' : 'alarm'}>
      <div class="alarm-head">
        {closed ? <Closed alarm={alarm} /> : null}
        <SignalWord
          word={alarm.label.word}
          answered={isAnswered(alarm)}
          wide={!closed}
          closed={closed}
        />
        {closed ? null : <Answered alarm={alarm} />}
      </div>
      <WorseStands alarm={alarm} />
      <h1 class="alarm-sentence">
        <Said words={alarmSentence(alarm)} />
      </h1>
      {below ? null : <When alarm={alarm} />}
      {alarm.nuisance === null ? null : <p>{say('nuisance')[alarm.nuisance]}</p>}
      {alarm.superseded_by === null ? null : (
        <p>
          <a class="action-link" href={to('alarm', alarm.superseded_by)}>
            {say('raisedAgain')}
          </a>
        </p>
      )}
      {closed ? <Past words={words} /> : <DoNot words={words} />}
      {harm ? null : <Where alarm={alarm} />}
      {closed ? null : <Steps words={words} />}
      <Untold alarm={alarm} />
      {below ? <When alarm={alarm} /> : null}
      {harm ? <Where alarm={alarm} /> : null}
      <WasNeeded key={alarm.occurrence} alarm={alarm} />
      <Also alarms={others} />
      <AlarmMore alarm={alarm} />
      <Behind alarm={alarm} words={words} rule={rules.get(alarm.rule)} />
    </article>
  );
}

function Closed({ alarm }: { readonly alarm: AlarmView }) {
  const now = useNow(60_000);
  return <strong>{closedText(alarm, now)}</strong>;
}

/** Nobody is to act on these any more. */
const Past = ({ words }: { readonly words: LabelWords }) => (
  <details class="more">
    <summary>{say('closedSteps')}</summary>
    <DoNot words={words} />
    <Steps words={words} />
  </details>
);

/**
 * With the one-line caution, above the steps, whatever the signal word: the step people take unasked
 * is the one that injures, and a step against a spoilt film can injure as well as any other.
 */
function DoNot({ words }: { readonly words: LabelWords }) {
  if (words.doNot.length === 0 && words.caution.text === '') return null;
  return (
    <section class="do-not">
      <h2 class="unseen">{say('doNot')}</h2>
      {words.doNot.length === 0 ? null : (
        <ul>
          {words.doNot.map((what) => (
            <li key={what.text}>
              <Said words={what} />
            </li>
          ))}
        </ul>
      )}
      {words.caution.text === '' ? null : (
        <p>
          <b>{say('caution')}</b> <Said words={words.caution} />
        </p>
      )}
    </section>
  );
}

const Steps = ({ words: { steps } }: { readonly words: LabelWords }) => (
  <section>
    <h2>{say('firstSteps')}</h2>
    <ol class="steps">
      {steps.map((step) => (
        <li key={step.text}>
          <Said words={step} />
        </li>
      ))}
    </ol>
  </section>
);

function Where({ alarm }: { readonly alarm: AlarmView }) {
  const signal = useBoard((board) => board.signals.get(alarm.signal));
  if (signal === undefined) return null;
  return (
    <section class="where">
      <a href={to('signal', signal.id)}>{placeName(signal.id)}</a>
      <AlarmRuler signal={signal} alarm={alarm} />
    </section>
  );
}

interface BehindProps {
  readonly alarm: AlarmView;
  readonly words: LabelWords;
  readonly rule: RuleView | undefined;
}

function Behind({ alarm, words, rule }: BehindProps) {
  const signal = useBoard((board) => board.signals.get(alarm.signal));
  return (
    <>
      {signal === undefined ? null : (
        <section>
          <h2>{say('evidence')}</h2>
          <Chart signal={signal} spanMs={trailMs} />
        </section>
      )}
      <section>
        <h2>{say('told')}</h2>
        <Transitions alarm={alarm} />
      </section>
      <ToldList told={alarm.told} />
      {words.consequence.text === '' ? null : (
        <section>
          <h2>{say('consequence')}</h2>
          <p>
            <Said words={words.consequence} />
          </p>
        </section>
      )}
      <section>
        <p class="deferral">{say('deferral')}</p>
      </section>
      {rule === undefined ? null : <RuleWhy rule={rule} />}
    </>
  );
}

function Transitions({ alarm }: { readonly alarm: AlarmView }) {
  const now = useNow(60_000);
  return (
    <ol class="transitions">
      {alarm.transitions.map((step) => (
        <li key={`${step.at} ${step.transition}`}>
          <span class="when-at">{clock(step.at, now)}</span>
          <span>
            {transitionText(step, alarm)}
            {step.by === null ? null : <> · {personText(step.by)}</>}
            {transitionReason(step) === null ? null : <> · {transitionReason(step)}</>}
          </span>
        </li>
      ))}
    </ol>
  );
}
