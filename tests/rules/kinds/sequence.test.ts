import { describe, expect, test } from 'vitest';
import type { MarkOf } from '#rules/kinds/kind.ts';
import { sequence } from '#rules/kinds/sequence.ts';
import { Alone, problemsOf } from './alone.ts';

const s = 1_000;
const h = 3_600_000;
const contact = { unit: '1', digits: 0 };
const rpm = { unit: '/min', digits: 1 };

/** Press: an insert loaded, the mould closed within 60 s (judgement, a start; the data sheet wins). */
const loadToClose = () =>
  new Alone(sequence, { first_low: '1 1', then_low: '1 1', within: '60 s' }, [contact, contact]);
/** Gun: water through it within 20 min of the last spray, or spray again (judgement). */
const flush = () =>
  new Alone(sequence, { first_high: '0 1', within: '20 min', while_first: true }, contact, 0, [
    null,
  ]);
/** Drum: 8 h of running before adhesive is drawn (common practice). */
const mixing = () =>
  new Alone(
    sequence,
    { then_low: '1 1', counting_low: '5 /min', not_before: '8 h' },
    [contact, rpm],
    0,
    ['container'],
  );

describe('settings', () => {
  test.each<[object, object[], MarkOf[], RegExp]>([
    [{ first_low: '1 1', then_low: '1 1' }, [contact, contact], [], /^: it waits for nothing/],
    [
      { first_low: '1 1', then_low: '1 1', within: '0 s' },
      [contact, contact],
      [],
      /^within: it is nothing/,
    ],
    [
      { first_low: '1 1', then_low: '1 1', within: '5 s', not_before: '5 s' },
      [contact, contact],
      [],
      /^within: the second may not come before it is too late/,
    ],
    [{ first_low: '1 1', within: '5 s' }, [contact], [], /^: 1 of first and then have no bounds/],
    [
      { first_low: '1 1', within: '5 s' },
      [],
      [null],
      /^: its bounds speak of 1 signal \(first\), and it names 0/,
    ],
    [
      { within: '5 s', while_first: true },
      [],
      [null, null],
      /^while_first: a mark is over as soon/,
    ],
    [
      { first_low: '2 1', first_high: '1 1', then_low: '1 1', within: '5 s' },
      [contact, contact],
      [],
      /^first_low: it lies above the high bound/,
    ],
    [
      { first_low: '1 1', then_low: '1 Cel', within: '5 s' },
      [contact, rpm],
      [],
      /^then_low: limit in Cel for .*\/min/,
    ],
  ])('%j', (written, signals, marks, problem) => {
    const found = problemsOf(sequence, written as Record<string, unknown>, signals, marks);
    expect(found).toEqual([expect.stringMatching(problem)]);
  });
});

describe('within', () => {
  test('is told to the millisecond where the second does not come, and ends once it does', () => {
    const late = loadToClose()
      .see([0, 0, 0], [0, 0, 1], [s, 1, 0])
      .until(61 * s);
    expect(late.answers).toEqual([`${61 * s} 1`]);
    expect(late.evidence).toEqual({
      side: 'high',
      sinceMs: s,
      reachedMs: 60 * s,
      requiredMs: 60 * s,
    });
    expect(late.see([90 * s, 1, 1]).answers.at(-1)).toBe(`${90 * s} 0`);
  });
  test('is met by a second that comes in time, or is so already', () => {
    const quick = loadToClose().see([0, 0, 0], [s, 1, 0], [60 * s, 1, 1]);
    expect(quick.until(h).answers).toEqual([]);
    const already = loadToClose().see([0, 0, 0], [0, 1, 1], [s, 1, 0]);
    expect(already.until(h).answers).toEqual([]);
  });
  test('a new first begins anew', () => {
    const twice = loadToClose().see([0, 0, 0], [s, 1, 0], [30 * s, 0, 0], [40 * s, 1, 0]);
    expect(twice.until(100 * s).answers).toEqual([`${100 * s} 1`]);
  });
  test('what was so when it was first seen is no first', () => {
    expect(loadToClose().see([0, 1, 0]).until(h).answers).toEqual([]);
  });
  test('one signal may be both: the mould opened, closed again within its time', () => {
    const mould = () =>
      new Alone(sequence, { first_high: '0 1', then_low: '1 1', within: '60 s' }, contact);
    expect(
      mould()
        .see([0, 1], [s, 0], [50 * s, 1])
        .until(h).answers,
    ).toEqual([]);
    expect(mould().see([0, 1], [s, 0]).until(h).answers).toEqual([`${61 * s} 1`]);
  });
});

describe('a mark as the second', () => {
  test('idle too long without a flush is told, and a flush ends it', () => {
    const idle = flush().see([0, 1], [s, 0]).until(h);
    expect(idle.answers).toEqual([`${1_201 * s} 1`]);
    expect(idle.mark(h, null).answers.at(-1)).toBe(`${h} 0`);
  });
  test('and spraying again in time asks for none', () => {
    expect(
      flush()
        .see([0, 1], [s, 0], [1_000 * s, 1])
        .until(h).answers,
    ).toEqual([]);
  });
  test('a flush before the idling does not count', () => {
    const idle = flush()
      .see([0, 1], [s, 0])
      .mark(2 * s, null, { at: 0 })
      .until(h);
    expect(idle.answers).toEqual([`${1_201 * s} 1`]);
  });
});

describe('not before', () => {
  test('counts only while the mixer runs; drawing too soon is told while it lasts', () => {
    const drum = mixing()
      .mark(0, 'D-7')
      .see([0, 0, 0], [0, 24, 1], [4 * h, 0, 1], [9 * h, 1, 0]);
    expect(drum.answers).toEqual([`${9 * h} 1`]);
    expect(drum.evidence).toEqual({
      side: 'low',
      item: 'D-7',
      sinceMs: 0,
      reachedMs: 4 * h,
      requiredMs: 8 * h,
    });
    expect(drum.see([9 * h + 1, 0, 0]).answers.at(-1)).toBe(`${9 * h + 1} 0`);
    drum.see([10 * h, 24, 1], [14 * h, 1, 0]);
    expect(drum.until(20 * h).severity).toBe(0);
  });
  test('ends by itself once it would have been time', () => {
    const drum = mixing()
      .mark(0, 'D-7')
      .see([0, 24, 1], [7 * h, 1, 0])
      .until(9 * h);
    expect(drum.answers).toEqual([`${7 * h} 1`, `${8 * h} 0`]);
  });
  test('a mark too soon is told until it would have been time', () => {
    const two = new Alone(sequence, { not_before: '1 h' }, [], 0, ['rack', 'rack']);
    two.mark(0, 'R-1').mark(600 * s, 'R-1', { input: 1 });
    expect(two.until(2 * h).answers).toEqual([`${600 * s} 1`, `${h} 0`]);
  });
});

test('time nobody saw does not count', () => {
  const down = loadToClose()
    .see([0, 0, 0], [s, 1, 0])
    .gap(31 * s, 500 * s);
  expect(down.until(600 * s).answers).toEqual([`${530 * s} 1`]);
});

test('JSON loses nothing, and a new clock moves along', () => {
  const moved = loadToClose().see([0, 0, 0], [s, 1, 0]).throughJson().shift(9);
  expect(moved.until(h).answers).toEqual([`${61 * s + 9} 1`]);
});
