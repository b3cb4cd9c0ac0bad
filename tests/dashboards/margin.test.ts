/** What is nearest to a limit, of what is judged now: a tank that draws nothing is not below its speed. */
import { describe, expect, test } from 'vitest';
import type { RuleView, SignalView } from '#agent/web/contract.ts';
import { judgedNow } from '../../dashboards/judge/gates.ts';
import { anyJudged, judgingRules, worstMargin } from '../../dashboards/judge/margin.ts';
import { isPastLimit } from '../../dashboards/judge/reading.ts';
import { alarm, now, rule, signal } from '../agent/web/fake-ports.ts';

const of = (id: string, value: number, over: Partial<SignalView> = {}): SignalView => ({
  ...signal(id),
  id,
  unit: 'm/s',
  value,
  judged_at: [],
  ...over,
});
const withdrawal = of('l/t/withdrawal', 0, {
  judged_at: [
    { rule: 'l/t/speed', side: 'low', limit: 0.015 },
    { rule: 'l/t/speed', side: 'high', limit: 0.018 },
  ],
});
const temperature = of('l/t/temperature', 24, {
  unit: 'Cel',
  judged_at: [{ rule: 'l/t/warm', side: 'high', limit: 26 }],
});
const drawing = (value: number | null): SignalView => ({
  ...of('l/t/drawing', 0, { unit: '1' }),
  value,
});
const rules = new Map<string, RuleView>([
  [
    'l/t/speed',
    {
      ...rule,
      id: 'l/t/speed',
      gates: [{ signal: 'l/t/drawing', low: 1, high: 1, unit: '1' }],
    },
  ],
  ['l/t/warm', { ...rule, id: 'l/t/warm', gates: [] }],
]);
const known = (value: number | null) => ({
  rules,
  signals: new Map([['l/t/drawing', drawing(value)]]),
});

describe('a rule with a gate', () => {
  test.each([
    [0, 0],
    [1, 2],
    // A gate that cannot be read hides nothing.
    [null, 2],
  ] as const)('its gate reads %s: %d limits', (value, limits) => {
    expect(judgedNow(withdrawal, known(value)).judged_at).toHaveLength(limits);
  });
  test('what is not judged is nearest to no limit', () => {
    const worst = (value: number) =>
      worstMargin([withdrawal, temperature], known(value), now)?.signal.id;
    expect(worst(0)).toBe('l/t/temperature');
    expect(worst(1)).toBe('l/t/withdrawal');
  });
});

describe('a rule nobody is told of, or that waits for what was never heard', () => {
  const idle = (...rules: string[]) => ({ ...known(1), idle: new Set(rules) });
  test('has no margin, and a station with none but such is not judged', () => {
    const all = [withdrawal, temperature];
    expect(worstMargin(all, idle('l/t/speed'), now)?.signal.id).toBe('l/t/temperature');
    expect(worstMargin(all, idle('l/t/speed', 'l/t/warm'), now)).toBeNull();
    expect(anyJudged(all, idle('l/t/speed'))).toBe(true);
    expect(anyJudged(all, idle('l/t/speed', 'l/t/warm'))).toBe(false);
  });
  test('a limit on a reading that cannot be used is judged all the same', () => {
    const silent = { ...temperature, value: null, at: null, quality: null };
    expect(worstMargin([silent], known(1), now)).toBeNull();
    expect(anyJudged([silent], known(1))).toBe(true);
  });
});

describe('a station whose rules have no distance to a limit', () => {
  const conveyor = of('l/o/conveyor', 1, { unit: '1' });
  const stopped: RuleView = { ...rule, id: 'l/o/conveyor-stopped', kind: 'present', gates: [] };
  const all = { ...stopped, signals: [conveyor.id] };
  const line = (...more: RuleView[]) => ({
    rules: new Map(more.map((each) => [each.id, each])),
    signals: new Map([[conveyor.id, conveyor]]),
  });
  test('is judged all the same, and by which is known', () => {
    expect(anyJudged([conveyor], line(all))).toBe(false);
    expect(judgingRules([conveyor], line(all))).toEqual(['l/o/conveyor-stopped']);
  });
  test('but not by one that is idle, whose gate is closed, or that watches for silence', () => {
    const gate = { signal: conveyor.id, low: 0, high: 0, unit: '1' };
    const others = line({ ...all, gates: [gate] }, { ...all, id: 'l/o/silent', kind: 'lost' });
    expect(judgingRules([conveyor], others)).toEqual([]);
    const idle = { ...line(all), idle: new Set([all.id]) };
    expect(judgingRules([conveyor], idle)).toEqual([]);
  });
});

describe('an alarm that went back', () => {
  const at = (
    value: number | null,
    side: 'low' | 'high' = 'high',
    unit = 'Cel',
    judged_at: SignalView['judged_at'] = [],
  ) => {
    const base = alarm();
    const over = { ...base, evidence: { ...base.evidence, limit: 112, side, unit: 'Cel' } };
    return isPastLimit(over, { ...of('l/t/floor', 0, { unit }), value, judged_at }, now);
  };
  test('is past its limit again where the reading says so', () => {
    expect([111.9, 112, 120].map((value) => at(value))).toEqual([false, false, true]);
    expect([111.9, 112, 120].map((value) => at(value, 'low'))).toEqual([true, false, false]);
  });
  test('at the limit itself where its rule has it so, as a state that must be 1 is not', () => {
    const judged = { rule: alarm().rule, side: 'high', limit: 112 } as const;
    expect(at(112, 'high', 'Cel', [{ ...judged, at_limit: true }])).toBe(true);
    expect(at(112, 'high', 'Cel', [{ ...judged, rule: 'l/t/other', at_limit: true }])).toBe(false);
    expect(at(112, 'high', 'Cel', [judged])).toBe(false);
  });
  test('nobody can tell without a usable reading in the same unit', () => {
    expect([at(null), at(120, 'high', 'K')]).toEqual([false, false]);
  });
});
