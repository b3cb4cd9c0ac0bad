import { describe, expect, test } from 'vitest';
import { disagree } from '#rules/kinds/disagree.ts';
import { Alone, problemsOf } from './alone.ts';

const s = 1_000;
const min = 60 * s;
/** More than 5 K after 10 min steady. */
const oven = { allowed: '5 K', steady: '2 K', steady_for: '10 min', on_delay: '60 s' };
const pair = [{}, {}];

/** A reading of each every 5 s. */
function run(
  rule: Alone<ReturnType<typeof disagree.compile>, ReturnType<typeof disagree.begin>>,
  fromMin: number,
  toMin: number,
  ...of: readonly ((m: number) => number)[]
) {
  for (let at = fromMin * min; at < toMin * min; at += 5 * s)
    for (const [input, value] of of.entries()) rule.see([at + input * 100, value(at / min), input]);
  return rule;
}
const flat = (value: number) => () => value;

describe('settings', () => {
  test.each([
    [
      { allowed: '0 K' },
      ['allowed: two sensors never read quite the same | give how far apart they may be, as "5 K"'],
    ],
    [
      { deadband: '5 K' },
      ['deadband: no difference would be well again | make it less than allowed, 5'],
    ],
    [
      { steady_for: '0 s' },
      [
        'steady_for: every process is steady for a moment | give the time the slower sensor needs to settle, as "10 min"',
      ],
    ],
  ])('%j', (changed, problems) => {
    expect(problemsOf(disagree, { ...oven, ...changed }, pair)).toEqual(problems);
  });
});

describe('steady', () => {
  test('apart for ten minutes steady and the delay: told, both named, the hotter one to go by', () => {
    const rule = run(new Alone(disagree, oven, pair), 0, 15, flat(80), flat(86));
    expect(rule.answers).toHaveLength(1);
    const at = Number(rule.answers[0]!.split(' ')[0]);
    expect(at).toBeGreaterThanOrEqual(11 * min);
    expect(at).toBeLessThan(11 * min + 40 * s);
    expect(rule.evidence).toMatchObject({
      input: 1,
      value: 86,
      other: 0,
      reference: 80,
      difference: 6,
      allowed: 5,
    });
    expect(rule.sentence).toMatch(/^\{\$which\} at \{\$value\} and \{\$other\} at \{\$reference\}/);
    expect(rule.sentence).toContain('Go by {$which}');
  });
  test('the colder one where cold is the hazard', () => {
    const rule = run(new Alone(disagree, { ...oven, go_by: 'low' }, pair), 0, 15, flat(3), flat(9));
    expect(rule.evidence).toMatchObject({ input: 0, value: 3, other: 1, reference: 9 });
  });
  test('at the limit they agree', () => {
    expect(run(new Alone(disagree, oven, pair), 0, 30, flat(80), flat(85)).answers).toEqual([]);
  });
  test('of three the two furthest apart are named, and no mean of them', () => {
    const rule = run(new Alone(disagree, oven, [{}, {}, {}]), 0, 15, flat(84), flat(80), flat(87));
    expect(rule.evidence).toMatchObject({ input: 2, other: 1, difference: 7 });
  });
});

describe('moving', () => {
  test('an oven that heats up, one sensor behind the other, is no disagreement', () => {
    const lag = (m: number) => 20 + 3 * Math.max(0, m - 3);
    const rule = run(new Alone(disagree, oven, pair), 0, 25, (m) => 20 + 3 * m, lag);
    expect(rule.answers).toEqual([]);
  });
  test('one that moves is enough', () => {
    const swings = (m: number) => 86 + (Math.floor(m / 4) % 2) * 3;
    expect(run(new Alone(disagree, oven, pair), 0, 60, flat(80), swings).answers).toEqual([]);
  });
  test('a move begins the settle time and the delay anew', () => {
    const knocked = (m: number) => (m >= 10.5 && m < 10.6 ? 83 : 80);
    const rule = run(new Alone(disagree, oven, pair), 0, 30, knocked, flat(86));
    const at = Number(rule.answers[0]!.split(' ')[0]) / min;
    expect(at).toBeGreaterThan(21.5);
    expect(at).toBeLessThan(22.5);
  });
  test('an answer stays while the process moves: nobody can tell', () => {
    const rule = run(new Alone(disagree, oven, pair), 0, 15, flat(80), flat(86));
    run(
      rule,
      15,
      20,
      (m) => 80 + 2 * (m - 15),
      (m) => 80 + 2 * (m - 15),
    );
    expect(rule.severity).toBe(1);
    run(rule, 20, 32, flat(90), flat(90.2));
    expect(rule.severity).toBe(0);
  });
  test('a deadband keeps it until they are well together', () => {
    const rule = new Alone(disagree, { ...oven, deadband: '2 K' }, pair);
    run(rule, 0, 15, flat(80), flat(86));
    run(rule, 15, 30, flat(80), flat(84));
    expect(rule.severity).toBe(1);
    run(rule, 30, 45, flat(80), flat(82.9));
    expect(rule.severity).toBe(0);
  });
});

describe('what nobody saw', () => {
  test('a gap begins the settle time anew', () => {
    const rule = run(new Alone(disagree, oven, pair), 0, 9, flat(80), flat(86));
    rule.gap(9 * min, 20 * min);
    expect(run(rule, 20, 29, flat(80), flat(86)).answers).toEqual([]);
    expect(run(rule, 29, 32, flat(80), flat(86)).severity).toBe(1);
  });
  test('without one of two nobody can tell; without one of three the others go on', () => {
    const two = run(new Alone(disagree, oven, pair), 0, 10.5, flat(80), flat(86)).without(1);
    for (let m = 11; m < 30; m += 1) two.see([m * min, 80, 0]);
    expect(two.answers).toEqual([]);
    const three = run(new Alone(disagree, oven, [{}, {}, {}]), 0, 5, flat(80), flat(86), flat(99));
    three.without(2);
    run(three, 5, 15, flat(80), flat(86));
    expect(three.evidence).toMatchObject({ input: 1, other: 0 });
    expect(three.severity).toBe(1);
  });
  test('sparse readings hold until the next one', () => {
    const rule = new Alone(disagree, oven, pair);
    for (let m = 0; m <= 200; m += 40) rule.see([m * min, 80, 0], [m * min + 1, 86, 1]);
    expect(rule.severity).toBe(1);
    rule.see([240 * min, 84, 0]);
    expect(rule.severity).toBe(1);
  });
  test('a clock set anew moves everything along; JSON loses nothing', () => {
    const whole = run(new Alone(disagree, oven, pair), 0, 8, flat(80), flat(86)).shift(-5 * min);
    const parts = run(new Alone(disagree, oven, pair), 0, 8, flat(80), flat(86)).shift(-5 * min);
    run(whole, 3, 10, flat(80), flat(86));
    for (let m = 3; m < 10; m += 1) run(parts.throughJson(), m, m + 1, flat(80), flat(86));
    expect(parts.answers).toEqual(whole.answers);
    expect(parts.memory).toEqual(whole.memory);
    expect(whole.answers).toHaveLength(1);
  });
});
