/** The air of a spray booth: its exhaust, which protects people, its filters, its climate. */
import { fromSite } from './sheet-number.ts';
import { hotParts } from './spray-booth-words.ts';
import {
  commonPractice,
  judgement,
  managedClass,
  plainClass,
  type RuleTemplate,
  tuning,
} from './station.ts';

const spraying = { signal: 'spraying', low: '1 1' } as const;
const fanOn = { signal: 'fan-proof', low: '1 1' } as const;

const exhaust = {
  gate: spraying,
  class: managedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  hazard: 'airflow',
  hold: null,
} as const;

const exhaustLabel = {
  word: 'WARNING',
  consequence: 'Vapour and overspray stay with whoever sprays, and gather in the room.',
  steps: [
    'Stop spraying and make the guns safe.',
    'Leave the booth by the site’s rule; whoever feels unwell goes to fresh air.',
    'Have fan and filters seen to; spray again only once the flow is back and stays.',
  ],
  doNot: ['spray on with a door open', 'bridge the airflow switch'],
  caution:
    'The booth’s own interlock protects; this page is none. Fan, electrics and filters: lock out by local rules.',
} as const;

export const exhaustAirflow: RuleTemplate = {
  ...exhaust,
  name: 'exhaust-airflow',
  kind: 'band',
  signals: ['face-velocity-mean', 'face-velocity'],
  numbers: [
    {
      setting: 'low',
      value: '0.51 m/s',
      weakest: '0.30 m/s',
      basis: {
        mark: 'PUB',
        note: '100 ft/min on average over the face of a booth with dry filters, 60 ft/min (0.30 m/s) with electrostatic guns alone; elsewhere local law says',
        source: '29 CFR 1910.107(b)(5)(i), read as state text WAC 296-24-37003',
      },
      confirm: 'SITE',
      needs:
        'the least air speed that law and the booth’s maker ask for, and that this sensor’s reading was fitted to a survey of the face (rule exhaust-airflow: low)',
    },
    tuning('on_delay', '30 s'),
    tuning('deadband', '0.05 m/s'),
  ],
  label: {
    ...exhaustLabel,
    sentence:
      '{$station}: air through the booth at {$value}, below {$limit}, for {$duration} while spraying.',
  },
};

export const exhaustLost: RuleTemplate = {
  ...exhaust,
  name: 'exhaust-lost',
  kind: 'band',
  signals: ['fan-proof'],
  numbers: [
    { setting: 'low', value: '1 1', basis: judgement('the proof of flow is off') },
    tuning('on_delay', '10 s'),
  ],
  label: {
    ...exhaustLabel,
    sentence:
      '{$station}: the exhaust has not been proven to flow since {$clock}, for {$duration} while spraying.',
  },
};

export const surveyLate: RuleTemplate = {
  ...exhaust,
  name: 'survey-late',
  kind: 'age',
  signals: [],
  marks: ['velocity-surveyed'],
  numbers: [
    {
      setting: 'limit',
      value: '365 d',
      basis: commonPractice('once a year, and after each change of fan, filter or duct'),
    },
    { setting: 'early', value: '90 %', basis: judgement('time left to plan it') },
  ],
  gate: null,
  priority: ['low', 'low'],
  respond: '5 d',
  label: {
    ...exhaustLabel,
    sentence:
      '{$station}: nobody wrote down a survey of the air speed over the booth’s face for {$reached}; it is due every {$required}.',
    consequence: 'Nobody knows whether what the sensor reads still stands for the whole face.',
    steps: [
      'With nobody spraying, have the speed measured over the whole face, on a grid, with filters as they are used.',
      'Set the sensor’s reading against its average; enter both in the note.',
      'Write down that it was surveyed.',
    ],
    doNot: ['take one place for the average'],
  },
};

const filters = {
  kind: 'deviation',
  signals: ['filter-dp'],
  class: plainClass,
  respond: '8 h',
  hold: null,
} as const;
const clean = fromSite(
  'target',
  'the pressure drop of clean filters with the fan running',
  'rule filter-loaded: target',
);
const lockOut = 'Fan: lock out by local rules. Overspray burns: no sparks, no hot work.';

