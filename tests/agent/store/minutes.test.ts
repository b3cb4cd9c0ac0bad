import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodeMinutes, encodeMinutes, summarise } from '../../../agent/store/minutes.ts';
import { anySample, columnOf, processColumn } from './patterns.ts';

const wholeTenths = anySample.map((each) => ({
  ...each,
  value: each.quality >= 100 ? 0 : Math.round((each.value % 1_000) * 10) / 10 + 0,
}));

test('each minute holds the figures of its samples', () => {
  fc.assert(
    fc.property(
      fc.array(wholeTenths, { minLength: 1, maxLength: 80 }),
      fc.boolean(),
      (samples, decimals) => {
        const column = columnOf(samples);
        const minutes = decodeMinutes(
          encodeMinutes(summarise(column, 0, column.count, decimals ? 1 : null)),
        );
        const groups = Map.groupBy(samples, (each) => Math.floor(each.at / 60_000));
        expect(minutes.minute).toEqual([...groups.keys()].toSorted((a, b) => a - b));
        minutes.minute.forEach((minute, i) => {
          const group = groups.get(minute)!;
          const usable = group.filter((each) => each.quality < 100 && (each.flags & 2) === 0);
          const values = usable.map((each) => each.value);
          expect(minutes.n[i]).toBe(group.length);
          expect(minutes.bad[i]).toBe(group.filter((each) => each.quality >= 100).length);
          expect(minutes.usable(i)).toBe(usable.length);
          if (values.length === 0) return;
          expect(minutes.lo[i]! / minutes.scale).toBeCloseTo(Math.min(...values), 9);
          expect(minutes.hi[i]! / minutes.scale).toBeCloseTo(Math.max(...values), 9);
          const sum = values.reduce((total, value) => total + value, 0);
          expect(minutes.sum[i]! / minutes.scale).toBeCloseTo(sum, 6);
        });
      },
    ),
    { numRuns: 1_000 },
  );
});

test('doubles come back to the bit', () => {
  const column = columnOf([
    { at: 0, judged: 0, value: 1e300, quality: 0, flags: 0 },
    { at: 60_000, judged: 60_000, value: 0.1 + 0.2, quality: 0, flags: 0 },
  ]);
  const minutes = decodeMinutes(encodeMinutes(summarise(column, 0, 2, null)));
  expect(minutes.lo).toEqual([1e300, 0.1 + 0.2]);
});

test('sums too large for a whole number are kept as doubles', () => {
  const samples = [1, 2, 3].map((i) => ({
    ...{ at: i, judged: i, quality: 0, flags: 0 },
    value: 2 ** 51,
  }));
  const minutes = decodeMinutes(encodeMinutes(summarise(columnOf(samples), 0, 3, 0)));
  expect([minutes.scale, minutes.lo, minutes.sum]).toEqual([1, [2 ** 51], [3 * 2 ** 51]]);
});

test('an hour at 1 Hz costs under a tenth of a byte a sample', () => {
  const column = processColumn(3_600);
  expect(encodeMinutes(summarise(column, 0, 3_600, 1)).length).toBeLessThan(360);
});

test('any flipped bit is noticed', () => {
  const bytes = encodeMinutes(summarise(processColumn(600), 0, 600, 1));
  for (let bit = 0; bit < bytes.length * 8; bit += 1) {
    const damaged = bytes.slice();
    damaged[bit >> 3]! ^= 1 << (bit & 7);
    expect(() => decodeMinutes(damaged)).toThrow('the checksum of a minute summary');
  }
  for (let end = 0; end < bytes.length; end += 1) {
    expect(() => decodeMinutes(bytes.slice(0, end))).toThrow('cannot be read');
  }
});
