import { describe, expect, test } from 'vitest';
import { type ApproachMemory, type ApproachSettings, approach } from '#rules/kinds/approach.ts';
import { Alone, problemsOf } from './alone.ts';
import { normal } from './chance.ts';

const minute = 60_000;
const hour = 60 * minute;
const falling = { low: '2 Cel', within: '2 h' };

type Rule = Alone<ApproachSettings, ApproachMemory>;
const rule = (written: Record<string, unknown> = falling): Rule => new Alone(approach, written);

/** A reading a minute, of a value by the minute, until it answers abnormal or the minutes are over. */
function ramp(one: Rule, minutes: number, value: (i: number) => number, from = 0): number | null {
  for (let i = from; i < minutes; i += 1)
    if (one.see([i * minute, value(i)]).severity > 0) return i * minute;
  return null;
}

describe('settings', () => {
  test.each([
    [
      { within: '2 h' },
      {},
      [
        ': an approach is to one limit | give either low or high; a second rule watches the other side',
      ],
    ],
    [
      { low: '2 Cel', high: '9 Cel', within: '2 h' },
      {},
      [
        ': an approach is to one limit | give either low or high; a second rule watches the other side',
      ],
    ],
    [
      { low: '2 Cel', within: '0 s' },
      {},
      ['within: there would be no time to act | give the time people need to act, as "2 h"'],
    ],
    [
      { low: '2 Cel', within: '2 h', window: '0 s' },
      {},
      ['window: the window holds no reading | make it about as long as within'],
    ],
    [
      { low: '2 Cel', within: '2 h', window: '9 min' },
      { expectEveryMs: minute },
      ['window: the window holds fewer than 10 readings | make it at least 600 s'],
    ],
    [
      { low: '2 bar', within: 'soon' },
      {},
      [
        expect.stringMatching(/^low: limit in bar for a temperature/),
        ': an approach is to one limit | give either low or high; a second rule watches the other side',
        expect.stringMatching(/^within: "soon" is no duration/),
      ],
    ],
  ])('%j', (written, signal, problems) => {
    expect(problemsOf(approach, written, signal)).toEqual(problems);
  });
  test('the window is as long as within, where it is not given', () => {
    expect(rule().settings).toMatchObject({
      side: 'low',
      limit: 2,
      withinMs: 2 * hour,
      windowMs: 2 * hour,
    });
    expect(
      problemsOf(approach, { ...falling, window: '10 min' }, { expectEveryMs: minute }),
    ).toEqual([]);
  });
});

describe('a clean ramp', () => {
  // 20 Cel, falling 3 K an hour: at 2 Cel after 6 h, so foretold 2 h before.
  const value = (i: number) => 20 - i * 0.05;
  test('is foretold when the limit comes within the time to act, and the forecast is the crossing', () => {
    const one = rule();
    const at = ramp(one, 360, value)!;
    // Means close every 2 h / 32 = 3 min 45 s.
    expect(at).toBeGreaterThanOrEqual(4 * hour - minute);
    expect(at).toBeLessThan(4 * hour + 5 * minute);
    const { earliestMs, latestMs, slopePerH } = one.evidence;
    expect(slopePerH).toBeCloseTo(-3, 6);
    expect(Math.abs(earliestMs! - 6 * hour)).toBeLessThan(1_000);
    expect(Math.abs(latestMs! - 6 * hour)).toBeLessThan(1_000);
    expect(one.evidence).toMatchObject({ limit: 2, side: 'low', sinceMs: at });
    expect(one.sentence).toBe(
      '{$signal} at {$value}, falling {$slope} an hour; {$limit} in {$early} to {$late}.',
    );
  });
  test('rising is the same upside down', () => {
    const one = rule({ high: '38 Cel', within: '2 h' });
    const at = ramp(one, 360, (i) => 20 + i * 0.05)!;
    expect(Math.abs(at - 4 * hour)).toBeLessThan(5 * minute);
    expect(one.sentence).toBe(
      '{$signal} at {$value}, rising {$slope} an hour; {$limit} in {$early} to {$late}.',
    );
  });
  test('away from the limit, or too slow to matter, is no approach', () => {
    expect(ramp(rule(), 600, (i) => 20 + i * 0.05)).toBeNull();
    expect(ramp(rule(), 600, (i) => 20 - i * 0.001)).toBeNull();
  });
  test('beyond the limit it is over: that is for a band', () => {
    const one = rule();
    ramp(one, 360, value);
    for (let i = 241; i < 480; i += 1) one.see([i * minute, value(i)]);
    expect(one.severity).toBe(0);
    expect(ramp(rule(), 360, (i) => 1 - i * 0.05)).toBeNull();
  });
  test('once told, it is over only when the limit is 1.25 times as far off', () => {
    const one = rule();
    const raised = ramp(one, 360, value)! / minute;
    // From then on slower: what remains divided by the slope grows past 2 h, then past 2.5 h.
    const from = value(raised);
    let over: number | null = null;
    let widest = 0;
    for (let i = raised + 1; i < raised + 400 && over === null; i += 1) {
      const before = one.memory;
      const remainingMs = (before.value! - 2) / -(before.slopePerMs ?? -1);
      if (one.severity > 0) widest = Math.max(widest, remainingMs);
      one.see([i * minute, from - (i - raised) * 0.012]);
      if (one.severity === 0) over = i;
    }
    expect(over).not.toBeNull();
    expect(widest).toBeGreaterThan(2.2 * hour);
    expect(widest).toBeLessThan(2.7 * hour);
  });
});

