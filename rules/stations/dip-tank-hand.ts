/** What the hand readings of the dip tank mean: film, chemistry, foam and skin, make-up water. */
import { endTheCycle, movingRacks, wear } from './dip-tank-words.ts';
import { fromDataSheet, written } from './sheet-number.ts';
import { commonPractice, judgement, plainClass, type RuleTemplate } from './station.ts';

const shared = {
  kind: 'band',
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'bath-chemistry',
  hold: null,
} as const;
const suspect = 'Draw a panel and compare it with the last good one.';

const ph: RuleTemplate = {
  ...shared,
  name: 'bath-ph',
  signals: ['ph'],
  numbers: [
    fromDataSheet('low', 'the lowest pH of the bath', 'ph_low', (sheet) =>
      written(sheet.phLow, '[pH]'),
    ),
    fromDataSheet('high', 'the highest pH of the bath', 'ph_high', (sheet) =>
      written(sheet.phHigh, '[pH]'),
    ),
  ],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: bath at {$value}; the limit is {$limit}.',
    consequence: 'A dispersion out of its pH thickens, lumps or lets go of the metal.',
    steps: [
      'Calibrate the meter and read again in a fresh sample.',
      suspect,
      'Tell the process engineer: cleaner, phosphate or wrong water was carried in.',
    ],
    doNot: ['add acid, ammonia or amine of your own choice'],
    caution: wear,
  },
};

const conductivity: RuleTemplate = {
  ...shared,
  name: 'bath-conductivity',
  signals: ['conductivity'],
  numbers: [
    fromDataSheet('high', 'the highest conductivity of the bath', 'conductivity_high', (sheet) =>
      written(sheet.conductivityHighUSPerCm, 'uS/cm'),
    ),
  ],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: conductivity of the bath at {$value}, above {$limit}.',
    consequence: 'Salts from cleaner, phosphate or tap water break the dispersion and the bond.',
    steps: [
      'Read again with a fresh sample and a checked meter.',
      'Read the last rinse before the tank, and the make-up water.',
      'Tell the process engineer; part of the bath may have to be changed.',
    ],
    doNot: ['dilute it to bring the number down'],
    caution: wear,
  },
};

const viscosity: RuleTemplate = {
  ...shared,
  name: 'bath-viscosity',
  signals: ['viscosity'],
  numbers: [
    fromDataSheet('low', 'the lowest viscosity of the bath', 'viscosity_low', (sheet) =>
      written(sheet.viscosityLowMPaS, 'mPa.s'),
    ),
    fromDataSheet('high', 'the highest viscosity of the bath', 'viscosity_high', (sheet) =>
      written(sheet.viscosityHighMPaS, 'mPa.s'),
    ),
  ],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: viscosity of the bath at {$value}; the limit is {$limit}.',
    consequence: 'Film follows viscosity: too thin, or too thick and uneven.',
    steps: [
      'Read again: same spindle, same speed, same temperature.',
      'Compare temperature and solids; foam and settling move it too.',
      suspect,
    ],
    doNot: ['thin it by feel'],
    caution: wear,
  },
};

const sightNumbers = [
  { setting: 'high', value: '1 1', basis: judgement('somebody saw it') },
] as const;

const foam: RuleTemplate = {
  ...shared,
  name: 'bath-foam',
  signals: ['foam'],
  numbers: sightNumbers,
  fixed: { inclusive: true },
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'foam',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: somebody saw foam on the bath at {$clock}.',
    consequence:
      'Foam marks the film; and one part of air in a hundred reads as three parts too few solids.',
    steps: [
      endTheCycle,
      'Have hoist and paddle parked and locked by somebody who may; then skim it from outside the guard, and let the rest settle before any density is read.',
      'Find where air gets in: fall over the weir, a leaking suction, a splashing return. Draw a panel before the next rack.',
    ],
    doNot: [
      'correct solids on a reading through foam',
      'add defoamer of your own choice',
      'lean over the tank while racks move',
    ],
    caution: movingRacks,
  },
};

