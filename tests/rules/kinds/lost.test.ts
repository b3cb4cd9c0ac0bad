import { describe, expect, test } from 'vitest';
import { lost } from '#rules/kinds/lost.ts';
import { quality } from '#rules/signal/quality.ts';
import { Alone, problemsOf } from './alone.ts';

const every = { expectEveryMs: 10_000 };

describe('settings', () => {
  test.each([
    [
      {},
      {},
      [
        'after: nobody said how often this signal speaks | give the signal expect_every, or this rule after',
      ],
    ],
    [
      { after: '0 s' },
      {},
      [
        'after: no reading could come soon enough | make it longer; 3 times expect_every allows for readings that are missed',
      ],
    ],
    [
      { after: '10 s' },
      every,
      [
        'after: it is no longer than the signal takes from one reading to the next | make it longer; 3 times expect_every allows for readings that are missed',
      ],
    ],
    [{ after: 'soon' }, {}, [expect.stringMatching(/^after: "soon" is no duration \| write /)]],
  ])('%j', (written, signal, problems) => {
    expect(problemsOf(lost, written, signal)).toEqual(problems);
  });
  test('three times what was promised, or what the rule says', () => {
    expect(new Alone(lost, {}, every).settings).toEqual({ afterMs: 30_000 });
    expect(new Alone(lost, { after: '12 s' }, every).settings).toEqual({ afterMs: 12_000 });
    expect(new Alone(lost, { after: '12 s' }).settings).toEqual({ afterMs: 12_000 });
  });
});

test('a signal that never spoke is lost after its time', () => {
  const rule = new Alone(lost, {}, every, 1_000).until(30_999);
  expect(rule.answers).toEqual([]);
  expect(rule.until(31_000).answers).toEqual(['31000 1']);
  expect(rule.evidence).toEqual({ sinceMs: 1_000, durationMs: 30_000 });
  expect(rule.sentence).toBe('{$signal}: no reading since {$clock}.');
});

test('silence counts from the last usable reading, to the millisecond', () => {
  const rule = new Alone(lost, {}, every).see([10_000, 20], [39_999, 20], [69_998, 20]);
  expect(rule.answers).toEqual([]);
  expect(rule.until(99_998).answers).toEqual(['99998 1']);
  expect(rule.evidence.sinceMs).toBe(69_998);
  expect(rule.see([200_000, 20]).answers).toEqual(['99998 1', '200000 0']);
  expect(rule.until(230_000).answers.at(-1)).toBe('230000 1');
});

test('a reading at the very moment comes after the deadline', () => {
  const rule = new Alone(lost, {}, every).see([0, 20], [30_000, 20]);
  expect(rule.answers).toEqual(['30000 1', '30000 0']);
});

test('nonsense is no sign of life, and is told apart from silence', () => {
  const rule = new Alone(lost, {}, every).see([0, 20]).bad(10_000).bad(20_000, quality.outOfRange);
  expect(rule.until(30_000).answers).toEqual(['30000 1']);
  expect(rule.evidence).toEqual({ sinceMs: 0, durationMs: 30_000, cause: quality.outOfRange });
  expect(rule.sentence).toBe('{$signal}: no usable reading since {$clock}: {$cause}.');
  rule.see([31_000, 20]);
  expect(rule.evidence).toEqual({ sinceMs: 31_000, durationMs: 30_000 });
});

test('nonsense while it is lost already leaves it lost, with the newer cause', () => {
  const rule = new Alone(lost, {}, every).until(40_000).bad(50_000, quality.sensorBad);
  expect(rule.answers).toEqual(['30000 1']);
  expect(rule.evidence.cause).toBe(quality.sensorBad);
});

test('a gap gives the full time again, unless it was lost before', () => {
  const rule = new Alone(lost, {}, every).see([0, 20]).gap(29_000, 1_000_000);
  expect(rule.until(1_029_999).answers).toEqual([]);
  expect(rule.until(1_030_000).answers).toEqual(['1030000 1']);
  rule.gap(1_040_000, 2_000_000);
  expect(rule.timer.at).toBeNull();
  expect(rule.until(3_000_000).answers).toEqual(['1030000 1']);
});

test('a clock set anew moves everything along, and JSON loses nothing', () => {
  const rule = new Alone(lost, {}, every).see([0, 20]).bad(5_000).shift(100).throughJson();
  expect(rule.until(30_100).answers).toEqual(['30100 1']);
  expect(rule.memory).toMatchObject({ usableAt: 100, unusableAt: 5_100, beganAt: 100 });
});
