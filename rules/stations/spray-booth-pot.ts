/** The pressure pot: a vessel first, which its relief valve protects, and the feed of the guns second. */
import { fromSite } from './sheet-number.ts';
import { pressure } from './spray-booth-words.ts';
import {
  commonPractice,
  judgement,
  managedClass,
  plainClass,
  type RuleTemplate,
  tuning,
} from './station.ts';

const potOn = { signal: 'pot-on', low: '1 1' } as const;
const shared = {
  class: plainClass,
  priority: ['medium', 'medium'],
  hold: null,
} as const;

export const potPressure: RuleTemplate = {
  ...shared,
  name: 'pot-pressure',
  kind: 'deviation',
  signals: ['pot-pressure'],
  numbers: [
    fromSite('target', 'the pot’s pressure on the run card', 'rule pot-pressure: target'),
    { setting: 'below', value: '10 %', basis: commonPractice('film moves beyond it') },
    { setting: 'above', value: '10 %', basis: commonPractice('film moves beyond it') },
    tuning('on_delay', '10 s'),
    tuning('deadband', '2 %'),
  ],
  gate: potOn,
  respond: '5 min',
  hazard: 'feed',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: pot at {$value}, {$difference} from {$reference}, for {$duration}.',
    consequence: 'More or less material comes to the gun, and the film moves with it.',
    steps: [
      'Check the pot’s regulator and the header.',
      'Check the level, and the filter between pot and gun.',
      'Spray a panel before the next part.',
    ],
    doNot: ['open the pot under pressure', 'make up for it with the fluid knob'],
    caution: pressure,
  },
};

const vessel = {
  class: managedClass,
  hazard: 'vessel',
  hold: null,
} as const;
const vesselCaution =
  'The relief valve protects; this page is none. Work on the pot is for licensed people, vented and locked out.';

export const potRating: RuleTemplate = {
  ...vessel,
  name: 'pot-rating',
  kind: 'band',
  signals: ['pot-pressure'],
  numbers: [
    fromSite('high', '90 % of the pressure on the pot’s own plate', 'rule pot-rating: high'),
    tuning('on_delay', '2 s'),
    tuning('deadband', '0.1 bar'),
  ],
  fixed: { inclusive: true },
  gate: null,
  priority: ['high', 'high'],
  respond: '1 min',
  label: {
    word: 'WARNING',
    sentence: '{$station}: pot at {$value}, at or above {$limit}, close to what its plate allows.',
    consequence: 'A pot over its rating can burst, or throw its lid.',
    steps: [
      'Keep people away from the pot.',
      'Turn its air off at the shut-off valve that can be reached without standing by the pot.',
      'Call the maintainer: regulator and relief valve are seen to before it is used again.',
    ],
    doNot: [
      'open it under pressure',
      'plug or screw down the relief valve',
      'spray it empty first',
    ],
    caution: vesselCaution,
  },
};

export const reliefLate: RuleTemplate = {
  ...vessel,
  name: 'relief-late',
  kind: 'age',
  signals: [],
  marks: ['relief-tested'],
  numbers: [
    {
      setting: 'limit',
      value: '365 d',
      basis: judgement('once a year'),
      confirm: 'SITE',
      needs:
        'how often law and the maker ask for a test of the pot’s relief valve (rule relief-late: limit)',
    },
    { setting: 'early', value: '90 %', basis: judgement('time left to plan it') },
  ],
  gate: null,
  priority: ['low', 'low'],
  respond: '5 d',
  label: {
    word: 'WARNING',
    sentence:
      '{$station}: nobody wrote down a test of the pot’s relief valve for {$reached}; it is due every {$required}.',
    consequence: 'A relief valve that sticks is found when the pot needs it.',
    steps: [
      'Have it tested or replaced by a licensed person.',
      'Until then keep people away from the pot under pressure as the site’s rule says.',
      'Write down that it was tested.',
    ],
    doNot: ['test it by raising the pot’s pressure'],
    caution: vesselCaution,
  },
};

export const potUnstirred: RuleTemplate = {
  ...shared,
  name: 'pot-unstirred',
  kind: 'band',
  signals: ['pot-paddle'],
  numbers: [
    { setting: 'low', value: '1 /min', basis: judgement('slower than this the paddle stands') },
    tuning('on_delay', '10 min'),
  ],
  gate: { signal: 'pot-filled', low: '1 1' },
  respond: '30 min',
  hazard: 'settling',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: the pot’s paddle has stood since {$clock}, with the pot filled.',
    consequence: 'Solids settle in the pot; the guns draw thin material first, then thick.',
    steps: [
      'Check the air to the paddle’s motor and its regulator.',
      'Stop spraying until it turns; then let it stir, slowly, as the data sheet says.',
      'Spray a panel before parts are released.',
    ],
    doNot: ['start it fast', 'stir by blowing air in', 'use the speed of a drum agitator'],
    caution: `${pressure} Turning shaft: lock out before hands go near.`,
  },
};

export const dipTubeNear: RuleTemplate = {
  ...shared,
  name: 'dip-tube-near',
  kind: 'band',
  signals: ['pot-level'],
  numbers: [
    fromSite(
      'low',
      'the level at which the end of the dip tube is 30 mm under',
      'rule dip-tube-near: low',
    ),
    tuning('on_delay', '10 s'),
    tuning('deadband', '5 mm'),
  ],
  gate: potOn,
  respond: '5 min',
  hazard: 'bubbles',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: level in the pot at {$value}, below {$limit}; the dip tube soon draws air.',
    consequence: 'Air in the line spits at the gun and leaves bubbles in the film.',
    steps: [
      'Stop spraying and shut off the pot’s air before the tube is bare.',
      'Vent the pot by its instruction, then fill or change it.',
      'Purge until no bubble comes; measure a first part before release.',
    ],
    doNot: ['spray on to the last drop', 'open the pot under pressure'],
    caution: pressure,
  },
};