export const filterLoaded: RuleTemplate = {
  ...filters,
  name: 'filter-loaded',
  numbers: [
    clean,
    {
      setting: 'above',
      value: '125 Pa',
      basis: judgement('loaded dry filters'),
      confirm: 'DS',
      needs:
        'the pressure drop at which the filter’s data sheet changes it (rule filter-loaded: above)',
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '10 Pa'),
  ],
  gate: fanOn,
  priority: ['low', 'low'],
  hazard: 'filters',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: exhaust filters at {$value}, {$difference} above clean ones, for {$duration}.',
    consequence: 'The air slows, overspray blows back, and the load on the filters is fuel.',
    steps: [
      'Finish the part and stop spraying.',
      'With the fan locked out have the filters changed; bag them at once as residue waste, damp as the data sheet says.',
      'Write down the change, and the pressure drop of the clean ones.',
    ],
    doNot: ['knock them clean', 'scrape with steel', 'leave them in the building overnight'],
    caution: lockOut,
  },
};

export const filterMissing: RuleTemplate = {
  ...filters,
  name: 'filter-missing',
  alike: { rule: 'filter-loaded', only: ['target'] },
  numbers: [
    clean,
    {
      setting: 'below',
      value: '50 %',
      basis: judgement('with the fan running less than half of clean filters: missing or torn'),
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '5 %'),
  ],
  gate: fanOn,
  priority: ['medium', 'medium'],
  hazard: 'filters',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: exhaust filters at {$value} with the fan running, far below the {$reference} of clean ones.',
    consequence:
      'Overspray goes past the filters and dries in duct and fan, where nobody sees it burn.',
    steps: [
      'Stop spraying.',
      'With the fan locked out have it seen whether each filter is in its place and whole, and whether the taps are free.',
      'Tell EHS that overspray may lie in the duct; the residue station’s rules hold for it.',
    ],
    doNot: ['spray on without filters', 'take a low reading for a clean filter'],
    caution: lockOut,
  },
};

const climate = {
  kind: 'band',
  gate: spraying,
  // Noted and over by itself: it matters where it moves film, and film has its own rules.
  class: { ...plainClass, selfAcknowledging: true },
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'climate',
  hold: null,
} as const;
const climateLabel = {
  word: 'NOTICE',
  consequence:
    'The coat dries faster or slower than it was set up for; the film’s panels tell whether it matters.',
  steps: [
    'Measure a panel; compare its film and its look with the run card.',
    'Have the supply air seen to.',
    'Write down what was sprayed meanwhile.',
  ],
  doNot: ['thin the material to make up for it'],
  caution: hotParts,
} as const;

export const boothClimate: RuleTemplate = {
  ...climate,
  name: 'booth-climate',
  signals: ['air'],
  numbers: [
    { setting: 'low', value: '18 Cel', basis: commonPractice('where such coats are sprayed') },
    { setting: 'high', value: '30 Cel', basis: commonPractice('where such coats are sprayed') },
    tuning('on_delay', '30 min'),
    tuning('deadband', '1 K'),
  ],
  label: {
    ...climateLabel,
    sentence: '{$station}: booth air at {$value}, {$side} {$limit}, for {$duration} of spraying.',
  },
};

export const boothHumidity: RuleTemplate = {
  ...climate,
  name: 'booth-humidity',
  signals: ['humidity'],
  numbers: [
    { setting: 'low', value: '35 %', basis: commonPractice('where such coats are sprayed') },
    { setting: 'high', value: '70 %', basis: commonPractice('where such coats are sprayed') },
    tuning('on_delay', '30 min'),
    tuning('deadband', '3 %'),
  ],
  label: {
    ...climateLabel,
    sentence:
      '{$station}: booth humidity at {$value}, {$side} {$limit}, for {$duration} of spraying.',
  },
};
