/** Above a milder alarm: the worse one of the same reading that stands, whose steps go first. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { worseStanding } from '../judge/cards.ts';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { alarmSentence } from '../text/label.ts';
import { say } from '../text/say.ts';
import { Said } from './said.tsx';
import { SignalWord } from './signal-word.tsx';

export function WorseStands({ alarm }: { readonly alarm: AlarmView }) {
  const alarms = useBoard((board) => board.alarms);
  const worse = worseStanding(alarm, alarms.values());
  if (worse === undefined) return null;
  return (
    <p class="worse-stands">
      <strong>{say('worseStands')}</strong> <SignalWord word={worse.label.word} answered={false} />{' '}
      <a class="action-link" href={to('alarm', worse.occurrence)}>
        <Said words={alarmSentence(worse)} />
      </a>
    </p>
  );
}
