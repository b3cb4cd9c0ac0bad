import { describe, expect, test } from 'vitest';
import { placeholders } from '#rules/alarm/placeholders.ts';
import {
  clockText,
  fillFacts,
  quantityText,
  type Subject,
  sayAlarm,
  spanText,
} from '#rules/alarm/say.ts';
import { unitSymbol } from '#rules/alarm/unit-symbol.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { Evidence } from '#rules/kinds/kind.ts';
import type { CardLabel, RuleCard } from '#rules/plan/card.ts';
import { dimensions } from '#rules/quantity/unit-table.ts';
import { stationKinds } from '#rules/stations/all.ts';
import { heatSentences } from '../../vectors/heat-sentences.ts';
import { nowMs, sentences as storeSentences } from '../../vectors/sentences.ts';

const sentences = [...storeSentences, ...heatSentences];

import { compiled } from '../plan/site.ts';
import { scenarios } from '../stations/scenarios/all.ts';

const s = 1_000;
const min = 60 * s;
const h = 60 * min;
const d = 24 * h;

const label = (sentence: string | null): CardLabel => ({
  word: 'NOTICE',
  sentence,
  consequence: '',
  steps: [],
  doNot: [],
  caution: '',
});
const subject: Subject = {
  station: 'mounts-2/store-1',
  signal: 'mounts-2/store-1/wall',
  unit: 'Cel',
  digits: 1,
  facts: {},
  timezone: 'Europe/Dublin',
  container: null,
};
const say = (text: string, evidence: Evidence, of: Partial<Subject> = {}): string =>
  sayAlarm(label(text), () => 'the kind’s own', { ...subject, ...of }, evidence, nowMs);

describe('spans, in the unit a person would use', () => {
  test.each([
    [-1, '0 s'],
    [0, '0 s'],
    [499, '0 s'],
    [90 * s, '90 s'],
    [2 * min - 1, '120 s'],
    [2 * min, '2 min'],
    [90 * min, '90 min'],
    [2 * h, '2 h'],
    [2.55 * h, '2.5 h'],
    [3 * h, '3 h'],
    [47.9 * h, '47.9 h'],
    [2 * d, '2 d'],
    [2.5 * d, '2.5 d'],
    [9.96 * d, '10 d'],
    [30.4 * d, '30 d'],
    [365 * d, '365 d'],
  ])('%d ms is %s', (ms, text) => {
    expect(spanText(ms)).toBe(text);
  });
});

describe('clocks, in the site’s zone', () => {
  const at = (text: string): number => Date.parse(text);
  test.each([
    ['the same day', '2026-11-25T01:00:00Z', '2026-11-25T02:10:00Z', '01:00'],
    ['the night before', '2026-11-24T23:59:59Z', '2026-11-25T00:00:00Z', '2026-11-24 23:59'],
    ['midnight itself', '2026-11-25T00:00:00Z', '2026-11-25T00:00:01Z', '00:00'],
    // Summer time: midnight in Dublin is 23:00 UTC.
    [
      'one day by UTC, two in Dublin',
      '2026-07-01T22:59:00Z',
      '2026-07-01T23:00:00Z',
      '2026-07-01 23:59',
    ],
    ['two days by UTC, one in Dublin', '2026-07-01T23:30:00Z', '2026-07-02T00:30:00Z', '00:30'],
    // 29 March 2026, 01:00 UTC: clocks go from 01:00 to 02:00.
    ['before the hour that is skipped', '2026-03-29T00:59:00Z', '2026-03-29T01:00:00Z', '00:59'],
    ['after the hour that is skipped', '2026-03-29T01:00:00Z', '2026-03-29T03:00:00Z', '02:00'],
    // 25 October 2026, 01:00 UTC: clocks go from 02:00 to 01:00, so that 01:30 comes twice.
    ['the first 01:30', '2026-10-25T00:30:00Z', '2026-10-25T02:10:00Z', '01:30'],
    ['the second 01:30', '2026-10-25T01:30:00Z', '2026-10-25T02:10:00Z', '01:30'],
  ])('%s', (_, since, now, text) => {
    expect(clockText(at(since), 'Europe/Dublin', at(now))).toBe(text);
  });
  test('on the night the clocks change a length of time is still true', () => {
    const since = at('2026-10-25T00:30:00Z');
    const words = sayAlarm(
      label('{$clock}, {$duration}'),
      () => '',
      subject,
      { sinceMs: since },
      at('2026-10-25T02:30:00Z'),
    );
    expect(words).toBe('01:30, 2 h');
  });
});

