import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RecentTimes } from '#agent/intake/recent-times.ts';

test('tells a new time, the same again, and another value', () => {
  const times = new RecentTimes(10);
  expect(times.take(100, 5)).toBe('new');
  expect(times.take(100, 5)).toBe('same');
  expect(times.take(100, 6)).toBe('other');
  expect(times.take(100, 5)).toBe('same');
  expect(times.take(50, Number.NaN)).toBe('new');
  expect(times.take(50, Number.NaN)).toBe('same');
  expect(times.take(50, 0)).toBe('other');
});

test('forgets by age: the border itself is kept', () => {
  const times = new RecentTimes(10);
  for (const at of [1, 2, 3]) times.take(at, at);
  times.forgetBefore(2);
  expect(times.count).toBe(2);
  expect(times.take(2, 2)).toBe('same');
  expect(times.take(1, 1)).toBe('new');
});

test('is what a plain map of the newest times would be, whatever the order', () => {
  const countMax = 40;
  const step = fc.oneof(
    {
      weight: 9,
      arbitrary: fc.record({
        at: fc.integer({ min: 0, max: 150 }),
        value: fc.integer({ min: 0, max: 1 }),
      }),
    },
    { weight: 1, arbitrary: fc.record({ forget: fc.integer({ min: 0, max: 150 }) }) },
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 400 }), (steps) => {
      const times = new RecentTimes(countMax);
      const model = new Map<number, number>();
      for (const taken of steps) {
        if ('forget' in taken) {
          times.forgetBefore(taken.forget);
          for (const at of model.keys()) if (at < taken.forget) model.delete(at);
          continue;
        }
        const known = model.get(taken.at);
        const expected = known === undefined ? 'new' : known === taken.value ? 'same' : 'other';
        expect(times.take(taken.at, taken.value)).toBe(expected);
        if (known !== undefined) continue;
        model.set(taken.at, taken.value);
        if (model.size > countMax) model.delete(Math.min(...model.keys()));
        expect(times.count).toBe(model.size);
      }
    }),
    { numRuns: 300 },
  );
});
