import { describe, expect, test } from 'vitest';
import { drift } from '#rules/kinds/drift.ts';
import { montgomeryData, nistCusum, nistEwma } from '../../vectors/control-charts.ts';
import { Alone, problemsOf } from './alone.ts';
import { normal } from './chance.ts';

const min = 60_000;
const hour = 60 * min;
const exact = { digits: null };

/** Each value a point, a minute apart; at which of them, counted from 1, it was told. */
function toldAt(written: Readonly<Record<string, unknown>>, values: readonly number[]): number[] {
  const rule = new Alone(drift, written, exact);
  return values.flatMap((value, i) => (rule.see([i * min, value]).severity > 0 ? [i + 1] : []));
}

describe('settings', () => {
  const known = { reference: '20 Cel', sigma: '0.5 K' };
  test.each([
    [
      { reference: '20 Cel' },
      [
        'learn_for: nobody says where the value usually is | give reference and sigma, or learn_for',
      ],
    ],
    [
      { ...known, learn_for: '1 d' },
      [
        'learn_for: there is nothing left to learn | take it out, or leave reference or sigma to be learned',
      ],
    ],
    [
      { learn_for: '1 h', every: '5 min' },
      ['learn_for: it would learn from fewer than 20 points | make it at least 6000 s'],
    ],
    [
      { ...known, sigma: '0 K' },
      [
        'sigma: without any scatter every reading would be far away | give the standard deviation of its points, or leave it to be learned',
      ],
    ],
    [
      { ...known, weight: 1.2 },
      ['weight: 1.2 is no share of an average | write more than 0 and at most 1, as 0.2'],
    ],
    [
      { ...known, interval: 4 },
      ['interval: by ewma it means nothing | take it out, or write by: cusum'],
    ],
    [
      { ...known, by: 'cusum', width: 3 },
      ['width: by cusum it means nothing | take it out, or write by: ewma'],
    ],
    [
      { ...known, width: 0 },
      ['width: every point would be a drift | make it more than nothing, as 3'],
    ],
    [{ ...known, by: 'cusum', allowance: 0 }, []],
  ])('%j', (written, problems) => {
    expect(problemsOf(drift, written)).toEqual(problems);
  });
});

describe('published charts', () => {
  test(`by average: no signal (${nistEwma.source})`, () => {
    const { target, sigma, weight, widthSigmas } = nistEwma;
    const written = { reference: `${target} Cel`, sigma: `${sigma} K`, weight, width: widthSigmas };
    expect(toldAt(written, nistEwma.values)).toEqual([]);
  });
  test(`by average: signals at 29 and 30, past the steady limits too (${montgomeryData.source})`, () => {
    const written = { reference: '10 Cel', sigma: '1 K', weight: 0.1, width: 2.7 };
    expect(toldAt(written, montgomeryData.values)).toEqual([29, 30]);
  });
  test(`by sum: signals from 14 on (${nistCusum.source})`, () => {
    const sigma = 0.635;
    const written = {
      by: 'cusum',
      reference: `${nistCusum.target} Cel`,
      sigma: `${sigma} K`,
      allowance: nistCusum.allowance / sigma,
      interval: nistCusum.decisionInterval / sigma,
    };
    expect(toldAt(written, nistCusum.values)).toEqual(nistCusum.signals);
  });
  test(`by sum: signals at 29 and 30 (${montgomeryData.source})`, () => {
    const written = { by: 'cusum', reference: '10 Cel', sigma: '1 K' };
    expect(toldAt(written, montgomeryData.values)).toEqual([29, 30]);
  });
});

describe('a baseline given', () => {
  const given = { reference: '20 Cel', sigma: '0.5 K' };
  test('says what it drifted to, how far, which way and since when', () => {
    const rule = new Alone(drift, given);
    for (let i = 0; i < 20; i += 1) rule.see([i * min, i % 2 === 0 ? 20.2 : 19.8]);
    rule.see([20 * min, 19.7]);
    for (let i = 21; i < 60; i += 1) rule.see([i * min, 21]);
    expect(rule.answers).toHaveLength(1);
    expect(rule.evidence).toMatchObject({ reference: 20, side: 'high', sinceMs: 21 * min });
    expect(rule.evidence.value).toBeCloseTo(21, 2);
    expect(rule.evidence.difference).toBeCloseTo(1, 2);
    // 3 sigma sqrt(0.2 / 1.8).
    expect(rule.evidence.allowed).toBeCloseTo(0.5, 9);
    expect(rule.sentence).toBe(
      '{$signal} has drifted to {$value}, {$difference} above its usual {$reference}, since {$clock}.',
    );
  });
  test('a departure that does not matter is not told, however sure it is', () => {
    for (const by of ['ewma', 'cusum']) {
      const rule = new Alone(drift, { ...given, by, least: '1.5 K' });
      for (let i = 0; i < 200; i += 1) rule.see([i * min, 21]);
      expect(rule.answers).toEqual([]);
      for (let i = 200; i < 300; i += 1) rule.see([i * min, 22]);
      expect(rule.answers).toHaveLength(1);
    }
  });
  test('only to the side asked for', () => {
    for (const by of ['ewma', 'cusum']) {
      const rule = new Alone(drift, { ...given, by, side: 'low' });
      for (let i = 0; i < 100; i += 1) rule.see([i * min, 25]);
      expect(rule.answers).toEqual([]);
      for (let i = 100; i < 200; i += 1) rule.see([i * min, 15]);
      expect(rule.severity).toBe(1);
      expect(rule.sentence).toContain('below its usual');
    }
  });
  test('a sum comes back within twice its interval, however long it was out', () => {
    const rule = new Alone(drift, { ...given, by: 'cusum' });
    for (let i = 0; i < 1_000; i += 1) rule.see([i * min, 30]);
    // From 10 down to 5 by 0.5 a point.
    for (let i = 1_000; i < 1_011; i += 1) rule.see([i * min, 20]);
    expect(rule.severity).toBe(0);
  });
  test('a point is the mean of its time', () => {
    const rule = new Alone(drift, { ...given, every: '10 min' });
    for (let i = 0; i < 300; i += 1) rule.see([i * min, i % 2 === 0 ? 10 : 30]);
    expect(rule.memory.level).toBe(20);
    expect(rule.answers).toEqual([]);
  });
});

