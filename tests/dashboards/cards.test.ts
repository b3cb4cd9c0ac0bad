/** One card for one hot place: the worst on top, the others folded below it, none of them lost. */
import { describe, expect, test } from 'vitest';
import type { AlarmView } from '#agent/web/contract.ts';
import type { Known } from '../../dashboards/judge/bands.ts';
import { cardsInBands, worseStanding } from '../../dashboards/judge/cards.ts';
import { alarm, now } from '../agent/web/fake-ports.ts';

const nothing: Known = { coverage: null, rules: new Map() };
const end = now + 8 * 3_600_000;
const minute = 60_000;

interface Over {
  readonly word?: AlarmView['label']['word'];
  readonly priority?: AlarmView['priority'];
  readonly state?: AlarmView['state'];
  readonly signal?: string;
  readonly limit?: number | null;
  readonly side?: 'low' | 'high' | null;
  readonly since?: number;
}

const of = (occurrence: string, over: Over = {}): AlarmView => {
  const { word = 'WARNING', priority = 'high', state = 'unacknowledged' } = over;
  const { signal = 'l/residue/floor', limit = 112, side = 'high', since = now } = over;
  const base = alarm();
  return alarm({
    occurrence,
    priority,
    state,
    signal,
    label: { ...base.label, word },
    evidence: { ...base.evidence, limit, side, since },
  });
};
const early = of('early', { limit: 92, priority: 'medium', since: now - 12 * minute });
const act = of('act', { limit: 102, since: now - 7 * minute });
const atLimit = of('at-limit', { limit: 112, since: now - 2 * minute });

const cards = (...alarms: AlarmView[]) => cardsInBands(alarms, nothing, end);

describe('early, act and at the limit of one floor', () => {
  test('are one card, in whatever order they came', () => {
    const one = [['at-limit', 'act', 'early']];
    expect(cards(early, act, atLimit).people).toEqual(one);
    expect(cards(atLimit, early, act).people).toEqual(one);
  });
  test('the worst that still stands is on top: one that is over does not hide it', () => {
    const over = of('at-limit', { limit: 112, state: 'returned-unacknowledged' });
    expect(cards(early, act, over).people).toEqual([['act', 'early', 'at-limit']]);
  });
  test('one that latched is not over: a falling number is no all-clear', () => {
    const latched = of('at-limit', { limit: 112, state: 'latched-unacknowledged' });
    expect(cards(early, act, latched).people).toEqual([['at-limit', 'act', 'early']]);
  });
  test('every one of them stands in exactly one card', () => {
    const { people, shift, wait } = cards(early, act, atLimit, of('bin', { signal: 'l/r/bin' }));
    expect([...people, ...shift, ...wait].flat().toSorted()).toEqual([
      'act',
      'at-limit',
      'bin',
      'early',
    ]);
  });
});

test('raised again before anybody answered: the newer one stands for both', () => {
  const older = alarm({ ...act, occurrence: 'older', state: 'returned-unacknowledged' });
  expect(cards({ ...older, superseded_by: 'act' }, act).people).toEqual([['act']]);
});

describe('what is not one thing stays apart', () => {
  test('too low and too high, another place, and a sensor that is silent', () => {
    const low = of('low', { side: 'low', limit: 8 });
    const other = of('other', { signal: 'l/residue/filter' });
    const lost = of('lost', { side: null, limit: null });
    expect(cards(atLimit, low, other, lost).people).toHaveLength(4);
  });
  test('two silences are two things even on one signal', () => {
    const silent = { side: null, limit: null };
    expect(cards(of('lost', silent), of('stuck', silent)).people).toHaveLength(2);
  });
});

describe('in a band: who can be hurt, then unanswered, then time', () => {
  test('a DANGER that latched and nobody answered stands first, however late it came', () => {
    const danger = of('self-heating', {
      word: 'DANGER',
      signal: 'l/residue/filter',
      state: 'latched-unacknowledged',
      since: now,
    });
    expect(cards(early, act, danger).people).toEqual([['self-heating'], ['act', 'early']]);
  });
  test('an answered DANGER before an unanswered WARNING; a WARNING before a NOTICE about people', () => {
    const danger = of('a', { word: 'DANGER', signal: 'l/r/a', state: 'acknowledged' });
    const caution = of('b', { word: 'CAUTION', signal: 'l/r/b', since: now - 60 * minute });
    expect(cards(caution, act, danger).people).toEqual([['a'], ['act'], ['b']]);
  });
  test('a card is unanswered while one of its alarms is', () => {
    const answered = of('answered', {
      signal: 'l/r/a',
      state: 'acknowledged',
      since: now - 99 * minute,
    });
    const top = of('at-limit', { limit: 112, state: 'acknowledged' });
    expect(cards(answered, top, early).people).toEqual([['at-limit', 'early'], ['answered']]);
  });
});

describe('the worse alarm that a milder one points up to', () => {
  const worse = (one: AlarmView, ...others: AlarmView[]) => worseStanding(one, others)?.occurrence;
  test('is the worst of the same reading and side', () => {
    expect(worse(early, act, atLimit)).toBe('at-limit');
    expect(worse(act, early, atLimit)).toBe('at-limit');
    expect(worse(atLimit, early, act)).toBeUndefined();
  });
  test('stands: one that is over, or is about another reading or side, is not pointed to', () => {
    expect(worse(early, { ...act, state: 'latched-unacknowledged' })).toBeUndefined();
    expect(worse(early, of('other', { signal: 'l/residue/wall' }))).toBeUndefined();
    expect(worse(early, of('cold', { side: 'low', limit: 5 }))).toBeUndefined();
  });
});
