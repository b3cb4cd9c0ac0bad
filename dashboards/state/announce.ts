/**
 * What a screen reader is told unasked: a new hazard to people at once, everything else when it
 * suits. Nothing else is ever assertive.
 */
import type { StreamEvent } from '../../agent/web/contract.ts';
import { isPeople } from '../judge/bands.ts';
import { alarmSentence } from '../text/label.ts';
import { say } from '../text/say.ts';
import type { Board } from './board.ts';
import { tellListeners } from './board.ts';

export interface Announced {
  readonly assertive: string;
  readonly polite: string;
}
let announced: Announced = { assertive: '', polite: '' };
export const readAnnounced = (): Announced => announced;

type AlarmEvent = Extract<StreamEvent, { event: 'alarm' }>['data'];

export function announce({ change, alarm }: AlarmEvent, board: Board): void {
  if (change === 'raised' || change === 'realarmed') {
    const text = `${say('word')[alarm.label.word]}: ${alarmSentence(alarm)}`;
    announced = isPeople(alarm, board)
      ? { ...announced, assertive: text }
      : { ...announced, polite: text };
  } else if (change === 'unjudgeable') {
    announced = { ...announced, polite: `${alarmSentence(alarm)} ${say('cannotTell')}` };
  } else return;
  tellListeners();
}
