/**
 * The alarms of two sets of rules over the same data: which are gained, which are lost, which come
 * at another time.
 *
 * Two alarms of one rule are the same where they stood at the same time for a while. One long alarm
 * in place of three short ones is one moved and two lost.
 */
import type { EpochMs } from '../signal/sample.ts';
import type { AlarmStory } from './alarm-story.ts';

export interface MovedAlarm {
  readonly before: AlarmStory;
  readonly after: AlarmStory;
  /** How much later it comes; negative where it comes earlier. */
  readonly laterMs: number;
}

export interface AlarmDifference {
  readonly same: number;
  readonly gained: readonly AlarmStory[];
  readonly lost: readonly AlarmStory[];
  readonly moved: readonly MovedAlarm[];
}

/** `untilMs`: the end of the data, until which what has not returned stands. */
export function compareAlarms(
  before: readonly AlarmStory[],
  after: readonly AlarmStory[],
  untilMs: EpochMs,
): AlarmDifference {
  const later = Map.groupBy(after, ({ rule }) => rule);
  const taken = new Set<AlarmStory>();
  const lost: AlarmStory[] = [];
  const moved: MovedAlarm[] = [];
  let same = 0;
  for (const story of [...before].sort(byTime)) {
    const twin = (later.get(story.rule) ?? []).find(
      (other) => !taken.has(other) && overlap(story, other, untilMs),
    );
    if (twin === undefined) {
      lost.push(story);
      continue;
    }
    taken.add(twin);
    const laterMs = twin.raisedMs - story.raisedMs;
    if (laterMs === 0) same += 1;
    else moved.push({ before: story, after: twin, laterMs });
  }
  const gained = after.filter((story) => !taken.has(story)).sort(byTime);
  return { same, gained, lost, moved };
}

const byTime = (a: AlarmStory, b: AlarmStory): number =>
  a.raisedMs - b.raisedMs || (a.rule < b.rule ? -1 : 1);

const overlap = (a: AlarmStory, b: AlarmStory, untilMs: EpochMs): boolean =>
  a.raisedMs <= (b.returnedMs ?? untilMs) && b.raisedMs <= (a.returnedMs ?? untilMs);
