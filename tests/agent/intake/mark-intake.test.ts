/** Scanners and contacts: what a message says happened, and what says nothing. */
import { describe, expect, test } from 'vitest';
import { MarkIntake } from '#agent/intake/mark-intake.ts';
import { limits } from '#agent/limits.ts';
import type { MarkBinding } from '#rules/plan/card.ts';

const of = (over: Partial<MarkBinding>): MarkBinding => ({
  station: 'l/prep',
  mark: 'blasted',
  what: 'rack',
  topic: 'scan',
  payload: { kind: 'plain' },
  ...over,
});
const json = (time?: string): MarkBinding['payload'] => ({
  kind: 'json',
  item: '/rack',
  ...(time === undefined ? {} : { time }),
});
const said = (binding: Partial<MarkBinding>, payload: string | Uint8Array, retained = false) => {
  const causes: string[] = [];
  const intake = new MarkIntake(
    () => [of(binding)],
    limits,
    (_, cause) => void causes.push(cause),
  );
  const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
  return { marks: intake.take('scan', bytes, retained), causes, ...intake.counters };
};

describe('a message', () => {
  test('in plain text is the item', () => {
    expect(said({}, ' R-12\n').marks).toEqual([
      {
        kind: 'command',
        verb: 'mark',
        station: 'l/prep',
        mark: 'blasted',
        item: 'R-12',
        by: 'topic:scan',
      },
    ]);
  });
  test('of the place says that it happened, whatever it holds', () => {
    expect(said({ what: null }, 'anything').marks).toMatchObject([{ mark: 'blasted' }]);
    expect(said({ what: null }, '').marks[0]).not.toHaveProperty('item');
  });
  test('in JSON says which and when', () => {
    const payload = '{"rack": 12, "t": "2026-01-05T08:10:00Z"}';
    expect(said({ payload: json('/t') }, payload).marks).toMatchObject([
      { item: '12', at: Date.UTC(2026, 0, 5, 8, 10) },
    ]);
  });
  test('feeds every mark bound to its topic, and those of a new plan from then on', () => {
    let bindings = [of({}), of({ mark: 'weighed' })];
    const intake = new MarkIntake(() => bindings, limits);
    const names = () => intake.take('scan', Buffer.from('R'), false).map(({ mark }) => mark);
    expect(names()).toEqual(['blasted', 'weighed']);
    bindings = [of({ mark: 'coated' })];
    expect(names()).toEqual(['coated']);
    expect([intake.knows('scan'), intake.knows('other')]).toEqual([true, false]);
    expect(intake.take('other', Buffer.from('R'), false)).toEqual([]);
  });
});

describe('says nothing, is counted and refused with the reason', () => {
  test.each<[string, Partial<MarkBinding>, string | Uint8Array, string]>([
    ['without an item', {}, '   ', 'no-item'],
    ['with a control character', {}, 'R\u00071', 'item-unreadable'],
    ['longer than an item may be', {}, 'R'.repeat(limits.itemCharsMax + 1), 'item-unreadable'],
    ['no text', {}, Uint8Array.of(0xff, 0xfe), 'not-utf8'],
    ['too large', {}, new Uint8Array(limits.payloadBytesMax + 1), 'too-large'],
    ['no JSON', { payload: json() }, 'R-12', 'not-json'],
    ['JSON without the item', { payload: json() }, '{"rak": "R-12"}', 'no-item'],
    ['an item that is no text', { payload: json() }, '{"rack": ["R-12"]}', 'item-unreadable'],
    ['without its promised time', { payload: json('/t') }, '{"rack": "R-12"}', 'no-time'],
    ['a time in words', { payload: json('/t') }, '{"rack": 1, "t": "noon"}', 'time-unreadable'],
  ])('%s', (_, binding, payload, cause) => {
    const nothing = { marks: [], said: 0, unreadable: 1, retained: 0 };
    expect(said(binding, payload)).toEqual({ ...nothing, causes: [cause] });
  });
  test('retained without a time of its own: nobody knows when it was', () => {
    expect(said({}, 'R-12', true)).toMatchObject({ marks: [], retained: 1 });
    expect(said({ payload: json('/t') }, '{"rack": "R-12", "t": 1767600000}', true).said).toBe(1);
  });
});
