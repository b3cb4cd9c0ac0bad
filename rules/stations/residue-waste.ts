/** Where residue waits unwatched once it is off the surfaces: in the bin, between stacked racks. */
import { firePlanFacts, planOverrules } from './fire-plan.ts';
import { judgement, managedClass, type RuleTemplate, tuning } from './station.ts';

const firePlan = { firePlan: true, facts: firePlanFacts } as const;

export const warmBin: RuleTemplate = {
  ...firePlan,
  name: 'bin-warm',
  kind: 'band',
  signals: ['bin-excess'],
  numbers: [
    { setting: 'high', value: '10 K', basis: judgement('waste that heats by itself') },
    tuning('on_delay', '5 min'),
    tuning('deadband', '2 K'),
  ],
  gate: null,
  class: managedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  hazard: 'waste',
  hold: null,
  label: {
    word: 'WARNING',
    sentence:
      '{$station}: the waste bin is {$value} warmer than the air around it, for {$duration}.',
    consequence: 'Scrapings, filters and wipes heat by themselves and burn hours later.',
    steps: [
      'Keep everyone clear; site fire plan{$plan}.',
      'Smoke, glow or smell: fire alarm now.',
      'Call EHS; hand over in person.',
    ],
    doNot: ['move a warm bin by hand', 'lift its lid, since air feeds fire'],
    caution: planOverrules,
  },
};

export const hotStack: RuleTemplate = {
  ...firePlan,
  name: 'stack-hot',
  kind: 'band',
  signals: ['stack'],
  numbers: [
    { setting: 'high', value: '50 Cel', basis: judgement('racks stacked hotter keep their heat') },
    tuning('on_delay', '5 min'),
    tuning('deadband', '3 K'),
  ],
  gate: null,
  class: managedClass,
  priority: ['medium', 'medium'],
  respond: '1 h',
  hazard: 'waste',
  hold: null,
  label: {
    word: 'WARNING',
    sentence: '{$station}: stacked racks at {$value}, above {$limit}, for {$duration}.',
    consequence: 'Residue between hot racks heats by itself and burns hours later.',
    steps: [
      'Keep everyone clear; smoke, glow or smell: fire alarm, site fire plan{$plan}.',
      'Stack no more; let the next racks cool apart, with air between them.',
      'Call EHS; they say when the stack may be taken apart.',
    ],
    doNot: ['pull a hot stack apart', 'blow air through it'],
    caution: planOverrules,
  },
};

export const unemptied: RuleTemplate = {
  name: 'bin-unemptied',
  kind: 'age',
  signals: [],
  marks: ['bin-emptied'],
  numbers: [
    {
      setting: 'limit',
      value: '8 h',
      basis: {
        mark: 'PUB',
        note: 'waste cans emptied daily or each shift',
        source: '29 CFR 1910.107(g), read as state text WAC 296-24-37013',
      },
      confirm: 'SITE',
      needs:
        'how long a shift is, after which the waste bin is emptied (rule bin-unemptied: limit)',
    },
    {
      setting: 'early',
      value: '90 %',
      basis: judgement('time left to empty it within the shift'),
    },
  ],
  gate: null,
  class: managedClass,
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'bin-full',
  hold: null,
  label: {
    word: 'WARNING',
    sentence: '{$station}: nobody wrote down for {$reached} that the waste bin was emptied.',
    consequence: 'Scrapings, filters and wipes heat by themselves and burn hours later.',
    steps: [
      'Smoke, glow or smell, or a bin warmer than the room: keep clear, fire alarm, site fire plan{$plan}.',
      'Cold: have it emptied out of the building, as residue waste by the data sheet.',
      'Write down that it was emptied, and that used filters went with it.',
    ],
    doNot: ['move a warm bin by hand', 'put other waste in that can light with it'],
    caution: planOverrules,
  },
  ...firePlan,
};
