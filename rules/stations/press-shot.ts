/** One shot: how long inserts lay in the hot mould, how long and how hard it cured. */
import { shotLaidIn } from './press-mould.ts';
import { fromDataSheet, minutes, written } from './sheet-number.ts';
import {
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
  tuning,
} from './station.ts';

const press =
  'Hot mould; keep hands and tools out of a press that can close. Lock out by local rules.';
const wait: TemplateNumber = {
  setting: 'within',
  value: '60 s',
  basis: judgement('somewhere to begin; minutes in a hot mould cure the film'),
  confirm: 'DS',
  needs:
    'the longest time an insert may lie in the hot mould before it closes (insert_wait of the material sheet)',
  fromSheet: (sheet) =>
    written(sheet.insertWaitMs === null ? null : sheet.insertWaitMs / 1_000, 's'),
};

export const insertWaits: RuleTemplate = {
  name: 'insert-waits',
  kind: 'sequence',
  signals: ['insert-in', 'closed'],
  numbers: [
    { setting: 'first_low', value: '1 1', basis: judgement('the first insert lies in the mould') },
    { setting: 'then_low', value: '1 1', basis: judgement('the mould is closed') },
    wait,
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 min',
  hazard: 'pre-cure',
  hold: 'shot',
  named: shotLaidIn,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: the first insert has lain in the hot mould since {$clock}, longer than the {$required} it may, and the mould is not closed.',
    consequence:
      'The film cures on the insert before the rubber comes: it looks sound, and the rubber peels off it.',
    steps: [
      'With the press made safe by its own instruction, take the inserts out and scrap them; or mould and mark the shot “hold”.',
      'See what kept it: a part that does not fit, release agent, a hand short.',
      'Tell the process engineer where it happens again; a map of the mould’s heat helps.',
    ],
    doNot: ['close anyway, unmarked'],
    caution: press,
  },
};

const decides =
  'The process engineer decides by the compound’s cure curve (ISO 6502) and a bond test.';

export const cureShort: RuleTemplate = {
  name: 'cure-short',
  kind: 'sequence',
  signals: ['closed'],
  numbers: [
    { setting: 'first_low', value: '1 1', basis: judgement('the mould is closed') },
    { setting: 'then_high', value: '0 1', basis: judgement('the mould is no longer closed') },
    fromDataSheet(
      'not_before',
      'the least time of cure for this compound and part',
      'cure_for',
      (sheet) => minutes(sheet.cureForMs),
    ),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'no-cure',
  hold: 'shot',
  named: shotLaidIn,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: the mould closed at {$clock} and was let go after {$reached} of {$required}.',
    consequence: 'An under-cured part is spongy, and adhesive and rubber have not bonded.',
    steps: [
      'Tag the shot “hold”, all cavities.',
      'Find the cause: timer, hand mode, a stop of the press.',
      decides,
    ],
    doNot: ['cure it again'],
    caution: press,
  },
};

export const pressureLow: RuleTemplate = {
  name: 'pressure-low',
  kind: 'band',
  signals: ['pressure'],
  numbers: [
    fromDataSheet('low', 'the least pressure while it cures', 'cure_pressure', (sheet) =>
      written(sheet.curePressureKPa, 'kPa'),
    ),
    {
      setting: 'on_delay',
      value: '15 s',
      basis: judgement('longer than the press takes to build it up'),
    },
    tuning('deadband', '0.2 MPa'),
  ],
  gate: { signal: 'closed', low: '1 1' },
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'no-cure',
  hold: 'shot',
  named: shotLaidIn,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: pressure at {$value} while curing, below {$limit}, for {$duration}.',
    consequence: 'Rubber cures porous and lifts off the insert.',
    steps: [
      'Tag the shot “hold”, all cavities.',
      'Find the cause: pump, seal, compound short-weighed, flash that holds the mould apart.',
      decides,
    ],
    doNot: ['cure it again', 'raise the pressure past the press’s plate'],
    caution: `${press} Stored pressure: work on hydraulics is for licensed people.`,
  },
};
