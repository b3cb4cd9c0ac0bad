import { describe, expect, test } from 'vitest';
import { itemsMax } from '#rules/kinds/clocks.ts';
import type { MarkOf } from '#rules/kinds/kind.ts';
import { tooSoon } from '#rules/kinds/too-soon.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const racks: readonly MarkOf[] = ['rack', 'rack'];
/** Primer to cover coat, at the earliest after 20 min. */
const cover = () => new Alone(tooSoon, { not_before: '20 min' }, [], 0, racks);

test.each<[object, MarkOf[], RegExp]>([
  [{ not_before: '0 s' }, ['rack', 'rack'], /^not_before: it is nothing/],
  [{ not_before: '5 min' }, ['rack', 'lot'], /^: it begins with a mark of rack and ends with one/],
])('%j of %j', (settings, marks, problem) => {
  const found = problemsOf(tooSoon, settings as Record<string, unknown>, [], marks);
  expect(found).toEqual([expect.stringMatching(problem)]);
});

describe('a rack', () => {
  test('covered in time says nothing, at the very end of it too', () => {
    const line = cover()
      .mark(0, 'R-1')
      .mark(20 * min, 'R-1', { input: 1 });
    expect(line.until(90 * min).answers).toEqual([]);
  });
  test('covered too soon is told, held, and stands for as long as should have been waited', () => {
    const line = cover()
      .mark(0, 'R-1')
      .mark(5 * min, 'R-1', { input: 1 });
    expect(tooSoon.passed!(line.memory)).toEqual(['R-1']);
    expect(line.until(90 * min).answers).toEqual([`${5 * min} 1`, `${25 * min} 0`]);
    expect(line.evidence).toEqual({
      side: 'low',
      item: 'R-1',
      sinceMs: 0,
      reachedMs: 5 * min,
      requiredMs: 20 * min,
      leftMs: 15 * min,
    });
  });
  test('is judged by its own time, whatever others do', () => {
    const line = cover()
      .mark(0, 'R-1')
      .mark(15 * min, 'R-2')
      .mark(21 * min, 'R-1', { input: 1 });
    expect(line.answers).toEqual([]);
    line.mark(22 * min, 'R-2', { input: 1 });
    expect(line.answers).toEqual([`${22 * min} 1`]);
  });
  test('of which nobody said the first is not judged', () => {
    expect(cover().mark(min, 'R-9', { input: 1 }).answers).toEqual([]);
  });
  test('written down late is told all the same', () => {
    const line = cover()
      .mark(0, 'R-1')
      .mark(60 * min, 'R-1', { input: 1, at: 5 * min });
    expect(line.answers).toEqual([`${60 * min} 1`]);
  });
});

test('racks that are never covered do not pile up', () => {
  const line = cover();
  for (let i = 0; i <= itemsMax; i += 1) line.mark(i, `R-${i}`);
  expect(line.memory.clocks).toHaveLength(itemsMax);
});
