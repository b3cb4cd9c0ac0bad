/**
 * Told again, and told to nobody's phone. Re-alarm: ISA-18.2 and OPC 10000-9, B.1.5. Chatter: three
 * raises within a minute, the worked figures 0, 25, 59 s and 0, 30, 61 s (rolling minute).
 */
import { describe, expect, test } from 'vitest';
import type { Command } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { type SmallRule, smallPlan } from './small-plan.ts';

const min = 60_000;
const s = 1_000;

const planOf = (rule: Partial<SmallRule> = {}) =>
  smallPlan({
    signals: { t: {} },
    rules: { r: { kind: 'band', on: 't', settings: { high: '30 Cel' }, ...rule } },
  });
const respond = { respondMs: 10 * min };

const acknowledge = (judged: number): Command => ({
  kind: 'command',
  judged,
  verb: 'acknowledge',
  occurrence: 'r@0',
  by: 'p1',
});

const again = (drive: Drive): number[] =>
  drive.effects.flatMap((e) =>
    e.kind === 'transition' && e.transition === 'realarmed' ? [e.judged / min] : [],
  );

describe('nothing improves within the time to respond', () => {
  test('it is told again at its end, each time after twice as long, three times at most, taken on or not', () => {
    const drive = new Drive(planOf(respond), -1).values('t', [0, 31]);
    drive.input(acknowledge(min)).advance(100 * min);
    expect(again(drive)).toEqual([10, 30, 70]);
    expect(drive.engine.present.alarms.list[0]!.state).toBe('unacknowledged');
  });

  test('one that turned is looked at again half the time later', () => {
    const drive = new Drive(planOf(respond), -1);
    drive.values('t', [0, 31], [4 * min, 34], [9 * min, 33], [14 * min, 33]);
    expect(again(drive.advance(16 * min))).toEqual([15]);
  });

  test('one step of its resolution is no turn, two are', () => {
    const course = (last: number) =>
      new Drive(planOf(respond), -1)
        .values('t', [0, 31], [4 * min, 34], [9 * min, last])
        .advance(12 * min);
    expect(again(course(33.9))).toEqual([10]);
    expect(again(course(33.8))).toEqual([]);
  });

  test('what returns, is put aside or has no time to respond is not told again', () => {
    const back = new Drive(planOf(respond), -1).values('t', [0, 31], [9 * min, 29]);
    expect(again(back.advance(60 * min))).toEqual([]);
    const shelved = new Drive(planOf(respond), -1).values('t', [0, 31]);
    const shelve = {
      kind: 'command',
      judged: min,
      verb: 'shelve',
      occurrence: 'r',
      by: 'p1',
    } as const;
    shelved.input({ ...shelve, reason: 'probe out', untilMs: 60 * min }).advance(59 * min);
    expect(again(shelved)).toEqual([]);
    // Told anew at the shelf's end, the time runs from there.
    expect(again(shelved.advance(70 * min))).toEqual([70]);
    expect(again(new Drive(planOf(), -1).values('t', [0, 31]).advance(60 * min))).toEqual([]);
  });

  test('what gets worse is news, and counts anew', () => {
    const worse = planOf({ ...respond, settings: { high: '30 Cel', high_high: '40 Cel' } });
    const drive = new Drive(worse, -1).values('t', [0, 31], [25 * min, 45]).advance(100 * min);
    expect(again(drive)).toEqual([10, 25, 35, 55, 95]);
  });

  test('while nothing was observed nobody could act', () => {
    const drive = new Drive(planOf(respond), -1).values('t', [0, 31]).advance(2 * min);
    const [fromMs, toMs] = [2 * min, 32 * min];
    drive.input({ kind: 'gap', judged: fromMs + 1, fromMs, toMs }).advance(40 * min);
    expect(again(drive)).toEqual([40]);
  });

  test('each says which time it is; what got worse is no repeat', () => {
    const worse = planOf({ ...respond, settings: { high: '30 Cel', high_high: '40 Cel' } });
    const drive = new Drive(worse, -1).values('t', [0, 31], [15 * min, 45]).advance(30 * min);
    const times = drive.effects.flatMap((e) =>
      e.kind === 'transition' && e.transition === 'realarmed' ? [e.again] : [],
    );
    expect(times).toEqual([1, undefined, 1]);
  });

  test('a restart halfway changes nothing', () => {
    const drive = new Drive(planOf(respond), -1).values('t', [0, 31], [6 * min, 31]);
    expect(again(Drive.resume(drive).advance(10 * min))).toEqual([10]);
  });
});

/** Raised at each of these seconds and over a second later. */
const comes = (drive: Drive, ...seconds: number[]): Drive => {
  for (const at of seconds) drive.values('t', [at * s, 31], [(at + 1) * s, 29]);
  return drive;
};
const marked = (drive: Drive): string[] =>
  drive.effects.flatMap((e) =>
    e.kind === 'transition' && e.nuisance !== undefined
      ? [`${e.judged / s} ${e.transition} ${e.nuisance}`]
      : [],
  );
