/** What an alarm is about now, and what is a state rather than a measure. */
import { describe, expect, test } from 'vitest';
import type { AlarmView, RuleView, SignalView } from '#agent/web/contract.ts';
import { judgedOf } from '../../dashboards/judge/judged.ts';
import { isState, stateSince, stateWord } from '../../dashboards/judge/states.ts';
import { alarm, now, rule, signal } from '../agent/web/fake-ports.ts';

const of = (id: string, value: number | null, over: Partial<SignalView> = {}): SignalView => ({
  ...signal(id),
  id,
  value,
  ...over,
});
const zones = (...values: (number | null)[]): Map<string, SignalView> =>
  new Map(values.map((value, i) => [`l/o/zone-${i}`, of(`l/o/zone-${i}`, value)]));
const ruleOf = (kind: string, signals: Iterable<string>): RuleView => ({
  ...rule,
  kind,
  signals: [...signals],
});
const apartAlarm: AlarmView = alarm({ evidence: { ...alarm().evidence, allowed: 10 } });
const judged = (kind: string, ...values: (number | null)[]) => {
  const signals = zones(...values);
  return judgedOf(apartAlarm, ruleOf(kind, signals.keys()), signals, now);
};

describe('what a rule judges now', () => {
  test.each([
    ['disagree', [80, 94, 85], 14],
    ['disagree', [80, null], null],
    ['stray', [80, 81, 95], 14.5],
    ['stray', [80, 83], 3],
    // The excess over the air, then the surface.
    ['self-heat', [12.8, 104], 12.8],
    ['self-heat', [-4, null], null],
  ] as const)('%s of %j is %s', (kind, values, value) => {
    const words = kind === 'self-heat' ? 'excess' : 'apart';
    expect(judged(kind, ...values)).toEqual({ kind: words, value, allowed: 10 });
  });
  test.each(['band', 'approach', 'deviation'])('%s judges the reading itself', (kind) => {
    expect(judged(kind, 80)).toEqual({ kind: 'reading' });
  });
  test.each(['rise', 'dry', 'exposure', 'duty', 'drift', 'a-kind-of-the-site'])(
    '%s judges what no signal shows',
    (kind) => {
      expect(judged(kind, 80, 81)).toEqual({ kind: 'other' });
    },
  );
  test('a rule that is gone is compared with nothing', () => {
    expect(judgedOf(alarm(), undefined, zones(1), now)).toEqual({ kind: 'other' });
  });
});

describe('a state', () => {
  const drawing = (value: number | null, over: Partial<SignalView> = {}): SignalView =>
    of('l/t/drawing', value, { unit: '1', ...over });
  const switching = new Map<string, RuleView>([
    ['l/t/x', { ...rule, gates: [{ signal: 'l/t/drawing', low: 1, high: 1, unit: '1' }] }],
  ]);
  const none = new Map<string, RuleView>();
  test('is what the agent calls one, or what rules are switched by', () => {
    expect(isState(drawing(1, { yes_no: true }), none)).toBe(true);
    expect(isState(drawing(null, { yes_no: true }), none)).toBe(true);
    expect(isState(drawing(1), switching)).toBe(true);
    expect(isState(drawing(1), none)).toBe(false);
    expect(isState(drawing(7), switching)).toBe(false);
  });
  test('is on or off, and what somebody looked for is there or not', () => {
    expect(stateWord(drawing(1), switching)).toBe('on');
    expect(stateWord(drawing(0), switching)).toBe('off');
    expect(stateWord(drawing(0, { kind: 'manual', yes_no: true }), none)).toBe('no');
    expect(stateWord(drawing(1, { kind: 'manual', yes_no: true }), none)).toBe('yes');
    expect(stateWord(drawing(7), switching)).toBeNull();
    expect(stateWord(drawing(null), switching)).toBeNull();
  });
  test.each([
    // Changed at 3.
    [[0, 0, 1, 1], 1, { at: 3, whole: false }],
    [[1, 1], 1, { at: 1, whole: true }],
    // In a step that holds both it was neither.
    [[0, 0.4, 1], 1, { at: 3, whole: false }],
    [[1, null, 1], 1, { at: 3, whole: false }],
    [[0, 0], 1, null],
    [[], 1, null],
  ] as const)('of %j it is %s since %j', (values, value, since) => {
    const points = values.map((each, i) => [i + 1, each] as const);
    expect(stateSince(points, value)).toEqual(since);
  });
});
