/** Where residue waits unwatched: on the surfaces, in the bin, between stacked racks. */
import { firePlanFacts, planOverrules } from './fire-plan.ts';
import { judgement, managedClass, type RuleTemplate, tuning } from './station.ts';

const firePlan = { firePlan: true, facts: firePlanFacts } as const;

export const thick: RuleTemplate = {
  name: 'residue-thick',
  kind: 'band',
  signals: ['thickness'],
  numbers: [
    {
      setting: 'high',
      value: '1 mm',
      basis: judgement('thicker residue lights at a lower temperature'),
      confirm: 'SITE',
      needs: 'the thickness at which the site cleans this place (rule residue-thick: high)',
    },
  ],
  fixed: { inclusive: true },
  gate: null,
  class: managedClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'thickness',
  hold: null,
  label: {
    word: 'WARNING',
    sentence: '{$signal} at {$value}, at or above {$limit}: this place is due for cleaning.',
    consequence: 'Every further millimetre lowers the temperature at which it lights itself.',
    steps: [
      'Shut the oven down, let it cool and isolate it by local rules.',
      'Have it cleaned under the site’s permit with non-sparking tools, damp as the data sheet says.',
      'Take the waste out of the building at once; write down the thickness left.',
    ],
    doNot: ['clean it hot', 'grind it, or use a steel scraper'],
    caution: 'Friction, impact and sparks light cold residue too.',
  },
};

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