describe('quantities', () => {
  test.each([
    [7, 'Cel', 1, '7.0 °C'],
    [7.25, 'Cel', 0, '7 °C'],
    [-0.04, 'Cel', 1, '0.0 °C'],
    [-0.04, 'Cel', 2, '-0.04 °C'],
    [-0, 'Cel', null, '0 °C'],
    [1 / 3, 'kPa', null, '0.333333 kPa'],
    [1_234_567.8, 'Ohm', null, '1234570 Ω'],
    [1, '1', 0, '1'],
    [30, '/min', 0, '30 /min'],
  ])('%d %s with %s digits', (value, unit, digits, text) => {
    expect(quantityText(value, unit, digits)).toBe(text);
  });
  test('every canonical unit prints as people write it', () => {
    const units = Object.values(dimensions).map(({ canonical }) => canonical);
    expect(Object.fromEntries(units.map((unit) => [unit, unitSymbol(unit)]))).toEqual({
      Cel: '°C',
      K: 'K',
      'K/min': 'K/min',
      kPa: 'kPa',
      mm: 'mm',
      m2: 'm²',
      L: 'L',
      kg: 'kg',
      s: 's',
      'm/s': 'm/s',
      'm/s2': 'm/s²',
      '/min': '/min',
      '%': '%',
      '1': '',
      'kg/m3': 'kg/m³',
      'g/m2': 'g/m²',
      'L/min': 'L/min',
      'mPa.s': 'mPa·s',
      'mm2/s': 'mm²/s',
      'uS/cm': 'µS/cm',
      mV: 'mV',
      mA: 'mA',
      Ohm: 'Ω',
      N: 'N',
      'N/mm': 'N/mm',
      W: 'W',
      '[pH]': 'pH',
      'K.h': 'K·h',
      'W/(m2.K)': 'W/(m²·K)',
      'kJ/mol': 'kJ/mol',
    });
  });
});

const whole: Evidence = {
  value: 4.9,
  at: nowMs,
  limit: 5,
  side: 'low',
  sinceMs: nowMs - 10 * min,
  slopePerH: -0.0456,
  earliestMs: nowMs + 40 * min,
  latestMs: nowMs + 3 * h,
  durationMs: min,
  cause: 102,
  input: 0,
  reference: 7.2,
  difference: 2.3,
  allowed: 2,
  reachedMs: 4 * min,
  requiredMs: 10 * min,
  leftMs: 30_000,
  item: 'R-12',
  items: 3,
  heldBy: 'rule:l/s/cold',
  perMs: 2 * min,
  other: 0,
};
const facts = {
  target: { kind: 'quantity', value: 25, unit: '/min' },
  low: { kind: 'quantity', value: 7, unit: 'Cel' },
  high: { kind: 'text', text: 'the high limit' },
  rest: { kind: 'duration', ms: 2 * h },
  stir: { kind: 'duration', ms: 8 * h },
  mixing: { kind: 'text', text: 'crank it by hand' },
  plan: { kind: 'text', text: ' (telephone 5555)' },
  smother: { kind: 'text', text: 'smothering may not stop it' },
  fumes: { kind: 'text', text: 'Smoke is toxic' },
} as const;
const prints: readonly (readonly [string, string])[] = [
  ['station', 'mounts-2/store-1'],
  ['signal', 'mounts-2/store-1/wall'],
  ['container', 'mounts-2/store-1'],
  ['value', '4.9 °C'],
  ['limit', '5.0 °C'],
  ['side', 'below'],
  ['slope', '0.046 K'],
  ['minuteslope', '0.00076 K'],
  ['signals', 'mounts-2/store-1/wall'],
  ['which', 'mounts-2/store-1/wall'],
  ['reference', '7.2 °C'],
  ['difference', '2.3 K'],
  ['allowed', '2.0 K'],
  ['reached', '4 min'],
  ['required', '10 min'],
  ['left', '30 s'],
  ['item', 'R-12'],
  ['items', '3'],
  ['setter', 'the rule l/s/cold'],
  ['reason', 'its alarm says why'],
  ['early', '40 min'],
  ['late', '3 h'],
  ['duration', '10 min'],
  ['clock', '02:00'],
  ['cause', 'outside what the sensor can read'],
  ['target', '25 /min'],
  ['low', '7 °C'],
  ['high', 'the high limit'],
  ['rest', '2 h'],
  ['stir', '8 h'],
  ['mixing', 'crank it by hand'],
  ['plan', ' (telephone 5555)'],
  ['smother', 'smothering may not stop it'],
  ['fumes', 'Smoke is toxic'],
  ['per', '2 min'],
  ['other', 'mounts-2/store-1/wall'],
];

