/** What no sensor in the air tells: the blotter test for oil and water, and the round of the drains. */
import { onceEachShift, plainClass, type RuleTemplate } from './station.ts';

const storedPressure = 'Stored pressure. Vent and lock out by local rules.';
const white = 'Keep hands and face out of the jet; eye protection.';

export const blotterFailed: RuleTemplate = {
  name: 'blotter-failed',
  kind: 'band',
  signals: ['blotter'],
  numbers: [
    {
      setting: 'high',
      value: '0 1',
      basis: {
        mark: 'PUB',
        note: 'any oil or water on the white collector rejects the air',
        source: 'ASTM D4285',
      },
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'oil',
  hold: 'lot',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: the blotter test of {$clock} showed oil or water; all that was sprayed or blasted since the last clean one is in doubt.',
    consequence: 'Oil and water in the air make fish-eyes in the film and bare spots under it.',
    steps: [
      'Stop guns and blasting on this air.',
      'Tag all parts coated or blasted since the last clean test “hold”.',
      'Have separators drained and their elements seen to; spray and blast again only after a clean test, a minute at least onto a new white collector.',
    ],
    doNot: ['wipe the nozzle and try once more', 'count a dew point within its limit as clean air'],
    caution: `${storedPressure} ${white}`,
  },
};

export const blotterLate: RuleTemplate = {
  name: 'blotter-late',
  kind: 'age',
  signals: [],
  marks: ['blotter-tested'],
  numbers: onceEachShift,
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'oil',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: nobody wrote down a blotter test of the air for {$reached}; one is due every {$required}.',
    consequence:
      'No sensor here sees oil; each hour without a test is an hour of parts in doubt if the next one fails.',
    steps: [
      'Let the air stream onto a clean white collector for a minute at least, at the point of use (ASTM D4285).',
      'Enter 0 for a clean collector, 1 for any trace of oil or water.',
      'Write down that the test was made.',
    ],
    doNot: ['take the dew point for it', 'enter a test that nobody made'],
    caution: `${storedPressure} ${white}`,
  },
};

export const separatorRoundLate: RuleTemplate = {
  name: 'separator-round-late',
  kind: 'age',
  signals: [],
  marks: ['separators-drained'],
  numbers: onceEachShift,
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'carry-over',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: nobody wrote down for {$reached} that separators and receiver were drained; it is due every {$required}.',
    consequence: 'A separator that is full lets water and oil through to guns and blast.',
    steps: [
      'Drain separators and receiver by their instruction; see that the automatic drains work.',
      'Write down that it was done, and what came: clear, milky or oily.',
      'Much more than usual: have the dryer seen to, and make a blotter test.',
    ],
    doNot: ['take a bowl off under pressure', 'leave a drain running to save the round'],
    caution: storedPressure,
  },
};
