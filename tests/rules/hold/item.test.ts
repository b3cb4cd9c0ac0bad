/** Names of racks, containers, lots and shots: what is the same thing, and what is no name. */
import { describe, expect, test } from 'vitest';
import { Holds } from '#rules/hold/hold.ts';
import { itemFault, sameItem } from '#rules/hold/item.ts';
import { Drive } from '../engine/drive.ts';
import { smallPlan } from '../engine/small-plan.ts';

test.each([
  ['r-1', 'R-1', true],
  ['ｒ-１', 'r-1', true],
  [' r-1 ', 'r-1', true],
  ['r-1', 'r-10', false],
  ['r-1', null, false],
  [null, null, true],
])('%o and %o are the same thing: %o', (a, b, same) => {
  expect(sameItem(a, b)).toBe(same);
});

test.each([
  ['r-1', true],
  ['Gestell Ä 7', true],
  ['r\u202e1', false],
  ['r\u200b1', false],
  ['r\u00071', false],
  ['r\u20281', false],
])('%j is a name: %o', (name, sound) => {
  expect(itemFault(name) === null).toBe(sound);
});

test('a hold on R-1 is one on r-1', () => {
  const holds = new Holds();
  const hold = { what: 'rack', since: 1, by: 'p1', reason: 'bubbles', occurrence: null } as const;
  const first = holds.set({ ...hold, item: 'R-1' })!;
  expect(holds.set({ ...hold, item: 'r-1' })).toBeNull();
  holds.set({ ...hold, item: 'r-1', by: 'p2' });
  expect(holds.others(first)).toBe(1);
  holds.lift(first.id);
  expect(holds.others(first)).toBe(1);
});

describe('clocks of items', () => {
  const plan = smallPlan({
    signals: { t: {} },
    marks: { 'l/s/blasted': 'rack', 'l/s/coated': 'rack' },
    rules: {
      r: {
        kind: 'age',
        on: [],
        by: ['l/s/blasted', 'l/s/coated'],
        settings: { limit: '10 s', early: '100 %' },
      },
    },
  });
  const say = (mark: string, item: string, judged: number) =>
    ({ kind: 'command', verb: 'mark', station: 'l/s', mark, item, by: 'p1', judged }) as const;

  test('end by the same name, however it is written', () => {
    const drive = new Drive(plan).input(say('blasted', 'r-1', 100));
    drive.input(say('coated', 'R-1', 200)).advance(20_000);
    expect(drive.told).toEqual([]);
  });
  test('a name that turns the text around is refused', () => {
    const drive = new Drive(plan).input(say('blasted', 'r\u202e1', 100)).advance(200);
    expect(drive.effects).toMatchObject([
      { kind: 'refused', why: expect.stringContaining('U+202E') },
    ]);
  });
});
