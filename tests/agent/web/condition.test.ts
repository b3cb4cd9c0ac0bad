import fc from 'fast-check';
import { expect, test } from 'vitest';
import { worstCondition } from '#agent/web/condition.ts';
import type { Condition } from '#agent/web/contract.ts';

// NE 107 names F, C, S, M; the order F > C > S > M > ok with codes 5 to 1 is that of two device
// manuals (edition 2006-06-12). One article orders M before S; the manuals are followed.
const codes: Record<Condition, number> = {
  failure: 5,
  'function-check': 4,
  'out-of-specification': 3,
  'maintenance-required': 2,
  good: 1,
};
const all = Object.keys(codes) as Condition[];

test('of any two the one with the higher code stands', () => {
  for (const a of all) {
    for (const b of all) expect(worstCondition([a, b])).toBe(codes[a] >= codes[b] ? a : b);
  }
});

test('of any number, in any order, the highest; of none, good', () => {
  expect(worstCondition([])).toBe('good');
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...all), { minLength: 1 }), (some) => {
      expect(codes[worstCondition(some)]).toBe(Math.max(...some.map((one) => codes[one])));
    }),
  );
});
