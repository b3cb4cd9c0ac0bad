import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { sampleFlag } from '#rules/signal/sample.ts';
import { Drive } from './engine/drive.ts';
import { type SmallPlan, type SmallRule, smallPlan } from './engine/small-plan.ts';

const min = 60_000;
const rule = (
  settings: Record<string, string | boolean>,
  more: Partial<SmallRule> = {},
): SmallRule => ({
  kind: 'band',
  on: 't',
  settings,
  ...more,
});
const drive = (small: Partial<SmallPlan>): Drive =>
  new Drive(smallPlan({ signals: { t: {} }, ...small }));

describe('time', () => {
  test('a raise is stamped with its deadline, not with when somebody looked', () => {
    const rules = { r: rule({ high: '30 Cel', on_delay: '10 min' }) };
    const late = drive({ rules })
      .values('t', [1_000, 31])
      .advance(60 * min);
    expect(late.told).toEqual([`${1_000 + 10 * min} r raised unacknowledged`]);
    expect(late.effects[0]).toMatchObject({ occurrence: `r@${1_000 + 10 * min}`, at: 601_000 });
  });

  test('a deadline at t goes before the samples of t', () => {
    const rules = { r: rule({ high: '30 Cel', on_delay: '10 s' }) };
    const told = drive({ rules }).values('t', [0, 31], [10_000, 20]).told;
    expect(told).toEqual([
      '10000 r raised unacknowledged',
      '10000 r returned returned-unacknowledged',
    ]);
  });

  test('the value came back a moment before the delay was over: nothing is told', () => {
    const rules = { r: rule({ high: '30 Cel', on_delay: '10 s' }) };
    expect(drive({ rules }).values('t', [0, 31], [9_999, 30], [60_000, 30]).told).toEqual([]);
  });

  test('held samples are judged in the order of their own times', () => {
    const rules = { r: rule({ high: '30 Cel' }) };
    const d = drive({ rules });
    d.offer({ signal: 't', at: 2_000, judged: 4_000, value: 20 });
    d.offer({ signal: 't', at: 1_000, judged: 3_000, value: 31 });
    expect(d.advance(5_000).told).toEqual([
      '3000 r raised unacknowledged',
      '4000 r returned returned-unacknowledged',
    ]);
  });

  test('late and conflicting samples are never judged', () => {
    const d = drive({ rules: { r: rule({ high: '30 Cel' }) } });
    d.offer({ signal: 't', at: 1, value: 99, flags: sampleFlag.late });
    d.offer({ signal: 't', at: 2, value: 99, flags: sampleFlag.conflict });
    expect(d.advance(10).told).toEqual([]);
  });
});

describe('what cannot be judged', () => {
  const small = {
    signals: { t: { expectEveryMs: 10_000 } },
    rules: {
      r: rule({ high: '30 Cel', on_delay: '60 s' }),
      lost: { kind: 'lost', on: 't', settings: {} } satisfies SmallRule,
    },
  };

  test('a delay stands still while the reading is bad, and goes on with the next good one', () => {
    const d = new Drive(smallPlan({ ...small, rules: { r: small.rules.r } }));
    d.values('t', [0, 31], [20_000, 31]);
    d.offer({ signal: 't', at: 30_000, quality: quality.undecodable }).advance(30_000);
    d.advance(200_000);
    expect(d.told).toEqual([]);
    d.values('t', [230_000, 31]).advance(259_999);
    expect(d.told).toEqual([]);
    d.advance(260_000);
    expect(d.told).toEqual(['260000 r raised unacknowledged']);
  });

  test('silence raises the sensor’s alarm, freezes the rule, and the standing alarm stays', () => {
    const d = new Drive(smallPlan(small));
    for (let at = 0; at <= 70_000; at += 10_000) d.values('t', [at, 31]);
    d.advance(300_000);
    expect(d.told).toEqual(['60000 r raised unacknowledged', '100000 lost raised unacknowledged']);
    expect(d.effects).toContainEqual({
      kind: 'judgeable',
      judged: 100_000,
      rule: 'r',
      occurrence: 'r@60000',
      judgeable: false,
    });
    d.values('t', [310_000, 20]);
    expect(d.told.slice(2)).toEqual([
      '310000 lost returned returned-unacknowledged',
      '310000 r returned returned-unacknowledged',
    ]);
  });

  test('nonsense is told apart from silence', () => {
    const d = new Drive(smallPlan(small)).values('t', [0, 20]);
    d.offer({ signal: 't', at: 10_000, quality: quality.outOfRange }).advance(60_000);
    expect(d.effects[0]).toMatchObject({
      rule: 'lost',
      evidence: { cause: quality.outOfRange, sinceMs: 0 },
    });
  });

  test('a retained message without a time is judged, and is no sign of life', () => {
    const d = new Drive(smallPlan(small));
    d.offer({ signal: 't', at: 25_000, value: 20, flags: sampleFlag.noSignOfLife }).advance(31_000);
    expect(d.told).toEqual(['30000 lost raised unacknowledged']);
  });
});

