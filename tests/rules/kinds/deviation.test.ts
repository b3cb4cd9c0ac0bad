import { describe, expect, test } from 'vitest';
import { deviation } from '#rules/kinds/deviation.ts';
import { Alone, problemsOf } from './alone.ts';

const flow = { unit: 'L/min', digits: 1 };

describe('settings', () => {
  test.each([
    [{ target: '20 Cel' }, {}, [expect.stringMatching(/^: a target without an allowed deviation/)]],
    [
      { target: '20 Cel', above: '0 K' },
      {},
      [expect.stringMatching(/^above: a value is never quite at its target/)],
    ],
    [
      { target: '20 Cel', above: '-1 %' },
      {},
      [expect.stringMatching(/^above: a share cannot be negative/), expect.any(String)],
    ],
    [
      { target: '20 Cel', above: '6 K', far_above: '3 K' },
      {},
      [expect.stringMatching(/^: the limits do not ascend/)],
    ],
    [
      { target: '20 L/min', below: '10 %', above: '10 %', deadband: '10 %' },
      flow,
      [expect.stringMatching(/^deadband: no value between low and high would be normal again/)],
    ],
    [
      { target: '20 L/min', below: '3 K' },
      flow,
      [expect.stringMatching(/^below: difference in K/)],
    ],
  ])('%j', (written, signal, problems) => {
    expect(problemsOf(deviation, written, signal).slice(0, problems.length)).toEqual(problems);
  });
  test('without a target it cannot be written', () => {
    expect(deviation.written.safeParse({ above: '3 K' }).success).toBe(false);
  });
});

describe('from its target', () => {
  const tank = { target: '23 Cel', below: '3 K', above: '3 K', far_below: '6 K', far_above: '6 K' };
  test.each([
    [26, []],
    [26.1, ['0 1']],
    [29, ['0 1']],
    [29.1, ['0 2']],
    [20, []],
    [19.9, ['0 1']],
    [16.9, ['0 2']],
  ])('%d of 23 ± 3 and ± 6', (value, answers) => {
    expect(new Alone(deviation, tank).see([0, value]).answers).toEqual(answers);
  });
  test('half of 20 L/min is 10', () => {
    const half = { target: '20 L/min', below: '50 %', deadband: '5 %' };
    const rule = new Alone(deviation, half, flow).see([0, 10], [1, 9.9], [2, 10.9], [3, 11]);
    expect(rule.answers).toEqual(['1 1', '3 0']);
  });
  test('of a signal in per cent 1 % is one point', () => {
    const solids = { target: '35 %', below: '1 %', above: '1 %' };
    const rule = new Alone(deviation, solids, { unit: '%', digits: 1 }).see([0, 34], [1, 33.9]);
    expect(rule.answers).toEqual(['1 1']);
  });
  test('10 % of 1 m/min, in m/s', () => {
    const speed = { target: '1 m/min', below: '10 %', above: '10 %' };
    const rule = new Alone(deviation, speed, { unit: 'm/s', digits: 4 });
    rule.see([0, 0.0183], [1, 0.0184], [2, 0.015], [3, 0.0149]);
    expect(rule.answers).toEqual(['1 1', '2 0', '3 1']);
  });
});

test('evidence says how far from what, and on which side', () => {
  const rule = new Alone(deviation, { target: '20 Cel', above: '3 K' }).see([5, 24.3]);
  expect(rule.evidence).toMatchObject({
    value: 24.3,
    limit: 23,
    side: 'high',
    reference: 20,
    difference: 4.3,
  });
  expect(rule.sentence).toBe(
    '{$signal} at {$value}, {$difference} above its target of {$reference}.',
  );
  expect(deviation.limits!(rule.settings)).toEqual({
    lowLow: null,
    low: null,
    high: 23,
    highHigh: null,
  });
});
