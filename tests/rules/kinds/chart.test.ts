import { describe, expect, test } from 'vitest';
import { chart } from '#rules/kinds/chart.ts';
import { patternSentence, runRuleSets } from '#rules/kinds/run-words.ts';
import type { RunRuleSet } from '#rules/process/run-rules.ts';
import { Alone, problemsOf } from './alone.ts';
import { uniform } from './chance.ts';

const hour = 3_600_000;
/** Film on a panel. */
const film = { reference: '20 Cel', sigma: '2 K' };

/** One reading a shift. */
const seen = (written: Readonly<Record<string, unknown>>, sigmas: readonly number[]) => {
  const rule = new Alone(chart, written, { digits: null });
  for (const [i, score] of sigmas.entries()) rule.see([i * 8 * hour, 20 + 2 * score]);
  return rule;
};
const eightHigh = [0.5, 0.4, 0.6, 0.5, 0.3, 0.5, 0.4, 0.6];

describe('patterns', () => {
  test.each([
    ['western-electric', [0, 3.1], '1 of 1 beyond 3 sigma'],
    ['western-electric', [2.1, 0, 2.1], '2 of 3 beyond 2 sigma'],
    ['western-electric', [-1.1, -1.2, 0, -1.1, -1.3], '4 of 5 beyond 1 sigma'],
    ['western-electric', eightHigh, '8 on one side'],
    ['nelson', [...eightHigh, 0.5], '9 on one side'],
    ['nelson', [-0.9, -0.5, -0.1, 0.2, 0.5, 0.9], '6 trending'],
    ['nelson', [0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1], '14 alternating'],
    [
      'nelson',
      [0.5, -0.5, -0.2, 0.5, 0.4, -0.5, 0.5, 0.2, -0.5, 0.5, -0.4, -0.5, 0.5, 0.1, -0.5],
      '15 within 1 sigma',
    ],
    ['nelson', [1.5, -1.5, -1.4, 1.5, 1.4, -1.4, 1.5, -1.5], '8 outside 1 sigma'],
  ])('%s: %j', (run_rules, sigmas, pattern) => {
    const rule = seen({ ...film, run_rules }, sigmas);
    expect(rule.severity).toBe(1);
    expect(rule.evidence.pattern).toBe(pattern);
    expect(rule.answers).toEqual([`${(sigmas.length - 1) * 8 * hour} 1`]);
    expect(rule.sentence).not.toBe(patternSentence('of another version'));
  });
  test('every pattern of every set has a sentence of its own, plainly said', () => {
    for (const set of Object.values(runRuleSets) as readonly RunRuleSet[])
      expect(set.rules.length).toBeGreaterThan(3);
    expect(patternSentence('8 on one side')).toBe(
      '{$signal}: the last 8 readings all lie on one side of {$reference}, the last at {$value}.',
    );
    expect(patternSentence(undefined)).toBe(
      '{$signal} at {$value} does not scatter about {$reference} as it usually does.',
    );
  });
  test('nine on one side are needed by nelson, and eight do for western-electric', () => {
    expect(seen({ ...film, run_rules: 'nelson' }, eightHigh).severity).toBe(0);
    expect(seen(film, eightHigh).severity).toBe(1);
  });
  test('over at the first reading that completes none', () => {
    const rule = seen(film, [...eightHigh, -0.2]);
    expect(rule.answers).toEqual([`${7 * 8 * hour} 1`, `${8 * 8 * hour} 0`]);
  });
});

test('evidence: the last reading, the baseline, how far', () => {
  expect(seen(film, [0, -3.5]).evidence).toEqual({
    at: 8 * hour,
    value: 13,
    reference: 20,
    difference: 7,
    side: 'low',
    pattern: '1 of 1 beyond 3 sigma',
    sinceMs: 8 * hour,
  });
});

describe('a run goes on', () => {
  test('over a gap, as hand readings are far apart anyway', () => {
    const rule = seen(film, eightHigh.slice(0, 7));
    rule.gap(60 * hour, 90 * hour).see([91 * hour, 21]);
    expect(rule.evidence.pattern).toBe('8 on one side');
  });
  test('over a gate that closed, whose last reading is no second one', () => {
    const rule = seen(film, eightHigh.slice(0, 7));
    chart.reopen!(rule.settings, rule.memory, 60 * hour, rule.timer);
    const before = { at: 48 * hour, judged: 60 * hour, value: 21, quality: 0, input: 0 };
    expect(chart.sample(rule.settings, rule.memory, before, rule.timer)).toBe(0);
    expect(rule.see([64 * hour, 21]).severity).toBe(1);
  });
});

describe('a baseline learned from readings', () => {
  test('twenty at least, over the time asked for', () => {
    const next = uniform(5);
    const rule = new Alone(chart, { learn_for: '7 d' });
    for (let i = 0; i < 25; i += 1) rule.see([i * 8 * hour, 20 + next()]);
    expect(rule.memory.baseline.reference).toBeCloseTo(20.5, 0);
    expect(rule.see([25 * 8 * hour, 30]).evidence.pattern).toBe('1 of 1 beyond 3 sigma');
  });
  test('settings are checked as those of a drift', () => {
    expect(problemsOf(chart, {})).toEqual([
      'learn_for: nobody says where the value usually is | give reference and sigma, or learn_for',
    ]);
  });
});

test('JSON loses nothing, and no more readings are kept than the longest pattern needs', () => {
  const next = uniform(9);
  const whole = new Alone(chart, { ...film, run_rules: 'nelson' });
  const parts = new Alone(chart, { ...film, run_rules: 'nelson' });
  for (let i = 0; i < 300; i += 1) {
    const value = 20 + 8 * (next() - 0.5);
    whole.see([i * hour, value]);
    parts.throughJson().see([i * hour, value]);
  }
  expect(parts.answers).toEqual(whole.answers);
  expect(whole.answers.length).toBeGreaterThan(4);
  expect(whole.memory.scores).toHaveLength(15);
});