const raises = (drive: Drive): string[] => marked(drive).filter((each) => each.includes('raised'));

describe('chattering', () => {
  test('0, 25 and 59 s is; 0, 30 and 61 s is not, nor is exactly a minute', () => {
    expect(raises(comes(new Drive(planOf(), -1), 0, 25, 59))).toEqual(['59 raised chattering']);
    expect(raises(comes(new Drive(planOf(), -1), 0, 30, 61))).toEqual([]);
    expect(raises(comes(new Drive(planOf(), -1), 0, 30, 60))).toEqual([]);
  });

  test('never what can hurt people, never what is highly managed', () => {
    const people = planOf({ hazardToPeople: true });
    const managed = planOf({
      class: { latching: false, selfAcknowledging: false, highlyManaged: true },
    });
    for (const plan of [people, managed])
      expect(marked(comes(new Drive(plan, -1), 0, 10, 20, 30))).toEqual([]);
  });

  test('one that then stands for a minute is told after all', () => {
    const drive = comes(new Drive(planOf(), -1), 0, 20).values('t', [40 * s, 31]);
    expect(raises(drive)).toEqual(['40 raised chattering']);
    expect(again(drive.advance(99 * s))).toEqual([]);
    expect(again(drive.advance(100 * s))).toEqual([100 / 60]);
    expect(drive.effects.at(-1)).not.toHaveProperty('nuisance');
  });
});

describe('fleeting', () => {
  test('three in a row gone within a minute, unanswered: the fourth is taken for another', () => {
    const drive = comes(new Drive(planOf(), -1), 0, 100, 200, 300);
    expect(marked(drive)).toEqual([
      '1 returned fleeting',
      '101 returned fleeting',
      '201 returned fleeting',
      '300 raised fleeting',
      '301 returned fleeting',
    ]);
  });

  test('a minute is not fleeting and ends the row; nor is one that somebody answered', () => {
    const slow = comes(new Drive(planOf(), -1), 0, 100);
    slow.values('t', [200 * s, 31], [260 * s, 29]);
    expect(raises(comes(slow, 300, 400))).toEqual([]);
    const answered = new Drive(planOf(), -1).values('t', [0, 31]).input(acknowledge(500));
    expect(marked(answered.advance(500).values('t', [s, 29]))).toEqual([]);
  });

  test('three within a day; a day later they are forgotten', () => {
    const day = 86_400;
    expect(raises(comes(new Drive(planOf(), -1), 0, 100, 200, day))).toEqual([
      `${day} raised fleeting`,
    ]);
    expect(raises(comes(new Drive(planOf(), -1), 0, 100, 200, day + 1))).toEqual([]);
  });
});

describe('while a worse one about the same signal and side stands', () => {
  const both = (worse: Partial<SmallRule> = {}) =>
    smallPlan({
      signals: { t: {} },
      rules: {
        early: { kind: 'band', on: 't', settings: { high: '92 Cel', deadband: '3 K' }, ...respond },
        limit: {
          kind: 'band',
          on: 't',
          settings: { high: '112 Cel', deadband: '3 K' },
          priority: ['high', 'high'],
          ...worse,
        },
      },
    });
  const early = (drive: Drive): number[] =>
    drive.effects.flatMap((e) =>
      e.kind === 'transition' && e.rule === 'early' && e.transition === 'realarmed'
        ? [e.judged / min]
        : [],
    );

  test('the milder is not told again; once the worse is over it is, in its time', () => {
    const drive = new Drive(both(), -1).values('t', [0, 95], [5 * min, 120]);
    expect(early(drive.advance(60 * min))).toEqual([]);
    drive.values('t', [61 * min, 100]).advance(90 * min);
    const [first] = early(drive);
    expect(first).toBeGreaterThan(61);
    expect(first).toBeLessThanOrEqual(71);
  });
  test('it is the same after a restart', () => {
    const drive = Drive.resume(new Drive(both(), -1).values('t', [0, 95], [5 * min, 120]));
    expect(early(drive.advance(60 * min))).toEqual([]);
  });
  test('a worse one that is shelved, or on the other side, speaks for nobody', () => {
    const drive = new Drive(both(), -1).values('t', [0, 95], [5 * min, 120]);
    drive.input({
      kind: 'command',
      judged: 6 * min,
      verb: 'shelve',
      occurrence: 'limit',
      by: 'p1',
      reason: 'probe out',
      untilMs: 40 * min,
    });
    expect(early(drive.advance(12 * min))).toEqual([10]);
    const low = new Drive(both({ settings: { low: '130 Cel' } }), -1).values('t', [0, 95]);
    expect(early(low.advance(12 * min))).toEqual([10]);
  });
  test('of equal priority the limit that lies further out is the worse', () => {
    const equal = new Drive(both({ priority: ['medium', 'medium'] }), -1);
    expect(early(equal.values('t', [0, 95], [5 * min, 120]).advance(60 * min))).toEqual([]);
  });
});
