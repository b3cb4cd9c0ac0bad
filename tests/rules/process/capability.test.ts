import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Capability,
  capability,
  capabilityRatios,
  cpInterval,
  cpkInterval,
} from '#rules/process/capability.ts';
import { capabilityIntervals, nistCapability } from '../../vectors/control-charts.ts';

describe('published figures', () => {
  test(`both limits (${nistCapability.source})`, () => {
    const { mean, sigma, low, high, tolerance } = nistCapability;
    const found = capabilityRatios(mean, sigma, low, high)!;
    for (const key of ['cp', 'cpk', 'cpu', 'cpl', 'k'] as const) {
      expect(Math.abs(found[key]! - nistCapability[key])).toBeLessThanOrEqual(tolerance);
    }
  });

  test.each(capabilityIntervals)(
    '$name $index from $valuesCount values: $low to $high ($flag: $source)',
    ({ name, index, valuesCount, low, high }) => {
      const found = (name === 'Cp' ? cpInterval : cpkInterval)(index, valuesCount)!;
      expect(Math.abs(found.low - low)).toBeLessThan(0.005);
      expect(Math.abs(found.high - high)).toBeLessThan(0.01);
    },
  );
});

const values = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => 20 + Math.sin(i * 1.7) + (i % 5) / 10);
const found = (answer: ReturnType<typeof capability>): Capability => {
  if ('refused' in answer) throw new Error(answer.refused);
  return answer;
};

describe('of values', () => {
  test('under 30 there is none, however fine they look', () => {
    expect(capability(values(29), 15, 25)).toEqual({ refused: 'too-few' });
    expect(found(capability(values(30), 15, 25)).valuesCount).toBe(30);
  });

  test('the interval holds the index and narrows with more values', () => {
    const few = found(capability(values(30), 15, 25));
    const many = found(capability(values(300), 15, 25));
    for (const each of [few, many]) {
      expect(each.cpkBounds.low).toBeLessThan(each.cpk);
      expect(each.cpkBounds.high).toBeGreaterThan(each.cpk);
      expect(each.cpBounds!.low).toBeLessThan(each.cp!);
      expect(each.cpBounds!.high).toBeGreaterThan(each.cp!);
    }
    const width = (each: Capability): number => each.cpkBounds.high - each.cpkBounds.low;
    expect(width(many)).toBeLessThan(width(few) / 2);
  });

  test('with one limit there is no Cp', () => {
    const one = found(capability(values(40), null, 25));
    expect(one.cp).toBeNull();
    expect(one.cpBounds).toBeNull();
    expect(one.cpl).toBeNull();
    expect(one.cpk).toBe(one.cpu);
  });

  test('refused: no limits, crossed limits, no spread, no number', () => {
    expect(capability(values(40), null, null)).toEqual({ refused: 'no-limits' });
    expect(capability(values(40), 25, 15)).toEqual({ refused: 'no-limits' });
    expect(capability(values(40), Number.NaN, 25)).toEqual({ refused: 'no-limits' });
    expect(capability(Array(40).fill(20), 15, 25)).toEqual({ refused: 'no-spread' });
    expect(capability([...values(40), Number.NaN], 15, 25)).toEqual({ refused: 'not-finite' });
    expect(capability(values(10_002), 15, 25)).toEqual({ refused: 'too-many' });
    expect(capabilityRatios(16, 0, 8, 20)).toBeNull();
    expect(capabilityRatios(Number.NaN, 1, 8, 20)).toBeNull();
    expect(cpInterval(1, 1)).toBeNull();
    expect(cpInterval(-1, 30)).toBeNull();
    expect(cpkInterval(1, 1)).toBeNull();
    expect(cpkInterval(Number.NaN, 30)).toBeNull();
  });

  test('Cpk = (1 - k) Cp, never over Cp', () => {
    const numbers = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(numbers, fc.double({ min: 0.01, max: 50, noNaN: true }), (mean, sigma) => {
        const { cp, cpk, k } = capabilityRatios(mean, sigma, -20, 30)!;
        expect(cpk).toBeCloseTo((1 - k!) * cp!, 8);
        expect(cpk).toBeLessThanOrEqual(cp! + 1e-12);
      }),
    );
  });
});
