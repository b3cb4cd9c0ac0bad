/** The metal itself before its coat: clean, rough enough, free of rust, warmer than the dew point. */
import { fromDataSheet, fromSite, written } from './sheet-number.ts';
import { commonPractice, judgement, plainClass, type RuleTemplate, tuning } from './station.ts';

const shared = {
  kind: 'band',
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  hold: 'rack',
} as const;
/** The rack whose readings are entered, until it is coated. */
const inspected = ['inspected', 'coated'] as const;
const gloves = 'Clean dry gloves; wear what the data sheets of cleaner and bath ask for.';
const seenIt = (setting: string, note: string) => ({
  setting,
  value: '0 1',
  basis: commonPractice(note),
});

export const rustBloom: RuleTemplate = {
  ...shared,
  name: 'rust-bloom',
  signals: ['rust-bloom'],
  numbers: [seenIt('high', 'any rust that can be seen stops the coat')],
  respond: '10 min',
  hazard: 'flash-rust',
  named: inspected,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: rust bloom was seen on prepared metal at {$clock}.',
    consequence: 'The coat bonds to the rust and not to the steel.',
    steps: [
      'Coat nothing from this rack; tag it “hold”.',
      'See whether racks that waited as long show it too.',
      'Write down time since blast, humidity and where it shows; the process engineer decides.',
    ],
    doNot: ['wipe it off and coat', 'coat over it because it is light'],
    caution: gloves,
  },
};

export const waterBreak: RuleTemplate = {
  ...shared,
  name: 'water-break',
  signals: ['water-break'],
  numbers: [
    {
      setting: 'high',
      value: '0 1',
      basis: {
        mark: 'PUB',
        note: 'a film of water that breaks up shows a surface that is not clean',
        source: 'ASTM F22',
      },
    },
  ],
  respond: '10 min',
  hazard: 'soiled',
  named: inspected,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: the water film broke on the metal at {$clock}; it is not clean.',
    consequence: 'Oil or residue of cleaner stays under the coat, and whole faces come off bare.',
    steps: [
      'Tag the rack “hold”; degrease it again by the instruction and repeat the test.',
      'Check the cleaner’s strength, its temperature and the oil that floats on it.',
      'Hold what was cleaned since the last good test until it is explained.',
    ],
    doNot: ['blast over oil: the media carry it on', 'wipe it with a shop rag'],
    caution: gloves,
  },
};

export const mediaOily: RuleTemplate = {
  ...shared,
  name: 'media-oily',
  signals: ['media-oily'],
  numbers: [seenIt('high', 'a film or a sheen on the water is oil in the media')],
  respond: '10 min',
  hazard: 'soiled',
  named: ['blasted', 'coated'],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: blast media left oil on water at {$clock}.',
    consequence: 'Every part blasted with oily media gets an oily surface that looks clean.',
    steps: [
      'Stop blasting; tag what was blasted since the last clean test “hold”.',
      'Have the media changed and the machine cleaned; find where the oil came from: parts, or the air.',
      'Make a water-break test on the first parts after it.',
    ],
    doNot: ['dilute it with new media'],
    caution: 'Blast machine: isolate, vent and lock out by local rules before any work on it.',
  },
};

export const blastProfile: RuleTemplate = {
  ...shared,
  name: 'blast-profile',
  signals: ['blast-profile'],
  numbers: [
    fromDataSheet('low', 'the least blast profile', 'profile_low', (sheet) =>
      written(sheet.profileLowMm, 'mm'),
    ),
    fromDataSheet('high', 'the most blast profile', 'profile_high', (sheet) =>
      written(sheet.profileHighMm, 'mm'),
    ),
  ],
  respond: '30 min',
  hazard: 'profile',
  named: inspected,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: blast profile at {$value}; the limit is {$limit}.',
    consequence: 'Too smooth, the coat has no hold; too rough, its peaks stand bare and rust.',
    steps: [
      'Measure again on three flats of the rack.',
      'Check media size and age and the blast pressure; have the nozzle looked over, vented and locked out.',
      'Tag the rack “hold”; the process engineer decides.',
    ],
    doNot: ['make up for it with a thicker coat'],
    caution: 'Blast machine: isolate, vent and lock out by local rules before any work on it.',
  },
};

export const blastPressure: RuleTemplate = {
  ...shared,
  name: 'blast-pressure',
  kind: 'deviation',
  signals: ['blast-pressure'],
  numbers: [
    fromSite('target', 'the blast pressure of the run card', 'rule blast-pressure: target'),
    { setting: 'below', value: '10 %', basis: judgement('profile moves beyond it') },
    { setting: 'above', value: '10 %', basis: judgement('profile moves beyond it') },
    tuning('on_delay', '1 min'),
    tuning('deadband', '2 %'),
  ],
  gate: { signal: 'blasting', low: '1 1' },
  priority: ['low', 'low'],
  respond: '30 min',
  hazard: 'profile',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: blast pressure at {$value}, {$difference} from {$reference}, for {$duration}.',
    consequence: 'The profile changes with the pressure, and the hold of the coat with it.',
    steps: [
      'Read header and regulator; have the nozzle looked over for wear, vented and locked out.',
      'Bring it back at its regulator.',
      'Measure the profile of the next rack.',
    ],
    doNot: ['make up for it with a longer blast, unmeasured'],
    caution: 'Stored pressure. Vent and lock out by local rules.',
  },
};

export const dewMargin: RuleTemplate = {
  ...shared,
  name: 'dew-margin',
  signals: ['dew-margin'],
  numbers: [
    {
      setting: 'low',
      value: '3 K',
      basis: commonPractice('customary; ISO 8502-4, often named for it, gives no such figure'),
    },
    tuning('on_delay', '15 min'),
    tuning('deadband', '0.5 K'),
  ],
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'condensation',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: margin of the coldest metal over the dew point {$value}, below {$limit}, for {$duration}; under zero it is wet.',
    consequence: 'Water settles on cold metal; bare steel rusts and the coat lies on water.',
    steps: [
      'Keep cold parts wrapped until they are as warm as the room.',
      'Close gates and doors; dry or warm the air.',
      'Check the racks that stood here for bloom before they are coated.',
    ],
    doNot: ['dry parts with shop air', 'coat metal that feels damp'],
    caution: gloves,
  },
};
