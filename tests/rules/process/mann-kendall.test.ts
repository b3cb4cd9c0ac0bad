import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mannKendall } from '#rules/process/mann-kendall.ts';
import { exactRows, publishedSulfate, trendRows } from '../../vectors/trend.ts';

describe('published trends', () => {
  test.each(trendRows)('$name: S $score, p $p ($flag: $source)', (row) => {
    const found = mannKendall(row.times, row.values, row.times.length)!;
    expect(found.score).toBe(row.score);
    expect(found.variance).toBeCloseTo(row.variance, 8);
    expect(found.z).toBeCloseTo(row.z, 12);
    expect(Math.abs(found.pNormal / row.p - 1)).toBeLessThan(1e-12);
  });

  test(`the publication's own digits (${publishedSulfate.source})`, () => {
    const { times, values } = trendRows[0]!;
    const found = mannKendall(times, values, 23)!;
    expect(found.score / 253).toBeCloseTo(publishedSulfate.tau, 7);
    expect(found.z).toBeCloseTo(publishedSulfate.z, 6);
    expect(found.pNormal / publishedSulfate.p).toBeCloseTo(1, 6);
    expect(found.pExact).toBeNull();
  });

  test.each(exactRows)(
    'exact: |S| of $count points at least $score, p $p ($flag: $source)',
    (row) => {
      // The table has three decimals a side.
      const found = mannKendall(...withScore(row.count, row.score), row.count)!;
      expect(found.score).toBe(row.score);
      expect(Math.abs(found.pExact! - row.p)).toBeLessThanOrEqual(0.001);
    },
  );
});

describe('any points', () => {
  test('exact chances are what counting out every order of five gives', () => {
    const orders = permutations([1, 2, 3, 4, 5]);
    const times = [0, 1, 2, 3, 4];
    const scores = orders.map((order) => mannKendall(times, order, 5)!.score);
    for (const order of orders) {
      const { score, pExact } = mannKendall(times, order, 5)!;
      const asExtreme = scores.filter((other) => Math.abs(other) >= Math.abs(score)).length;
      expect(pExact).toBeCloseTo(asExtreme / 120, 14);
    }
  });

  test('turned upside down the score turns its sign and nothing else changes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 40 }),
        (values) => {
          const times = values.map((_, i) => i);
          const one = mannKendall(times, values, values.length)!;
          const other = mannKendall(
            times,
            values.map((v) => -v),
            values.length,
          )!;
          expect(other.score + one.score).toBe(0);
          expect(other.pNormal).toBe(one.pNormal);
          expect(other.variance).toBe(one.variance);
          expect(one.pNormal).toBeGreaterThan(0);
          expect(one.pNormal).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  test('no trend at all has p 1; ties have no exact p', () => {
    expect(mannKendall([0, 1, 2, 3], [5, 5, 5, 5], 4)).toEqual({
      score: 0,
      variance: 0,
      z: 0,
      pNormal: 1,
      pExact: null,
    });
  });

  test('too few points, or points that are none, are refused', () => {
    expect(mannKendall([0, 1], [1, 2], 2)).toBeNull();
    expect(mannKendall([0, 1, 1], [1, 2, 3], 3)).toBeNull();
    expect(mannKendall([0, 1, 2], [1, Number.NaN, 3], 3)).toBeNull();
  });
});

/** Values of an untied series of this score: the ascending one with its first value moved up. */
function withScore(count: number, score: number): [number[], number[]] {
  const values = Array.from({ length: count }, (_, i) => i);
  let surplus = ((count * (count - 1)) / 2 - score) / 2;
  for (let end = count - 1; surplus > 0; end -= 1) {
    const places = Math.min(surplus, end);
    const [moved] = values.splice(count - 1 - end, 1);
    values.splice(count - 1 - end + places, 0, moved!);
    surplus -= places;
    if (end === 0) throw new Error('no such score');
  }
  return [values.map((_, i) => i), values];
}

function permutations(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) =>
    permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]),
  );
}
