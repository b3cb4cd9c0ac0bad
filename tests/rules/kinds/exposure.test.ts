import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exposure } from '#rules/kinds/exposure.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
// A slice is a minute.
const humid = { high: '65 Cel', for: '10 min', within: '64 min' };
const minutes = (answers: readonly string[]) =>
  answers.map((answer) => {
    const [at, severity] = answer.split(' ');
    return `${Number(at) / min} ${severity}`;
  });

test.each([
  [{ for: '1 min', within: '1 h' }, /^: an exposure is beyond one limit/],
  [{ ...humid, low: '5 Cel' }, /^: an exposure is beyond one limit/],
  [{ ...humid, for: '64 min' }, /^for: a span cannot hold so long a time/],
  [{ ...humid, high: '65 bar' }, /^high: limit in bar/],
])('settings %j', (written, problem) => {
  expect(problemsOf(exposure, written)[0]).toMatch(problem);
});

describe('all the times together', () => {
  test('just so long is not too long; a millisecond more is', () => {
    const rule = new Alone(exposure, humid).see([0, 66]).until(10 * min);
    expect(rule.answers).toEqual([]);
    expect(rule.until(20 * min).answers).toEqual([`${10 * min + 1} 1`]);
  });
  test('every return is forgiven by a band, and not here', () => {
    const rule = new Alone(exposure, humid);
    for (let m = 0; m < 24; m += 2) rule.see([m * min, 66], [(m + 1) * min, 60]);
    expect(minutes(rule.answers)).toEqual([`${20 + 1 / min} 1`]);
    expect(rule.evidence).toMatchObject({ reachedMs: 12 * min, requiredMs: 10 * min, limit: 65 });
  });
  test('at the limit is not beyond it, on either side', () => {
    expect(new Alone(exposure, humid).see([0, 65]).until(60 * min).answers).toEqual([]);
    const cold = { low: '5 Cel', for: '10 min', within: '64 min' };
    expect(new Alone(exposure, cold).see([0, 5]).until(60 * min).answers).toEqual([]);
    expect(new Alone(exposure, cold).see([0, 4.9]).until(60 * min).answers).toHaveLength(1);
  });
  test('it is over once enough of it has left the span', () => {
    const rule = new Alone(exposure, humid).see([0, 66], [12 * min, 60]).until(300 * min);
    // 12 min held; two slices must go: the second ends at 2 min, and leaves 64 later.
    expect(minutes(rule.answers)).toEqual([`${10 + 1 / min} 1`, '66 0']);
  });
});

test('a gap does not count; JSON loses nothing; a new clock moves along', () => {
  const rule = new Alone(exposure, humid)
    .see([0, 66])
    .gap(5 * min, 30 * min)
    .throughJson();
  expect(rule.until(35 * min).answers).toEqual([]);
  rule.shift(7);
  expect(rule.until(40 * min).answers).toEqual([`${35 * min + 8} 1`]);
});

test('the sum is what was held in the span, to a slice, and never short of it', () => {
  const step = fc.tuple(fc.integer({ min: 1, max: 20 * min }), fc.boolean());
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 60 }), (steps) => {
      const rule = new Alone(exposure, { ...humid, for: '63 min' });
      const changes: { at: number; beyond: boolean }[] = [];
      let at = 0;
      for (const [after, beyond] of steps) {
        at += after;
        rule.see([at, beyond ? 70 : 60]);
        changes.push({ at, beyond });
      }
      let exact = 0;
      let more = 0;
      for (const [i, { at: from, beyond }] of changes.entries()) {
        const to = changes[i + 1]?.at ?? at;
        if (!beyond) continue;
        exact += Math.max(0, to - Math.max(from, at - 64 * min));
        more += Math.max(0, to - Math.max(from, at - 65 * min));
      }
      expect(rule.evidence.reachedMs).toBeGreaterThanOrEqual(exact);
      expect(rule.evidence.reachedMs).toBeLessThanOrEqual(more + 1);
    }),
  );
});
