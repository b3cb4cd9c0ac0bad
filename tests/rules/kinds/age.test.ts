import { describe, expect, test } from 'vitest';
import { age } from '#rules/kinds/age.ts';
import { itemsMax } from '#rules/kinds/clocks.ts';
import type { MarkOf } from '#rules/kinds/kind.ts';
import { Alone, problemsOf } from './alone.ts';

const h = 3_600_000;
const written = { limit: '4 h' };
const rh = { unit: '%', digits: 0 };
const racks: readonly MarkOf[] = ['rack', 'rack'];
/** Blast to coat, common practice: 4 h, half of it above 60 % relative humidity. */
const blastToCoat = (settings = {}) => new Alone(age, { ...written, ...settings }, [], 0, racks);
const inDampAir = () =>
  new Alone(age, { ...written, damp_limit: '2 h', damp_above: '60 %' }, rh, 0, racks);

describe('settings', () => {
  test.each<[object, MarkOf[], RegExp]>([
    [{ limit: '0 s' }, ['rack'], /^limit: everything would be too old at once/],
    [{ limit: '4 h', early: '5 h' }, ['rack'], /^early: it comes after the limit/],
    [{ limit: '4 h', early: '110 %' }, ['rack'], /^early: it comes after the limit/],
    [
      { limit: '4 h', damp_limit: '2 h' },
      ['rack'],
      /^damp_limit: damp_limit and damp_above belong/,
    ],
    [
      { limit: '4 h' },
      ['rack', 'lot'],
      /^: it begins with a mark of rack and ends with one of lot/,
    ],
  ])('%j of %j', (settings, marks, problem) => {
    const found = problemsOf(age, settings as Record<string, unknown>, rh, marks);
    expect(found).toEqual([expect.stringMatching(problem)]);
  });
  test('early is four fifths of the limit, a share or an age', () => {
    for (const [early, ms] of [
      [{}, 3.2 * h],
      [{ early: '50 %' }, 2 * h],
      [{ early: '1 h' }, h],
    ] as const)
      expect(blastToCoat(early).settings.usual).toEqual({ limitMs: 4 * h, earlyMs: ms });
  });
});

describe('an item', () => {
  test('is early at its share and too old at its limit, to the millisecond', () => {
    const rack = blastToCoat()
      .mark(1_000, 'R-12')
      .until(5 * h);
    expect(rack.answers).toEqual([`${1_000 + 3.2 * h} 1`, `${1_000 + 4 * h} 2`]);
    expect(rack.evidence).toEqual({
      item: 'R-12',
      items: 1,
      sinceMs: 1_000,
      reachedMs: 4 * h,
      requiredMs: 4 * h,
      leftMs: 0,
    });
    expect(rack.sentence).toMatch(
      /^\{\$item\}: \{\$reached\} since .* no more than \{\$required\}/,
    );
  });
  test('coated in time says nothing, and coated at last ends it', () => {
    const good = blastToCoat()
      .mark(0, 'R-12')
      .mark(3 * h, 'R-12', { input: 1 });
    expect(good.until(9 * h).answers).toEqual([]);
    const late = blastToCoat()
      .mark(0, 'R-12')
      .mark(5 * h, 'R-12', { input: 1 });
    expect(late.answers.at(-1)).toBe(`${5 * h} 0`);
  });
  test('blasted again begins anew; the word said last counts, earlier or later', () => {
    const again = blastToCoat()
      .mark(0, 'R-12')
      .mark(3 * h, 'R-12');
    expect(again.until(4 * h).answers).toEqual([]);
    const put = blastToCoat()
      .mark(3 * h, 'R-12')
      .mark(3 * h + 1, 'R-12', { at: h });
    expect(put.until(5 * h).answers).toEqual([`${4.2 * h} 1`, `${5 * h} 2`]);
  });
  test('may end in one of two ways: coated, or converted first', () => {
    const either = () => new Alone(age, written, [], 0, ['rack', 'rack', 'rack']);
    for (const input of [1, 2])
      expect(
        either()
          .mark(0, 'R-12')
          .mark(h, 'R-12', { input })
          .until(9 * h).answers,
      ).toEqual([]);
    const found = problemsOf(age, written, [], ['rack', 'rack', 'lot']);
    expect(found).toEqual([
      expect.stringMatching(/begins with a mark of rack and ends with one of lot/),
    ]);
  });
  test('is over at once where it was long ago', () => {
    expect(blastToCoat().mark(9 * h, 'R-12', { at: h }).answers).toEqual([`${9 * h} 2`]);
  });
  test('does not end by a mark that lies before its beginning', () => {
    const late = blastToCoat()
      .mark(2 * h, 'R-12')
      .mark(3 * h, 'R-12', { input: 1, at: h });
    expect(late.until(6 * h).answers.at(-1)).toBe(`${6 * h} 2`);
  });
});

