/** The baths and the water of preparation: phosphate, last rinse, make-up. */
import { fromDataSheet, fromSite, written } from './sheet-number.ts';
import { commonPractice, plainClass, type RuleTemplate, tuning } from './station.ts';

const shared = {
  kind: 'band',
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  hold: null,
} as const;
const caution = 'Baths are hot and acidic or caustic; wear what their data sheets ask for.';

export const phosphateWeight: RuleTemplate = {
  ...shared,
  name: 'phosphate-weight',
  signals: ['phosphate-weight'],
  numbers: [
    fromDataSheet('low', 'the least phosphate on the metal', 'phosphate_low', (sheet) =>
      written(sheet.phosphateLowGPerM2, 'g/m2'),
    ),
    fromDataSheet('high', 'the most phosphate on the metal', 'phosphate_high', (sheet) =>
      written(sheet.phosphateHighGPerM2, 'g/m2'),
    ),
  ],
  respond: '30 min',
  hazard: 'phosphate',
  hold: 'rack',
  named: ['inspected', 'coated'],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: phosphate at {$value}; the limit is {$limit}.',
    consequence:
      'A heavy, powdery coat splits within itself, crystals on both sides; a thin one leaves steel bare.',
    steps: [
      'Tag the rack “hold”; weigh a second panel.',
      'Check the bath’s points, its temperature, the time in it and the rinse before it.',
      'The process engineer decides: bond a panel, or strip and begin anew.',
    ],
    doNot: ['brush powder off and coat'],
    caution,
  },
};

export const bathPoints: RuleTemplate = {
  ...shared,
  name: 'bath-points',
  signals: ['bath-points'],
  numbers: [
    fromSite('low', 'the least points of the phosphate bath', 'rule bath-points: low'),
    fromSite('high', 'the most points of the phosphate bath', 'rule bath-points: high'),
  ],
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'phosphate',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: phosphate bath at {$value} points; the limit is {$limit}.',
    consequence: 'The phosphate coat becomes too thin, or heavy and powdery.',
    steps: [
      'Titrate a second sample.',
      'Correct it by the bath’s data sheet, half of the step, and titrate again.',
      'Weigh a panel before the next rack.',
    ],
    doNot: ['add by feel'],
    caution,
  },
};

export const rinseConductivity: RuleTemplate = {
  ...shared,
  name: 'rinse-conductivity',
  signals: ['rinse-conductivity'],
  numbers: [
    fromDataSheet(
      'high',
      'the highest conductivity of the last rinse',
      'rinse_conductivity_high',
      (sheet) => written(sheet.rinseConductivityHighUSPerCm, 'uS/cm'),
    ),
    tuning('on_delay', '2 min'),
    tuning('deadband', '2 uS/cm'),
  ],
  respond: '15 min',
  hazard: 'salts',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: last rinse at {$value}, above {$limit}, for {$duration}.',
    consequence:
      'Salts stay on the metal; the bond passes its test and fails in service, from the edge on.',
    steps: [
      'Rinse no more racks until it is back; then rinse the last ones again.',
      'Check the overflow, the supply of deionised water and what the baths carry over.',
      'Write down which racks were rinsed since it rose.',
    ],
    doNot: ['rinse with tap water last'],
    caution,
  },
};

export const makeUpWater: RuleTemplate = {
  ...shared,
  name: 'make-up-water',
  signals: ['make-up-conductivity'],
  numbers: [
    {
      setting: 'high',
      value: '10 uS/cm',
      basis: commonPractice(
        'act from 10 to 20; new water has 5 at most (ISO 3696 grade 3, ASTM D1193 type IV)',
      ),
    },
    {
      setting: 'high_high',
      value: '20 uS/cm',
      basis: commonPractice('no longer deionised water'),
    },
  ],
  priority: ['low', 'medium'],
  respond: '1 h',
  hazard: 'salts',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: make-up water at {$value}, above {$limit}.',
    consequence: 'Hard or salty water spoils baths and rinses, and breaks a dispersion.',
    steps: [
      'Let a litre run, read again with a meter that was checked on its standard.',
      'Have the resin or the membrane of the deioniser seen to.',
      'Draw no water for adhesive, bath, flush or last rinse until it is back.',
    ],
    doNot: ['use tap water', 'use this water up first'],
    caution,
  },
};
