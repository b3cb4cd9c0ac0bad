import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { confidenceZ, type SenSlope, senIntercept, senSlope } from '#rules/process/trend.ts';
import { publishedSulfate, trendRows } from '../../vectors/trend.ts';

// The same arithmetic in another order: some roundings of a double.
const close = (found: number, expected: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(Math.abs(expected) * 1e-12);

describe('published slopes', () => {
  test.each(trendRows)('$name: $slope, 95 % $low to $high ($flag: $source)', (row) => {
    const found = senSlope(row.times, row.values, row.times.length, confidenceZ.p95)!;
    close(found.slope, row.slope);
    close(found.low, row.low);
    close(found.high, row.high);
    close(senIntercept(row.times, row.values, row.times.length, row.slope)!, row.intercept);
  });

  test(`the publication's own digits (${publishedSulfate.source})`, () => {
    const sulfate = trendRows[0]!;
    const { slope, low } = senSlope(sulfate.times, sulfate.values, 23, confidenceZ.p95)!;
    expect(slope).toBeCloseTo(publishedSulfate.slope, 7);
    expect(low).toBeCloseTo(publishedSulfate.low, 10);
    const intercept = senIntercept(sulfate.times, sulfate.values, 23, slope)!;
    expect(intercept).toBeCloseTo(publishedSulfate.intercept, 4);
  });
});

/** By the definition, with sorts and new arrays: slow and plain. */
function plainly(times: readonly number[], values: readonly number[], z: number): SenSlope {
  const slopes: number[] = [];
  for (let i = 0; i < times.length; i += 1) {
    for (let j = i + 1; j < times.length; j += 1) {
      slopes.push((values[j]! - values[i]!) / (times[j]! - times[i]!));
    }
  }
  slopes.sort((a, b) => a - b);
  const n = times.length;
  const ties = new Map<number, number>();
  for (const value of values) ties.set(value, (ties.get(value) ?? 0) + 1);
  let variance = n * (n - 1) * (2 * n + 5);
  for (const t of ties.values()) variance -= t * (t - 1) * (2 * t + 5);
  const half = z * Math.sqrt(variance / 18);
  const at = (rank: number): number => {
    if (rank < 1) return Number.NEGATIVE_INFINITY;
    if (rank > slopes.length) return Number.POSITIVE_INFINITY;
    const below = slopes[Math.floor(rank) - 1]!;
    return below + (rank % 1) * ((slopes[Math.floor(rank)] ?? below) - below);
  };
  const count = slopes.length;
  return {
    slope: at((count + 1) / 2),
    low: at((count - half) / 2),
    high: at((count + half) / 2 + 1),
  };
}

describe('any points', () => {
  const points = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: -50, max: 50 })), {
      minLength: 2,
      maxLength: 70,
    })
    .map((drawn) => {
      let at = 0;
      const times = drawn.map(([gap]) => (at += gap));
      return { times, values: drawn.map(([, value]) => value / 10) };
    });

  test('the same as by the plain definition, ties and all, with and without scratch', () => {
    fc.assert(
      fc.property(points, ({ times, values }) => {
        const found = senSlope(times, values, times.length, confidenceZ.p90)!;
        const expected = plainly(times, values, confidenceZ.p90);
        for (const key of ['slope', 'low', 'high'] as const) {
          if (Number.isFinite(expected[key])) expect(found[key]).toBeCloseTo(expected[key], 12);
          else expect(found[key]).toBe(expected[key]);
        }
        expect(found.low).toBeLessThanOrEqual(found.slope);
        expect(found.high).toBeGreaterThanOrEqual(found.slope);
      }),
    );
  });

  test('a straight line is found whatever a quarter of the points say', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (slope, wild) => {
          // The breakdown point of Theil-Sen is 29 %.
          const times = Array.from({ length: 20 }, (_, i) => i);
          const values = times.map((t) => slope * t);
          wild.forEach((value, i) => {
            values[(i * 7) % 20] = value;
          });
          expect(senSlope(times, values, 20, 1.96)!.slope).toBeCloseTo(slope, 9);
        },
      ),
    );
  });

  test('only the first `count` points count, and the given object is filled', () => {
    const into: SenSlope = { slope: 0, low: 0, high: 0 };
    const times = Float64Array.of(0, 1, 2, 3, 99);
    const values = Float64Array.of(0, 2, 4, 6, -1e9);
    expect(senSlope(times, values, 4, 1.96, into)).toBe(into);
    expect(into.slope).toBe(2);
    expect(senIntercept(times, values, 4, 2)).toBe(0);
  });

  test('too few points to bound give no bound, rather than a false one', () => {
    expect(senSlope([0, 1], [0, 3], 2, confidenceZ.p95)).toEqual({
      slope: 3,
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
    });
  });

  test('constant values have slope 0 and no doubt about it', () => {
    const times = Array.from({ length: 12 }, (_, i) => i);
    expect(
      senSlope(
        times,
        times.map(() => 7),
        12,
        1.96,
      ),
    ).toEqual({ slope: 0, low: 0, high: 0 });
  });
});

describe('refused', () => {
  test.each([
    ['one point', [0], [1], 1],
    ['none', [], [], 0],
    ['more points than there are', [0, 1], [1, 2], 3],
    ['times that stand still', [0, 1, 1], [1, 2, 3], 3],
    ['times that go back', [0, 2, 1], [1, 2, 3], 3],
    ['a time that is none', [0, Number.NaN, 2], [1, 2, 3], 3],
    ['a time without end', [0, 1, Number.POSITIVE_INFINITY], [1, 2, 3], 3],
    ['a value that is none', [0, 1, 2], [1, Number.NaN, 3], 3],
    ['a slope beyond a double', [0, 1e-300, 1], [-1e308, 1e308, 0], 3],
  ])('%s', (_, times, values, count) => {
    expect(senSlope(times, values, count, 1.96)).toBeNull();
  });

  test('a confidence that is none, and an intercept of no slope', () => {
    expect(senSlope([0, 1], [0, 1], 2, 0)).toBeNull();
    expect(senSlope([0, 1], [0, 1], 2, Number.NaN)).toBeNull();
    expect(senIntercept([0, 1], [0, 1], 2, Number.NaN)).toBeNull();
    expect(senIntercept([0, 0], [0, 1], 2, 1)).toBeNull();
  });
});
