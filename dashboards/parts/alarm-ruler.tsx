/** The ruler of an alarm: of its signal, or of how far apart several are where that is what its rule judges. */
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';
import { PlainRuler } from '../draw/plain-ruler.tsx';
import { forecastOf, Ruler } from '../draw/ruler.tsx';
import { type Judged, judgedOf } from '../judge/judged.ts';
import { readBoard, useBoard, useTold } from '../state/board.ts';
import { nowMs, useNow, useStale } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { excessText } from '../text/difference.ts';
import { differenceText, displayOf } from '../text/quantity.ts';
import { say } from '../text/say.ts';

const isDifference = (judged: Judged): judged is Exclude<Judged, { kind: 'reading' | 'other' }> =>
  judged.kind === 'apart' || judged.kind === 'excess';

function textOf({ kind }: Judged, value: number | null, signal: SignalView): string {
  if (value === null) return say('apartUnknown');
  return kind === 'excess'
    ? excessText(value, signal.resolution)
    : differenceText(value, signal, signal.resolution);
}

interface AlarmRulerProps {
  readonly alarm: AlarmView;
  readonly signal: SignalView;
}

/** What the signals say now, as the rule compares them; null where it compares none, or one is lost. */
export function useApart(alarm: AlarmView): number | null {
  const rule = useBoard((board) => board.rules.get(alarm.rule));
  return useTold(() => {
    const judged = judgedOf(alarm, rule, readBoard().signals, nowMs());
    return isDifference(judged) ? judged.value : null;
  });
}

export function AlarmRuler({ alarm, signal }: AlarmRulerProps) {
  usePreferences();
  const now = useNow(10_000);
  const stale = useStale();
  const rule = useBoard((board) => board.rules.get(alarm.rule));
  const apart = useApart(alarm);
  const judged = judgedOf(alarm, rule, readBoard().signals, now);
  if (!isDifference(judged))
    return <Ruler signal={signal} forecast={forecastOf(alarm, now, stale)} alarm={alarm} />;
  const inUnit = signal.unit === 'Cel' ? 'K' : signal;
  const shown = (value: number | null): number | null =>
    value === null ? null : displayOf(inUnit).of(value);
  return (
    <PlainRuler
      name={say(judged.kind)}
      text={textOf(judged, apart, signal)}
      value={shown(apart)}
      low={null}
      high={shown(judged.allowed)}
    />
  );
}
