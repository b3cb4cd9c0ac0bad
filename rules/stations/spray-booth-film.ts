/** The film the guns leave: of this coat, in all, and how it scatters. */

import type { Sheet } from '../material/read-sheet.ts';
import { written } from './sheet-number.ts';
import { hotParts } from './spray-booth-words.ts';
import {
  commonPractice,
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
} from './station.ts';

const shared = {
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hold: 'rack',
  named: ['coated'],
} as const;
const um = (mm: number | null): string | null => written(mm === null ? null : 1_000 * mm, 'um');

const limits = (
  of: string,
  keys: readonly [low: string, high: string],
  low: (sheet: Sheet) => number | null,
  high: (sheet: Sheet) => number | null,
): readonly TemplateNumber[] => [
  {
    setting: 'low',
    value: '12.7 um',
    basis: commonPractice('half a thousandth of an inch: less starves the bond'),
    confirm: 'DS',
    needs: `the least dry film of ${of} (${keys[0]} of the material sheet)`,
    fromSheet: (sheet) => um(low(sheet)),
  },
  {
    setting: 'high',
    value: '25.4 um',
    basis: commonPractice('one thousandth of an inch: from here to 50 µm it is thick, ask'),
    confirm: 'DS',
    needs: `the most dry film of ${of} (${keys[1]} of the material sheet)`,
    fromSheet: (sheet) => um(high(sheet)),
  },
  {
    setting: 'high_high',
    value: '50 um',
    basis: commonPractice('above this a film splits within itself'),
    // A sheet that allows more moves this end with it.
    fromSheet: (sheet) => {
      const most = high(sheet);
      return most !== null && most >= 0.05 ? um(1.25 * most) : null;
    },
  },
];

const label = {
  word: 'NOTICE',
  consequence:
    'A thin film starves the bond; a thick one is a question to ask, and a very thick one, above 50 µm most often, splits within itself.',
  steps: [
    'Repeat the reading, with the base read on the same bare surface.',
    'Tag every rack since the last good panel “hold”.',
    'Purge, check gun, cap and pot, spray a panel; the process engineer decides on what is held.',
  ],
  doNot: ['coat again over a dry film unasked', 'take a reading on an edge for the film'],
  caution: hotParts,
} as const;

export const film: RuleTemplate = {
  ...shared,
  name: 'film',
  kind: 'band',
  signals: ['film', 'film-from-wet'],
  numbers: limits(
    'one coat',
    ['film_low', 'film_high'],
    (sheet) => sheet.filmLowMm,
    (sheet) => sheet.filmHighMm,
  ),
  hazard: 'film',
  label: { ...label, sentence: '{$station}: film of the coat at {$value}; the limit is {$limit}.' },
};

export const filmEdge: RuleTemplate = {
  ...film,
  name: 'film-edge',
  signals: ['film-edge'],
  alike: { rule: 'film', only: ['low', 'high', 'high_high'] },
  label: {
    ...label,
    sentence: '{$station}: film towards the edge at {$value}; the limit is {$limit}.',
    consequence: 'Film that is thin towards the edge lifts there first; thick, it runs and splits.',
  },
};

export const filmTotal: RuleTemplate = {
  ...shared,
  name: 'film-total',
  kind: 'band',
  signals: ['film-total'],
  numbers: limits(
    'all coats together',
    ['film_total_low', 'film_total_high'],
    (sheet) => sheet.filmTotalLowMm,
    (sheet) => sheet.filmTotalHighMm,
  ),
  hazard: 'film',
  label: {
    ...label,
    sentence: '{$station}: film of all coats together at {$value}; the limit is {$limit}.',
  },
};

export const filmChart: RuleTemplate = {
  ...shared,
  name: 'film-chart',
  kind: 'chart',
  signals: ['film'],
  numbers: [
    {
      setting: 'learn_for',
      value: '10 d',
      basis: judgement('some thirty panels of three shifts, all of a line that runs well'),
    },
  ],
  hazard: 'film',
  label: {
    ...label,
    sentence:
      '{$station}: film of the panels, the last at {$value}, lies off its usual {$reference} in a way that is no chance.',
    consequence: 'Something has moved: gun, pot, solids or hand; the limits may be next.',
    steps: [
      'Repeat the panel, with the base read on the same bare surface.',
      'See what changed since it began: drum, needle, cap, pot, sprayer.',
      'Tag the racks since then “hold” where a second panel says the same.',
    ],
    doNot: ['turn the gun on one panel', 'learn the baseline anew to be rid of it'],
  },
};

export const panelLate: RuleTemplate = {
  ...shared,
  name: 'panel-late',
  kind: 'age',
  signals: [],
  marks: ['panel-taken'],
  numbers: [
    { setting: 'limit', value: '8 h', basis: commonPractice('once each shift') },
    { setting: 'early', value: '90 %', basis: judgement('time left to take it within the shift') },
  ],
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'film',
  hold: null,
  named: [],
  label: {
    ...label,
    sentence:
      '{$station}: nobody wrote down a film panel for {$reached}; one is due every {$required}.',
    consequence: 'If the next panel fails, all parts since the last one are in doubt.',
    steps: [
      'Spray a panel beside the parts and dry it with them.',
      'Read the base on the bare panel, then the coat, three places at least; enter both.',
      'Write down that the panel was taken.',
    ],
    doNot: ['enter a film that nobody read'],
  },
};
