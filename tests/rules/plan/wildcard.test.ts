/** Wildcard topics: one signal of every value, rules and derived signals along with them. */
import { describe, expect, test } from 'vitest';
import { type Binding, instanceOf } from '#rules/plan/binding.ts';
import { compiled } from './site.ts';

const bench = (more = '', rules = '{}'): string => `
l:
  bench:
    kind: custom
    signals:
      t: { topic: bench/+/t, names: [cell], payload: { kind: plain }, unit: Cel, expect_every: 5 s }
      rh: { topic: bench/+/rh, names: [cell], payload: { kind: plain }, unit: "%" }
      ${more}
    derived:
      dp: { kind: dew-point, inputs: { temperature: t, humidity: rh } }
    rules: ${rules}
`;
const warm =
  '{ kind: band, signal: t, high: 30 Cel, priority: low, consequence: It warms., actions: [Cool it.] GATE }';
const rule = (gate = '') => `{ warm: ${warm.replace('GATE', gate)} }`;

describe('a wildcard', () => {
  test('adds nothing before a value is heard', () => {
    const site = compiled(bench('', rule()));
    expect(site.problems).toEqual([]);
    expect(site.plan.signals).toEqual([]);
    expect(site.plan.rules).toEqual([]);
    expect(site.bindings.map((binding) => binding.signal)).toEqual([null, null]);
    expect(site.coverage.stations[0]?.unwatched[0]?.why).toBe(
      'Its sensors have not been heard yet.',
    );
  });
  test('adds a signal and its rules for each value', () => {
    const site = compiled(bench('', rule()), { 'l/bench/t': ['2', '1', '2'] });
    expect(site.plan.signals.map((signal) => signal.id)).toEqual(['l/bench/t-1', 'l/bench/t-2']);
    expect(site.plan.rules.map((each) => each.id)).toEqual([
      'l/bench/lost-t-1',
      'l/bench/lost-t-2',
      'l/bench/warm-1',
      'l/bench/warm-2',
    ]);
    const binding = site.bindings.find((each) => each.id === 'l/bench/t');
    expect([...(binding?.instances ?? [])]).toEqual([
      ['1', 0],
      ['2', 1],
    ]);
  });
  test('computes a derived signal where all its inputs were heard', () => {
    const site = compiled(bench(), { 'l/bench/t': ['1', '2'], 'l/bench/rh': ['2', '3'] });
    const made = site.plan.derived.map((derived) => ({
      signal: site.plan.signals[derived.signal]?.id,
      inputs: derived.inputs.map((i) => site.plan.signals[i]?.id),
    }));
    expect(made).toEqual([{ signal: 'l/bench/dp-2', inputs: ['l/bench/t-2', 'l/bench/rh-2'] }]);
  });
  test('is gated by the same value of another, and not armed until that is heard', () => {
    const site = compiled(bench('', rule(', gate: { signal: rh, low: 50 % }')), {
      'l/bench/t': ['1', '2'],
      'l/bench/rh': ['2'],
    });
    expect(site.problems).toEqual([]);
    const cards = site.rules.filter((card) => card.id.startsWith('l/bench/warm'));
    expect(cards.map((card) => [card.id, card.readiness, card.gates[0]?.signal])).toEqual([
      ['l/bench/warm-1', 'not-armed', 'l/bench/rh-1'],
      ['l/bench/warm-2', 'armed', 'l/bench/rh-2'],
    ]);
  });
  test('a value that is no name, or of the wrong shape, is left out', () => {
    const site = compiled(bench(), { 'l/bench/t': ['Cell 1', 'a--b', '', '../x', 'ok'] });
    expect(site.plan.signals.map((signal) => signal.id)).toEqual(['l/bench/t-ok']);
  });
  test('a signal that could be one of its values is refused at once', () => {
    const plain = 't-1: { topic: x, payload: { kind: plain }, unit: Cel }';
    const [problem] = compiled(bench(plain)).problems;
    expect(problem?.path).toEqual(['lines', 'l', 'bench', 'signals', 't-1']);
    expect(problem?.problem).toContain('could be a value of the wildcard "t"');
  });
  test('two that would make one id: the first stays, the second is told', () => {
    const twice = compiled(
      `
l:
  bench:
    kind: custom
    signals: { t: { topic: a/+, names: [c], payload: { kind: plain }, unit: Cel } }
    rules:
      warm: ${warm.replace('GATE', '')}
      warm-1: ${warm.replace('GATE', '').replace('30', '40')}
`,
      { 'l/bench/t': ['1', '1-1'] },
    );
    expect(twice.problems.map((p) => p.problem)).toEqual([
      'a value of a wildcard makes a second rule l/bench/warm-1-1',
    ]);
    expect(new Set(twice.plan.rules.map((r) => r.id)).size).toBe(twice.plan.rules.length);
  });
});

describe('the instance a topic names', () => {
  const two = compiled(`
l:
  b:
    kind: custom
    signals: { t: { topic: a/+/b/+, names: [cell, side], payload: { kind: plain }, unit: Cel } }
`).bindings[0] as Binding;
  test.each([
    ['a/1/b/left', '1--left'],
    ['a/c-1/b/2', 'c-1--2'],
    ['a/C1/b/left', null],
    ['a//b/left', null],
    ['a/1', null],
    ['a/x--y/b/z', null],
  ])('%s: %s', (topic, instance) => {
    expect(instanceOf(two, topic)).toBe(instance);
  });
});