describe('confidence', () => {
  /** Forecasts of a noisy ramp that crosses 2 Cel at 6 h, looked at after 3 h, 4 h or 5 h. */
  function contained(
    confidence: number,
    lookAt: number,
    runs: number,
  ): { held: number; made: number } {
    let held = 0;
    let made = 0;
    for (let seed = 1; seed <= runs; seed += 1) {
      const noise = normal(seed * 7919);
      const one = rule({ ...falling, confidence });
      for (let i = 0; i <= lookAt; i += 1) one.see([i * minute, 20 - i * 0.05 + 0.5 * noise()]);
      const { earliestMs, latestMs } = one.evidence;
      if (earliestMs === undefined || latestMs === undefined) continue;
      made += 1;
      if (earliestMs <= 6 * hour && latestMs >= 6 * hour) held += 1;
    }
    return { held, made };
  }
  test.each([
    [80, 240],
    [90, 180],
    [90, 240],
    [90, 300],
    [95, 240],
    [99, 240],
  ])(
    '%d per cent, looked at after %d min: the crossing lies in the forecast about so often',
    (confidence, lookAt) => {
      const { held, made } = contained(confidence, lookAt, 500);
      expect(made).toBe(500);
      // Four standard errors of a share of 500, and half of what is left for the approximation.
      const share = confidence / 100;
      const slack = 4 * Math.sqrt((share * (1 - share)) / 500) + 0.5 * (1 - share);
      expect(held / made, `${held} of ${made}`).toBeGreaterThan(share - slack);
      expect(held / made, `${held} of ${made}`).toBeLessThanOrEqual(Math.min(1, share + slack));
    },
    60_000,
  );
  test('noise without a trend is foretold no more often than the confidence allows', () => {
    let told = 0;
    for (let seed = 1; seed <= 500; seed += 1) {
      const noise = normal(seed * 104_729);
      const one = rule({ low: '2 Cel', within: '200 h', window: '2 h', confidence: 95 });
      for (let i = 0; i <= 130; i += 1) one.see([i * minute, 4 + 0.5 * noise()]);
      if (one.evidence.earliestMs !== undefined) told += 1;
    }
    // One side of 95 % is 2.5 %: 12.5 of 500, and four standard errors.
    expect(told).toBeLessThan(12.5 + 4 * Math.sqrt(12.5));
  }, 60_000);
  test('fewer than ten means give no forecast', () => {
    const one = rule();
    for (let i = 0; i < 9; i += 1) one.see([i * 4 * minute, 4 - i * 0.1]);
    expect(one.memory.means.length).toBe(9);
    expect(one.evidence.earliestMs).toBeUndefined();
    expect(one.see([36 * minute, 3.1]).evidence.earliestMs).toBeDefined();
  });
  test('a forecast is always a time, however flat the slope may be', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const noise = normal(seed);
      const one = rule({ ...falling, confidence: 80 });
      for (let i = 0; i <= 60; i += 1) one.see([i * 4 * minute, 20 - i * 1e-9 + 1e-7 * noise()]);
      const { earliestMs = 0, latestMs = 0 } = one.evidence;
      expect(Number.isSafeInteger(earliestMs) && Number.isSafeInteger(latestMs)).toBe(true);
      expect(latestMs).toBeGreaterThanOrEqual(earliestMs);
      expect(latestMs).toBeLessThanOrEqual(253_402_300_799_999);
    }
  });
});

