import { describe, expect, test } from 'vitest';
import { band } from '#rules/kinds/band.ts';
import { Alone, problemsOf } from './alone.ts';

const judged = (written: Record<string, unknown>, ...values: readonly number[]): string[] =>
  new Alone(band, written).see(...values.map((value, i) => [i, value] as const)).answers;

describe('settings that make no sense are told, with a fix', () => {
  test.each([
    [
      {},
      [
        ': a band without a limit judges nothing | give at least one of low, low_low, high, high_high',
      ],
    ],
    [
      { deadband: '1 K' },
      [
        ': a band without a limit judges nothing | give at least one of low, low_low, high, high_high',
      ],
    ],
    [
      { low: '5 Cel', high: '5 Cel' },
      [': the limits do not ascend: 5, 5 | order them low_low < low < high < high_high'],
    ],
    [
      { low_low: '6 Cel', low: '5 Cel' },
      [': the limits do not ascend: 6, 5 | order them low_low < low < high < high_high'],
    ],
    [
      { low_low: '6 Cel', low: '5 Cel', high: '4 Cel', high_high: '3 Cel' },
      [': the limits do not ascend: 6, 5, 4, 3 | order them low_low < low < high < high_high'],
    ],
    [
      { low: '10 Cel', high: '10.3 Cel', deadband: '0.2 K' },
      [
        'deadband: no value between low and high would be normal again | make it less than half of what lies between them, 0.15 K',
      ],
    ],
    [
      { low_low: '0 Cel', high_high: '10 Cel', deadband: '6 K' },
      [
        'deadband: no value between low_low and high_high would be normal again | make it less than half of what lies between them, 5 K',
      ],
    ],
    [
      { high: '30 Cel', deadband: '-1 K' },
      ['deadband: a difference cannot be negative (-1 K) | write it as "1 K"'],
    ],
    [
      { low: '1 Cel', high: '30 bar' },
      [expect.stringMatching(/^high: limit in bar for a temperature \(Cel\) \| /)],
    ],
    [
      { high: '30 Cel', on_delay: 'soon', off_delay: '5' },
      [
        expect.stringMatching(/^on_delay: "soon" is no duration \| write /),
        expect.stringMatching(/^off_delay: "5" is no duration \| write /),
      ],
    ],
    [
      { high: '30 Cel', inclusive: 'yes' },
      ['inclusive: yes is no yes or no | write true or false'],
    ],
  ])('%j', (written, problems) => {
    expect(problemsOf(band, written)).toEqual(problems);
  });
  test('and those that do are taken', () => {
    const whole = {
      low_low: '1 Cel',
      low: '2 Cel',
      high: '8 Cel',
      high_high: '9 Cel',
      deadband: '2.9 K',
    };
    expect(problemsOf(band, whole)).toEqual([]);
    expect(problemsOf(band, { low_low: '1 Cel' })).toEqual([]);
  });
});

describe('at the boundaries', () => {
  test.each([
    ['low', { low: '5 Cel' }, [5.1, 5, 4.9, 5, 5.1], ['2 1', '3 0']],
    ['low, inclusive', { low: '5 Cel', inclusive: true }, [5.1, 5, 5, 5.1], ['1 1', '3 0']],
    ['high', { high: '30 Cel' }, [30, 30.1, 30, 29.9], ['1 1', '2 0']],
    ['high, inclusive', { high: '30 Cel', inclusive: true }, [29.9, 30, 29.9], ['1 1', '2 0']],
    [
      'low_low over low',
      { low: '5 Cel', low_low: '3 Cel' },
      [5, 4.9, 3, 2.9, 3, 5],
      ['1 1', '3 2', '4 1', '5 0'],
    ],
    [
      'high_high over high',
      { high: '30 Cel', high_high: '40 Cel' },
      [30.1, 40, 40.1, 40, 30],
      ['0 1', '2 2', '3 1', '4 0'],
    ],
    ['both at once', { high: '30 Cel', high_high: '40 Cel' }, [20, 41, 20], ['1 2', '2 0']],
    ['second level alone', { high_high: '40 Cel' }, [39, 40, 40.1, 40], ['2 2', '3 0']],
    ['both sides', { low: '5 Cel', high: '30 Cel' }, [4, 31, 30, 5, 4.9], ['0 1', '2 0', '4 1']],
    ['deadband below', { low: '5 Cel', deadband: '0.3 K' }, [4.9, 5, 5.2, 5.3], ['0 1', '3 0']],
    [
      'deadband above',
      { high: '30 Cel', deadband: '0.3 K' },
      [30.1, 30, 29.8, 29.7],
      ['0 1', '3 0'],
    ],
    [
      'deadband, inclusive',
      { low: '5 Cel', deadband: '0.3 K', inclusive: true },
      [5, 5.3, 5.4],
      ['0 1', '2 0'],
    ],
    [
      'deadband of the second level',
      { high: '30 Cel', high_high: '40 Cel', deadband: '1 K' },
      [40.1, 39.1, 39, 29.1, 29],
      ['0 2', '2 1', '4 0'],
    ],
    ['0.1 + 0.2 is 0.3', { low: '0.1 Cel', deadband: '0.2 K' }, [0, 0.2, 0.3], ['0 1', '2 0']],
  ])('%s', (_, written, values, answers) => {
    expect(judged(written, ...values)).toEqual(answers);
  });
  test('the deadband holds at equality for every limit and deadband of one decimal', () => {
    for (let low = -300; low <= 300; low += 7)
      for (let deadband = 0; deadband <= 50; deadband += 1) {
        const written = { low: `${low / 10} Cel`, deadband: `${deadband / 10} K` };
        const back = (low + deadband) / 10;
        const below = (low + deadband - 1) / 10;
        const answers = judged(written, (low - 1) / 10, below, back);
        expect(answers, JSON.stringify(written)).toEqual(['0 1', '2 0']);
      }
  });
});

