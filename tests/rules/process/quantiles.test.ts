import stdlibChiSquare from '@stdlib/stats-base-dists-chisquare-quantile';
import stdlibT from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, test } from 'vitest';
import { chiSquareQuantile } from '#rules/process/chi-square.ts';
import { studentTQuantile } from '#rules/process/student-t.ts';
import { chiSquareRows, tRows } from '../../vectors/quantiles.ts';

const shares = [0.5, 0.6, 0.75, 0.9, 0.95, 0.975, 0.99, 0.995, 0.9999];

describe('Student’s t', () => {
  test.each(tRows)('$degrees degrees, $p: $t ($flag: $source)', ({ degrees, p, t }) => {
    expect(Math.abs(studentTQuantile(degrees, p)! - t)).toBeLessThanOrEqual(0.0005);
  });
  test('the reference library over a grid', () => {
    for (const degrees of [1, 2, 3, 4, 5, 7, 8, 12, 25, 60, 101, 1_000]) {
      for (const p of shares) {
        const expected = stdlibT(p, degrees);
        expect(Math.abs(studentTQuantile(degrees, p)! - expected)).toBeLessThanOrEqual(
          1e-8 * (1 + expected),
        );
      }
    }
  });
  test('nothing outside the range', () => {
    for (const [degrees, p] of [
      [0, 0.9],
      [1.5, 0.9],
      [1_001, 0.9],
      [3, 0.4],
      [3, 1],
      [3, Number.NaN],
    ]) {
      expect(studentTQuantile(degrees!, p!)).toBeNull();
    }
  });
});

describe('chi-square', () => {
  // The library of the grid is off by up to 1e-3 from some thousand degrees on.
  test.each(chiSquareRows)('$degrees degrees, $p: $x ($flag: $source)', ({ degrees, p, x }) => {
    expect(Math.abs(chiSquareQuantile(degrees, p)! / x - 1)).toBeLessThan(1e-9);
  });
  test('the reference library over a grid', () => {
    for (const degrees of [1, 2, 3, 4, 5, 9, 19, 29, 30, 99, 500]) {
      for (const p of [0.0001, 0.025, 0.05, 0.25, ...shares]) {
        const expected = stdlibChiSquare(p, degrees);
        expect(Math.abs(chiSquareQuantile(degrees, p)! / expected - 1)).toBeLessThanOrEqual(1e-8);
      }
    }
  });
  test('two degrees are an exponential', () => {
    for (const p of shares) expect(chiSquareQuantile(2, p)).toBeCloseTo(-2 * Math.log1p(-p), 9);
  });
  test('nothing outside the range', () => {
    for (const [degrees, p] of [
      [0, 0.9],
      [2.5, 0.9],
      [10_001, 0.9],
      [3, 0],
      [3, 1],
      [Number.NaN, 0.5],
    ]) {
      expect(chiSquareQuantile(degrees!, p!)).toBeNull();
    }
  });
});
