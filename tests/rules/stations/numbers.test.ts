/**
 * Every number of every station rule beside what the trade takes it to be. Common practice has no
 * published source; published ones are named in the rule's basis; the rest is engineering judgement.
 */
import { expect, test } from 'vitest';
import { stationKinds } from '#rules/stations/all.ts';
import { adhesiveStoreRows } from './numbers/adhesive-store.ts';
import { coatedStoreRows } from './numbers/coated-store.ts';
import { compressedAirRows } from './numbers/compressed-air.ts';
import { dipTankRows } from './numbers/dip-tank.ts';
import { drumMixerRows } from './numbers/drum-mixer.ts';
import { dryingOvenRows, primerPreBakeRows } from './numbers/ovens.ts';
import { preparationRows } from './numbers/preparation.ts';
import { pressRows } from './numbers/press.ts';
import type { Row } from './numbers/row.ts';
import { sprayBoothRows } from './numbers/spray-booth.ts';

const table: Readonly<Record<string, readonly Row[]>> = {
  'adhesive-store': adhesiveStoreRows,
  'drum-mixer': drumMixerRows,
  'coated-store': coatedStoreRows,
  'compressed-air': compressedAirRows,
  custom: [],
  'dip-tank': dipTankRows,
  'drying-oven': dryingOvenRows,
  preparation: preparationRows,
  'primer-pre-bake': primerPreBakeRows,
  press: pressRows,
  residue: [
    ['early', 'high', '92 Cel', 'EJ', 'SITE'],
    ['early', 'on_delay', '60 s', 'EJ', null],
    ['early', 'deadband', '3 K', 'EJ', null],
    ['approaching', 'high', '112 Cel', 'CP', 'SITE'],
    ['approaching', 'within', '30 min', 'EJ', null],
    ['approaching', 'window', '10 min', 'EJ', null],
    ['approaching', 'on_delay', '60 s', 'EJ', null],
    ['act', 'high', '102 Cel', 'EJ', 'SITE'],
    ['act', 'on_delay', '30 s', 'EJ', null],
    ['act', 'deadband', '3 K', 'EJ', null],
    ['act-thick', 'low', '10 K', 'EJ', null],
    ['act-thick', 'on_delay', '30 s', 'EJ', null],
    ['act-thick', 'deadband', '3 K', 'EJ', null],
    ['at-limit', 'high', '112 Cel', 'CP', 'SITE'],
    ['at-limit', 'on_delay', '5 s', 'EJ', null],
    ['self-heating', 'excess', '5 K', 'EJ', 'SITE'],
    ['self-heating', 'rise', '1 K', 'EJ', null],
    ['self-heating', 'rise_per', '1 min', 'EJ', null],
    ['self-heating', 'window', '5 min', 'EJ', null],
    ['self-heating', 'on_delay', '60 s', 'EJ', null],
    ['residue-thick', 'high', '1 mm', 'EJ', 'SITE'],
    ['cleaning-late', 'limit', '7 d', 'EJ', 'SITE'],
    ['cleaning-late', 'early', '80 %', 'EJ', null],
    ['bin-warm', 'high', '10 K', 'EJ', null],
    ['bin-warm', 'on_delay', '5 min', 'EJ', null],
    ['bin-warm', 'deadband', '2 K', 'EJ', null],
    ['stack-hot', 'high', '50 Cel', 'EJ', null],
    ['stack-hot', 'on_delay', '5 min', 'EJ', null],
    ['stack-hot', 'deadband', '3 K', 'EJ', null],
    ['bin-unemptied', 'limit', '8 h', 'PUB', 'SITE'],
    ['bin-unemptied', 'early', '90 %', 'EJ', null],
  ],
  'spray-booth': sprayBoothRows,
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
  ['adhesive-store', 'freeze-suspected-probe', 'medium', '8 h', true, 'container'],
  ['adhesive-store', 'freeze-seen', 'medium', '8 h', true, 'container'],
  ['adhesive-store', 'freight-out-of-range', 'low', '1 h', false, 'container'],
  ['adhesive-store', 'freight-unlogged', 'low', '1 h', false, 'container'],
  ['adhesive-store', 'shelf-life', 'low', '8 h', false, 'container'],
  ['adhesive-store', 'warm-store', 'low', '8 h', false, null],
  ['drum-mixer', 'agitator-stopped', 'medium', '30 min', false, null],
  ['drum-mixer', 'agitator-rest', 'high', '30 min', false, null],
  ['drum-mixer', 'agitator-fast', 'medium', '10 min', false, null],
  ['drum-mixer', 'agitator-slow', 'low', '1 h', false, null],
  ['drum-mixer', 'blade-uncovered', 'low', '30 min', false, null],
  ['drum-mixer', 'drawn-unmixed', 'medium', '1 min', false, 'container'],
  ['coated-store', 'layover', 'low', '8 h', false, 'rack'],
  ['coated-store', 'humid', 'low', '8 h', false, null],
  ['coated-store', 'dew-margin', 'low', '8 h', false, null],
  ['coated-store', 'cold-into-warm', 'medium', '30 min', false, null],
  ['coated-store', 'hot-store', 'low', '8 h', false, null],
  ['compressed-air', 'air-dew-point', 'medium', '1 h', false, null],
  ['compressed-air', 'pipe-margin', 'medium', '1 h', false, null],
  ['compressed-air', 'blotter-failed', 'medium', '10 min', false, 'lot'],
  ['compressed-air', 'blotter-late', 'low', '1 h', false, null],
  ['compressed-air', 'header-low', 'medium', '15 min', false, null],
  ['compressed-air', 'separator-dp', 'low', '8 h', false, null],
  ['compressed-air', 'separator-round-late', 'low', '8 h', false, null],
  ['dip-tank', 'bath-temperature', 'low', '1 h', false, null],
  ['dip-tank', 'bath-solids', 'medium', '30 min', false, null],
  ['dip-tank', 'bath-solids-density', 'medium', '30 min', false, null],
  ['dip-tank', 'film', 'medium', '30 min', false, 'rack'],
  ['dip-tank', 'first-off-missing', 'low', '30 min', false, null],
  ['dip-tank', 'bath-ph', 'low', '8 h', false, null],
  ['dip-tank', 'bath-foam', 'medium', '30 min', false, null],
  ['dip-tank', 'make-up-water', 'low', '8 h', false, null],
  ['dip-tank', 'weir-fall', 'medium', '15 min', false, null],
  ['dip-tank', 'circulation-lost', 'medium', '30 min', false, null],
  ['dip-tank', 'filter-loaded', 'low', '8 h', false, null],
  ['dip-tank', 'filter-torn', 'medium', '8 h', false, null],
  ['dip-tank', 'withdrawal', 'medium', '10 min', false, 'rack'],
  ['drying-oven', 'under-dried', 'medium', '10 min', false, 'rack'],
  ['drying-oven', 'over-baked', 'medium', '30 min', false, 'rack'],
  ['drying-oven', 'over-dosed', 'medium', '30 min', false, 'rack'],
  ['drying-oven', 'conveyor-stopped', 'high', '5 min', false, 'rack'],
  ['drying-oven', 'exhaust-lost', 'high', '1 min', false, null],
  ['drying-oven', 'exhaust-weak', 'high', '1 min', false, null],
  ['drying-oven', 'zone-1-high', 'medium', '10 min', false, null],
  ['drying-oven', 'sensors-disagree-1', 'medium', '8 h', false, null],
  ['drying-oven', 'profile-late', 'low', '5 d', false, null],
  ['preparation', 'blast-to-coat', 'low', '30 min', false, 'rack'],
  ['preparation', 'conversion-to-coat', 'low', '1 h', false, 'rack'],
  ['preparation', 'rust-bloom', 'medium', '10 min', false, 'rack'],
  ['preparation', 'water-break', 'medium', '10 min', false, 'rack'],
  ['preparation', 'media-oily', 'medium', '10 min', false, 'rack'],
  ['preparation', 'blast-profile', 'medium', '30 min', false, 'rack'],
  ['preparation', 'blast-pressure', 'low', '30 min', false, null],
  ['preparation', 'phosphate-weight', 'medium', '30 min', false, 'rack'],
  ['preparation', 'rinse-conductivity', 'medium', '15 min', false, null],
  ['preparation', 'make-up-water', 'low', '1 h', false, null],
  ['preparation', 'dew-margin', 'low', '1 h', false, null],
  ['preparation', 'shift-check-late', 'low', '1 h', false, null],
  ['primer-pre-bake', 'under-baked', 'medium', '10 min', false, 'rack'],
  ['primer-pre-bake', 'over-baked', 'medium', '30 min', false, 'rack'],
  ['primer-pre-bake', 'cover-too-soon', 'low', '8 h', false, 'rack'],
  ['primer-pre-bake', 'cover-too-late', 'low', '8 h', false, 'rack'],
  ['primer-pre-bake', 'zone-off-1', 'low', '1 h', false, null],
  ['primer-pre-bake', 'zones-apart', 'low', '1 h', false, null],
  ['press', 'mould-cold-1', 'medium', '2 min', false, 'shot'],
  ['press', 'mould-hot-4', 'medium', '2 min', false, 'shot'],
  ['press', 'cavity-spread', 'low', '8 h', false, null],
  ['press', 'insert-waits', 'medium', '1 min', false, 'shot'],
  ['press', 'cure-short', 'medium', '10 min', false, 'shot'],
  ['press', 'pressure-low', 'medium', '10 min', false, 'shot'],
  ['residue', 'early', 'medium', '15 min', false, null],
  ['residue', 'approaching', 'medium', '15 min', false, null],
  ['residue', 'act', 'high', '1 min', false, null],
  ['residue', 'act-thick', 'high', '1 min', false, null],
  ['residue', 'at-limit', 'high', '1 min', true, null],
  ['residue', 'self-heating', 'high', '1 min', true, null],
  ['residue', 'residue-thick', 'low', '8 h', false, null],
  ['residue', 'cleaning-late', 'low', '8 h', false, null],
  ['residue', 'bin-unemptied', 'low', '1 h', false, null],
  ['residue', 'bin-warm', 'high', '1 min', false, null],
  ['residue', 'stack-hot', 'medium', '1 h', false, null],
  ['spray-booth', 'exhaust-airflow', 'high', '1 min', false, null],
  ['spray-booth', 'exhaust-lost', 'high', '1 min', false, null],
  ['spray-booth', 'filter-loaded', 'low', '8 h', false, null],
  ['spray-booth', 'filter-missing', 'medium', '8 h', false, null],
  ['spray-booth', 'pot-pressure', 'medium', '5 min', false, null],
  ['spray-booth', 'pot-rating', 'high', '1 min', false, null],
  ['spray-booth', 'pot-unstirred', 'medium', '30 min', false, null],
  ['spray-booth', 'dip-tube-near', 'medium', '5 min', false, null],
  ['spray-booth', 'atomising-air', 'medium', '10 min', false, null],
  ['spray-booth', 'part-at-gun', 'medium', '10 min', false, 'rack'],
  ['spray-booth', 'film', 'medium', '30 min', false, 'rack'],
  ['spray-booth', 'film-total', 'medium', '30 min', false, 'rack'],
  ['spray-booth', 'film-chart', 'medium', '30 min', false, 'rack'],
  ['spray-booth', 'flush-late', 'low', '30 min', false, null],
  ['spray-booth', 'tip-idle', 'low', '30 min', false, null],
  ['spray-booth', 'first-off-missing', 'medium', '10 min', false, 'rack'],
  ['spray-booth', 'booth-climate', 'low', '8 h', false, null],
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
  expect(rules.length).toBe(3);
  for (const rule of rules) expect(rule.fixed).toMatchObject({ inclusive: true });
});

