/**
 * Every number of every station rule beside what the trade takes it to be. Common practice has no
 * published source; published ones are named in the rule's basis; the rest is engineering judgement.
 */
import { expect, test } from 'vitest';
import { stationKinds } from '#rules/stations/all.ts';
import type { Mark } from '#rules/stations/station.ts';

type Row = readonly [
  rule: string,
  setting: string,
  value: string | null,
  mark: Mark,
  confirmedBy: 'DS' | 'SITE' | null,
];

const table: Readonly<Record<string, readonly Row[]>> = {
  'adhesive-store': [
    ['cold-adhesive', 'low', '7 Cel', 'CP', 'DS'],
    ['cold-adhesive', 'low_low', '5 Cel', 'CP', 'DS'],
    ['cold-adhesive', 'on_delay', '10 min', 'EJ', null],
    ['cold-adhesive', 'deadband', '1 K', 'EJ', null],
    ['cold-adhesive-bottom', 'low', '7 Cel', 'CP', 'DS'],
    ['cold-adhesive-bottom', 'low_low', '5 Cel', 'CP', 'DS'],
    ['cold-adhesive-bottom', 'on_delay', '10 min', 'EJ', null],
    ['cold-adhesive-bottom', 'deadband', '1 K', 'EJ', null],
    ['freeze-approaching', 'low', '2 Cel', 'EJ', null],
    ['freeze-approaching', 'within', '2 h', 'EJ', null],
    ['freeze-suspected', 'low', '1 Cel', 'EJ', null],
    ['freeze-suspected', 'on_delay', '10 min', 'EJ', null],
    ['freeze-suspected-bottom', 'low', '1 Cel', 'EJ', null],
    ['freeze-suspected-bottom', 'on_delay', '10 min', 'EJ', null],
    ['warm-store', 'high', '30 Cel', 'CP', 'DS'],
    ['warm-store', 'high_high', '35 Cel', 'CP', 'DS'],
    ['warm-store', 'on_delay', '1 h', 'EJ', null],
    ['warm-store', 'deadband', '1 K', 'EJ', null],
  ],
  'drum-mixer': [
    ['agitator-stopped', 'low', '5 /min', 'EJ', null],
    ['agitator-stopped', 'on_delay', '10 min', 'EJ', null],
    ['agitator-rest', 'low', '5 /min', 'EJ', null],
    // Half of a longest rest of 2 h.
    ['agitator-rest', 'on_delay', '1 h', 'EJ', 'DS'],
    ['agitator-fast', 'high', '30 /min', 'CP', null],
    ['agitator-fast', 'on_delay', '60 s', 'EJ', null],
    ['agitator-fast', 'deadband', '2 /min', 'EJ', null],
    ['agitator-slow', 'low', '20 /min', 'CP', null],
    ['agitator-slow', 'on_delay', '5 min', 'EJ', null],
    ['agitator-slow', 'deadband', '2 /min', 'EJ', null],
    ['blade-uncovered', 'low', null, 'SITE', 'SITE'],
    ['blade-uncovered', 'on_delay', '5 min', 'EJ', null],
  ],
  'compressed-air': [
    ['air-dew-point', 'high', '5 Cel', 'EJ', null],
    ['air-dew-point', 'on_delay', '10 min', 'EJ', null],
    ['air-dew-point', 'deadband', '1 K', 'EJ', null],
    ['pipe-margin', 'low', '10 K', 'PUB', null],
    ['pipe-margin', 'on_delay', '10 min', 'EJ', null],
    ['pipe-margin', 'deadband', '1 K', 'EJ', null],
    ['header-low', 'low', '5.5 bar', 'EJ', 'SITE'],
    ['header-low', 'on_delay', '30 s', 'EJ', null],
    ['header-low', 'deadband', '0.2 bar', 'EJ', null],
    ['separator-dp', 'high', '0.35 bar', 'EJ', 'DS'],
    ['separator-dp', 'on_delay', '5 min', 'EJ', null],
    ['separator-dp', 'deadband', '0.02 bar', 'EJ', null],
  ],
  custom: [],
  'dip-tank': [],
  'drying-oven': [],
  residue: [],
};

test.each([...stationKinds.values()].map((kind) => [kind.name, kind] as const))(
  'the numbers of %s, all of them, with their marks',
  (name, kind) => {
    const rows = kind.rules.flatMap((rule) =>
      rule.numbers.map(
        (number): Row => [
          rule.name,
          number.setting,
          number.value,
          number.basis.mark,
          number.confirm ?? null,
        ],
      ),
    );
    expect(rows).toEqual(table[name]);
  },
);

/** [rule, priority, time to act, latching, container hold] */
const terms = [
  ['adhesive-store', 'cold-adhesive', 'medium', '1 h', false, null],
  ['adhesive-store', 'freeze-approaching', 'high', '2 h', false, null],
  ['adhesive-store', 'freeze-suspected', 'medium', '8 h', true, 'container'],
  ['adhesive-store', 'freeze-suspected-bottom', 'medium', '8 h', true, 'container'],
  ['adhesive-store', 'warm-store', 'low', '8 h', false, null],
  ['drum-mixer', 'agitator-stopped', 'medium', '30 min', false, null],
  ['drum-mixer', 'agitator-rest', 'high', '30 min', false, null],
  ['drum-mixer', 'agitator-fast', 'medium', '10 min', false, null],
  ['drum-mixer', 'agitator-slow', 'low', '1 h', false, null],
  ['drum-mixer', 'blade-uncovered', 'low', '30 min', false, null],
  ['compressed-air', 'air-dew-point', 'medium', '1 h', false, null],
  ['compressed-air', 'pipe-margin', 'medium', '1 h', false, null],
  ['compressed-air', 'header-low', 'medium', '15 min', false, null],
  ['compressed-air', 'separator-dp', 'low', '8 h', false, null],
] as const;

test.each(terms)('%s %s: %s, to act within %s', (kind, name, priority, respond, latching, hold) => {
  const rule = stationKinds.get(kind)?.rules.find((candidate) => candidate.name === name);
  expect(rule?.priority[0]).toBe(priority);
  expect(rule?.respond).toBe(respond);
  expect(rule?.class.latching).toBe(latching);
  expect(rule?.hold).toBe(hold);
});

test('freeze is suspected at its limit too, not only below', () => {
  const store = stationKinds.get('adhesive-store');
  const rules = store?.rules.filter((rule) => rule.name.startsWith('freeze-suspected')) ?? [];
  expect(rules.map((rule) => rule.fixed)).toEqual([{ inclusive: true }, { inclusive: true }]);
});

test('a published number names its source, and nothing else claims one', () => {
  for (const kind of stationKinds.values())
    for (const rule of kind.rules)
      for (const { basis } of rule.numbers)
        expect(basis.source !== null, `${rule.name}: ${basis.note}`).toBe(basis.mark === 'PUB');
});

test('what is to be confirmed says what to enter', () => {
  for (const kind of stationKinds.values())
    for (const rule of kind.rules)
      for (const number of rule.numbers)
        if (number.confirm !== undefined || number.value === null)
          expect(number.needs, `${rule.name} ${number.setting}`).toBeTypeOf('string');
});
