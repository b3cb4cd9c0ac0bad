import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SelfHeatMemory, type SelfHeatSettings, selfHeat } from '#rules/kinds/self-heat.ts';
import { Alone, problemsOf } from './alone.ts';

const min = 60_000;
const five = { excess: '5 K', rise: '1 K', rise_per: '1 min', on_delay: '60 s' };
const excessSignal = { unit: 'K', digits: 1 };

/** A reading every 10 s: surface and air by the minute. */
function run(surface: (m: number) => number, air: (m: number) => number, forMin: number) {
  const rule = new Alone(selfHeat, five, excessSignal);
  return more(rule, 0, surface, air, forMin);
}
function more(
  rule: Alone<SelfHeatSettings, SelfHeatMemory>,
  fromMin: number,
  surface: (m: number) => number,
  air: (m: number) => number,
  forMin: number,
) {
  for (let s = fromMin * 60; s < (fromMin + forMin) * 60; s += 10) {
    const [there, beside] = [surface(s / 60), air(s / 60)];
    rule.see([s * 1_000, there, 1], [s * 1_000 + 100, there - beside, 0]);
  }
  return rule;
}

describe('settings', () => {
  test.each(['excess', 'rise', 'rise_per', 'window'] as const)('%s of nothing', (key) => {
    const nothing = key === 'rise_per' || key === 'window' ? '0 s' : '0 K';
    expect(problemsOf(selfHeat, { ...five, [key]: nothing }, excessSignal)).toEqual([
      `${key}: every surface would count as heating itself | make it more than nothing`,
    ]);
  });
});

describe('it is told', () => {
  test('where the surface rises by itself beside steady air, at any temperature', () => {
    for (const base of [40, 70, 95]) {
      const rule = run(
        (m) => base + 1.5 * m,
        () => base,
        15,
      );
      expect(rule.answers).toHaveLength(1);
      const at = Number(rule.answers[0]!.split(' ')[0]) / min;
      // 5 K at 3.3 min, means of half a minute, a minute of delay.
      expect(at).toBeGreaterThan(4.3);
      expect(at).toBeLessThan(6.5);
    }
  });
  test('where the heat is off and the air cools, and the surface rises all the same', () => {
    const rule = run(
      (m) => 80 + 1.2 * m,
      (m) => 78 - 2 * m,
      12,
    );
    expect(rule.answers).toHaveLength(1);
    expect(rule.evidence.slopePerH).toBeCloseTo(72, 3);
    expect(rule.evidence).toMatchObject({ limit: 5, side: 'high', input: 1 });
  });
});

describe('it is not told', () => {
  test('of an oven that heats up, air first', () => {
    const air = (m: number) => 20 + 3 * m;
    expect(run((m) => 20 + 3 * Math.max(0, m - 2), air, 20).answers).toEqual([]);
  });
  test('of a shroud that leads its air while both rise', () => {
    expect(
      run(
        (m) => 30 + 3 * m,
        (m) => 20 + 3 * m,
        20,
      ).answers,
    ).toEqual([]);
  });
  test('of a surface that stays hot while the air cools', () => {
    expect(
      run(
        (m) => 90 - 0.2 * m,
        (m) => 90 - 3 * m,
        20,
      ).answers,
    ).toEqual([]);
  });
  test('of a steady lead', () => {
    expect(
      run(
        () => 99,
        () => 90,
        30,
      ).answers,
    ).toEqual([]);
  });
  test('of a rise slower than a kelvin a minute', () => {
    expect(
      run(
        (m) => 80 + 0.9 * m,
        () => 78,
        30,
      ).answers,
    ).toEqual([]);
  });
  test('of one wild reading', () => {
    const wild = (m: number) => (m === 6 ? 140 : 84);
    expect(run(wild, () => 80, 20).answers).toEqual([]);
  });
});

test('a rise that slows is no all-clear; a lead that goes is the end of it', () => {
  const rule = run(
    (m) => 80 + 1.5 * m,
    () => 80,
    8,
  );
  expect(rule.answers).toHaveLength(1);
  more(
    rule,
    8,
    () => 92,
    () => 80,
    10,
  );
  expect(rule.answers).toHaveLength(1);
  more(
    rule,
    18,
    () => 84.9,
    () => 80,
    5,
  );
  expect(rule.answers).toHaveLength(2);
  expect(rule.severity).toBe(0);
});

