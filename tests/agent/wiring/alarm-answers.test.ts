/**
 * Alarm performance of occurrences that were told again: an answer to any telling answers the alarm,
 * and the time to answer runs from the first one.
 */
import { expect, test } from 'vitest';
import { Desk } from '#agent/alarms/desk.ts';
import type { Occurrence } from '#agent/alarms/occurrence.ts';
import { limits } from '#agent/limits.ts';
import { annunciationsOf } from '#agent/wiring/alarm-load-view.ts';
import { alarmLoad } from '#rules/alarm/alarm-load.ts';
import type { AlarmState, Transition } from '#rules/alarm/lifecycle.ts';
import type { Effect } from '#rules/input.ts';

const min = 60_000;
const id = 'm/room/hot@0';

/** One occurrence, raised at 0, after these steps: minute, transition, state before and after. */
function after(...steps: [number, Transition, AlarmState, AlarmState][]): Occurrence {
  const desk = new Desk();
  const all = [[0, 'raised', 'normal', 'unacknowledged'] as const, ...steps];
  for (const [atMin, transition, from, to] of all) {
    const effect: Effect = {
      kind: 'transition',
      at: atMin * min,
      judged: atMin * min,
      rule: 'm/room/hot',
      signal: 'm/room/air',
      occurrence: id,
      transition,
      from,
      to,
      severity: 1,
      priority: 'high',
      evidence: {},
      ...(transition === 'acknowledged' ? { by: 'p1' } : {}),
    };
    desk.take(effect);
  }
  return desk.occurrence(id)!;
}

const answering = (one: Occurrence, fromMs = -min) =>
  alarmLoad(annunciationsOf(one), fromMs, 1_440 * min).byPriority.high.answering;
const answeredAfter = (ms: number) => ({
  answered: 1,
  unanswered: 0,
  medianMs: ms,
  slowestTenthMs: ms,
});

const raised = 'unacknowledged';
const taken = 'acknowledged';

test('what was told again before anybody answered is answered by the answer to the repeat', () => {
  const one = after([10, 'realarmed', raised, raised], [12, 'acknowledged', raised, taken]);
  expect(annunciationsOf(one).map(({ fresh }) => fresh)).toEqual([true, false]);
  expect(answering(one)).toEqual(answeredAfter(12 * min));
});

test('what was answered and told again since stays answered, by its first answer', () => {
  const again = after([4, 'acknowledged', raised, taken], [10, 'realarmed', taken, raised]);
  expect(again.acknowledged).toBeNull();
  expect(answering(again)).toEqual(answeredAfter(4 * min));
  const twice = after(
    [4, 'acknowledged', raised, taken],
    [10, 'realarmed', taken, raised],
    [15, 'acknowledged', raised, taken],
  );
  expect(answering(twice)).toEqual(answeredAfter(4 * min));
});

test('told again and answered by nobody it is one alarm that nobody answered', () => {
  const one = after([10, 'realarmed', raised, raised], [30, 'realarmed', raised, raised]);
  expect(answering(one)).toMatchObject({ answered: 0, unanswered: 1, medianMs: null });
});

test('a repeat within the span of an alarm first told before it is no further alarm to answer', () => {
  const one = after([10, 'realarmed', raised, raised], [12, 'acknowledged', raised, taken]);
  expect(answering(one, 5 * min)).toMatchObject({ answered: 0, unanswered: 0 });
});

test('the first answer stays, however much happened since', () => {
  const many = Array.from({ length: limits.occurrenceStepsKept + 50 }, (_, i) => {
    const step: [number, Transition, AlarmState, AlarmState] = [
      5 + i,
      'realarmed',
      i === 0 ? taken : raised,
      raised,
    ];
    return step;
  });
  const one = after([4, 'acknowledged', raised, taken], ...many);
  expect(one.steps).toHaveLength(limits.occurrenceStepsKept);
  expect(answering(one)).toEqual(answeredAfter(4 * min));
});
