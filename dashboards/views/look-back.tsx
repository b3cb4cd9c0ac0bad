/** The past week's alarms, and the way to the other records. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { personText } from '../parts/alarm-facts.tsx';
import { NotRead } from '../parts/not-read.tsx';
import { Said } from '../parts/said.tsx';
import { SignalWord } from '../parts/signal-word.tsx';
import { to } from '../router.ts';
import { get } from '../state/api.ts';
import { readBoard, useBoard, writeBoard } from '../state/board.ts';
import { nowMs, useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { clock } from '../text/clock.ts';
import { alarmSentence } from '../text/label.ts';
import { say } from '../text/say.ts';

const weekMs = 7 * 86_400_000;
const rowsMax = 200;

interface Past {
  readonly alarms: readonly AlarmView[];
  readonly truncated: boolean;
}

export function LookBack() {
  const live = useBoard((board) => board.alarms);
  const read = useRead(
    () => get<Past>(`/api/alarms?since=${Math.round(nowMs() - weekMs)}&limit=${rowsMax}`),
    [live.size],
  );
  const past = read.found;
  return (
    <article>
      <h1>{say('lookBack')}</h1>
      <nav class="elsewhere" aria-label={say('whereElse')}>
        <a href={to('runs')}>{say('runs')}</a>
        <a href={to('holds')}>{say('holds')}</a>
        <a href={to('aside')}>{say('putAside')}</a>
        <a href={to('coverage')}>{say('coverage')}</a>
        <a href={to('rules')}>{say('ruleSheet')}</a>
        <a href={to('performance')}>{say('performance')}</a>
        <a href={to('telling')}>{say('whoIsTold')}</a>
        <a href={to('phone')}>{say('myPhone')}</a>
        <a href={to('me')}>{say('me')}</a>
        <a href={to('reader')}>{say('reader')}</a>
      </nav>
      <h2>{say('backDays')}</h2>
      <NotRead read={read} />
      {past === null ? null : past.alarms.length === 0 ? (
        <p class="empty">{say('backNone')}</p>
      ) : (
        <ul class="past">
          {past.alarms.map((alarm) => (
            <PastAlarm key={alarm.occurrence} alarm={live.get(alarm.occurrence) ?? alarm} />
          ))}
        </ul>
      )}
      {past?.truncated ? <p>{say('backMore')}</p> : null}
    </article>
  );
}

type Done = AlarmView['transitions'][number];

/** What people did with it, by the transition's name. */
const byPeople: readonly Done['transition'][] = [
  ...(['acknowledged', 'reset', 'shelved', 'unshelved', 'passed-on'] as const),
  ...(['removed-from-service', 'returned-to-service'] as const),
];

/** What, when, who and, where one was given, why. */
function doneText({ transition, at, by, reason }: Done, now: number): string {
  const facts = { what: say('transition')[transition], clock: clock(at, now) };
  const who =
    by === null ? say('byItself', facts) : say('byWhom', { ...facts, by: personText(by) });
  return reason === null || reason === '' ? `${who}.` : `${who}: ${reason}`;
}

/** One that has closed is put on the board when it is opened, so that its page finds it. */
function PastAlarm({ alarm }: { readonly alarm: AlarmView }) {
  const now = useNow(60_000);
  const open = (): void => {
    const { alarms } = readBoard();
    if (!alarms.has(alarm.occurrence))
      writeBoard({ alarms: new Map(alarms).set(alarm.occurrence, alarm) });
  };
  return (
    <li class="past-alarm">
      <SignalWord word={alarm.label.word} answered={isAnswered(alarm)} />
      <a href={to('alarm', alarm.occurrence)} onClick={open}>
        <Said words={alarmSentence(alarm)} />
      </a>
      <span class="hint">
        {say('raisedAt', { clock: clock(alarm.raised, now) })} ·{' '}
        {alarm.returned === null
          ? say('stillOpen')
          : say('overAt', { clock: clock(alarm.returned, now) })}
      </span>
      {alarm.transitions
        .filter(({ transition }) => byPeople.includes(transition))
        .map((each) => (
          <span key={`${each.at} ${each.transition}`} class="hint">
            {doneText(each, now)}
          </span>
        ))}
    </li>
  );
}
