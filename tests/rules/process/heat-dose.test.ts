import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  msAtOrAbove,
  type Profile,
  peakC,
  profileMsAtOrAbove,
  soundProfile,
  steepestRampKPerMin,
  sumOfHeats,
  unreachableFromMs,
} from '#rules/process/heat-dose.ts';

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

const minute = 60_000;
/** Up from 20 to 80 °C in six minutes, ten there, down to 40 in four. */
const bake: Profile = {
  timesMs: [0, 6 * minute, 16 * minute, 20 * minute],
  metalC: [20, 80, 80, 40],
};

describe('one run', () => {
  test('time above, peak and ramp', () => {
    // Above 65: the last 1.5 min of the climb, the ten, and 1.5 min of the descent.
    expect(profileMsAtOrAbove(bake, 65)).toBeCloseTo(13 * minute, 6);
    expect(peakC(bake)).toBe(80);
    expect(steepestRampKPerMin(bake)).toBeCloseTo(10, 9);
  });
  test('a spike of one second is a peak, and no ramp to speak of', () => {
    const timesMs = Array.from({ length: 301 }, (_, i) => 1_000 * i);
    const metalC = timesMs.map((t) => (t === 150_000 ? 90 : 60));
    expect(peakC({ timesMs, metalC })).toBe(90);
    expect(steepestRampKPerMin({ timesMs, metalC })!).toBeCloseTo(0.5, 9);
  });
  test('ramps of readings that come unevenly are those of the straight lines', () => {
    const timesMs = [0, 1_000, 59_000, 61_000, 150_000, 240_000];
    const metalC = timesMs.map((t) => 20 + t / 6_000);
    expect(steepestRampKPerMin({ timesMs, metalC })!).toBeCloseTo(10, 9);
  });
  test('one that only cools has a negative ramp; under two minutes none', () => {
    expect(steepestRampKPerMin({ timesMs: [0, 3 * minute], metalC: [80, 50] })!).toBeCloseTo(
      -10,
      9,
    );
    expect(steepestRampKPerMin({ timesMs: [0, 119_999], metalC: [20, 50] })).toBeNull();
  });
  test.each([
    ['no reading', { timesMs: [], metalC: [] }],
    ['a time without a reading', { timesMs: [0, 1], metalC: [20] }],
    ['time that stands', { timesMs: [0, 0], metalC: [20, 21] }],
    ['a reading that is none', { timesMs: [0, 1], metalC: [20, Number.NaN] }],
  ])('%s is no profile', (_, profile) => {
    expect(soundProfile(profile)).toBe(false);
    expect(peakC(profile)).toBeNull();
    expect(profileMsAtOrAbove(profile, 65)).toBeNull();
    expect(steepestRampKPerMin(profile)).toBeNull();
  });
  test('time above never grows with the limit', () => {
    const c = fc.integer({ min: 0, max: 200 });
    fc.assert(
      fc.property(fc.array(c, { minLength: 2, maxLength: 20 }), c, (metalC, limit) => {
        const profile = { timesMs: metalC.map((_, i) => 10_000 * i), metalC };
        expect(profileMsAtOrAbove(profile, limit + 1)!).toBeLessThanOrEqual(
          profileMsAtOrAbove(profile, limit)! + 1e-6,
        );
      }),
    );
  });
});

describe('every heat before rubber', () => {
  test('adds up', () =>
    expect(
      sumOfHeats([
        { name: 'primer', minutes: 3 },
        { name: 'drying', minutes: 12 },
        { name: 'mould', minutes: 0.5 },
      ]),
    ).toEqual({ minutes: 15.5, unseen: [] }));
  test('one that nobody saw makes it a least figure', () =>
    expect(
      sumOfHeats([
        { name: 'preheat', minutes: null },
        { name: 'drying', minutes: 12 },
      ]),
    ).toEqual({ minutes: 12, unseen: ['preheat'] }));
  test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('nor %d minutes', (minutes) =>
    expect(sumOfHeats([{ name: 'odd', minutes }])).toBeNull(),
  );
});

describe('a minimum that can no longer be met', () => {
  // Ten minutes asked, four had, exit at 20: from minute 14 on, unless hot by then.
  test('from the exit less what is missing', () =>
    expect(unreachableFromMs(0, 20 * minute, 10 * minute, 4 * minute, 0)).toBe(14 * minute));
  test('sooner by the time the part still needs', () =>
    expect(unreachableFromMs(0, 20 * minute, 10 * minute, 4 * minute, 3 * minute)).toBe(
      11 * minute,
    ));
  test('now, where it never becomes hot', () =>
    expect(unreachableFromMs(5, 20 * minute, 10 * minute, 0, 'never')).toBe(5));
  test('met is met', () =>
    expect(unreachableFromMs(0, 20 * minute, 10 * minute, 10 * minute, 'never')).toBe('met'));
  test.each([
    [0, Number.NaN, 1, 0, 0],
    [0, 1, -1, 0, 0],
    [0, 1, 1, Number.NaN, 0],
    [0, 1, 1, 0, -1],
  ] as const)('nothing of %d %d %d %d %d', (now, exit, required, reached, toReach) =>
    expect(unreachableFromMs(now, exit, required, reached, toReach)).toBeNull(),
  );
});
