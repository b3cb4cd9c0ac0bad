import { describe, expect, test } from 'vitest';
import { itemsMax } from '#rules/kinds/clocks.ts';
import type { MarkOf } from '#rules/kinds/kind.ts';
import { present } from '#rules/kinds/present.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const drums: readonly MarkOf[] = ['container', 'container'];
/** At or below 1 °C for ten minutes, with what stands there. */
const store = (more: object = {}) =>
  new Alone(present, { low: '1 Cel', on_delay: '10 min', inclusive: true, ...more }, {}, 0, drums);
const docks = () => store({ needs_item: true });

test.each<[object, MarkOf[], RegExp]>([
  [{}, ['container'], /^: without a limit it judges nothing/],
  [{ low: '1 Cel' }, [null], /^: it is about the place/],
  [{ low: '1 Cel' }, ['rack', 'lot'], /^: it is about rack, from one mark to another of lot/],
])('%j of %j', (settings, marks, problem) => {
  const found = problemsOf(present, settings as Record<string, unknown>, {}, marks);
  expect(found).toEqual([expect.stringMatching(problem)]);
});

describe('a store that freezes', () => {
  test('is told by its value alone, and the place is held where nobody knows what stands there', () => {
    const line = store()
      .see([0, 0.5])
      .until(30 * min);
    expect(line.answers).toEqual([`${10 * min} 1`]);
    expect(line.passed).toEqual(['']);
  });
  test('holds everything that stood there, and nothing that had left', () => {
    const line = store().mark(0, 'C-1').mark(0, 'C-2').mark(0, 'C-3');
    line.mark(min, 'C-2', { input: 1 }).see([2 * min, 0.5]);
    line.mark(5 * min, 'C-3', { input: 1 }).until(30 * min);
    expect(line.passed).toEqual(['C-1']);
    expect(line.answers).toEqual([`${12 * min} 1`]);
  });
  test('holds what comes later once that has been there as long', () => {
    const line = store()
      .mark(0, 'C-1')
      .see([0, 0.5])
      .mark(15 * min, 'C-4');
    expect(line.passed).toEqual(['C-1']);
    expect(line.until(24 * min).passed).toEqual([]);
    expect(line.until(25 * min).passed).toEqual(['C-4']);
    expect(line.until(60 * min).passed).toEqual([]);
    expect(line.evidence).toMatchObject({ item: 'C-1', items: 2, sinceMs: 0 });
  });
  test('that warms in time holds nothing; one that freezes again holds again', () => {
    const line = store()
      .mark(0, 'C-1')
      .see([0, 0.5], [9 * min, 3]);
    expect(line.until(60 * min).passed).toEqual([]);
    line.see([60 * min, 0.5], [80 * min, 3], [90 * min, 0.5]).until(120 * min);
    expect(line.passed).toEqual(['C-1', 'C-1']);
    expect(line.answers).toEqual([`${70 * min} 1`, `${80 * min} 0`, `${100 * min} 1`]);
  });
  test('counts a container said to have come earlier from when it came', () => {
    const line = store()
      .see([0, 0.5])
      .mark(14 * min, 'C-1', { at: 2 * min });
    expect(line.passed).toEqual(['', 'C-1']);
  });
});

describe('where something must be there', () => {
  test('says nothing of an empty dock, and clears when the last one left', () => {
    const line = docks()
      .see([0, 0.5])
      .until(60 * min);
    expect([line.answers, line.passed]).toEqual([[], []]);
    line.mark(60 * min, 'C-1').mark(75 * min, 'C-1', { input: 1 });
    expect(line.answers).toEqual([`${70 * min} 1`, `${75 * min} 0`]);
    expect(line.passed).toEqual(['C-1']);
  });
});

describe('the logger of a delivery', () => {
  const dock = () =>
    new Alone(present, { low: '5 Cel', high: '40 Cel', at_reading: true }, {}, 0, drums);
  test('tells of all that stand on the dock, until they are put away', () => {
    const line = dock().mark(0, 'C-1').mark(0, 'C-2').see([min, 3]);
    expect(line.passed).toEqual(['C-1', 'C-2']);
    line.mark(5 * min, 'C-1', { input: 1 }).mark(6 * min, 'C-2', { input: 1 });
    expect(line.answers).toEqual([`${min} 1`, `${6 * min} 0`]);
  });
  test('says nothing of the next delivery, which has one of its own', () => {
    const line = dock()
      .mark(0, 'C-1')
      .see([min, 3])
      .mark(5 * min, 'C-1', { input: 1 });
    expect(line.mark(60 * min, 'C-2').passed).toEqual(['C-1']);
    expect(line.see([61 * min, 12]).passed).toEqual([]);
    line.see([70 * min, 44]);
    expect([line.passed, line.answers.at(-1)]).toEqual([['C-2'], `${70 * min} 1`]);
  });
  test('with nothing on the dock stands for the place until a reading is well', () => {
    const line = dock().see([0, 3]).mark(min, 'C-1');
    expect(line.passed).toEqual(['']);
    expect(line.see([5 * min, 8]).answers).toEqual(['0 1', `${5 * min} 0`]);
  });
});

test('a probe tells of the one drum it was put in, and of each that follows', () => {
  const line = new Alone(present, { low: '1 Cel', inclusive: true, last_only: true }, {}, 0, drums);
  line
    .mark(0, 'C-1')
    .see([min, 8])
    .mark(2 * min, 'C-2')
    .see([3 * min, 0.5]);
  expect(line.passed).toEqual(['C-2']);
  line
    .mark(4 * min, 'C-3')
    .see([5 * min, 0.4])
    .mark(6 * min, 'C-4')
    .see([7 * min, 9]);
  expect(line.passed).toEqual(['C-3']);
  expect(line.answers).toEqual([`${3 * min} 1`, `${4 * min} 0`, `${5 * min} 1`, `${6 * min} 0`]);
});

test('time nobody saw does not count', () => {
  const line = store()
    .mark(0, 'C-1')
    .see([0, 0.5])
    .mark(4 * min, 'C-2');
  line.gap(6 * min, 60 * min).until(64 * min);
  expect(line.answers).toEqual([`${64 * min} 1`]);
  expect(line.passed).toEqual(['C-1']);
  expect(line.until(68 * min).passed).toEqual(['C-2']);
});

test('containers that never leave do not pile up: the next is refused, and says why', () => {
  const line = store();
  for (let i = 0; i < itemsMax; i += 1) line.mark(i, `C-${i}`);
  expect(line.refuses('C-3')).toBeNull();
  expect(line.refuses('C-1000')).toMatch(/which of them left/);
});
