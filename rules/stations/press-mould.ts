/** The mould before and between shots: too cold to cure, too hot, one cavity apart. */
import { celsius, fromDataSheet, fromSite } from './sheet-number.ts';
import { judgement, plainClass, type RuleTemplate, tuning } from './station.ts';

export const cavities = [1, 2, 3, 4] as const;

/** The inserts of this shot, by what was laid in last. */
export const shotLaidIn = ['inserts-in'] as const;

const producing = { signal: 'producing', low: '1 1' } as const;
const hot =
  'Hot mould; keep hands and tools out of a press that can close. Lock out by local rules.';

export const mouldCold = (cavity: number): RuleTemplate => ({
  name: `mould-cold-${cavity}`,
  kind: 'band',
  signals: [`cavity-${cavity}`],
  numbers: [
    {
      ...fromDataSheet(
        'low',
        'the lowest cavity temperature at which adhesive and compound bond',
        'cure_above',
        (sheet) => celsius(sheet.cureAboveC),
      ),
      value: '155 Cel',
      basis: { mark: 'CP', note: 'usual cavity temperature of bonded mouldings', source: null },
    },
    tuning('on_delay', '10 s'),
    tuning('deadband', '2 K'),
  ],
  gate: producing,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '2 min',
  hazard: 'no-cure',
  hold: 'shot',
  named: shotLaidIn,
  label: {
    word: 'NOTICE',
    sentence: '{$signal} at {$value}, below {$limit}, for {$duration}.',
    consequence: 'Adhesive and rubber do not cure together, and the bond lets go.',
    steps: [
      'Do not load; a shot already in gets the tag “hold”.',
      'With the press made safe by its own instruction, measure the cavity with a contact probe.',
      'Let the mould soak until it has its temperature; tell the shift lead if it does not come.',
    ],
    doNot: ['lengthen the cure by feel'],
    caution: hot,
  },
});

export const mouldHot = (cavity: number): RuleTemplate => ({
  name: `mould-hot-${cavity}`,
  kind: 'deviation',
  signals: [`cavity-${cavity}`],
  numbers: [
    fromSite(
      'target',
      `the set temperature of cavity ${cavity}`,
      `rule mould-hot-${cavity}: target`,
    ),
    {
      setting: 'above',
      value: '8 K',
      basis: judgement('beyond what a healthy mould swings'),
      confirm: 'DS',
      needs: `how far above its set temperature the data sheets let a cavity be (rule mould-hot-${cavity}: above)`,
    },
    tuning('on_delay', '1 min'),
    tuning('deadband', '2 K'),
  ],
  gate: producing,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '2 min',
  hazard: 'pre-cure',
  hold: 'shot',
  named: shotLaidIn,
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, {$difference} above its set temperature of {$reference}, for {$duration}.',
    consequence:
      'The adhesive cures on the insert before the rubber comes, and the compound scorches.',
    steps: [
      'Load no more.',
      'Compare with the control’s own display; with the press made safe by its own instruction, measure the cavity with a contact probe.',
      'Tag the shots since it rose “hold” and tell the process engineer.',
    ],
    doNot: ['shorten the cure by feel'],
    caution: hot,
  },
});

export const cavitySpread: RuleTemplate = {
  name: 'cavity-spread',
  kind: 'disagree',
  signals: cavities.map((cavity) => `cavity-${cavity}`),
  numbers: [
    { setting: 'allowed', value: '6 K', basis: judgement('cavities of one mould cure alike') },
    { setting: 'steady', value: '3 K', basis: judgement('what a shot takes from a hot mould') },
    { setting: 'steady_for', value: '5 min', basis: judgement('some shots') },
    tuning('deadband', '1 K'),
  ],
  gate: producing,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'one-cavity',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$which} is {$difference} hotter than {$other}, more than {$allowed} between cavities of one mould.',
    consequence: 'Parts of one cavity are bad while the others hold, shot after shot.',
    steps: [
      'With the press made safe by its own instruction, map the cavities with a contact probe.',
      'Have the heaters of the odd cavity seen to.',
      'Flag the cavity, so that its parts can be told apart.',
    ],
    doNot: ['average the platens'],
    caution: hot,
  },
};
