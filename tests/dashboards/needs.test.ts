/** What rules wait for: each thing once, however many rules wait for it. */
import { expect, test } from 'vitest';
import { needsOf } from '../../dashboards/judge/needs.ts';
import { ruleName, ruleNames } from '../../dashboards/text/names.ts';

const limit =
  'the ignition limit that the site’s hazard review sets for this residue and its thickness (rule at-limit: high)';
const plan = 'the site’s fire plan: telephone and muster point (fire_plan)';
const rule = (
  name: string,
  needs: string[],
  readiness: 'armed' | 'armed-limit-unconfirmed' | 'not-armed' = 'armed-limit-unconfirmed',
) => ({ rule: `l/residue-1/${name}`, needs, readiness });

test('one thing that many rules wait for is said once, with the place where it is written', () => {
  const rules = [
    rule('early-floor', [limit, plan]),
    rule('act-floor', [limit, plan]),
    rule('thick', ['the thickness at which the site cleans (rule thick: high)']),
    rule('bin-warm', [plan], 'armed'),
    rule('hot', ['a number'], 'not-armed'),
  ];
  expect(needsOf(rules)).toEqual([
    { what: 'A number', wheres: [], arms: true, rules: ['l/residue-1/hot'] },
    {
      what: 'The ignition limit that the site’s hazard review sets for this residue and its thickness',
      wheres: [{ rule: 'at-limit', setting: 'high' }],
      arms: false,
      rules: ['l/residue-1/early-floor', 'l/residue-1/act-floor'],
    },
    {
      what: 'The site’s fire plan: telephone and muster point',
      wheres: [{ rule: null, setting: 'fire_plan' }],
      arms: false,
      rules: ['l/residue-1/early-floor', 'l/residue-1/act-floor', 'l/residue-1/bin-warm'],
    },
    {
      what: 'The thickness at which the site cleans',
      wheres: [{ rule: 'thick', setting: 'high' }],
      arms: false,
      rules: ['l/residue-1/thick'],
    },
  ]);
});

test('what arms one rule and confirms another is asked for once, with every place where it is written', () => {
  const cure = 'the cure time of the compound';
  const rules = [
    rule('slow', [`${cure} (rule slow: low)`]),
    rule('fast', [`${cure} (rule fast: high)`, `${cure} (rule slow: low)`], 'not-armed'),
  ];
  expect(needsOf(rules)).toEqual([
    {
      what: 'The cure time of the compound',
      wheres: [
        { rule: 'slow', setting: 'low' },
        { rule: 'fast', setting: 'high' },
      ],
      arms: true,
      rules: ['l/residue-1/slow', 'l/residue-1/fast'],
    },
  ]);
});

test.each([
  ['l/residue-1/act-filter', 'Close to the limit: filter'],
  ['l/residue-1/early-rack-7', 'Early warning: rack 7'],
  ['l/residue-1/at-limit-floor', 'At the limit: floor'],
  ['l/residue-1/approaching-floor', 'Nearing the limit: floor'],
  ['l/store-1/lost-wall', 'No reading: wall'],
  ['l/store-1/stuck-air', 'Reading stands still: air'],
  ['l/air-1/lost-pdp', 'No reading: pressure dew point'],
  ['l/air-1/separator-dp', 'Separator pressure drop'],
  ['l/mixer-3/agitator-fast', 'Agitator fast'],
  ['l/x/act', 'Close to the limit'],
])('%s is called “%s”', (id, name) => expect(ruleName(id)).toBe(name));

test('rules of one meaning are named once, with their places', () => {
  expect(
    ruleNames(['l/r/act-filter', 'l/r/act-floor', 'l/r/thick', 'l/r/at-limit-rack-7']),
  ).toEqual(['Close to the limit: filter, floor', 'Thick', 'At the limit: rack 7']);
});
