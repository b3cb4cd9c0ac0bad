import { describe, expect, test } from 'vitest';
import { duty } from '#rules/kinds/duty.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const stir = { runs_from: '5 /min', run: '10 min', within: '64 min' };
const rpm = { unit: '/min', digits: 1 };
const rule = () => new Alone(duty, stir, rpm);

test.each([
  [{ ...stir, run: '0 s' }, /^run: it is nothing, or more than the span holds/],
  [{ ...stir, run: '64 min' }, /^run: it is nothing, or more than the span holds/],
  [{ ...stir, runs_from: '5 Cel' }, /^runs_from: limit in Cel/],
])('settings %j', (written, problem) => {
  expect(problemsOf(duty, written, rpm)).toEqual([expect.stringMatching(problem)]);
});

describe('what must run', () => {
  test('and never did is told when a whole span was watched, not before', () => {
    const never = rule()
      .see([0, 0])
      .until(64 * min - 1);
    expect(never.answers).toEqual([]);
    expect(never.until(64 * min).answers).toEqual([`${64 * min} 1`]);
    expect(never.evidence).toMatchObject({ reachedMs: 0, requiredMs: 10 * min });
  });
  test('also where nobody ever heard of it', () => {
    expect(rule().until(64 * min).answers).toEqual([`${64 * min} 1`]);
  });
  test('and ran just long enough is in order, at its speed or above', () => {
    expect(
      rule()
        .see([50 * min, 5], [60 * min, 4.9])
        .until(65 * min).answers,
    ).toEqual([]);
    expect(
      rule()
        .see([50 * min, 5], [60 * min - 1, 4.9])
        .until(65 * min).answers,
    ).toHaveLength(1);
  });
  test('is in order again the moment it has run long enough', () => {
    const late = rule()
      .see([0, 0], [70 * min, 25])
      .until(90 * min);
    expect(late.answers).toEqual([`${64 * min} 1`, `${80 * min} 0`]);
  });
  test('and ran long ago is told when that has left the span', () => {
    const once = rule()
      .see([20 * min, 25], [30 * min, 0])
      .until(200 * min);
    // The slice of its first minute ends at 21 and leaves 64 min later.
    expect(once.answers).toEqual([`${85 * min} 1`]);
  });
});

test('time nobody saw is neither run nor rest', () => {
  const seen = rule()
    .see([0, 0])
    .gap(30 * min, 90 * min)
    .until(124 * min - 1);
  expect(seen.answers).toEqual([]);
  expect(seen.until(124 * min).answers).toEqual([`${124 * min} 1`]);
});

test('JSON loses nothing, and a new clock moves along', () => {
  const moved = rule().see([0, 0]).throughJson().shift(9);
  expect(moved.until(64 * min + 9).answers).toEqual([`${64 * min + 9} 1`]);
});

test('downtime raises nothing: the span is one of time that was seen', () => {
  // Runs the first 3 min of every 10: in each span of an hour 18 min, where 16 are needed.
  const mixer = { runs_from: '5 Cel', run: '16 min', within: '1 h' };
  const rule = new Alone(duty, mixer);
  const runs = (fromMin: number, toMin: number) => {
    for (let m = fromMin; m < toMin; m += 1) rule.see([m * 60_000, m % 10 < 3 ? 20 : 0]);
  };
  runs(0, 120);
  rule.gap(120 * 60_000, 170 * 60_000);
  runs(170, 300);
  expect(rule.answers).toEqual([]);
});
