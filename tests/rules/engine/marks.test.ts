/** Marks in the engine: who is told, what is held, what is refused, and what a restart keeps. */
import { describe, expect, test } from 'vitest';
import type { MarkCommand } from '#rules/input.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const h = 3_600_000;
const marks = {
  'l/prep/blasted': 'rack',
  'l/prep/coated': 'rack',
  'l/prep/bin-emptied': null,
} as const;
const plan = smallPlan({
  signals: { a: {}, 'l/s/closed': { unit: '1', digits: 0 } },
  marks,
  rules: {
    'l/prep/blast-to-coat': {
      kind: 'age',
      on: [],
      by: ['l/prep/blasted', 'l/prep/coated'],
      settings: { limit: '4 h' },
      hold: { what: 'rack', item: 'l/prep' },
    },
    'l/prep/bin-late': {
      kind: 'age',
      on: [],
      by: ['l/prep/bin-emptied'],
      settings: { limit: '24 h' },
      hold: { what: 'lot', item: 'bin' },
    },
    'l/prep/closes': {
      kind: 'sequence',
      on: 'l/s/closed',
      by: ['l/prep/bin-emptied'],
      settings: { then_low: '1 1', within: '60 s' },
    },
  },
});

const mark = (judged: number, name: string, item?: string, at?: number): MarkCommand => ({
  kind: 'command',
  verb: 'mark',
  judged,
  station: 'l/prep',
  mark: name,
  by: 'p1',
  ...(item === undefined ? {} : { item }),
  ...(at === undefined ? {} : { at }),
});
const drive = () => new Drive(plan, 0);
const held = (d: Drive): string[] =>
  d.effects.flatMap((e) => (e.kind === 'hold' ? [`${e.judged} ${e.what} ${e.item} ${e.by}`] : []));
const refused = (d: Drive): string[] =>
  d.effects.flatMap((e) => (e.kind === 'refused' ? [e.why] : []));

describe('a mark', () => {
  test('is an effect of its own, with who said it and when it happened', () => {
    const d = drive()
      .input(mark(h, 'blasted', 'R-12', h / 2))
      .advance(h);
    expect(d.effects).toEqual([
      {
        kind: 'mark',
        judged: h,
        station: 'l/prep',
        mark: 'blasted',
        item: 'R-12',
        at: h / 2,
        by: 'p1',
      },
    ]);
    expect(d.engine.present.marks.last.get('l/prep/blasted')).toEqual({
      at: h / 2,
      item: 'R-12',
      by: 'p1',
    });
  });
  test('raises one alarm about the mark; each rack that passes is held by itself', () => {
    const d = drive()
      .input(mark(1, 'blasted', 'R-12'))
      .input(mark(h, 'blasted', 'R-13'))
      .advance(6 * h);
    expect(d.told).toEqual([
      `${1 + 3.2 * h} l/prep/blast-to-coat raised unacknowledged`,
      `${1 + 4 * h} l/prep/blast-to-coat realarmed unacknowledged`,
    ]);
    expect(d.effects.find((e) => e.kind === 'transition')).toMatchObject({
      signal: 'l/prep/blasted',
      evidence: { item: 'R-12' },
    });
    expect(held(d)).toEqual([
      `${1 + 4 * h} rack R-12 rule:l/prep/blast-to-coat`,
      `${5 * h} rack R-13 rule:l/prep/blast-to-coat`,
    ]);
  });
  test('of the place holds what its rule names', () => {
    expect(held(drive().advance(25 * h))).toEqual([`${24 * h} lot bin rule:l/prep/bin-late`]);
  });
  test('a little ahead counts as now', () => {
    const d = drive()
      .input(mark(h, 'blasted', 'R-1', h + 60_000))
      .advance(h);
    expect(d.effects).toMatchObject([{ kind: 'mark', at: h }]);
  });
});

test.each([
  [mark(h, 'painted', 'R-1'), 'there is no mark l/prep/painted'],
  [mark(h, 'blasted'), 'l/prep/blasted happens to a rack; say which'],
  [mark(h, 'blasted', '  '), 'l/prep/blasted happens to a rack; say which'],
  [mark(h, 'bin-emptied', 'R-1'), 'l/prep/bin-emptied is of the place; it takes no item'],
  [
    mark(h, 'blasted', 'R-1', h + 61_000),
    expect.stringMatching(/^it lies 61 seconds ahead of this clock \(.*\); set the clock of/),
  ],
  [mark(h, 'blasted', 'R-1', -1), 'it lies before 1970; write when it happened'],
])('is refused: %j', (command, why) => {
  const d = drive().input(command).advance(h);
  expect(refused(d)).toEqual([why]);
  expect(d.engine.present.marks.last.size).toBe(0);
});

test('the next rack of too many is refused by the rule that cannot follow it', () => {
  const d = drive();
  for (let i = 0; i <= 500; i += 1) d.input(mark(1 + i, 'blasted', `R-${i}`));
  d.advance(h);
  expect(refused(d)).toEqual([expect.stringMatching(/^l\/prep\/blast-to-coat: 500 clocks run/)]);
});

test('a rule that is unjudged learns what was said, and answers once it is judged again', () => {
  const d = drive().values('l/s/closed', [0, 0]);
  d.offer({ signal: 'l/s/closed', at: 10, quality: quality.outOfRange }).advance(10);
  d.input(mark(20, 'bin-emptied')).advance(30_000);
  d.values('l/s/closed', [30_000, 0]).advance(2 * h);
  expect(d.told).toEqual(['90000 l/prep/closes raised unacknowledged']);
});

test('a restart at every input is as if there had been none', () => {
  const whole = drive();
  let resumed = drive();
  const effects: unknown[] = [];
  const said = [
    mark(1, 'blasted', 'R-1'),
    mark(h, 'blasted', 'R-2', h - 5),
    mark(3 * h, 'bin-emptied'),
    mark(5 * h, 'coated', 'R-1'),
    mark(7 * h, 'coated', 'R-2'),
    mark(8 * h, 'blasted'),
  ];
  for (const command of said) {
    whole.input(command).advance(command.judged);
    resumed.input(command).advance(command.judged);
    effects.push(...resumed.effects);
    resumed = Drive.resume(resumed);
    expect(resumed.engine.save()).toEqual(whole.engine.save());
  }
  expect(effects).toEqual(whole.effects);
  expect(held(whole)).toHaveLength(2);
});

test('a site changed elsewhere keeps its clocks; one whose mark is gone forgets it', () => {
  const { 'l/prep/coated': _, ...fewer } = marks;
  const other = smallPlan({
    revision: 'other',
    signals: { a: {} },
    marks: fewer,
    rules: {
      'l/prep/bin-late': {
        kind: 'age',
        on: [],
        by: ['l/prep/bin-emptied'],
        settings: { limit: '24 h' },
      },
    },
  });
  const d = new Drive(plan, 0, [other]);
  d.input(mark(2, 'coated', 'R-1'))
    .input(mark(h, 'bin-emptied'))
    .advance(h);
  d.input({ kind: 'site', judged: 2 * h, revision: 'other' }).advance(26 * h);
  expect([...d.engine.present.marks.last.keys()]).toEqual(['l/prep/bin-emptied']);
  expect(d.told).toContain(`${h + 19.2 * h} l/prep/bin-late raised unacknowledged`);
});
