/**
 * Alarms put aside: on a shelf, by design, out of service (ISA-18.2 / IEC 62682, from memory; one-shot
 * and the rule for a restart: OPC 10000-9 v1.04, 5.8.10 and 5.8.17.1).
 */
import { describe, expect, test } from 'vitest';
import type { AlarmVerb, Command } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { type SmallRule, smallPlan } from './small-plan.ts';

const min = 60_000;
const h = 60 * min;

const planOf = (rule: Partial<SmallRule> = {}, revision = 'test') =>
  smallPlan({
    revision,
    signals: { t: {}, line: {} },
    marks: { 'l/s/begun': null, 'l/s/done': null },
    rules: {
      r: {
        kind: 'band',
        on: 't',
        settings: { high: '30 Cel', high_high: '40 Cel' },
        priority: ['low', 'high'],
        ...rule,
      },
    },
  });

const say = (verb: AlarmVerb, judged: number, more: Partial<Command> = {}): Command =>
  ({ kind: 'command', judged, verb, occurrence: 'r', by: 'p1', ...more }) as Command;
const shelve = (judged: number, forMs: number, more: Partial<Command> = {}) =>
  say('shelve', judged, { reason: 'probe out', untilMs: judged + forMs, ...more });
const mark = (judged: number, name: string): Command => ({
  kind: 'command',
  judged,
  verb: 'mark',
  station: 'l/s',
  mark: name,
  by: 'p1',
});

const why = (drive: Drive): string | undefined =>
  drive.effects.flatMap((e) => (e.kind === 'refused' ? [e.why] : [])).at(-1);

describe('a shelf, by priority: the longest there is, and one millisecond more', () => {
  test.each([
    ['high', 60 * min, 45],
    ['low', 24 * h, 31],
  ] as const)('%s', (priority, most, value) => {
    const at = (forMs: number) =>
      new Drive(planOf()).values('t', [100, value]).input(shelve(200, forMs)).advance(200);
    expect(at(most).told.at(-1)).toBe('200 r shelved shelved');
    expect(why(at(most + 1))).toBe(
      `an alarm of ${priority} priority may be shelved for at most ${most / min} min`,
    );
  });

  test('medium, and what a site sets instead', () => {
    const medium = planOf({ priority: ['medium', 'high'] });
    const ask = (plan: typeof medium, forMs: number) =>
      new Drive(plan).values('t', [100, 31]).input(shelve(200, forMs)).advance(200);
    expect(why(ask(medium, 8 * h))).toBeUndefined();
    expect(why(ask(medium, 8 * h + 1))).toContain('at most 480 min');
    const short = { ...medium, shelving: { high: min, medium: 5 * min, low: h } };
    expect(why(ask(short, 5 * min))).toBeUndefined();
    expect(why(ask(short, 6 * min))).toContain('at most 5 min');
  });

  test('what gets worse on its shelf is not hidden for as long as it was', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]).input(shelve(200, 10 * h));
    drive.advance(200).values('t', [1_000, 45]);
    expect(drive.effects.at(-1)).toMatchObject({ transition: 'realarmed', untilMs: 1_000 + h });
    expect(drive.advance(1_000 + h).told.at(-1)).toBe(`${1_000 + h} r unshelved unacknowledged`);
  });
});

describe('a shelf for this once', () => {
  test('ends as the alarm returns, and what nobody had seen is still to be seen', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    drive
      .input(shelve(200, h, { oneShot: true }))
      .advance(200)
      .values('t', [300, 29]);
    expect(drive.told.slice(1)).toEqual([
      '200 r shelved shelved',
      '300 r returned shelved',
      '300 r unshelved returned-unacknowledged',
    ]);
  });

  test('ends in normal where somebody had seen it; the next one is told', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    drive.input(say('acknowledge', 150, { occurrence: 'r@100' })).advance(150);
    drive.input(shelve(200, h, { oneShot: true })).advance(200);
    drive.values('t', [300, 29], [400, 31]);
    expect(drive.told.slice(-3)).toEqual([
      '300 r returned shelved',
      '300 r unshelved normal',
      '400 r raised unacknowledged',
    ]);
  });

  test('ends at its end all the same, and needs an alarm that stands', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    drive.input(shelve(200, min, { oneShot: true })).advance(200 + min);
    expect(drive.told.at(-1)).toBe(`${200 + min} r unshelved unacknowledged`);
    const calm = new Drive(planOf()).values('t', [100, 20]);
    calm.input(shelve(200, min, { oneShot: true })).advance(200);
    expect(why(calm)).toContain('it has returned');
  });
});

describe('a restart', () => {
  test('goes on with a shelf, its reason and its end', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]).input(shelve(200, h)).advance(200);
    const after = Drive.resume(drive);
    expect(after.engine.present.alarms.list[0]).toMatchObject({
      state: 'shelved',
      aside: { since: 200, by: 'p1', reason: 'probe out', oneShot: false },
    });
    expect(after.advance(200 + h).told).toEqual([`${200 + h} r unshelved unacknowledged`]);
  });

  test('with a shelf whose end is not known: it is off the shelf', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]).input(shelve(200, h)).advance(200);
    const saved = JSON.parse(JSON.stringify(drive.engine.save()));
    saved.alarms.r.shelvedUntil = null;
    const after = new Drive(planOf()).restored(saved).advance(201);
    expect(after.told).toEqual(['200 r unshelved unacknowledged']);
  });

  test('from what an older version left behind', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    const saved = JSON.parse(JSON.stringify(drive.engine.save()));
    const { state, beneath, occurrence, lastOccurrence, shelvedUntil } = saved.alarms.r;
    saved.alarms.r = { state, beneath, occurrence, lastOccurrence, shelvedUntil };
    const after = new Drive(planOf()).restored(saved).values('t', [300, 29]);
    expect(after.told).toEqual(['300 r returned returned-unacknowledged']);
  });
});

