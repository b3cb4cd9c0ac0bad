import { describe, expect, it } from 'vitest';
import { alarmLoad } from '../../../rules/alarm/alarm-load.ts';
import { AlarmStories, type AlarmStory, annunciations } from '../../../rules/alarm/alarm-story.ts';
import { compareAlarms } from '../../../rules/alarm/compare-alarms.ts';
import type { AlarmState, Transition } from '../../../rules/alarm/lifecycle.ts';
import type { Effect } from '../../../rules/input.ts';

const story = (rule: string, raisedMs: number, returnedMs: number | null): AlarmStory => ({
  occurrence: `${rule}@${raisedMs}`,
  rule,
  signal: 'l/s/x',
  priority: 'low',
  raisedMs,
  returnedMs,
  acknowledgedMs: null,
  againMs: [],
  evidence: {},
});

const transition = (
  judged: number,
  kind: Transition,
  from: AlarmState,
  to: AlarmState,
  more: { closes?: true } = {},
): Effect => ({
  kind: 'transition',
  at: judged,
  judged,
  rule: 'l/s/r',
  signal: 'l/s/x',
  occurrence: 'l/s/r@10',
  transition: kind,
  from,
  to,
  severity: 1,
  priority: 'high',
  evidence: { value: judged },
  ...more,
});

const told = (...effects: Effect[]): AlarmStory[] => {
  const stories = new AlarmStories();
  for (const effect of effects) stories.take(effect);
  return stories.list();
};

describe('what became of an alarm', () => {
  it('is when it was told, told again, answered and over', () => {
    const [only, ...others] = told(
      transition(10, 'raised', 'normal', 'unacknowledged'),
      transition(20, 'realarmed', 'unacknowledged', 'unacknowledged'),
      transition(30, 'acknowledged', 'unacknowledged', 'acknowledged'),
      transition(40, 'returned', 'acknowledged', 'normal', { closes: true }),
    );
    expect(others).toEqual([]);
    expect(only).toMatchObject({
      raisedMs: 10,
      againMs: [20],
      acknowledgedMs: 30,
      returnedMs: 40,
      evidence: { value: 10 },
    });
    expect(annunciations([only!]).map(({ atMs, fresh }) => [atMs, fresh])).toEqual([
      [10, true],
      [20, false],
    ]);
  });

  it('is nothing where nobody was told', () => {
    expect(told(transition(10, 'raised', 'shelved', 'shelved'))).toEqual([]);
  });

  it('begins when a shelf ends on it', () => {
    const [only] = told(
      transition(10, 'raised', 'shelved', 'shelved'),
      transition(50, 'unshelved', 'shelved', 'unacknowledged'),
    );
    expect(only?.raisedMs).toBe(50);
  });

  it('ends where its rule was removed', () => {
    const [only] = told(
      transition(10, 'raised', 'normal', 'unacknowledged'),
      transition(60, 'removed-from-service', 'unacknowledged', 'out-of-service', { closes: true }),
    );
    expect(only?.returnedMs).toBe(60);
  });
});

describe('two sets of rules', () => {
  it('differ by what is gained, lost and moved', () => {
    const before = [story('a', 10, 20), story('a', 100, 120), story('b', 5, null)];
    const after = [story('a', 15, 30), story('b', 5, null), story('c', 40, 41)];
    const { same, gained, lost, moved } = compareAlarms(before, after, 1_000);
    expect(same).toBe(1);
    expect(gained).toEqual([after[2]]);
    expect(lost).toEqual([before[1]]);
    expect(moved).toEqual([{ before: before[0], after: after[0], laterMs: 5 }]);
  });

  it('count one long alarm for three short ones as one moved and two lost', () => {
    const before = [story('a', 10, 20), story('a', 30, 40), story('a', 50, 60)];
    const { gained, lost, moved } = compareAlarms(before, [story('a', 12, 60)], 1_000);
    expect([gained.length, lost.length, moved.length]).toEqual([0, 2, 1]);
  });

  it('do not differ from themselves', () => {
    const list = [story('a', 10, 20), story('a', 30, null), story('b', 30, 31)];
    expect(compareAlarms(list, list, 100)).toEqual({ same: 3, gained: [], lost: [], moved: [] });
    expect(alarmLoad(annunciations(list), 0, 100).fresh).toBe(3);
  });

  it('stand to the end of the data where they have not returned', () => {
    expect(
      compareAlarms([story('a', 10, null)], [story('a', 900, null)], 1_000).moved,
    ).toHaveLength(1);
  });
});
