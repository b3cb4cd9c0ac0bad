/** Which rack or shot a rule's hold is on: the one last named, unless it had left before. */
import { expect, test } from 'vitest';
import type { MarkCommand } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const min = 60_000;
const plan = smallPlan({
  signals: { 'l/o/metal': {}, 'l/o/closed': { unit: '1', digits: 0 } },
  marks: { 'l/o/rack-in': 'rack', 'l/o/rack-out': 'rack', 'l/o/loading': 'shot' },
  rules: {
    'l/o/hot': {
      kind: 'band',
      on: 'l/o/metal',
      settings: { high: '100 Cel' },
      hold: { what: 'rack', item: 'l/o', named: ['l/o/rack-in', 'l/o/rack-out'] },
    },
    'l/o/waits': {
      kind: 'sequence',
      on: 'l/o/closed',
      by: ['l/o/loading'],
      settings: { then_low: '1 1', within: '60 s' },
      hold: { what: 'shot', item: 'l/o' },
    },
  },
});
const mark = (minute: number, name: string, item: string): MarkCommand => ({
  kind: 'command',
  verb: 'mark',
  judged: minute * min,
  station: 'l/o',
  mark: name,
  by: 'p1',
  item,
});
const heldAfter = (...marks: MarkCommand[]): string[] => {
  const drive = new Drive(plan, 0);
  for (const each of marks) drive.input(each).advance(each.judged);
  drive.offer({ signal: 'l/o/metal', at: 10 * min, value: 120 }).advance(10 * min);
  return drive.effects.flatMap((e) => (e.kind === 'hold' ? [`${e.what} ${e.item}`] : []));
};

test('nobody named one: the place stands for it', () => expect(heldAfter()).toEqual(['rack l/o']));
test('the one last named', () => {
  expect(heldAfter(mark(1, 'rack-in', 'R-1'), mark(2, 'rack-in', 'R-2'))).toEqual(['rack R-2']);
});
test('not one that left before it began', () => {
  const left = [mark(1, 'rack-in', 'R-1'), mark(5, 'rack-out', 'R-1')];
  expect(heldAfter(...left)).toEqual(['rack l/o']);
  expect(heldAfter(...left, mark(6, 'rack-in', 'R-2'))).toEqual(['rack R-2']);
  expect(heldAfter(...left, mark(6, 'rack-in', 'R-1'))).toEqual(['rack R-1']);
});
test('one that another left before is still there', () => {
  expect(heldAfter(mark(1, 'rack-in', 'R-2'), mark(5, 'rack-out', 'R-1'))).toEqual(['rack R-2']);
});
test('a rule that judges marks holds the one it is about', () => {
  const drive = new Drive(plan, 0).input(mark(1, 'loading', 'S-7')).advance(3 * min);
  expect(drive.effects.at(-1)).toMatchObject({ kind: 'hold', what: 'shot', item: 'S-7' });
});