describe('suppressed by design while the line stands', () => {
  const suppress = {
    whiles: [{ on: 'line', high: 0.1, because: 'the line stands' }],
    offDelayMs: 0,
  };

  test('nobody is told, all is recorded, and what still holds is told once the line runs', () => {
    const drive = new Drive(planOf({ suppress })).values('line', [10, 0]).values('t', [100, 31]);
    drive.values('line', [200, 2]);
    expect(drive.told).toEqual([
      '10 r suppressed suppressed-by-design',
      '100 r raised suppressed-by-design',
      '200 r released unacknowledged',
    ]);
    expect(drive.effects[0]).toMatchObject({ reason: 'the line stands', occurrence: null });
  });

  test('a reading that cannot be used suppresses nothing', () => {
    const drive = new Drive(planOf({ suppress })).values('line', [10, 0]);
    drive.offer({ signal: 'line', at: 20, quality: 128 }).advance(20);
    expect(drive.told.at(-1)).toBe('20 r released normal');
  });

  test('it goes on for its off-delay, and a line that stops within goes on with it', () => {
    const plan = planOf({ suppress: { ...suppress, offDelayMs: 1_000 } });
    const drive = new Drive(plan).values('line', [10, 0], [500, 2], [900, 0], [1_000, 2]);
    expect(drive.advance(1_999).told).toHaveLength(1);
    expect(Drive.resume(drive).advance(2_000).told).toEqual(['2000 r released normal']);
  });

  test('it is stronger than a shelf, weaker than out of service, and asked again after that', () => {
    const drive = new Drive(planOf({ suppress })).values('t', [5, 31]).input(shelve(8, h));
    drive.advance(8).values('line', [10, 0]);
    drive.input(say('remove-from-service', 20, { reason: 'new probe' })).advance(20);
    drive.values('line', [30, 2], [40, 0]);
    drive.input(say('return-to-service', 50)).advance(50);
    expect(drive.told.slice(2)).toEqual([
      '10 r suppressed suppressed-by-design',
      '20 r removed-from-service out-of-service',
      '50 r returned-to-service unacknowledged',
      '50 r suppressed suppressed-by-design',
    ]);
  });

  test('a site that no longer says so releases it', () => {
    const plain = planOf({}, 'plain');
    const drive = new Drive(planOf({ suppress }), 0, [plain]).values('line', [10, 0]);
    drive.input({ kind: 'site', judged: 20, revision: 'plain' }).advance(20);
    expect(drive.told.at(-1)).toBe('20 r released normal');
  });
});

describe('suppressed by design from one mark to another', () => {
  const plan = planOf({
    suppress: {
      whiles: [{ from: 'l/s/begun', until: 'l/s/done', atMostMs: h, because: 'it is cleaned' }],
      offDelayMs: 0,
    },
  });

  test('from the first to the second', () => {
    const drive = new Drive(plan).input(mark(10, 'begun')).advance(10).values('t', [20, 31]);
    drive.input(mark(30, 'done')).advance(30);
    expect(drive.told).toEqual([
      '10 r suppressed suppressed-by-design',
      '20 r raised suppressed-by-design',
      '30 r released unacknowledged',
    ]);
  });

  test('where nobody writes the second, it ends by itself, over a restart too', () => {
    const drive = new Drive(plan).input(mark(10, 'begun')).advance(10);
    expect(drive.advance(9 + h).told).toHaveLength(1);
    expect(Drive.resume(drive).advance(10 + h).told).toEqual([`${10 + h} r released normal`]);
  });
});

describe('out of service', () => {
  test('needs a reason, keeps it, and comes back in the state the plant is in', () => {
    const drive = new Drive(planOf());
    drive.input(say('remove-from-service', 10)).advance(10);
    expect(why(drive)).toBe('taking it out of service needs a reason');
    drive.input(say('remove-from-service', 20, { reason: 'new probe' })).advance(20);
    expect(drive.engine.present.alarms.list[0]!.aside).toMatchObject({ since: 20, by: 'p1' });
    drive.values('t', [30, 31]).input(say('return-to-service', 40)).advance(40);
    expect(drive.told).toEqual([
      '20 r removed-from-service out-of-service',
      '30 r raised out-of-service',
      '40 r returned-to-service unacknowledged',
    ]);
  });
});

describe('passing on', () => {
  test('says who and when, and leaves it unacknowledged; not once somebody has it', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    const ask = (verb: AlarmVerb, at: number) =>
      drive.input(say(verb, at, { occurrence: 'r@100' })).advance(at);
    ask('pass-on', 200);
    expect(drive.effects.at(-1)).toMatchObject({
      transition: 'passed-on',
      by: 'p1',
      judged: 200,
      occurrence: 'r@100',
      to: 'unacknowledged',
    });
    ask('acknowledge', 300);
    ask('pass-on', 400);
    expect(why(drive)).toBe('somebody has it already');
  });

  test('only the current occurrence', () => {
    const drive = new Drive(planOf()).values('t', [100, 31]);
    drive.input(say('pass-on', 200, { occurrence: 'r' })).advance(200);
    expect(why(drive)).toContain('not the current occurrence');
  });
});
