/**
 * What a screen reader is told unasked: a new hazard to people at once, everything else when it
 * suits. Nothing else is ever assertive.
 */
import type { StreamEvent } from '../../agent/web/contract.ts';
import { isPeople } from '../judge/bands.ts';
import { alarmSentence, type Words } from '../text/label.ts';
import { say } from '../text/say.ts';
import type { Board } from './board.ts';
import { tellListeners } from './board.ts';

/** The alarm's own sentence may be in a language of the site, what stands about it is in the reader's. */
export interface Announcement {
  readonly before: string;
  readonly sentence: Words;
  readonly after: string;
}
export interface Announced {
  readonly assertive: Announcement;
  readonly polite: Announcement;
}
const nothing: Announcement = { before: '', sentence: { text: '' }, after: '' };
let announced: Announced = { assertive: nothing, polite: nothing };
export const readAnnounced = (): Announced => announced;

type AlarmEvent = Extract<StreamEvent, { event: 'alarm' }>['data'];

export function announce({ change, alarm }: AlarmEvent, board: Board): void {
  if (change === 'raised' || change === 'realarmed') {
    const before = `${say('word')[alarm.label.word]}: `;
    const said = { before, sentence: alarmSentence(alarm), after: '' };
    announced = isPeople(alarm, board)
      ? { ...announced, assertive: said }
      : { ...announced, polite: said };
  } else if (change === 'unjudgeable') {
    const said = { before: '', sentence: alarmSentence(alarm), after: ` ${say('cannotTell')}` };
    announced = { ...announced, polite: said };
  } else return;
  tellListeners();
}
