/** Deadlines come up in the order of (time, owner), however often they were moved before. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Deadlines } from '#rules/engine/deadlines.ts';

const owners = 9;
const at = fc.integer({ min: 0, max: 40 });
const step = fc.oneof(
  fc.record({ owner: fc.nat(owners - 1), at: fc.option(at, { nil: null }) }),
  fc.record({ upTo: at }),
);

/** The plain way: look at them all. */
function earliest(due: readonly number[], to: number): number {
  let first = -1;
  for (const [owner, time] of due.entries())
    if (time <= to && (first < 0 || time < due[first]!)) first = owner;
  return first;
}

test('as looking at all of them would find them', () => {
  let taken = 0;
  fc.assert(
    fc.property(fc.array(step, { minLength: 40, maxLength: 120 }), (steps) => {
      const deadlines = new Deadlines(owners);
      const due = Array.from({ length: owners }, () => Number.POSITIVE_INFINITY);
      for (const each of steps) {
        if ('owner' in each) {
          deadlines.set(each.owner, each.at);
          due[each.owner] = each.at ?? Number.POSITIVE_INFINITY;
        } else {
          const wanted = earliest(due, each.upTo);
          expect(deadlines.take(each.upTo)).toBe(wanted);
          if (wanted < 0) continue;
          expect(deadlines.takenAt).toBe(due[wanted]);
          due[wanted] = Number.POSITIVE_INFINITY;
          taken += 1;
        }
        expect(due.map((_, owner) => deadlines.get(owner) ?? Number.POSITIVE_INFINITY)).toEqual(
          due,
        );
      }
    }),
    { numRuns: 2_000 },
  );
  expect(taken).toBeGreaterThan(10_000);
});
