/**
 * The adhesive store: a water-carried dispersion that freezing breaks and heat ages.
 *
 * The coldest place is judged, not the air: a pail of plain water by the coldest outer wall
 * follows a container, where air only swings with the doors. An alarm may clear; a container that
 * may have frozen may not, so `freeze-suspected` latches and sets a hold that only quality lifts.
 */
import type { Label } from '../alarm/label.ts';
import {
  commonPractice,
  type Given,
  judgement,
  plainClass,
  type RuleTemplate,
  type StationKind,
  type TemplateNumber,
  tuning,
} from './station.ts';

const pail = 'Pt100 in a closed pail of plain water';

const celsius = (value: number): string => `${Number(value.toFixed(3))} Cel`;
const warnAboveLow = 2;
const warnBelowHigh = 5;

/** Where containers belong: between the first limits of the cold and the warm rule. */
const facts = (given: Given): Record<string, string> => ({
  low: given.number('cold-adhesive', 'low') ?? 'the low limit',
  high: given.number('warm-store', 'high') ?? 'the high limit',
});

const storageLimit = 'the storage temperatures of the material’s data sheet';

const coldNumbers: readonly TemplateNumber[] = [
  {
    setting: 'low',
    value: '7 Cel',
    basis: commonPractice('2 K above the least storage temperature'),
    confirm: 'DS',
    needs: storageLimit,
    fromSheet: (sheet) =>
      sheet.storageLowC === null ? null : celsius(sheet.storageLowC + warnAboveLow),
  },
  {
    setting: 'low_low',
    value: '5 Cel',
    basis: commonPractice('least storage temperature of waterborne adhesives'),
    confirm: 'DS',
    needs: storageLimit,
    fromSheet: (sheet) => (sheet.storageLowC === null ? null : celsius(sheet.storageLowC)),
  },
  tuning('on_delay', '10 min'),
  tuning('deadband', '1 K'),
];

const liftCaution = 'Full drums crush. Use the drum lift and the site’s lifting rules.';
const neverWarm = 'warm it with flame, heat gun, band heater, steam or oven';

const coldLabel: Label = {
  word: 'NOTICE',
  sentence: '{$signal} at {$value}, below {$limit}, for {$duration}.',
  consequence:
    'Cold spoils the adhesive: its solids clump and do not mix in again. A container freezes first at its wall.',
  steps: [
    'Measure in the adhesive of the coldest container and enter the reading.',
    'Close doors and gates; see whether the heating runs.',
    'Move containers off the floor and away from the outer wall, to a place between {$low} and {$high}; mark any you doubt and put them on hold.',
  ],
  doNot: [neverWarm, 'stir adhesive that may have frozen'],
  caution: liftCaution,
};

const cold = (name: string, signal: string, alike?: string): RuleTemplate => ({
  name,
  kind: 'band',
  signals: [signal],
  ...(alike === undefined ? {} : { alike: { rule: alike } }),
  numbers: coldNumbers,
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 h',
  hazard: 'freezing',
  hold: null,
  label: coldLabel,
  facts,
});

const approaching: RuleTemplate = {
  name: 'freeze-approaching',
  kind: 'approach',
  signals: ['wall', 'bottom'],
  numbers: [
    {
      setting: 'low',
      value: '2 Cel',
      basis: judgement('above freezing, by as much as a sensor and a container may differ'),
    },
    {
      setting: 'within',
      value: '2 h',
      basis: judgement('time to come in and move the containers'),
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['high', 'high'],
  respond: '2 h',
  hazard: 'freezing',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, falling {$slope} an hour; {$limit} in {$early} to {$late} if it goes on so.',
    consequence: 'Freezing breaks the dispersion: the solids clump. Thawing does not mend it.',
    steps: [
      'Close doors and gates; see whether the heating runs.',
      'Move the coldest containers to a place between {$low} and {$high}.',
      'Measure in the adhesive and enter the reading.',
    ],
    doNot: [neverWarm, 'use any that may have frozen: mark it, hold it'],
    caution: liftCaution,
  },
  facts,
};

const frozen = (name: string, signal: string, alike?: string): RuleTemplate => ({
  name,
  kind: 'band',
  signals: [signal],
  ...(alike === undefined ? {} : { alike: { rule: alike } }),
  numbers: [
    {
      setting: 'low',
      value: '1 Cel',
      basis: judgement(
        'at or below this the adhesive at the wall may have frozen; what is dissolved in it is not counted on',
      ),
    },
    tuning('on_delay', '10 min'),
  ],
  fixed: { inclusive: true },
  gate: null,
  class: { latching: true, selfAcknowledging: false, highlyManaged: false },
  priority: ['medium', 'medium'],
  respond: '8 h',
  hazard: 'freezing',
  hold: 'container',
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, at or below {$limit}, for {$duration}; {$container} may have frozen.',
    consequence: 'Adhesive that froze is broken for good, though it may look right once thawed.',
    steps: [
      'Tag every container that stood there.',
      'Move them to a hold area between {$low} and {$high}.',
      'Ask quality for a test; only quality lifts the hold.',
    ],
    doNot: ['thaw it and use it', neverWarm],
    caution: liftCaution,
  },
  facts,
});

