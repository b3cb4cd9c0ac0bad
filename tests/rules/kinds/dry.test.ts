import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dry } from '#rules/kinds/dry.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const least = { above: '65 Cel', above_for: '10 min', dwell: '25 min' };
const metal = (at: number, value: number) => [at * min, value, 0] as const;
const loaded = (at: number, value: 0 | 1) => [at * min, value, 1] as const;
const minutes = (rule: Alone<unknown, unknown>) =>
  rule.answers.map((answer) => {
    const [at, severity] = answer.split(' ');
    return `${Number((Number(at) / min).toFixed(3))} ${severity}`;
  });

describe('settings', () => {
  test.each([
    [{}, [/^: a drying without a least and a most judges nothing/]],
    [{ above: '65 Cel' }, [/^above: above and above_for belong together/]],
    [{ upper: '90 Cel' }, [/^upper: upper and upper_for belong together/]],
    [{ peak: '100 Cel', upper_for: '5 min' }, [/^upper_for: upper and upper_for belong together/]],
    [{ above: '65 Cel', above_for: '0 s' }, [/^above_for: no time at all/]],
    [{ ...least, dwell: '5 min' }, [/^dwell: a load would leave before it could be dry/]],
    [{ ...least, peak: '65 Cel' }, [/^peak: a load that is dry would be over its peak/]],
    [{ peak: '3 bar' }, [/^peak: limit in bar/]],
  ])('%j', (written, problems) => {
    expect(problemsOf(dry, written)).toEqual(problems.map((p) => expect.stringMatching(p)));
  });
});

describe('too little', () => {
  test('is told to the minute when what is missing no longer fits before the exit', () => {
    // Never hot: 10 min of 25 are needed, so after 15 min it can no longer be met.
    const rule = new Alone(dry, least)
      .see(loaded(0, 1), metal(1, 40), metal(10, 50))
      .until(15 * min);
    expect(rule.answers).toEqual([]);
    rule.until(15 * min + 1);
    expect(rule.answers).toEqual([`${15 * min + 1} 1`]);
    expect(rule.evidence).toEqual({
      at: 10 * min,
      sinceMs: 0,
      side: 'low',
      value: 50,
      limit: 65,
      reachedMs: 0,
      requiredMs: 10 * min,
      leftMs: 10 * min - 1,
    });
  });
  test('just met is met: at the temperature counts, and the whole of it', () => {
    const rule = new Alone(dry, least);
    rule.see(loaded(0, 1), metal(15, 65), metal(20, 65), metal(25, 65), loaded(25, 0));
    expect(rule.until(99 * min).answers).toEqual([]);
  });
  test('a second short is told at the exit', () => {
    const rule = new Alone(dry, { above: '65 Cel', above_for: '10 min' });
    rule.see(loaded(0, 1), metal(5, 65), [15 * min - 1_000, 65, 0], loaded(15, 0));
    expect(rule.answers).toEqual([`${15 * min} 1`]);
    expect(rule.evidence).toMatchObject({ reachedMs: 10 * min - 1_000, leftMs: 0 });
  });
  test('a part that cools again is told when it does, not at the exit', () => {
    const rule = new Alone(dry, least);
    rule.see(loaded(0, 1), metal(5, 65), metal(10, 65), metal(10.5, 40)).until(30 * min);
    // 5.0 min reached, 5 missing: the exit at 25 leaves until 20.
    expect(minutes(rule)).toEqual(['20 1']);
  });
  test('a crossing between two readings is where the straight line crosses', () => {
    const rule = new Alone(dry, { above: '65 Cel', above_for: '3 min' });
    rule.see(loaded(0, 1), metal(0, 60), metal(4, 70), metal(5, 70), loaded(6, 0));
    expect(rule.answers).toEqual([]);
    const short = new Alone(dry, { above: '65 Cel', above_for: '181 s' });
    short.see(loaded(0, 1), metal(0, 60), metal(4, 70), metal(5, 70), loaded(6, 0));
    expect(minutes(short)).toEqual(['6 1']);
  });
  test('one that stays longer and gets dry after all is no longer under', () => {
    const rule = new Alone(dry, least).see(loaded(0, 1), metal(1, 40)).until(20 * min);
    rule.see(metal(21, 70), metal(31, 70), metal(32, 70), loaded(33, 0));
    expect(minutes(rule)).toEqual(['15 1', '31 0']);
  });
  test('the answer stands until the next load enters', () => {
    const rule = new Alone(dry, least).see(loaded(0, 1), metal(1, 40), loaded(5, 0));
    expect(minutes(rule)).toEqual(['5 1']);
    rule.see(metal(50, 90), loaded(60, 0), loaded(61, 1));
    expect(minutes(rule)).toEqual(['5 1', '61 0']);
  });
});