describe('derived signals', () => {
  const small: SmallPlan = {
    signals: { a: {}, b: {}, sum: {} },
    derived: { sum: { inputs: ['a', 'b'], compute: (x) => (x[0]! > 100 ? null : x[0]! + x[1]!) } },
    rules: { r: { kind: 'band', on: 'sum', settings: { high: '10 Cel' } } },
  };

  test('inputs that change together are taken together, at most once a second', () => {
    const d = new Drive(smallPlan(small));
    d.offer({ signal: 'a', at: 0, value: 1 }, { signal: 'b', at: 20, value: 2 });
    d.offer({ signal: 'a', at: 200, value: 3 }, { signal: 'a', at: 500, value: 20 });
    expect(d.advance(5_000).derived).toEqual(['sum 20 100 3 0', 'sum 500 1100 22 0']);
    expect(d.told).toEqual(['1100 r raised unacknowledged']);
  });

  test('bad because of its input, said once, without an alarm of its own', () => {
    const d = new Drive(smallPlan(small)).values('a', [0, 1]).values('b', [0, 20]).advance(2_000);
    d.offer({ signal: 'a', at: 3_000, quality: quality.sensorBad }).advance(3_000);
    d.values('b', [5_000, 21], [7_000, 22]).advance(9_000);
    expect(d.derived).toEqual(['sum 0 100 21 0', `sum 0 3100 0 ${quality.badInput}`]);
    expect(d.told).toEqual(['100 r raised unacknowledged']);
    expect(d.effects.at(-1)).toMatchObject({ kind: 'judgeable', judgeable: false });
  });

  test('outside the formula is bad, and never a number', () => {
    const d = new Drive(smallPlan(small)).values('b', [0, 1]).values('a', [0, 101]).advance(1_000);
    expect(d.derived).toEqual([`sum 0 100 0 ${quality.outsideFormula}`]);
  });
});

describe('gaps and clocks', () => {
  test('downtime moves every deadline and makes no burst of lost sensors', () => {
    const d = drive({
      signals: { t: { expectEveryMs: 10_000 } },
      rules: {
        r: rule({ high: '30 Cel', on_delay: '10 s' }),
        lost: { kind: 'lost', on: 't', settings: {} },
      },
    });
    d.values('t', [0, 31]).advance(4_000);
    d.input({ kind: 'gap', judged: 4_001, fromMs: 4_000, toMs: 1_000_000 }).advance(1_000_000);
    expect(d.told).toEqual([]);
    d.advance(1_005_999);
    expect(d.told).toEqual([]);
    d.advance(1_030_000);
    expect(d.told).toEqual([
      '1006000 r raised unacknowledged',
      '1030000 lost raised unacknowledged',
    ]);
  });

  test('a clock set back moves what is running along with it', () => {
    const d = drive({ rules: { r: rule({ high: '30 Cel', on_delay: '10 s' }) } });
    d.values('t', [1_000_000, 31]).advance(1_004_000);
    d.input({ kind: 'rebase', judged: 1_004_000, deltaMs: -1_000_000 }).advance(1_004_000);
    expect(d.engine.now).toBe(4_000);
    d.advance(9_999);
    expect(d.told).toEqual([]);
    expect(d.advance(10_000).told).toEqual(['10000 r raised unacknowledged']);
  });
});