describe('every placeholder', () => {
  test.each(prints)('%s', (name, text) => {
    expect(Object.keys(placeholders)).toContain(name);
    expect(say(`{$${name}}`, whole, { facts })).toBe(text);
    if (!['station', 'signal', 'signals', 'container'].includes(name))
      expect(say(`{$${name}}`, {})).toBe('unknown');
  });
  test('none is left out above', () => {
    expect(prints.map(([name]) => name).sort()).toEqual(Object.keys(placeholders).sort());
  });
  test('a named container stands for itself', () => {
    expect(say('{$container}', {}, { container: 'drum-3' })).toBe('drum-3');
  });
  test('beyond a month nobody plans by a forecast', () => {
    const seen = { earliestMs: nowMs + 2 * h, latestMs: nowMs + 400 * d };
    expect(say('in {$early} to {$late}', seen)).toBe('in 2 h to more than 30 d');
  });
});

describe('a sentence never fails where somebody waits for it', () => {
  test.each([
    [
      'nonsense names',
      '{$constructor} {$toString} {$__proto__} {$} {$no such}',
      {},
      'unknown unknown unknown unknown unknown',
    ],
    ['a cause another version gave', '{$cause}', { cause: 99 }, 'unknown'],
    ['a cause that is none', '{$cause}', { cause: 0 }, 'unknown'],
    ['a time of tomorrow', '{$duration}', { sinceMs: nowMs + d }, '0 s'],
    ['a forecast that is over', '{$early}', { earliestMs: nowMs - 1 }, '0 s'],
  ])('%s', (_, text, evidence, says) => {
    expect(say(text, evidence)).toBe(says);
  });
  test('a label without a sentence leaves it to the kind', () => {
    expect(sayAlarm(label(null), () => 'at {$value}', subject, { value: 1 }, nowMs)).toBe(
      'at 1.0 °C',
    );
  });
  test('steps are filled with names and facts, and nothing else', () => {
    const facts = { rest: { kind: 'duration', ms: 2 * h } } as const;
    const words = fillFacts('{$station}, {$rest}, {$value}', { ...subject, facts });
    expect(words).toBe('mounts-2/store-1, 2 h, unknown');
  });
});

describe('what stations say', () => {
  const sites = new Map(
    [...stationKinds.values()]
      .filter(({ name }) => name !== 'custom')
      .map((kind) => {
        const signals = kind.signals.map(
          ({ name, unit }) =>
            `${name}: { topic: ${name}, payload: { kind: plain }, unit: "${unit}", expect_every: 60 s }`,
        );
        const rules = kind.name === 'drum-mixer' ? 'blade-uncovered: { low: 300 mm }' : '';
        const station = `kind: ${kind.name}, container: drum-3`;
        return [
          kind.name,
          compiled(
            `mounts-2: { store-1: { ${station}, signals: { ${signals.join(', ')} }, rules: { ${rules} } } }`,
          ),
        ] as const;
      }),
  );
  const subjectOf = (station: string, card: RuleCard): Subject => {
    // A rule of marks alone is about no signal.
    const signal = sites.get(station)!.plan.signals.find(({ id }) => id === card.signal);
    return {
      ...subject,
      station: card.station,
      signal: card.signal,
      signals: card.signals,
      unit: signal?.unit ?? '1',
      digits: signal?.digits ?? null,
      facts: card.facts,
      container: card.hold?.item ?? null,
    };
  };
  const cardOf = (station: string, rule: string): RuleCard =>
    sites.get(station)!.rules.find(({ id }) => id === `mounts-2/store-1/${rule}`)!;

  test.each(sentences)('$station $rule: $says', ({ station, rule, seen, says }) => {
    const card = cardOf(station, rule);
    const kind = ruleKinds.get(card.kind)!;
    const words = sayAlarm(
      card.label,
      (evidence) => kind.sentence(evidence),
      subjectOf(station, card),
      seen,
      nowMs,
    );
    expect(words).toBe(says);
  });
  test('every rule of every station stands above, or in a scenario of its station', () => {
    const said = new Set(sentences.map(({ station, rule }) => `${station} ${rule}`));
    const told = scenarios.map(({ kind }) => kind);
    const silent = [...stationKinds.values()].filter(({ name }) => !told.includes(name));
    const all = silent.flatMap((kind) => kind.rules.map((rule) => `${kind.name} ${rule.name}`));
    expect(all.filter((name) => !said.has(name))).toEqual([]);
  });
  test('no text of any rule prints "unknown" or leaves a placeholder', () => {
    for (const [station, site] of sites)
      for (const card of site.rules) {
        const { consequence, steps, doNot, caution } = card.label;
        for (const text of [consequence, ...steps, ...doNot, caution]) {
          // One text has the word for its own reasons.
          const own = text.replace('whose cause is unknown', '');
          expect(fillFacts(own, subjectOf(station, card)), card.id).not.toMatch(/unknown|[{}$]/);
        }
      }
  });
});