const warm: RuleTemplate = {
  name: 'warm-store',
  kind: 'band',
  signals: ['air', 'wall', 'bottom'],
  numbers: [
    {
      setting: 'high',
      value: '30 Cel',
      basis: commonPractice('5 K below the highest storage temperature'),
      confirm: 'DS',
      needs: storageLimit,
      fromSheet: (sheet) =>
        sheet.storageHighC === null ? null : celsius(sheet.storageHighC - warnBelowHigh),
    },
    {
      setting: 'high_high',
      value: '35 Cel',
      basis: commonPractice('highest storage temperature of waterborne adhesives'),
      confirm: 'DS',
      needs: storageLimit,
      fromSheet: (sheet) => (sheet.storageHighC === null ? null : celsius(sheet.storageHighC)),
    },
    tuning('on_delay', '1 h'),
    tuning('deadband', '1 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'heat',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$signal} at {$value}, above {$limit}, for {$duration}.',
    consequence: 'Heat ages the adhesive: it thickens or gels, and its shelf life shortens.',
    steps: [
      'Confirm with a second thermometer at the containers.',
      'Cool the store: shade, ventilation, doors against the sun.',
      'Have the process engineer work out the use-by date anew.',
    ],
    doNot: ['extend a date'],
    caution: liftCaution,
  },
  facts,
};

export const adhesiveStore: StationKind = {
  name: 'adhesive-store',
  summary: 'Where containers of adhesive and primer wait, from the dock to the mixer.',
  signals: [
    {
      name: 'wall',
      unit: 'Cel',
      resolution: 0.1,
      range: ['-40 Cel', '85 Cel'],
      meaning: 'temperature at the coldest outer wall',
      where: `${pail}, by the coldest outer wall, near the floor`,
      stuckAfter: '24 h',
    },
    {
      name: 'bottom',
      unit: 'Cel',
      resolution: 0.1,
      range: ['-40 Cel', '85 Cel'],
      meaning: 'temperature at the floor, where containers stand coldest',
      where: `${pail}, on the floor or lowest shelf`,
      stuckAfter: '24 h',
    },
    {
      name: 'air',
      unit: 'Cel',
      resolution: 0.1,
      range: ['-40 Cel', '85 Cel'],
      meaning: 'air temperature of the store',
      where: 'at the height of the containers, out of draught and sun',
      stuckAfter: '12 h',
    },
    {
      name: 'humidity',
      unit: '%',
      resolution: 0.1,
      range: ['0 %', '100 %'],
      meaning: 'relative humidity of the air',
      where: 'beside the air temperature',
      stuckAfter: '12 h',
    },
  ],
  derived: [
    {
      name: 'air-dew-point',
      kind: 'dew-point',
      inputs: { temperature: 'air', humidity: 'humidity' },
      meaning: 'dew point of the air: water settles on anything colder',
    },
  ],
  hazards: [
    {
      id: 'freezing',
      words: 'Adhesive freezes, first at the container’s wall, and is broken for good.',
      people: false,
      byHand: null,
    },
    {
      id: 'heat',
      words: 'Adhesive ages in the heat and gels.',
      people: false,
      byHand: null,
    },
    {
      id: 'freight',
      words: 'A delivery froze or overheated on the way.',
      people: false,
      byHand:
        'at the dock, read the temperature logger that came with the delivery and measure a drum at its wall',
    },
    {
      id: 'shelf-life',
      words: 'Adhesive is used past its date.',
      people: false,
      byHand: 'check the date at each container change; oldest first',
    },
  ],
  rules: [
    cold('cold-adhesive', 'wall'),
    cold('cold-adhesive-bottom', 'bottom', 'cold-adhesive'),
    approaching,
    frozen('freeze-suspected', 'wall'),
    frozen('freeze-suspected-bottom', 'bottom', 'freeze-suspected'),
    warm,
  ],
};
