import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dustSurfaceMaxC, lowestFigureC } from '#rules/process/dust-layer.ts';
import { dustRows } from '../../vectors/dust-layer.ts';

describe('published figures', () => {
  test.each(dustRows)('$dust: $maxC °C by the $decidedBy ($flag: $source)', (row) => {
    expect(dustSurfaceMaxC(row, 5)).toEqual({ maxC: row.maxC, decidedBy: row.decidedBy });
  });
});

describe('what the rule is not for', () => {
  const rubber = { layer5MmC: 220, cloudC: 460 };

  test('trap: 145 °C of rubber dust never stands above the limit of the residue', () => {
    const byRule = dustSurfaceMaxC(rubber, 5);
    expect(byRule).toEqual({ maxC: 145, decidedBy: 'layer' });
    if ('refused' in byRule) throw new Error(byRule.refused);
    expect(lowestFigureC([112, byRule.maxC, null])).toBe(112);
    expect(lowestFigureC([null, byRule.maxC, 98])).toBe(98);
  });

  test('trap: thick rubber dust is not derated by a curve; a laboratory must say', () => {
    expect(dustSurfaceMaxC(rubber, 5.1)).toEqual({ refused: 'laboratory' });
    expect(dustSurfaceMaxC(rubber, 50)).toEqual({ refused: 'laboratory' });
  });

  test('published values are cut off downward, not rounded', () => {
    expect(dustSurfaceMaxC({ layer5MmC: 240, cloudC: 220 }, 1)).toEqual({
      maxC: 146,
      decidedBy: 'cloud',
    });
  });

  test('nothing known, or nothing possible', () => {
    expect(dustSurfaceMaxC({ layer5MmC: null, cloudC: null }, 1)).toEqual({ refused: 'no-figure' });
    for (const [dust, thickness] of [
      [{ layer5MmC: 20, cloudC: null }, 1],
      [{ layer5MmC: 220, cloudC: 2_000 }, 1],
      [{ layer5MmC: Number.NaN, cloudC: 300 }, 1],
      [rubber, 0],
      [rubber, Number.NaN],
    ] as const) {
      expect(dustSurfaceMaxC(dust, thickness)).toEqual({ refused: 'out-of-range' });
    }
    expect(lowestFigureC([])).toBeNull();
    expect(lowestFigureC([null, Number.NaN])).toBeNull();
  });

  test('one more figure can only lower the least', () => {
    const figures = fc.array(fc.option(fc.double({ noNaN: true, min: -50, max: 500 })), {
      minLength: 1,
    });
    fc.assert(
      fc.property(figures, fc.double({ noNaN: true, min: -50, max: 500 }), (known, more) => {
        const before = lowestFigureC(known) ?? Number.POSITIVE_INFINITY;
        expect(lowestFigureC([...known, more])!).toBeLessThanOrEqual(before);
      }),
    );
  });
});
