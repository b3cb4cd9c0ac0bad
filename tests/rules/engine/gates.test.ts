/** Gates: when a rule is judged at all, by what other signals say, and what holds where they cannot be read. */
import { describe, expect, test } from 'vitest';
import { endedBy } from '#rules/alarm/ended-by.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { type SmallPlan, type SmallRule, smallPlan } from './small-plan.ts';

const rule = (settings: Record<string, string>, more: Partial<SmallRule> = {}): SmallRule => ({
  ...{ kind: 'band', on: 't', settings },
  ...more,
});
const drive = (small: Partial<SmallPlan>): Drive =>
  new Drive(smallPlan({ signals: { t: {} }, ...small }));

describe('gates', () => {
  const gated = (hazardToPeople: boolean): Drive =>
    drive({
      signals: { t: {}, run: {} },
      rules: {
        r: rule(
          { high: '30 Cel', on_delay: '10 s' },
          { gate: { on: 'run', low: 1 }, hazardToPeople },
        ),
      },
    });

  test('closed: not judged; opening it begins the delay and judges what is known', () => {
    const d = gated(false).values('run', [0, 0]).values('t', [1_000, 31]).advance(60_000);
    expect(d.told).toEqual([]);
    d.values('run', [70_000, 1]).advance(100_000);
    expect(d.told).toEqual(['80000 r raised unacknowledged']);
    d.values('run', [110_000, 0]);
    expect(d.told[1]).toBe('110000 r returned returned-unacknowledged');
  });

  test('it says that it is not judged any more, and nothing where its value went back', () => {
    const reasons = (d: Drive): unknown[] =>
      d.effects.flatMap((each) =>
        each.kind === 'transition' && each.transition === 'returned' ? [each.reason ?? null] : [],
      );
    const raised = (): Drive => gated(false).values('run', [0, 1]).values('t', [1, 31]);
    expect(reasons(raised().advance(60_000).values('run', [70_000, 0]))).toEqual([endedBy.gate]);
    expect(reasons(raised().advance(60_000).values('t', [70_000, 29]))).toEqual([null]);
  });

  test('unreadable: open where people can be hurt, unjudged elsewhere', () => {
    expect(gated(true).values('t', [0, 31]).advance(60_000).told).toHaveLength(1);
    expect(gated(false).values('t', [0, 31]).advance(60_000).told).toEqual([]);
  });

  describe('several', () => {
    const both = (hazardToPeople: boolean): Drive =>
      drive({
        signals: { t: {}, run: {}, warm: {} },
        rules: {
          r: rule(
            { high: '30 Cel', on_delay: '10 s' },
            {
              gates: [
                { on: 'run', low: 1 },
                { on: 'warm', low: 5, high: 9 },
              ],
              hazardToPeople,
            },
          ),
        },
      });

    test('it is judged while all hold, and one that closes ends it', () => {
      const d = both(false).values('run', [0, 1]).values('warm', [1, 4]).values('t', [2, 31]);
      expect(d.advance(60_000).told).toEqual([]);
      d.values('warm', [60_001, 5]).advance(80_000);
      expect(d.told).toEqual(['70001 r raised unacknowledged']);
      d.values('warm', [80_001, 10]);
      expect(d.told[1]).toBe('80001 r returned returned-unacknowledged');
      d.values('warm', [90_000, 9]).values('run', [95_000, 0]).advance(120_000);
      expect(d.told).toHaveLength(2);
    });

    test('one that is closed closes it, though the other cannot be read', () => {
      for (const hazardToPeople of [true, false]) {
        const d = both(hazardToPeople).values('run', [0, 0]).values('t', [1, 31]);
        expect(d.advance(60_000).told).toEqual([]);
      }
    });

    test('one that cannot be read beside one that is open: open where people can be hurt', () => {
      const told = (people: boolean) =>
        both(people).values('run', [0, 1]).values('t', [1, 31]).advance(60_000).told;
      expect(told(true)).toEqual(['10001 r raised unacknowledged']);
      expect(told(false)).toEqual([]);
    });

    test('they survive a restart, and an alarm under them that is no longer judged stays', () => {
      const d = both(false).values('run', [0, 1]).values('warm', [0, 5]).values('t', [0, 31]);
      d.advance(5_000);
      const after = Drive.resume(d).advance(9_999);
      expect(after.told).toEqual([]);
      expect(after.advance(10_000).told).toEqual(['10000 r raised unacknowledged']);
      after.offer({ signal: 'warm', at: 20_000, quality: quality.sensorBad }).advance(60_000);
      expect(after.told).toHaveLength(1);
    });

    test('two on one signal are one look at it', () => {
      const twice = [
        { on: 'run', low: 1 },
        { on: 'run', high: 2 },
      ];
      const d = drive({
        signals: { t: {}, run: {} },
        rules: { r: rule({ high: '30 Cel' }, { gates: twice }) },
      });
      d.values('t', [0, 31]).values('run', [1, 3], [2, 2], [3, 0]);
      expect(d.told).toEqual(['2 r raised unacknowledged', '3 r returned returned-unacknowledged']);
    });
  });

  test('a memory saved when a rule could have but one gate goes on', () => {
    const d = gated(false);
    expect(JSON.parse(d.engine.save().rules.r!.key)[2]).toEqual(['run Cel', '1', 'Infinity']);
    expect(
      JSON.parse(drive({ rules: { r: rule({ high: '30 Cel' }) } }).engine.save().rules.r!.key)[2],
    ).toBeNull();
  });

  test('a gate on the rule’s own signal judges the sample that opens it once', () => {
    const d = drive({ rules: { r: rule({ low: '20 Cel' }, { gate: { on: 't', low: 5 } }) } });
    d.values('t', [0, 25], [1, 15], [2, 3], [3, 12]);
    expect(d.told).toEqual([
      '1 r raised unacknowledged',
      '2 r returned returned-unacknowledged',
      '3 r raised unacknowledged',
    ]);
  });
});