describe('commands', () => {
  const raised = (): Drive =>
    drive({ rules: { r: rule({ high: '30 Cel' }) } }).values('t', [100, 31]);
  const command = { kind: 'command', judged: 200, by: 'p1' } as const;

  test('acknowledge: the current occurrence, and only it', () => {
    const d = raised()
      .input({ ...command, verb: 'acknowledge', occurrence: 'r@100' })
      .advance(200);
    expect(d.told[1]).toBe('200 r acknowledged acknowledged');
    d.values('t', [300, 20], [400, 31]);
    d.input({ ...command, judged: 500, verb: 'acknowledge', occurrence: 'r@100' }).advance(500);
    expect(d.effects.at(-1)).toMatchObject({
      kind: 'refused',
      why: expect.stringContaining('current'),
    });
  });

  test('a shelf ends by itself, and what is still abnormal is told again', () => {
    const d = raised();
    d.input({
      ...command,
      verb: 'shelve',
      occurrence: 'r@100',
      reason: 'probe out',
      untilMs: 5_000,
    });
    d.advance(10_000);
    expect(d.told.slice(1)).toEqual(['200 r shelved shelved', '5000 r unshelved unacknowledged']);
    expect(d.effects.at(-1)).toMatchObject({ by: 'clock', occurrence: 'r@100' });
  });

  test('a shelf without end or reason is refused', () => {
    const d = raised();
    d.input({ ...command, verb: 'shelve', occurrence: 'r@100', reason: 'x' });
    d.input({ ...command, verb: 'shelve', occurrence: 'r@100', untilMs: 9_000 });
    expect(
      d
        .advance(200)
        .effects.slice(1)
        .map((e) => e.kind),
    ).toEqual(['refused', 'refused']);
  });

  test('a re-raise takes the place of an occurrence nobody saw, and says so', () => {
    const d = raised().values('t', [200, 20], [300, 31]);
    expect(d.effects.at(-1)).toMatchObject({ occurrence: 'r@300', supersedes: 'r@100' });
  });

  test('past the second limit it is told again, with the higher priority', () => {
    const d = drive({ rules: { r: rule({ high: '30 Cel', high_high: '40 Cel' }) } });
    d.values('t', [0, 31]);
    d.input({ ...command, judged: 10, verb: 'acknowledge', occurrence: 'r@0' }).advance(10);
    d.values('t', [20, 41]);
    expect(d.effects.at(-1)).toMatchObject({
      transition: 'realarmed',
      to: 'unacknowledged',
      occurrence: 'r@0',
      severity: 2,
      priority: 'high',
    });
  });
});

describe('holds', () => {
  const hold = { what: 'container', item: 'drum-3' } as const;
  const cold = (): Drive =>
    drive({
      rules: {
        r: rule(
          { low: '1 Cel', inclusive: true },
          { hold, class: { latching: true, selfAcknowledging: false, highlyManaged: false } },
        ),
      },
    }).values('t', [0, 5], [10, 1]);

  test('set by the rule, outlives the alarm, lifted only with a disposition', () => {
    const d = cold().values('t', [20, 9]);
    for (const [judged, verb] of [
      [30, 'acknowledge'],
      [40, 'reset'],
    ] as const)
      d.input({ kind: 'command', judged, verb, occurrence: 'r@10', by: 'p1' }).advance(judged);
    expect(d.told.at(-1)).toBe('40 r reset normal');
    expect(d.engine.present.alarms.holds.list()).toMatchObject([
      { id: 'hold-1', ...hold, by: 'rule:r' },
    ]);
    d.input({
      kind: 'command',
      judged: 50,
      verb: 'lift',
      hold: 'hold-1',
      disposition: 'scrapped',
      by: 'q1',
      reason: 'lumps',
    }).advance(50);
    expect(d.engine.present.alarms.holds.list()).toEqual([]);
    expect(d.effects.at(-1)).toMatchObject({
      kind: 'hold',
      action: 'lifted',
      disposition: 'scrapped',
    });
  });

  test('a second raise of the same rule sets no second hold', () => {
    const d = cold().values('t', [20, 9], [30, 1]);
    expect(d.effects.filter((e) => e.kind === 'hold')).toHaveLength(1);
  });
});

describe('another plan', () => {
  const signals = { t: {} };
  const before = smallPlan({
    signals,
    revision: 'one',
    rules: { keep: rule({ high: '30 Cel', on_delay: '10 s' }), gone: rule({ high: '25 Cel' }) },
  });
  const after = smallPlan({
    signals: { a: {}, t: {} },
    revision: 'two',
    rules: { keep: rule({ high: '30 Cel', on_delay: '10 s' }), fresh: rule({ high: '20 Cel' }) },
  });

  test('an unchanged rule keeps its running delay, a removed one closes, a new one judges at once', () => {
    const d = new Drive(before, 0, [after]).values('t', [0, 31]);
    d.input({ kind: 'site', judged: 5_000, revision: 'two' }).advance(20_000);
    expect(d.told).toEqual([
      '0 gone raised unacknowledged',
      '5000 gone removed normal',
      '5000 fresh raised unacknowledged',
      '10000 keep raised unacknowledged',
    ]);
  });

  test('held samples follow their signal to its new place', () => {
    const d = new Drive(before, 0, [after]);
    d.offer({ signal: 't', at: 9_000, judged: 11_000, value: 31 });
    d.input({ kind: 'site', judged: 10_000, revision: 'two' }).advance(30_000);
    expect(d.told).toEqual([
      '11000 fresh raised unacknowledged',
      '21000 keep raised unacknowledged',
    ]);
  });
});
