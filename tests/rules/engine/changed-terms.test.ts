/**
 * The site file changes a rule whose alarm stands: the alarm goes on until it is judged by the new
 * terms, and never ends as though the danger had gone.
 */
import { describe, expect, test } from 'vitest';
import { Drive } from './drive.ts';
import { type SmallRule, smallPlan } from './small-plan.ts';

const latching = { latching: true, selfAcknowledging: false, highlyManaged: true };
const plain = { latching: false, selfAcknowledging: false, highlyManaged: false };
const hot = { kind: 'band', on: 't', class: latching } satisfies Omit<SmallRule, 'settings'>;

const plan = (rule: SmallRule | null, revision: string) =>
  smallPlan({ signals: { t: {}, u: {} }, rules: rule === null ? {} : { r: rule }, revision });

const change = (before: SmallRule, ...after: readonly (SmallRule | null)[]): Drive =>
  new Drive(
    plan(before, 'r0'),
    0,
    after.map((rule, i) => plan(rule, `r${i + 1}`)),
  );

const to = (judged: number, revision: string) =>
  ({ kind: 'site', judged, revision, by: 'p-9' }) as const;
const acknowledge = (judged: number) =>
  ({ kind: 'command', judged, verb: 'acknowledge', by: 'p-1', occurrence: 'r@100' }) as const;

const limit = (more: object) => ({ ...hot, settings: { high: '112 Cel', ...more } });

describe('an alarm that stands, and other settings of its rule', () => {
  test('a longer delay does not begin again for what stands beyond the limit', () => {
    const drive = change(limit({}), limit({ on_delay: '10 h' })).values('t', [100, 126]);
    drive.input(to(200, 'r1')).values('t', [300, 126], [400, 125]);
    expect(drive.told).toEqual(['100 r raised unacknowledged']);
    expect(drive.engine.present.rules[0]!.severity).toBe(1);
    drive.values('t', [500, 90]);
    expect(drive.told.at(-1)).toBe('500 r returned latched-unacknowledged');
  });

  test('latched when it was raised, it latches, whatever the new class says', () => {
    const drive = change(limit({}), {
      ...limit({ on_delay: '10 h' }),
      class: plain,
    }).values('t', [100, 126]);
    drive.input(to(200, 'r1')).input(acknowledge(300)).advance(300);
    expect(drive.told.at(-1)).toBe('300 r acknowledged acknowledged');
    drive.values('t', [400, 90]);
    expect(drive.told.at(-1)).toBe('400 r returned latched-acknowledged');
  });

  test('two changes one after the other, and a restart between them', () => {
    const drive = change(limit({}), limit({ on_delay: '10 h' }), {
      ...limit({ on_delay: '11 h' }),
      class: plain,
    }).values('t', [100, 126]);
    drive.input(to(200, 'r1')).advance(200);
    const again = Drive.resume(drive);
    again.input(to(300, 'r2')).input(acknowledge(350)).values('t', [400, 126]);
    expect(again.told).toEqual(['350 r acknowledged acknowledged']);
  });

  test('within the new limit it ends, and says that its rule was changed', () => {
    const rule = { ...limit({}), class: plain };
    const drive = change(rule, { ...rule, settings: { high: '130 Cel' } }).values('t', [100, 126]);
    drive.input(to(200, 'r1')).advance(200);
    expect(drive.effects.at(-1)).toMatchObject({
      transition: 'returned',
      reason: expect.stringMatching(/^its rule was changed by the site file/),
      evidence: { limit: 130, value: 126 },
    });
  });

  test('a value that nobody has sent again keeps the alarm', () => {
    const drive = change(limit({}), limit({ on_delay: '10 h' })).values('t', [100, 126]);
    drive.offer({ signal: 't', at: 150, quality: 100 }).advance(150);
    drive.input(to(200, 'r1')).advance(1_000);
    expect(drive.told).toEqual(['100 r raised unacknowledged']);
  });

  test.each([
    ['approach', { high: '112 Cel', within: '1 h', window: '1 h' }],
    ['rise', { up: '5 K', per: '1 min', window: '10 min' }],
  ])(
    'a rule that becomes another kind, %s, keeps the alarm until that kind can tell',
    (kind, settings) => {
      const drive = change(limit({}), { ...hot, kind, settings }).values('t', [100, 126]);
      drive.input(to(200, 'r1')).values('t', [300, 126]);
      expect(drive.told).toEqual(['100 r raised unacknowledged']);
    },
  );

  test.each([
    ['lost', { after: '5 s' }, { after: '8 s' }, 30_000],
    ['stuck', { for: '10 s' }, { for: '12 s' }, 15_000],
  ])('%s stands on', (kind, before, after, at) => {
    const rule = { kind, on: 't', class: plain };
    const drive = change({ ...rule, settings: before }, { ...rule, settings: after });
    drive.values('t', [1, 20]).advance(at);
    expect(drive.told).toHaveLength(1);
    drive.input(to(at + 1, 'r1')).advance(at + 2);
    if (kind === 'stuck') drive.values('t', [at + 3, 20]);
    expect(drive.told).toHaveLength(1);
    drive.values('t', [at + 4, 21]);
    expect(drive.told).toHaveLength(2);
  });
});

test('a rule that is gone ends its alarm with a reason of its own, and who', () => {
  const drive = change(limit({}), null).values('t', [100, 126]);
  drive.input(to(200, 'r1')).advance(200);
  expect(drive.effects.at(-1)).toMatchObject({
    transition: 'removed',
    occurrence: 'r@100',
    to: 'normal',
    closes: true,
    by: 'p-9',
    reason: expect.stringMatching(/removed by the site file/),
  });
});

test('clocks of marks go on under another limit', () => {
  const aged = (limitText: string, revision: string) =>
    smallPlan({
      signals: { t: {} },
      marks: { 'l/s/done': null },
      rules: {
        r: {
          kind: 'age',
          on: [],
          by: ['l/s/done'],
          settings: { limit: limitText, early: '100 %' },
        },
      },
      revision,
    });
  const drive = new Drive(aged('10 s', 'r0'), 0, [aged('20 s', 'r1'), aged('30 s', 'r2')]);
  const done = { kind: 'command', verb: 'mark', station: 'l/s', mark: 'done', by: 'p-1' } as const;
  drive.input({ ...done, judged: 1_000 }).advance(12_000);
  // What passed its limit has passed it.
  drive.input(to(13_000, 'r1')).advance(13_500);
  expect(drive.told).toEqual(['11000 r raised unacknowledged']);
  drive.input({ ...done, judged: 14_000 }).advance(14_000);
  drive.input(to(15_000, 'r2')).advance(40_000);
  drive.input(to(40_500, 'r1')).advance(40_500);
  expect(drive.told.slice(1)).toEqual([
    '14000 r returned returned-unacknowledged',
    '40500 r raised unacknowledged',
  ]);
});