const skin: RuleTemplate = {
  ...foam,
  name: 'bath-skin',
  signals: ['skin'],
  hazard: 'standing',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: somebody saw skin or lumps on the bath at {$clock}.',
    consequence: 'Skin does not dissolve again; it plugs the filter and sits on parts as lumps.',
    steps: [
      endTheCycle,
      'Have hoist and paddle parked and locked by somebody who may; then skim it off from outside the guard and keep what you find.',
      'Once they run again, see that loop and paddle move the whole surface; check the last racks for lumps, and the filter’s pressure drop.',
    ],
    doNot: ['stir it back in', 'lean over the tank while racks move'],
    caution: movingRacks,
  },
};

const film: RuleTemplate = {
  ...shared,
  name: 'film',
  signals: ['panel-film'],
  numbers: [
    {
      ...fromDataSheet('low', 'the thinnest dry film', 'film_low', (sheet) =>
        written(sheet.filmLowMm === null ? null : sheet.filmLowMm * 1_000, 'um'),
      ),
      value: '12.7 um',
      basis: commonPractice('half a thousandth of an inch, as adhesives are often run'),
    },
    {
      ...fromDataSheet('high', 'the thickest dry film', 'film_high', (sheet) =>
        written(sheet.filmHighMm === null ? null : sheet.filmHighMm * 1_000, 'um'),
      ),
      value: '25.4 um',
      basis: commonPractice('a thousandth of an inch, as adhesives are often run'),
    },
  ],
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'film',
  hold: 'rack',
  named: ['rack-in'],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: film of the panel at {$value}; the limit is {$limit}.',
    consequence: 'A thin film starves the bond; a thick one splits in itself or is swept off.',
    steps: [
      'Measure again, with the base reading of the bare metal taken off.',
      'Tag the racks since the last good panel “hold”.',
      'Compare temperature, solids and withdrawal speed with the run card.',
    ],
    doNot: ['dip a dry film again unasked'],
    caution: wear,
  },
};

const water: RuleTemplate = {
  ...shared,
  name: 'make-up-water',
  signals: ['make-up-conductivity'],
  numbers: [
    {
      setting: 'high',
      value: '10 uS/cm',
      basis: commonPractice('new deionised water is at or below 5 µS/cm; here a plant acts'),
    },
    {
      setting: 'high_high',
      value: '20 uS/cm',
      basis: commonPractice('here a plant acts at the latest'),
    },
  ],
  priority: ['low', 'medium'],
  respond: '8 h',
  label: {
    word: 'NOTICE',
    sentence: '{$station}: make-up water at {$value}, above {$limit}.',
    consequence: 'Hard or salty water can coagulate the dispersion, a little with each make-up.',
    steps: [
      'Put none of it in; read again with a rinsed vessel.',
      'Have the deioniser’s cartridge changed or regenerated.',
      'Write down what was already put in, and from which container.',
    ],
    doNot: ['use tap water instead'],
    caution: wear,
  },
};

const firstOff: RuleTemplate = {
  name: 'first-off-missing',
  kind: 'sequence',
  signals: [],
  marks: ['made-up', 'first-off'],
  numbers: [
    {
      setting: 'within',
      value: '2 h',
      basis: judgement('time to stir the make-up in, draw a panel and dry it'),
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '30 min',
  hazard: 'film',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: made up at {$clock}, and in {$required} nobody wrote down a first-off panel.',
    consequence: 'Racks go out on a bath whose film nobody has measured since it was changed.',
    steps: [
      'Draw a panel, dry it and measure its film.',
      'Write down the panel; go on if it is good.',
      'If it is not: tag the racks since the make-up “hold”.',
    ],
    doNot: ['take the last panel before the make-up for it'],
    caution: wear,
  },
};

export const dipTankHand: readonly RuleTemplate[] = [
  film,
  firstOff,
  ph,
  conductivity,
  viscosity,
  foam,
  skin,
  water,
];