describe('delays', () => {
  const written = { high: '30 Cel', high_high: '40 Cel', on_delay: '10 s', off_delay: '4 s' };
  test('each level has its own', () => {
    const rule = new Alone(band, written).see([0, 31], [5_000, 41]).until(60_000);
    expect(rule.answers).toEqual(['10000 1', '15000 2']);
  });
  test('a dip within the on-delay begins it anew; within the off-delay it ends nothing', () => {
    const rule = new Alone(band, written).see([0, 31], [9_999, 30], [10_000, 31], [20_000, 31]);
    expect(rule.answers).toEqual(['20000 1']);
    rule.see([21_000, 30], [24_999, 31], [30_000, 30]).until(33_999);
    expect(rule.answers).toEqual(['20000 1']);
    expect(rule.until(34_000).answers).toEqual(['20000 1', '34000 0']);
  });
  test('a gap stands still, for both levels', () => {
    const rule = new Alone(band, written).see([0, 31], [5_000, 41]).gap(6_000, 106_000);
    expect(rule.until(200_000).answers).toEqual(['110000 1', '115000 2']);
    expect(rule.evidence.sinceMs).toBe(105_000);
  });
  test('a clock set anew moves everything along', () => {
    const rule = new Alone(band, written).see([0, 31]).shift(1_000_000);
    expect(rule.until(2_000_000).answers).toEqual(['1010000 1']);
    expect(rule.evidence).toEqual({
      value: 31,
      at: 1_000_000,
      limit: 30,
      side: 'high',
      sinceMs: 1_000_000,
    });
  });
  test('through JSON nothing is lost', () => {
    const rule = new Alone(band, written).see([0, 31]).throughJson().see([5_000, 41]).throughJson();
    expect(rule.until(15_000).answers).toEqual(['10000 1', '15000 2']);
  });
});

describe('evidence', () => {
  const written = { low_low: '1 Cel', low: '5 Cel', high: '30 Cel', high_high: '40 Cel' };
  test.each([
    [4, { value: 4, at: 0, limit: 5, side: 'low', sinceMs: 0 }],
    [0, { value: 0, at: 0, limit: 1, side: 'low', sinceMs: 0 }],
    [31, { value: 31, at: 0, limit: 30, side: 'high', sinceMs: 0 }],
    [41, { value: 41, at: 0, limit: 40, side: 'high', sinceMs: 0 }],
  ])('at %d', (value, evidence) => {
    expect(new Alone(band, written).see([0, value]).evidence).toEqual(evidence);
  });
  test('before the first reading it holds nothing', () => {
    expect(new Alone(band, written).evidence).toEqual({});
  });
  test('names the limit on its side, whichever level has one there', () => {
    const uneven = { low_low: '1 Cel', high: '30 Cel', off_delay: '10 s' };
    const rule = new Alone(band, uneven).see([0, 0], [1_000, 31]);
    expect(rule.severity).toBe(2);
    expect(rule.evidence).toMatchObject({ side: 'high', limit: 30 });
    expect(new Alone(band, uneven).see([0, 0]).evidence).toMatchObject({ side: 'low', limit: 1 });
  });
  test('its sentence says which side', () => {
    const rule = new Alone(band, written).see([0, 4]);
    expect(rule.sentence).toBe('{$signal} at {$value}, below {$limit}.');
    expect(rule.see([1, 31]).sentence).toBe('{$signal} at {$value}, above {$limit}.');
  });
  test('a ruler has the four limits, null where there is none', () => {
    const of = (w: Record<string, unknown>) => band.limits!(new Alone(band, w).settings);
    expect(of(written)).toEqual({ lowLow: 1, low: 5, high: 30, highHigh: 40 });
    expect(of({ low: '5 Cel' })).toEqual({ lowLow: null, low: 5, high: null, highHigh: null });
    expect(of({ low: '5 Cel', inclusive: true }).inclusive).toBe(true);
  });
});
