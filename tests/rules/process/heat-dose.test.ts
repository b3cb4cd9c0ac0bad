import fc from 'fast-check';
import { expect, test } from 'vitest';
import { msAtOrAbove } from '#rules/process/heat-dose.ts';

// By definition: the part of a straight line that lies at or above the limit.
test.each([
  ['wholly above', 0, 70, 100, 80, 65, 100],
  ['wholly below', 0, 50, 100, 60, 65, 0],
  ['at the limit throughout', 0, 65, 100, 65, 65, 100],
  ['rising through it', 0, 60, 100, 70, 65, 50],
  ['falling through it', 0, 70, 100, 60, 65, 50],
  ['touching it at the end', 0, 60, 100, 65, 65, 0],
  ['leaving it at the start', 0, 65, 100, 60, 65, 0],
  ['no time at all', 5, 90, 5, 90, 65, 0],
] as const)('%s', (_, fromMs, from, toMs, to, limit, expected) => {
  expect(msAtOrAbove(fromMs, from, toMs, to, limit)).toBe(expected);
});

test('forward and backward agree; above and below add up to all of it', () => {
  const value = fc.integer({ min: 0, max: 1_500 }).map((k) => k / 10);
  fc.assert(
    fc.property(value, value, value, fc.integer({ min: 1, max: 600_000 }), (a, b, limit, span) => {
      const above = msAtOrAbove(0, a, span, b, limit);
      expect(msAtOrAbove(0, b, span, a, limit)).toBeCloseTo(above, 6);
      expect(above).toBeGreaterThanOrEqual(0);
      expect(above).toBeLessThanOrEqual(span);
      if (a !== limit && b !== limit)
        expect(above + msAtOrAbove(0, -a, span, -b, -limit)).toBeCloseTo(span, 6);
    }),
  );
});
