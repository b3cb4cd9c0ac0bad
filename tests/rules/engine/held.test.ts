/** The engine tells holds to whoever judges them: set by a rule or a person, lifted, from before a change of plan. */
import { expect, test } from 'vitest';
import type { Command, MarkCommand } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const min = 60_000;
const held = {
  kind: 'held',
  on: [],
  by: ['l/s/connected'],
  settings: { last_only: true, while_used: true },
} as const;
const cold = {
  kind: 'band',
  on: 't',
  settings: { low: '5 Cel' },
  hold: { what: 'container', item: 'D-1' },
} as const;
const planOf = (revision: string, rules: object) => ({
  ...smallPlan({
    signals: { t: {} },
    marks: { 'l/s/connected': 'container' },
    rules: rules as NonNullable<Parameters<typeof smallPlan>[0]['rules']>,
  }),
  revision,
});
const whole = planOf('whole', { 'l/s/cold': cold, 'l/s/held': held });

const connected = (judged: number, item: string): MarkCommand => ({
  kind: 'command',
  verb: 'mark',
  judged,
  station: 'l/s',
  mark: 'connected',
  item,
  by: 'p1',
});
const lift = (judged: number): Command => ({
  kind: 'command',
  verb: 'lift',
  judged,
  hold: 'hold-1',
  disposition: 'released',
  by: 'p1',
  reason: 'tested',
});
const ofHeld = (drive: Drive): string[] =>
  drive.told
    .filter((each) => each.includes('l/s/held'))
    .map((each) => each.replace(' l/s/held', ''));

test('a container that a rule put on hold is connected: raised, and ended when the hold is lifted', () => {
  const drive = new Drive(whole, -1).values('t', [0, 2], [min, 20]);
  drive.input(connected(2 * min, 'D-1')).advance(3 * min);
  expect(ofHeld(drive)).toEqual([`${2 * min} raised unacknowledged`]);
  const raised = drive.effects.findLast((e) => e.kind === 'transition' && e.rule === 'l/s/held');
  expect(raised).toMatchObject({ evidence: { item: 'D-1', heldBy: 'rule:l/s/cold' } });
  // Killed and begun again from its snapshot.
  const again = Drive.resume(drive)
    .input(lift(5 * min))
    .advance(6 * min);
  expect(ofHeld(again)).toEqual([`${5 * min} returned returned-unacknowledged`]);
});

test('what a rule holds while it is connected is that rule’s own matter; a person’s hold is told', () => {
  const drive = new Drive(whole, -1).input(connected(0, 'D-1')).values('t', [min, 2]);
  expect(ofHeld(drive)).toEqual([]);
  const by = { kind: 'command', verb: 'hold', what: 'container', item: 'D-1' } as const;
  drive.input({ ...by, judged: 2 * min, by: 'p1', reason: 'lumps' }).advance(3 * min);
  expect(ofHeld(drive)).toEqual([`${2 * min} raised unacknowledged`]);
});

test('a rule that comes with another plan knows the holds from before it', () => {
  const first = planOf('first', { 'l/s/cold': cold });
  const drive = new Drive(first, -1, [whole]).values('t', [0, 2]);
  drive.input({ kind: 'site', judged: min, revision: 'whole' });
  drive.input(connected(2 * min, 'D-1')).advance(3 * min);
  expect(ofHeld(drive)).toEqual([`${2 * min} raised unacknowledged`]);
});