describe('a baseline learned', () => {
  const learned = { learn_for: '10 h', every: '10 min' };
  /** A reading each minute about a level. */
  function run(rule: Alone<ReturnType<typeof drift.compile>, ReturnType<typeof drift.begin>>) {
    const noise = normal(12);
    return (fromMin: number, toMin: number, level: number) => {
      for (let i = fromMin; i < toMin; i += 1) rule.see([i * min, level + noise()]);
    };
  }
  test('from the first readings, then held against it', () => {
    const rule = new Alone(drift, { ...learned, least: '0.3 K' });
    const live = run(rule);
    live(0, 590, 50);
    expect(rule.evidence.reference).toBeUndefined();
    live(590, 630, 50);
    expect(rule.evidence.reference).toBeCloseTo(50, 0);
    // The mean of ten readings of scatter 1.
    expect(rule.memory.baseline.sigma).toBeGreaterThan(0.2);
    expect(rule.memory.baseline.sigma).toBeLessThan(0.42);
    live(630, 2_000, 50);
    expect(rule.answers).toEqual([]);
    live(2_000, 2_300, 51);
    expect(rule.severity).toBe(1);
  });
  test('as sure as it is: limits are wider by what a learned reference may be off', () => {
    const rule = new Alone(drift, learned);
    run(rule)(0, 660, 50);
    const { sigma, learned: points } = rule.memory.baseline;
    const known = 3 * sigma! * Math.sqrt(0.2 / 1.8);
    expect(rule.evidence.allowed).toBeCloseTo(Math.hypot(known, (3 * sigma!) / points ** 0.5), 9);
  });
  test('what was not seen is not learned from', () => {
    const rule = new Alone(drift, learned);
    run(rule)(0, 300, 50);
    rule.gap(300 * min, 3_000 * min);
    run(rule)(3_000, 3_200, 50);
    expect(rule.evidence.reference).toBeUndefined();
    run(rule)(3_200, 3_330, 50);
    expect(rule.evidence.reference).toBeDefined();
  });
  test('a scatter smaller than the resolution shows is not believed', () => {
    const still = new Alone(drift, learned);
    for (let i = 0; i < 700; i += 1) still.see([i * min, 50]);
    expect(still.memory.baseline.sigma).toBeCloseTo(0.1 / Math.sqrt(12), 12);
    for (let i = 700; i < 1_000; i += 1) still.see([i * min, 50 + (i % 2) * 0.1]);
    expect(still.answers.map((answer) => answer.split(' ')[1])).toEqual(['1']);
    const unresolved = new Alone(drift, learned, exact);
    for (let i = 0; i < 700; i += 1) unresolved.see([i * min, 50]);
    expect(unresolved.evidence.reference).toBeUndefined();
  });
  test('one of the two may be given', () => {
    const rule = new Alone(drift, { ...learned, sigma: '2 K' });
    run(rule)(0, 700, 50);
    expect(rule.memory.baseline.sigma).toBe(2);
    const other = new Alone(drift, { ...learned, reference: '48 Cel' });
    run(other)(0, 900, 50);
    expect(other.severity).toBe(1);
  });
  test('a gate that closes ends the answer, and what was learned stays', () => {
    const rule = new Alone(drift, learned);
    const live = run(rule);
    live(0, 700, 50);
    live(700, 1_100, 52);
    expect(rule.severity).toBe(1);
    const { baseline } = structuredClone(rule.memory);
    rule.timer.at = null;
    drift.reopen!(rule.settings, rule.memory, 5_000 * min, rule.timer);
    expect(rule.memory.answer.answer).toBe(false);
    rule.severity = 0;
    live(5_000, 5_020, 52);
    expect(rule.severity).toBe(1);
    expect(rule.memory.baseline).toMatchObject({
      reference: baseline.reference,
      sigma: baseline.sigma,
    });
  });
  test('the reading that was there before a gate opened is no second point', () => {
    const rule = new Alone(drift, { reference: '20 Cel', sigma: '0.5 K' }).see([0, 21]);
    const { level } = rule.memory;
    drift.reopen!(rule.settings, rule.memory, hour, rule.timer);
    const reading = { at: 0, judged: hour, value: 21, quality: 0, input: 0 };
    drift.sample(rule.settings, rule.memory, reading, rule.timer);
    expect(rule.memory.level).toBe(level);
  });
});

test('noise without a drift is told no more often than its limits allow', () => {
  // Steady limits of 3 sigma, weight 0.2: once in about 560 points (J. M. Lucas and M. S. Saccucci,
  // Technometrics 32 (1990), from memory). 200 runs of 50 points: 18 expected; four standard errors.
  let told = 0;
  for (let seed = 1; seed <= 200; seed += 1) {
    const noise = normal(seed * 7_919);
    const rule = new Alone(drift, { reference: '20 Cel', sigma: '1 K' }, exact);
    for (let i = 0; i < 50; i += 1) rule.see([i * min, 20 + noise()]);
    if (rule.answers.length > 0) told += 1;
  }
  expect(told).toBeGreaterThan(3);
  expect(told).toBeLessThan(18 + 4 * Math.sqrt(18));
});
