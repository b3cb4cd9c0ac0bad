import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stray } from '#rules/kinds/stray.ts';
import { Alone, problemsOf } from './alone.ts';

const five = { limit: '5 K' };
/** All inputs at one moment. */
const together = (at: number, ...values: number[]) =>
  values.map((value, input) => [at, value, input] as const);

describe('settings', () => {
  test.each([
    [
      { limit: '0 K' },
      [expect.stringMatching(/^limit: two sensors never read quite the same \| /)],
    ],
    [
      { limit: '5 K', deadband: '5 K' },
      ['deadband: no difference would be normal again | make it less than the limit, 5'],
    ],
    [{ limit: '5 bar' }, [expect.stringMatching(/^limit: difference in bar for a temperature/)]],
    [{ limit: '9 [degF]', deadband: '1 K' }, []],
  ])('%j', (written, problems) => {
    expect(problemsOf(stray, written)).toEqual(problems);
  });
});

describe('of three, the one that is away', () => {
  test.each([
    [[20, 20, 25], []],
    [[20, 20, 25.1], ['0 1']],
    [[20, 14.9, 20], ['0 1']],
    // The median of the other two is 22.5, so neither 20 nor 25 is 5 K away.
    [[20, 22.5, 25], []],
  ])('%j', (values, answers) => {
    expect(new Alone(stray, five).see(...together(0, ...values)).answers).toEqual(answers);
  });
  test('is named, with the median of the rest', () => {
    const rule = new Alone(stray, five).see(...together(7, 20, 21, 28, 22));
    expect(rule.evidence).toEqual({
      at: 7,
      value: 28,
      reference: 21,
      difference: 7,
      allowed: 5,
      input: 2,
      sinceMs: 7,
    });
    expect(rule.sentence).toBe(
      '{$which} at {$value}, {$difference} away from the others at {$reference}.',
    );
  });
});

describe('of two, only that they disagree', () => {
  test('and nobody is named', () => {
    const rule = new Alone(stray, five).see(...together(0, 20, 25.1));
    expect(rule.answers).toEqual(['0 1']);
    expect(rule.evidence).toEqual({
      at: 0,
      value: 20,
      reference: 25.1,
      difference: 5.1,
      allowed: 5,
      sinceMs: 0,
    });
    expect(rule.sentence).toBe('{$signals} differ by {$difference}, more than {$allowed}.');
  });
  test('of one, nothing can be said', () => {
    expect(new Alone(stray, five).see([0, 900]).until(9e9).answers).toEqual([]);
  });
});

test('a delay is held by every reading, and the deadband holds what was said', () => {
  const rule = new Alone(stray, { ...five, deadband: '2 K', on_delay: '1 min' })
    .see(...together(0, 20, 20, 26))
    .until(59_999);
  expect(rule.answers).toEqual([]);
  rule.until(60_000).see([70_000, 23.1, 2]);
  expect(rule.answers).toEqual(['60000 1']);
  expect(rule.see([80_000, 23, 2]).answers).toEqual(['60000 1', '80000 0']);
});

test('a reading back among the others begins the delay anew', () => {
  const rule = new Alone(stray, { ...five, on_delay: '1 min' })
    .see(...together(0, 20, 20, 26), [30_000, 24, 2], [31_000, 26, 2])
    .until(90_999);
  expect(rule.answers).toEqual([]);
  expect(rule.until(91_000).answers).toEqual(['91000 1']);
});

test('an input that cannot be used is left out, and comes back', () => {
  const rule = new Alone(stray, { ...five, on_delay: '1 min' }).see(...together(0, 20, 20, 26));
  rule.without(2).until(120_000);
  expect(rule.answers).toEqual([]);
  rule.see([130_000, 20, 0], [130_000, 20.5, 1]).until(300_000);
  expect(rule.answers).toEqual([]);
  expect(rule.evidence.difference).toBe(0.5);
  rule.see([310_000, 26, 2]).until(370_000);
  expect(rule.answers).toEqual(['370000 1']);
  expect(rule.evidence.input).toBe(2);
});

test('a gap counts for nothing, a new clock moves along, JSON loses nothing', () => {
  const rule = new Alone(stray, { ...five, on_delay: '1 min' })
    .see(...together(0, 20, 26))
    .gap(30_000, 1_000_000)
    .throughJson();
  expect(rule.until(1_029_999).answers).toEqual([]);
  expect(rule.shift(5).until(1_030_005).answers).toEqual(['1030005 1']);
  expect(rule.evidence).toMatchObject({ sinceMs: 970_005, at: 5 });
});

test('who is away does not depend on the order of the inputs, nor on where zero is', () => {
  const near = fc.integer({ min: -20, max: 20 }).map((k) => k / 10);
  fc.assert(
    fc.property(
      fc.array(near, { minLength: 2, maxLength: 7 }),
      fc.nat(),
      fc.integer({ min: -100, max: 100 }),
      (others, place, zero) => {
        const values = others.map((value) => value + zero);
        const i = place % (values.length + 1);
        values.splice(i, 0, 50 + zero);
        const rule = new Alone(stray, five).see(...together(0, ...values));
        expect(rule.severity).toBe(1);
        expect(rule.evidence.input).toBe(i);
      },
    ),
  );
});
