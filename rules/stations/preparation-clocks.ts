/** The clocks of prepared metal: bare steel rusts within hours, a phosphate coat ages within days. */
import { minutes } from './sheet-number.ts';
import {
  commonPractice,
  judgement,
  onceEachShift,
  plainClass,
  type RuleTemplate,
} from './station.ts';

const label = {
  word: 'NOTICE',
  doNot: ['wipe rust off and coat over it', 'touch prepared metal with bare hands'],
  caution: 'Clean dry gloves. Full racks are heavy; use the lift and site lifting rules.',
} as const;

export const blastToCoat: RuleTemplate = {
  name: 'blast-to-coat',
  kind: 'age',
  signals: ['humidity'],
  marks: ['blasted', 'coated', 'converted'],
  numbers: [
    {
      setting: 'limit',
      value: '4 h',
      basis: commonPractice('blasted steel, dry, indoors, from blast to the first coat'),
      fromSheet: (sheet) => minutes(sheet.coatAfterBlastMs),
    },
    {
      setting: 'damp_limit',
      value: '2 h',
      basis: commonPractice('half of it in damp air'),
      fromSheet: (sheet) =>
        minutes(sheet.coatAfterBlastMs === null ? null : sheet.coatAfterBlastMs / 2),
    },
    {
      setting: 'damp_above',
      value: '60 %',
      basis: commonPractice('above this steel begins to rust fast'),
    },
    { setting: 'early', value: '75 %', basis: judgement('time left to coat it') },
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'medium'],
  respond: '30 min',
  hazard: 'flash-rust',
  hold: 'rack',
  label: {
    ...label,
    sentence:
      'Rack {$item}, blasted at {$clock}, has waited {$reached} for its coat; {$required} are allowed in this air.',
    consequence: 'Bare steel rusts before anybody sees it, and the bond fails at the metal.',
    steps: [
      'Time left: coat it next, warm and dry.',
      'Time over: tag the rack “hold”, and see in good light whether it shows bloom.',
      'The process engineer decides: blast again, or coat and test.',
    ],
  },
};

export const conversionToCoat: RuleTemplate = {
  name: 'conversion-to-coat',
  kind: 'age',
  signals: [],
  marks: ['converted', 'coated'],
  numbers: [
    {
      setting: 'limit',
      value: '72 h',
      basis: commonPractice('phosphated, kept dry and covered'),
      confirm: 'DS',
      needs:
        'the longest time from phosphating to the coat (coat_after_conversion of the material sheet)',
      fromSheet: (sheet) => minutes(sheet.coatAfterConversionMs),
    },
    { setting: 'early', value: '80 %', basis: judgement('time left to coat it') },
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'medium'],
  respond: '1 h',
  hazard: 'conversion-aged',
  hold: 'rack',
  label: {
    ...label,
    sentence:
      'Rack {$item}, phosphated at {$clock}, has waited {$reached} for its coat; {$required} are allowed, dry and covered.',
    consequence: 'Phosphate takes up water and dirt as it stands, and the bond fails at the metal.',
    steps: [
      'Time left: coat it next, warm and dry.',
      'Time over: tag the rack “hold”; write down how it stood, covered or not.',
      'The process engineer decides: test a bond, or strip and begin anew.',
    ],
  },
};

export const shiftCheckLate: RuleTemplate = {
  name: 'shift-check-late',
  kind: 'age',
  signals: [],
  marks: ['shift-checked'],
  numbers: onceEachShift,
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'unchecked',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: nobody wrote down the checks of preparation for {$reached}; they are due every {$required}.',
    consequence:
      'Preparation is the first suspect when a bond fails at the metal, and nothing would be on record.',
    steps: [
      'Take blast profile and pressure, media, water-break, bath and last rinse.',
      'Enter each reading.',
      'Write down that the checks were made.',
    ],
    doNot: ['enter a value that nobody read'],
    caution: 'Blast machine and baths only as their instructions and local rules say.',
  },
};
