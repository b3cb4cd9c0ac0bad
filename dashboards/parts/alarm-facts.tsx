/** What stands beside an alarm's sentence: whether it is answered, when it matters, how soon to act. */
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';
import { forecastOf } from '../draw/ruler.tsx';
import { isAnswered, isOver, isUnjudged } from '../judge/bands.ts';
import { isMeant } from '../judge/gates.ts';
import { judgedOf } from '../judge/judged.ts';
import { isUntold } from '../judge/reached.ts';
import { isPastLimit, isUsable } from '../judge/reading.ts';
import { stateWord } from '../judge/states.ts';
import { type Board, readBoard, useBoard, useTold } from '../state/board.ts';
import { nowMs, useNow, useStale } from '../state/link.ts';
import { nameOf } from '../state/session.ts';
import { clock, spanRange } from '../text/clock.ts';
import { excessText, valueText } from '../text/difference.ts';
import { differenceText, plainQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';

/** Whoever sits at the box has no name yet. */
export const personText = (by: string): string =>
  by === 'local' ? say('thisMachine') : nameOf(by);

export function Answered({ alarm }: { readonly alarm: AlarmView }) {
  const now = useNow(60_000);
  const { acknowledged } = alarm;
  if (!isAnswered(alarm)) {
    return (
      <span class="answered">
        <svg class="ring" viewBox="0 0 16 16" aria-hidden="true">
          <circle cx="8" cy="8" r="6" />
        </svg>
        {say('notAnswered')}
      </span>
    );
  }
  if (acknowledged === null) return null;
  const at = clock(acknowledged.at, now);
  return (
    <span class="answered">
      {acknowledged.by === 'local'
        ? say('answeredHere', { clock: at })
        : say('answeredBy', { clock: at, by: nameOf(acknowledged.by) })}
    </span>
  );
}

/** A technician must not wait for help that nobody called. */
export function Untold({ alarm }: { readonly alarm: AlarmView }) {
  const now = useNow(10_000);
  return isUntold(alarm, now) ? <p class="missing">{say('toldNobody')}</p> : null;
}

/** A time further ahead than this is of another clock: that of the box was set back meanwhile. */
const clocksDifferMs = 60_000;

/**
 * One sentence on time: reached in, since, over since, or that nobody can tell. `isJudged`: the line is in a
 * state that its rule is meant for.
 */
export function whenText(
  alarm: AlarmView,
  signal: SignalView | undefined,
  now: number,
  stale: boolean,
  isJudged = true,
): string {
  const { evidence, state, returned, raised } = alarm;
  if (!alarm.judgeable) return say('cannotTell');
  const over = { clock: clock(returned ?? raised, now) };
  if (state === 'normal') return say(isUnjudged(alarm) ? 'notJudgedSince' : 'closed', over);
  if (state === 'shelved')
    return say('shelvedUntil', { clock: clock(alarm.shelved_until ?? now, now) });
  if (state === 'suppressed-by-design') return say('suppressed');
  if (state === 'out-of-service') return say('outOfService');
  const { limit } = evidence;
  if (
    isOver(alarm) &&
    isJudged &&
    limit !== null &&
    signal !== undefined &&
    isPastLimit(alarm, signal, nowMs())
  )
    return say('pastAgain', {
      ...over,
      since: clock(raised, now),
      limit: limitText(limit, signal),
    });
  if (isOver(alarm) && isUnjudged(alarm)) return say('notJudgedSince', over);
  if (state.startsWith('latched-')) return say('overLatched', over);
  if (state.startsWith('returned-')) return say('closed', over);
  const forecast = forecastOf(alarm, now, stale);
  if (forecast !== null)
    return say('reachedIn', {
      limit: plainQuantity(forecast.limit, signal?.unit === evidence.unit ? signal : evidence.unit),
      range: spanRange(forecast.earliest - now, forecast.latest - now),
    });
  const sinceMs = evidence.since ?? raised;
  const key = sinceMs > now + clocksDifferMs ? 'sinceAhead' : 'since';
  return say(key, { clock: clock(sinceMs, now) });
}

/** A difference of temperatures is no temperature. */
const limitText = (limit: number, signal: SignalView): string => {
  const value = plainQuantity(limit, signal);
  return signal.unit === 'K' ? say('ofDifference', { value }) : value;
};

/**
 * The sentence is of the moment that decided; what its rule judges may be another number now. Nothing where
 * that is no reading and no difference of readings: another quantity beside the sentence would mislead.
 */
export function nowText(alarm: AlarmView, { rules, signals }: Board): string | null {
  const signal = signals.get(alarm.signal);
  if (alarm.evidence.value === null || signal === undefined) return null;
  if (alarm.state === 'normal' || !alarm.judgeable) return null;
  const judged = judgedOf(alarm, rules.get(alarm.rule), signals, nowMs());
  if (judged.kind === 'apart' && judged.value !== null)
    return say('nowApart', { value: differenceText(judged.value, signal, signal.resolution) });
  if (judged.kind === 'excess' && judged.value !== null)
    return say('nowReads', { value: excessText(judged.value, signal.resolution) });
  if (judged.kind !== 'reading' || signal.value === null || !isUsable(signal, nowMs())) return null;
  const state = stateWord(signal, rules);
  const value = state === null ? valueText(signal.value, signal) : say('state')[state];
  return say('nowReads', { value });
}

export function When({ alarm }: { readonly alarm: AlarmView }) {
  const signal = useBoard((board) => board.signals.get(alarm.signal));
  const now = useNow(10_000);
  const stale = useStale();
  const isJudged = useTold(() => isMeant(readBoard().rules.get(alarm.rule), readBoard()));
  const reads = useTold(() => (stale ? null : nowText(alarm, readBoard())));
  return (
    <span class="when">
      <span class={alarm.judgeable ? '' : 'missing'}>
        {whenText(alarm, signal, now, stale, isJudged)}
      </span>{' '}
      {reads === null ? null : <span class="now-reads">{reads}</span>}{' '}
      <span class="priority">{say('priority')[alarm.priority]}</span>
    </span>
  );
}
