/** An alarm in a list: panel, sentence, time, ruler; a tap anywhere on it opens the alarm. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { isAnswered } from '../judge/bands.ts';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { alarmSentence } from '../text/label.ts';
import { Answered, Untold, When } from './alarm-facts.tsx';
import { AlarmRuler } from './alarm-ruler.tsx';
import { Also } from './also.tsx';
import { Said } from './said.tsx';
import { SignalWord } from './signal-word.tsx';

interface EntryProps {
  readonly alarm: AlarmView;
  /** Milder alarms of the same reading. */
  readonly also?: readonly AlarmView[];
  /** Without its ruler: where many stand close together. */
  readonly short?: boolean;
  /** That nobody has been told of it is said above, of all. */
  readonly hushed?: boolean;
}

const nobody: readonly AlarmView[] = [];

export function Entry({ alarm, also = nobody, short = false, hushed = false }: EntryProps) {
  const signal = useBoard((board) => board.signals.get(alarm.signal));
  return (
    <li class={`entry${[alarm, ...also].every(isAnswered) ? '' : ' entry-open'}`}>
      <div class="entry-head">
        <SignalWord word={alarm.label.word} answered={isAnswered(alarm)} />
        <Answered alarm={alarm} />
      </div>
      <a class="sentence" href={to('alarm', alarm.occurrence)}>
        <Said words={alarmSentence(alarm)} />
      </a>
      <When alarm={alarm} />
      {hushed ? null : <Untold alarm={alarm} />}
      {short || signal === undefined ? null : <AlarmRuler signal={signal} alarm={alarm} />}
      <Also alarms={also} />
    </li>
  );
}
