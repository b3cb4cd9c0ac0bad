/** What the page says first of a part of the box that is ill: at most 30 words; the agent's own are one tap away. */
import { ownOf } from './lookup.ts';
import { say } from './say.ts';

export const firstWordsMax = 30;

export interface IllPart {
  /** As the agent names it: record, disk, mqtt. */
  readonly part: string;
  /** NE 107. */
  readonly condition: string;
  /** In the agent's own words. */
  readonly note: string;
}

const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => word !== '').length;

/** Does all of it stand there at once? */
export const isShort = ({ note }: IllPart): boolean =>
  wordsIn(say('boxIll', { part: '', note })) < firstWordsMax;

/** The page's own sentence where the agent has more to say than stands there at once. */
export function briefOf({ part, condition }: IllPart): string {
  if (condition !== 'out-of-specification') return say('boxSaysMore');
  if (part === 'record') return say('boxRecordLost');
  return say(part === 'site' ? 'boxSiteAsBefore' : 'boxSaysMore');
}

export const partName = (part: string): string => ownOf<string>(say('boxPart'), part) ?? part;