test('one wild reading bends nothing', () => {
  const clean = rule();
  const wild = rule();
  for (let i = 0; i < 240; i += 1) {
    const value = 20 - i * 0.05;
    clean.see([i * minute, value]);
    wild.see([i * minute, i === 200 ? -5_000 : value]);
  }
  expect(wild.answers).toEqual(clean.answers);
  expect(wild.evidence.slopePerH).toBeCloseTo(clean.evidence.slopePerH!, 1);
});

test('a sparse signal makes a mean of each reading', () => {
  const one = rule({ low: '2 Cel', within: '6 h', window: '10 h' });
  for (let i = 0; i <= 10; i += 1) one.see([i * 30 * minute, 20 - i * 0.5]);
  expect(one.memory.means).toEqual(Array.from({ length: 11 }, (_, i) => 20 - i * 0.5));
  expect(one.evidence.slopePerH).toBeCloseTo(-1, 9);
});

test('a fast signal keeps no more than 32 means, and one value of each moment', () => {
  const one = rule({ low: '2 Cel', within: '1 min' });
  for (let i = 0; i < 5_000; i += 1) one.see([i * 100, 20], [i * 100, 20]);
  expect(one.memory.means.length).toBeLessThanOrEqual(32);
  expect(new Set(one.memory.times).size).toBe(one.memory.times.length);
});

test('what is older than the window is let go', () => {
  const one = rule({ low: '2 Cel', within: '1 h' });
  for (let i = 0; i < 40; i += 1) one.see([i * 2 * minute, 20 - i]);
  one.see([100 * hour, 20]);
  expect(one.memory.means).toEqual([20]);
});

describe('a gap', () => {
  test('begins the window anew: no slope is drawn across it', () => {
    const one = rule();
    for (let i = 0; i < 120; i += 1) one.see([i * minute, 20]);
    one.gap(120 * minute, 600 * minute);
    expect(one.memory).toMatchObject({
      times: [],
      means: [],
      openAt: null,
      closedAt: null,
      count: 0,
    });
    for (let i = 600; i < 720; i += 1) one.see([i * minute, 8]);
    expect(one.answers).toEqual([]);
  });
  test('leaves a standing alarm until ten means say otherwise', () => {
    const one = rule();
    ramp(one, 360, (i) => 20 - i * 0.05);
    one.gap(250 * minute, 300 * minute);
    one.see([301 * minute, 15]);
    expect(one.severity).toBe(1);
  });
});

test('delays hold it, on and off', () => {
  const one = rule({ ...falling, on_delay: '10 min' });
  const direct = ramp(rule(), 360, (i) => 20 - i * 0.05)!;
  expect(ramp(one, 360, (i) => 20 - i * 0.05)).toBe(direct + 10 * minute);
});

test('a clock set anew moves everything along; JSON loses nothing', () => {
  const whole = rule();
  const restored = rule();
  for (let i = 0; i < 300; i += 1) {
    whole.see([i * minute, 20 - i * 0.05]);
    restored.throughJson().see([i * minute, 20 - i * 0.05]);
    expect(restored.memory).toEqual(whole.memory);
  }
  expect(restored.answers).toEqual(whole.answers);
  const before = whole.evidence;
  whole.shift(-hour);
  expect(whole.evidence).toEqual({
    ...before,
    at: before.at! - hour,
    sinceMs: before.sinceMs! - hour,
    earliestMs: before.earliestMs! - hour,
    latestMs: before.latestMs! - hour,
  });
  whole.see([240 * minute, 5.0]);
  expect(whole.memory.times.every((time, i, all) => i === 0 || time > all[i - 1]!)).toBe(true);
});
