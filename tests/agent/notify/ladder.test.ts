import { describe, expect, test } from 'vitest';
import type { Role, TellablePerson } from '#agent/notify/contract.ts';
import { type Ladder, ladderOf, onRungs } from '#agent/notify/ladder.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import type { Rota, WeekEntry } from '#rules/telling/rota.ts';

const person = (id: string, role: Role, more: Partial<TellablePerson> = {}): TellablePerson => ({
  id,
  name: id.toUpperCase(),
  role,
  language: 'en',
  addresses: { email: `${id}@works.example`, push: true },
  ...more,
});
const people = [
  person('anna', 'maintenance'),
  person('ben', 'maintenance'),
  person('carl', 'maintenance'),
  person('dora', 'ehs', { wants: ['high'] }),
  person('rita', 'reader'),
];
const entry = (who: string[]): WeekEntry => ({
  kind: 'week',
  who,
  weekdays: [0, 1, 2, 3, 4, 5, 6],
  fromMin: 0,
  toMin: 0,
  stations: null,
  hazards: null,
});
const rota = (...who: string[]): Rota => ({
  timezone: 'UTC',
  entries: who.length === 0 ? [] : [entry(who)],
});
const of = (one: Rota, priority: Priority = 'medium', among = people): Ladder =>
  ladderOf(among, one, 0, { station: 'l/s', hazard: null, priority });
const ids = ({ rungs }: Ladder): string[] => rungs.map((rung) => rung.map(({ id }) => id).join());

describe('with a rota', () => {
  test('the first on call, the next, everyone of the role, then everyone who wants it', () => {
    expect(ids(of(rota('anna', 'ben'), 'high'))).toEqual([
      'anna',
      'ben',
      'anna,ben,carl',
      'anna,ben,carl,dora',
    ]);
  });
  test('people are known by id or by name, whatever the case', () => {
    expect(ids(of(rota('Anna')))[0]).toBe('anna');
  });
  test('a role means all who have it', () => {
    expect(ids(of(rota('ehs', 'anna')))).toEqual(['dora', 'anna', 'anna,ben,carl,dora']);
  });
  test('a name nobody knows is told, and the next takes the place', () => {
    const ladder = of(rota('zoe', 'ben'));
    expect(ids(ladder)[0]).toBe('ben');
    expect(ladder.causes).toEqual(['The rota names “zoe”, whom nobody here knows.']);
  });
  test('where it says nobody, everyone who wants it is told, and it is said', () => {
    const empty: Rota = { timezone: 'UTC', entries: [{ ...entry(['anna']), weekdays: [6] }] };
    const ladder = of(empty);
    expect(ids(ladder)).toEqual(['anna,ben,carl']);
    expect(ladder.causes[0]).toMatch(/nobody is on call now/);
  });
});

describe('without one', () => {
  test('everyone who wants alarms of that priority, and no reader', () => {
    expect(ids(of(rota()))).toEqual(['anna,ben,carl']);
    expect(ids(of(rota(), 'high'))).toEqual(['anna,ben,carl,dora']);
    expect(of(rota()).causes).toEqual([]);
  });
  test('whoever cannot be reached is not on it, and it is said', () => {
    const mute = person('mo', 'operator', { addresses: { email: null, push: false } });
    expect(of(rota(), 'low', [mute])).toEqual({
      rungs: [],
      causes: [
        'MO has neither a phone nor an e-mail address.',
        'Nobody can be told: no person has a phone or an e-mail address.',
      ],
    });
    expect(of(rota(), 'low', []).rungs).toEqual([]);
  });
});

test('rungs together name each once; beyond the top stands the top; of none there is nobody', () => {
  const ladder = of(rota('anna', 'ben'), 'high');
  const at = (from: number, to: number): string =>
    onRungs(ladder, [from, to])
      .map(({ id }) => id)
      .join();
  expect(at(0, 1)).toBe('anna,ben');
  expect(at(0, 2)).toBe('anna,ben,carl');
  expect(at(7, 7)).toBe('anna,ben,carl,dora');
  expect(onRungs({ rungs: [], causes: [] }, [0, 3])).toEqual([]);
});
