import { describe, expect, test } from 'vitest';
import { stuck } from '#rules/kinds/stuck.ts';
import { Alone, problemsOf } from './alone.ts';

const hour = { for: '1 h' };
const h = 3_600_000;

describe('settings', () => {
  test.each([
    [
      { for: '0 s' },
      {},
      [
        'for: every reading would count as stuck before the next one comes | make it longer than such a value ever rests, as "24 h"',
      ],
    ],
    [
      { for: '1 min' },
      { expectEveryMs: 60_000 },
      [
        'for: every reading would count as stuck before the next one comes | make it longer than such a value ever rests, as "24 h"',
      ],
    ],
    [
      { for: '1 h', tolerance: '-1 K' },
      {},
      ['tolerance: a difference cannot be negative (-1 K) | write it as "1 K"'],
    ],
    [
      { for: '1 h', tolerance: '1 bar' },
      {},
      [expect.stringMatching(/^tolerance: difference in bar for a temperature \(Cel\) \| /)],
    ],
    [{ for: 'long' }, {}, [expect.stringMatching(/^for: "long" is no duration \| write /)]],
  ])('%j', (written, signal, problems) => {
    expect(problemsOf(stuck, written, signal)).toEqual(problems);
  });
  test('without for it cannot be written', () => {
    expect(stuck.written.safeParse({}).success).toBe(false);
  });
});

test('the same value for its time is stuck, to the millisecond', () => {
  const rule = new Alone(stuck, hour).see([0, 20], [h / 2, 20], [h - 1, 20]);
  expect(rule.answers).toEqual([]);
  expect(rule.until(h).answers).toEqual([`${h} 1`]);
  expect(rule.evidence).toEqual({ value: 20, at: h - 1, sinceMs: 0, durationMs: h });
  expect(rule.sentence).toBe('{$signal} has stood at {$value} since {$clock}.');
});

test('the least change begins it anew, and ends it', () => {
  const rule = new Alone(stuck, hour).see([0, 20], [h - 1, 20.1]);
  expect(rule.until(2 * h - 2).answers).toEqual([]);
  rule.until(2 * h - 1).see([3 * h, 20.1]);
  expect(rule.answers).toEqual([`${2 * h - 1} 1`]);
  expect(rule.see([3 * h + 1, 20.2]).answers).toEqual([`${2 * h - 1} 1`, `${3 * h + 1} 0`]);
});

describe('a tolerance', () => {
  test.each([
    [20.3, ['3600000 1']],
    [19.7, ['3600000 1']],
    [20.4, ['3600001 1']],
    [19.6, ['3600001 1']],
  ])('of 0.3 K around 20, at %d', (value, answers) => {
    const rule = new Alone(stuck, { ...hour, tolerance: '0.3 K' }).see([0, 20], [1, value]);
    expect(rule.until(h + 1).answers).toEqual(answers);
  });
  test('is exact where a difference of doubles is not', () => {
    // 5.3 - 5 is 0.2999…98 and 0.3 - 0 is 0.3; 8.3 - 8 is 0.3000…07.
    for (const from of [0, 5, 8, 17]) {
      const rule = new Alone(stuck, { ...hour, tolerance: '0.3 K' });
      expect(rule.see([0, from], [1, (from * 10 + 3) / 10]).until(h).answers).toEqual([`${h} 1`]);
    }
  });
  test('a slow drift is movement: it is measured from where the value settled', () => {
    const rule = new Alone(stuck, { ...hour, tolerance: '0.3 K' });
    for (let i = 0; i <= 100; i += 1) rule.see([(i * h) / 10, 20 + i / 10]);
    expect(rule.answers).toEqual([]);
  });
});

test('before the first reading nothing is stuck', () => {
  const rule = new Alone(stuck, hour).until(10 * h);
  expect(rule.answers).toEqual([]);
  expect(rule.evidence).toEqual({ at: 0, sinceMs: 0, durationMs: h });
});

test('a gap does not count; a clock set anew moves along; JSON loses nothing', () => {
  const rule = new Alone(stuck, hour)
    .see([0, 20])
    .gap(h / 2, 10 * h)
    .throughJson();
  expect(rule.until(10.5 * h - 1).answers).toEqual([]);
  rule.shift(7);
  expect(rule.until(10.5 * h + 7).answers).toEqual([`${10.5 * h + 7} 1`]);
  expect(rule.evidence.sinceMs).toBe(9.5 * h + 7);
});