test('a lead that goes while the delay runs ends it, between two means as well', () => {
  const rule = run(
    (m) => 80 + 1.5 * m,
    () => 80,
    4,
  );
  expect(rule.answers).toEqual([]);
  // The delay of 60 s runs; the next mean closes within half a minute.
  expect(rule.memory.answer.changeAt).not.toBeNull();
  rule.see([235_000, 4.9, 0]);
  expect(rule.memory.answer.changeAt).toBeNull();
  expect(rule.until(20 * min).answers).toEqual([]);
});

test('a slope across a gap is not invented', () => {
  const rule = run(
    () => 80,
    () => 80,
    3,
  );
  rule.gap(3 * min, 30 * min);
  more(
    rule,
    30,
    () => 95,
    () => 80,
    20,
  );
  expect(rule.answers).toEqual([]);
});

test('what it was told by is known after a gap too', () => {
  const rule = run(
    (m) => 80 + 1.5 * m,
    () => 80,
    10,
  );
  expect(rule.answers).toHaveLength(1);
  const { slopePerH } = rule.evidence;
  expect(slopePerH).toBeCloseTo(90, 0);
  rule.gap(10 * min, 40 * min);
  more(
    rule,
    40,
    () => 95,
    () => 80,
    1,
  );
  expect(rule.evidence.slopePerH).toBe(slopePerH);
});

test('JSON loses nothing, and a new clock moves along', () => {
  const rule = run(
    (m) => 80 + 1.5 * m,
    () => 80,
    5,
  );
  const other = run(
    (m) => 80 + 1.5 * m,
    () => 80,
    5,
  ).throughJson();
  more(
    rule,
    5,
    (m) => 80 + 1.5 * m,
    () => 80,
    5,
  );
  more(
    other,
    5,
    (m) => 80 + 1.5 * m,
    () => 80,
    5,
  );
  expect(other.answers).toEqual(rule.answers);
  expect(other.evidence).toEqual(rule.evidence);
  const at = rule.evidence.at!;
  expect(rule.shift(1_000).evidence.at).toBe(at + 1_000);
});

test('a memory of version 1 goes on: told when it would have been', () => {
  // As version 1 left it after 200 s of 1.5 K a minute beside steady air.
  const first = {
    answer: { answer: false, changeAt: null, sinceMs: null },
    times: [30_000, 60_000, 90_000, 120_000, 150_000, 180_000],
    excesses: [0.25, 1, 1.75, 2.5, 3.25, 4],
    surfaces: [80.375, 81.25, 82, 82.75, 83.5, 84.25],
    openAt: 180_000,
    excess: { sum: 14.25, count: 3 },
    surface: { sum: 169.75, count: 2 },
    slopePerMs: 0.000025,
    value: 5,
    at: 200_100,
  };
  const rule = new Alone(selfHeat, five, excessSignal);
  rule.memory = selfHeat.migrate!(JSON.parse(JSON.stringify(first)), 1)!;
  more(
    rule,
    210 / 60,
    (m) => 80 + 1.5 * m,
    () => 80,
    7,
  );
  expect(rule.answers).toHaveLength(1);
  // Version 1 told it at 270 s; means of half a minute may close half a minute apart.
  expect(Math.abs(Number(rule.answers[0]!.split(' ')[0]) - 270_000)).toBeLessThanOrEqual(30_000);
  expect(rule.evidence.slopePerH).toBeCloseTo(90, 0);
  expect(selfHeat.migrate!(first, 3)).toBeNull();
});

test('never while the lead is below its limit, whatever the readings', () => {
  const k = fc.integer({ min: 0, max: 49 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(fc.array(fc.tuple(k, fc.integer({ min: 20, max: 150 }))), (steps) => {
      const rule = new Alone(selfHeat, five, excessSignal);
      for (const [i, [excess, surface]] of steps.entries())
        rule.see([i * 20_000, surface, 1], [i * 20_000 + 100, excess, 0]);
      expect(rule.answers).toEqual([]);
    }),
  );
});
