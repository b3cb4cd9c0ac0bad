/**
 * Cold: told while there is time, told when it is there, and never forgotten once it froze.
 *
 * The wall comes first, in a container as in the store. What may have frozen is held container by
 * container, everything that stood there; the alarm may clear, the hold is lifted by quality alone.
 */
import type { Label } from '../alarm/label.ts';
import { celsius } from './sheet-number.ts';
import {
  commonPractice,
  type Given,
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
  tuning,
} from './station.ts';

const warnAboveLow = 2;

/** Where containers belong: between the first limits of the cold and the warm rule. */
export const storeFacts = (given: Given): Record<string, string> => ({
  low: given.number('cold-adhesive', 'low') ?? 'the low limit',
  high: given.number('warm-store', 'high') ?? 'the high limit',
});

export const storageLimit = 'the storage temperatures of the material’s data sheet';
export const liftCaution = 'Full drums crush. Use the drum lift and the site’s lifting rules.';
const neverWarm = 'warm it with flame, heat gun, band heater, steam or oven';

const coldNumbers: readonly TemplateNumber[] = [
  {
    setting: 'low',
    value: '7 Cel',
    basis: commonPractice('2 K above the least storage temperature'),
    confirm: 'DS',
    needs: storageLimit,
    fromSheet: (sheet) =>
      celsius(sheet.storageLowC === null ? null : sheet.storageLowC + warnAboveLow),
  },
  {
    setting: 'low_low',
    value: '5 Cel',
    basis: commonPractice('least storage temperature of waterborne adhesives'),
    confirm: 'DS',
    needs: storageLimit,
    fromSheet: (sheet) => celsius(sheet.storageLowC),
  },
  tuning('on_delay', '10 min'),
  tuning('deadband', '1 K'),
];

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

const cold = (name: string, signals: readonly string[], alike?: string): RuleTemplate => ({
  name,
  kind: 'band',
  signals,
  ...(alike === undefined ? {} : { alike: { rule: alike } }),
  numbers: coldNumbers,
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 h',
  hazard: 'freezing',
  hold: null,
  label: coldLabel,
  facts: storeFacts,
});

const coldProbe: RuleTemplate = {
  ...cold('cold-adhesive-probe', ['probe-wall']),
  alike: { rule: 'cold-adhesive', only: ['low', 'low_low'] },
  numbers: coldNumbers.filter(({ setting }) => setting.startsWith('low')),
  label: {
    ...coldLabel,
    sentence: '{$station}: adhesive measured at {$value} at its container’s wall, below {$limit}.',
  },
};

const approaching: RuleTemplate = {
  name: 'freeze-approaching',
  kind: 'approach',
  signals: ['wall', 'bottom', 'drum-wall'],
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
    doNot: [neverWarm, 'use any that may have frozen'],
    caution: liftCaution,
  },
  facts: storeFacts,
};

const freezeLow: TemplateNumber = {
  setting: 'low',
  value: '1 Cel',
  basis: judgement(
    'at or below this the adhesive at the wall may have frozen; what is dissolved in it is not counted on',
  ),
};

const moveToHold = [
  'Move them to a hold area between {$low} and {$high}.',
  'Ask quality for a test; only quality lifts a hold.',
] as const;

const frozen: Omit<RuleTemplate, 'name' | 'signals' | 'numbers'> & { readonly label: Label } = {
  kind: 'present',
  gate: null,
  class: { ...plainClass, latching: true },
  priority: ['medium', 'medium'],
  respond: '8 h',
  hazard: 'freezing',
  hold: 'container',
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, at or below {$limit}, for {$duration}; what stands there may have frozen and is on hold.',
    consequence: 'Adhesive that froze is broken for good, though it may look right once thawed.',
    steps: ['Tag every container that stood there.', ...moveToHold],
    doNot: ['use adhesive that may have frozen, thawed or not', neverWarm],
    caution: liftCaution,
  },
  facts: storeFacts,
};

const suspected: RuleTemplate = {
  ...frozen,
  name: 'freeze-suspected',
  signals: ['wall'],
  marks: ['put-away', 'taken'],
  numbers: [freezeLow, tuning('on_delay', '10 min')],
  fixed: { inclusive: true },
};

const suspectedBottom: RuleTemplate = {
  ...suspected,
  name: 'freeze-suspected-bottom',
  signals: ['bottom'],
  alike: { rule: 'freeze-suspected' },
};

/** Of the one container that somebody looked over. */
const ofOne = { ...frozen, marks: ['checked'], fixed: { inclusive: true, last_only: true } };

const suspectedProbe: RuleTemplate = {
  ...ofOne,
  name: 'freeze-suspected-probe',
  signals: ['probe-wall'],
  alike: { rule: 'freeze-suspected', only: ['low'] },
  numbers: [freezeLow],
  label: {
    ...frozen.label,
    sentence:
      '{$station}: adhesive measured at {$value} at its container’s wall, at or below {$limit}; it may have frozen and is on hold.',
    steps: ['Tag the container; measure its neighbours and enter each reading.', ...moveToHold],
  },
};

const seen: RuleTemplate = {
  ...ofOne,
  name: 'freeze-seen',
  signals: ['seen-frozen'],
  numbers: [{ setting: 'high', value: '1 1', basis: judgement('somebody saw it') }],
  label: {
    ...frozen.label,
    sentence:
      '{$station}: ice, grains or lumps were seen in a container at {$clock}; it is on hold.',
    steps: ['Tag the container; look over its neighbours and enter what you see.', ...moveToHold],
  },
};

export const adhesiveStoreCold: readonly RuleTemplate[] = [
  cold('cold-adhesive', ['wall', 'drum-wall']),
  cold('cold-adhesive-bottom', ['bottom'], 'cold-adhesive'),
  coldProbe,
  approaching,
  suspected,
  suspectedBottom,
  suspectedProbe,
  seen,
];