test('residue is highly managed throughout, and DANGER is one alarm alone', () => {
  const rules = stationKinds.get('residue')!.rules;
  expect(rules.map((rule) => rule.class.highlyManaged)).toEqual(rules.map(() => true));
  const danger = [...stationKinds.values()].flatMap((kind) =>
    kind.rules.filter((rule) => rule.label.word === 'DANGER').map((rule) => rule.name),
  );
  expect(danger).toEqual(['self-heating']);
});

test('what may mean fire names the fire plan in its first steps', () => {
  const rules = [...stationKinds.values()].flatMap((kind) => kind.rules);
  for (const rule of rules)
    expect(
      rule.label.steps.some((step) => step.includes('{$plan}')),
      rule.name,
    ).toBe(rule.firePlan === true);
  expect(rules.filter((rule) => rule.firePlan).map((rule) => rule.name)).toEqual([
    'conveyor-stopped',
    'zone-1-high',
    'zone-2-high',
    'zone-3-high',
    'conveyor-stopped',
    'early',
    'approaching',
    'act',
    'act-thick',
    'at-limit',
    'self-heating',
    'bin-warm',
    'stack-hot',
    'bin-unemptied',
  ]);
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

test('no oven carries a temperature of cure: that belongs to the press', () => {
  for (const name of ['drying-oven', 'primer-pre-bake'])
    for (const { name: rule, numbers } of stationKinds.get(name)!.rules)
      for (const { setting, value } of numbers) {
        const read = /^(\d+) Cel$/.exec(value ?? '');
        expect(Number(read?.[1] ?? 0), `${name} ${rule} ${setting}`).toBeLessThan(120);
      }
});