describe('several items', () => {
  const three = () =>
    blastToCoat()
      .mark(0, 'a')
      .mark(h, 'b')
      .mark(2 * h, 'c');
  test('the worst is named, and how many are over', () => {
    const over = three().until(5 * h);
    expect(over.evidence).toMatchObject({ item: 'a', items: 2 });
    expect(over.mark(5 * h, 'a', { input: 1 }).evidence).toMatchObject({ item: 'b', items: 1 });
  });
  test('each that passes is told once, for its hold', () => {
    const over = three().until(4 * h);
    expect(over.passed).toEqual(['a']);
    expect(over.passed).toEqual([]);
    expect(over.until(6 * h).passed).toEqual(['b', 'c']);
  });
  test('what runs is listed, the oldest first', () => {
    expect(three().clocks).toMatchObject([
      { item: 'a', sinceMs: 0, earlyMs: 3.2 * h, dueMs: 4 * h },
      { item: 'b' },
      { item: 'c' },
    ]);
  });
  test(`more than ${itemsMax} are refused, but for one that is known`, () => {
    const full = blastToCoat();
    for (let i = 0; i < itemsMax; i += 1) full.mark(0, `r-${i}`);
    expect(full.refuses('one more')).toMatch(/^500 clocks run already/);
    expect(full.refuses('r-3')).toBeNull();
    expect(full.refuses('one more', 1)).toBeNull();
  });
});

describe('the place itself', () => {
  const bin = (settings = {}) => new Alone(age, { limit: '8 h', ...settings }, [], 1_000, [null]);
  test('never said runs from the beginning of observation', () => {
    const never = bin().until(9 * h);
    expect(never.answers).toEqual([`${1_000 + 6.4 * h} 1`, `${1_000 + 8 * h} 2`]);
    expect(never.clocks).toMatchObject([{ item: null, said: false }]);
    expect(never.evidence).not.toHaveProperty('item');
    expect(never.passed).toEqual(['']);
    expect(never.sentence).toMatch(/^\{\$signal\}: /);
  });
  test('said again begins anew', () => {
    const done = bin()
      .mark(5 * h, null)
      .until(5 * h + 6.4 * h);
    expect(done.answers).toEqual([`${11.4 * h} 1`]);
    expect(done.clocks).toMatchObject([{ said: true }]);
  });
  test('with an end runs only once it was begun', () => {
    const idle = new Alone(age, { limit: '20 min' }, [], 0, [null, null]);
    expect(idle.until(h).answers).toEqual([]);
    expect(idle.mark(h, null).until(2 * h).answers).toHaveLength(2);
  });
});

describe('damp air', () => {
  test('shortens the limit while it lasts, and an item past it stays past it', () => {
    const rack = inDampAir()
      .mark(0, 'R-12')
      .see([h, 61], [2.5 * h, 50]);
    expect(rack.answers).toEqual([`${1.6 * h} 1`, `${2 * h} 2`]);
    expect(rack.until(3 * h).severity).toBe(2);
  });
  test('tells at once of what is too old for it', () => {
    const rack = inDampAir()
      .mark(0, 'R-12')
      .see([2.5 * h, 61]);
    expect(rack.answers).toEqual([`${2.5 * h} 2`]);
    expect(rack.evidence).toMatchObject({ requiredMs: 2 * h });
  });
  test('at the bound and without a word of it the usual limit holds', () => {
    expect(
      inDampAir()
        .mark(0, 'a')
        .see([h, 60])
        .until(3 * h).answers,
    ).toEqual([]);
    expect(
      inDampAir()
        .mark(0, 'a')
        .without(0)
        .until(3 * h).answers,
    ).toEqual([]);
  });
});

describe('wall time', () => {
  test('goes on while the agent is down; what fell due meanwhile is told once, right after', () => {
    const down = blastToCoat()
      .mark(0, 'R-12')
      .gap(h, 7 * h)
      .until(8 * h);
    expect(down.answers).toEqual([`${7 * h + 1} 2`]);
    const short = blastToCoat()
      .mark(0, 'R-12')
      .gap(h, 2 * h)
      .until(4 * h);
    expect(short.answers).toEqual([`${3.2 * h} 1`, `${4 * h} 2`]);
  });
  test('JSON loses nothing, and a new clock moves along', () => {
    const moved = blastToCoat().mark(0, 'R-12').throughJson().shift(9);
    expect(moved.until(5 * h).answers).toEqual([`${3.2 * h + 9} 1`, `${4 * h + 9} 2`]);
  });
});

describe('a clock that is not begun anew', () => {
  const label = () => new Alone(age, { limit: '30 d', once: true }, [], 0, ['container']);
  test('refuses a later word while it runs, and takes an earlier one', () => {
    const line = label().mark(2 * h, 'C-1', { at: h });
    expect(age.refuses!(line.settings, line.memory, said('C-1', 2 * h))).toMatch(/runs already/);
    expect(age.refuses!(line.settings, line.memory, said('C-1', h / 2))).toBeNull();
    expect(age.refuses!(line.settings, line.memory, said('C-2', 2 * h))).toBeNull();
  });
  test('takes it once something has ended it', () => {
    const line = new Alone(age, { limit: '30 d', once: true }, [], 0, racks).mark(0, 'R-1');
    line.mark(h, 'R-1', { input: 1 });
    expect(age.refuses!(line.settings, line.memory, said('R-1', 2 * h))).toBeNull();
  });
  test('of others is, as it always was', () => {
    const line = blastToCoat().mark(0, 'R-1');
    expect(age.refuses!(line.settings, line.memory, said('R-1', 2 * h))).toBeNull();
  });
});
const said = (item: string, at: number) => ({ item, at, judged: 9 * h, input: 0 });
