/** What is on hold is used: told when it is used, and while it is held; nothing else. */
import { describe, expect, test } from 'vitest';
import type { Hold } from '#rules/hold/hold.ts';
import { held } from '#rules/kinds/held.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const hold = (item: string, more: Partial<Hold> = {}): Hold => ({
  id: `hold-${item}`,
  what: 'container',
  item,
  since: 0,
  by: 'p-1',
  reason: 'seen frozen',
  occurrence: null,
  ...more,
});

class Held extends Alone<ReturnType<typeof held.compile>, ReturnType<typeof held.begin>> {
  constructor(settings: object = {}, marks: readonly ('container' | 'rack')[] = ['container']) {
    super(held, settings as Record<string, unknown>, [], 0, marks);
  }
}

describe('on hold, then used', () => {
  test('is told with who held it and why, until the hold is lifted', () => {
    const line = new Held().stand(min, hold('D-1', { since: min })).mark(5 * min, 'D-1');
    expect(line.answers).toEqual([`${5 * min} 1`]);
    expect(line.evidence).toEqual({
      item: 'D-1',
      items: 1,
      sinceMs: 5 * min,
      heldBy: 'p-1',
      heldFor: 'seen frozen',
    });
    expect(line.stand(9 * min).answers).toEqual([`${5 * min} 1`, `${9 * min} 0`]);
  });
  test('of two holds, lifting one leaves the other', () => {
    const two = [hold('D-1'), hold('D-1', { id: 'hold-2', by: 'rule:l/s/r', reason: 'l/s/r' })];
    const line = new Held()
      .stand(0, ...two)
      .mark(min, 'D-1')
      .stand(2 * min, two[1]!);
    expect(line.answers).toEqual([`${min} 1`]);
    expect(line.evidence).toMatchObject({ heldBy: 'rule:l/s/r' });
    expect(line.evidence).not.toHaveProperty('heldFor');
    expect(line.stand(3 * min).severity).toBe(0);
  });
  test('what is not held, or is another thing of that name, is nothing', () => {
    const line = new Held().stand(0, hold('D-1'), hold('D-2', { what: 'rack' }));
    expect(line.mark(min, 'D-2').answers).toEqual([]);
  });
  test('its use ends with its mark, or where another one takes its place', () => {
    const ends = new Held({}, ['container', 'container']).stand(0, hold('D-1')).mark(min, 'D-1');
    expect(ends.mark(2 * min, 'D-1', { input: 1 }).severity).toBe(0);
    const place = new Held({ last_only: true }).stand(0, hold('D-1')).mark(min, 'D-1');
    expect(place.mark(2 * min, 'D-2').severity).toBe(0);
    const both = new Held()
      .stand(0, hold('D-1'))
      .mark(min, 'D-1')
      .mark(2 * min, 'D-2');
    expect(both.severity).toBe(1);
  });
});

describe('used, then put on hold', () => {
  test('by a person: told where it is asked for; by a rule: that rule has its own alarm', () => {
    const used = () => new Held({ while_used: true }).stand(0).mark(min, 'D-1');
    expect(used().stand(2 * min, hold('D-1', { since: 2 * min })).severity).toBe(1);
    expect(used().stand(2 * min, hold('D-1', { by: 'rule:l/s/r' })).severity).toBe(0);
    const plain = new Held().stand(0).mark(min, 'D-1');
    expect(plain.stand(2 * min, hold('D-1')).severity).toBe(0);
    // Used again, it is known to be held.
    expect(plain.mark(3 * min, 'D-1').severity).toBe(1);
  });
});

test('a place is not put on hold, and marks are of one kind', () => {
  const found = (marks: Parameters<typeof problemsOf>[3]) => problemsOf(held, {}, [], marks);
  expect(found([null])).toHaveLength(1);
  expect(found(['rack', 'container'])).toHaveLength(1);
  expect(found(['rack', 'rack'])).toEqual([]);
});

test('as many as may be used: those of which something is to be said are kept', () => {
  const line = new Held({}, ['rack']).stand(0, hold('R-0', { what: 'rack' })).mark(1, 'R-0');
  for (let i = 1; i <= 600; i += 1) line.mark(1 + i, `R-${i}`);
  expect(line.severity).toBe(1);
  expect(line.memory.used.length).toBeLessThanOrEqual(500);
});
