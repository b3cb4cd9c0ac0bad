import { describe, expect, test } from 'vitest';
import type { AlarmView, CoverageView, RuleView } from '#agent/web/contract.ts';
import { bandOf, isPeople, type Known } from '../../dashboards/judge/bands.ts';
import { cardsInBands } from '../../dashboards/judge/cards.ts';
import { alarm, coverage, now, rule } from '../agent/web/fake-ports.ts';

const hour = 3_600_000;
const end = now + 4 * hour;
const nothing: Known = { coverage: null, rules: new Map() };

const of = (over: Partial<AlarmView>): AlarmView => alarm(over);
const labelled = (word: AlarmView['label']['word'], over: Partial<AlarmView> = {}): AlarmView =>
  of({ ...over, label: { ...alarm().label, word } });
const at = (earliest: number | null, since: number | null = null) => ({
  ...alarm().evidence,
  earliest,
  since,
});

/** One hazard to people, watched by `hot`, which judges the signal `floor`. */
const known: Known = {
  coverage: {
    ...coverage,
    stations: [
      {
        line: 'a',
        station: 'oven',
        kind: 'custom',
        hazards: [
          {
            hazard: 'Fire.',
            to_people: true,
            state: 'watched',
            rules: ['a/oven/hot'],
            missing: [],
          },
        ],
        rules: [],
        moot: [],
      },
    ],
  } satisfies CoverageView,
  rules: new Map<string, RuleView>([
    ['a/oven/hot', { ...rule, id: 'a/oven/hot', signals: ['a/oven/floor'] }],
    [
      'a/oven/lost-floor',
      { ...rule, id: 'a/oven/lost-floor', kind: 'lost', signals: ['a/oven/floor'] },
    ],
    ['a/oven/lost-air', { ...rule, id: 'a/oven/lost-air', kind: 'lost', signals: ['a/oven/air'] }],
  ]),
};

describe('people can be hurt', () => {
  test.each(['DANGER', 'WARNING', 'CAUTION'] as const)('%s, however low its priority', (word) => {
    expect(bandOf(labelled(word, { priority: 'low' }), nothing, end)).toBe('people');
  });
  test('a NOTICE of a hazard to people', () => {
    expect(isPeople(of({ rule: 'a/oven/hot' }), known)).toBe(true);
  });
  test('a lost signal ranks with the hazard it keeps from being seen, and no other does', () => {
    expect(isPeople(of({ rule: 'a/oven/lost-floor', signal: 'a/oven/floor' }), known)).toBe(true);
    expect(isPeople(of({ rule: 'a/oven/lost-air', signal: 'a/oven/air' }), known)).toBe(false);
  });
});

describe('before the shift ends, or later', () => {
  test.each([
    ['high', end + hour, 'shift'],
    ['medium', end - hour, 'shift'],
    ['medium', end + hour, 'wait'],
    ['low', now, 'wait'],
  ] as const)('%s priority, limit at %i: %s', (priority, earliest, band) => {
    expect(bandOf(of({ priority, evidence: at(earliest) }), nothing, end)).toBe(band);
  });
  test('a NOTICE that is over comes after all that stands, one about people too; no other word does', () => {
    const over = { state: 'returned-unacknowledged', priority: 'high' } as const;
    expect(bandOf(of(over), nothing, end)).toBe('over');
    expect(bandOf(of({ ...over, rule: 'a/oven/hot' }), known, end)).toBe('over');
    expect(bandOf(labelled('WARNING', over), nothing, end)).toBe('people');
  });
  test('nobody can tell whether it is over: then it does not count as over', () => {
    const lost = { state: 'returned-unacknowledged', priority: 'high', judgeable: false } as const;
    expect(bandOf(of(lost), nothing, end)).toBe('shift');
  });
});

describe('inside a band', () => {
  // Each its own place, so that each is a card of its own.
  const named = (occurrence: string, over: Partial<AlarmView>): AlarmView =>
    of({ occurrence, signal: occurrence, priority: 'high', ...over });
  test('what wants an answer before what has one; then by when it starts to matter', () => {
    const alarms = [
      named('later', { evidence: at(now + 2 * hour) }),
      named('soon', { evidence: at(now + hour) }),
      named('answered', { state: 'acknowledged', evidence: at(null, now - 3 * hour) }),
      named('new', { evidence: at(null, now - 60_000) }),
      named('old', { evidence: at(null, now - 2 * hour) }),
    ];
    const { shift } = cardsInBands(alarms, nothing, now + 8 * hour);
    expect(shift.flat()).toEqual(['old', 'new', 'soon', 'later', 'answered']);
  });
  test('what is closed, shelved, suppressed or out of service stands in no band', () => {
    const states = ['normal', 'shelved', 'suppressed-by-design', 'out-of-service'] as const;
    const alarms = states.map((state) => named(state, { state }));
    expect(cardsInBands(alarms, nothing, end)).toEqual({
      people: [],
      shift: [],
      wait: [],
      over: [],
    });
  });
});