describe('too much', () => {
  test.each([
    [100, []],
    [100.1, ['2 1']],
  ])('a peak of %d over 100', (value, answers) => {
    const rule = new Alone(dry, { peak: '100 Cel' });
    rule.see(metal(0, 300), loaded(1, 1), metal(2, value), metal(3, 50), loaded(4, 0));
    expect(minutes(rule)).toEqual(answers);
  });
  test('so long at or above the upper temperature, told when it is passed', () => {
    const rule = new Alone(dry, { upper: '90 Cel', upper_for: '5 min' });
    rule.see(loaded(0, 1), metal(1, 90)).until(6 * min);
    expect(rule.answers).toEqual([]);
    rule.until(6 * min + 1);
    expect(rule.answers).toEqual([`${6 * min + 1} 1`]);
    expect(rule.evidence).toMatchObject({ side: 'high', value: 90, limit: 90 });
  });
  test('exactly so long is not too long', () => {
    const rule = new Alone(dry, { upper: '90 Cel', upper_for: '5 min' });
    rule.see(loaded(0, 1), metal(1, 90), metal(6, 90), loaded(6, 0)).until(60 * min);
    expect(rule.answers).toEqual([]);
  });
  test('with a least as well it is the worse of the two', () => {
    const both = new Alone(dry, { ...least, peak: '100 Cel' });
    both.see(loaded(0, 1), metal(1, 101));
    expect(both.answers).toEqual([`${min} 2`]);
  });
});

describe('an empty oven', () => {
  test('heats nothing, however hot the sensor', () => {
    const rule = new Alone(dry, { ...least, peak: '100 Cel' }).see(metal(0, 200), metal(9, 200));
    expect(rule.until(99 * min).answers).toEqual([]);
  });
  test('what was hot before the load entered does not count', () => {
    const rule = new Alone(dry, { above: '65 Cel', above_for: '2 min' });
    rule.see(metal(0, 80), loaded(10, 1), metal(11, 80), metal(12, 80), loaded(12, 0));
    expect(rule.evidence.reachedMs).toBe(min);
  });
});

describe('time nobody saw', () => {
  test('is not heated, and the exit does not wait', () => {
    const rule = new Alone(dry, least).see(loaded(0, 1), metal(5, 70), metal(10, 70));
    rule.gap(10 * min, 19 * min).until(20 * min);
    expect(rule.answers).toEqual([]);
    expect(minutes(rule.until(21 * min))).toEqual(['20 1']);
    expect(rule.evidence.reachedMs).toBe(5 * min);
  });
  test('past the moment it is told right after', () => {
    const rule = new Alone(dry, least).see(loaded(0, 1), metal(5, 50));
    expect(rule.gap(6 * min, 40 * min).until(41 * min).answers).toEqual([`${40 * min + 1} 1`]);
  });
  test('a new clock moves along; JSON loses nothing', () => {
    const rule = new Alone(dry, least).see(loaded(0, 1), metal(1, 40)).throughJson().shift(7);
    expect(rule.until(15 * min + 8).answers).toEqual([`${15 * min + 8} 1`]);
    expect(rule.evidence).toMatchObject({ sinceMs: 7, at: min + 7 });
  });
});

test('told early, a load that cannot come back is told at the exit as well, and no other', () => {
  const reading = fc.tuple(fc.integer({ min: 5, max: 120 }), fc.integer({ min: 40, max: 90 }));
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 40 }), (steps) => {
      const early = new Alone(dry, least).see(loaded(0, 1));
      const late = new Alone(dry, { above: '65 Cel', above_for: '10 min' }).see(loaded(0, 1));
      let at = 0;
      for (const [afterS, value] of steps) {
        at += afterS * 1_000;
        if (at >= 25 * min) break;
        early.see([at, value, 0]);
        late.see([at, value, 0]);
      }
      early.see(loaded(25, 0));
      late.see(loaded(25, 0));
      expect(early.severity).toBe(late.severity);
    }),
  );
});
