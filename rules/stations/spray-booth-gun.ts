/** The gun: its air, the metal before it, what dries in it, what comes out of it first. */
import { celsius, fromSite, minutes } from './sheet-number.ts';
import { hotParts, pressure, wear } from './spray-booth-words.ts';
import {
  type Bilingual,
  commonPractice,
  type Given,
  judgement,
  plainClass,
  type RuleTemplate,
  tuning,
} from './station.ts';

const shared = { class: plainClass, gate: null, hold: null } as const;

export const atomisingAir: RuleTemplate = {
  ...shared,
  name: 'atomising-air',
  kind: 'deviation',
  signals: ['atomising-air'],
  numbers: [
    fromSite('target', 'the atomising air on the run card', 'rule atomising-air: target'),
    { setting: 'below', value: '10 %', basis: commonPractice('the pattern moves beyond it') },
    { setting: 'above', value: '10 %', basis: commonPractice('the pattern moves beyond it') },
    tuning('on_delay', '5 s'),
    tuning('deadband', '2 %'),
  ],
  gate: { signal: 'trigger', low: '1 1' },
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'pattern',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: atomising air at {$value}, {$difference} from {$reference}, for {$duration} with the trigger on.',
    consequence:
      'Too little spits and runs; too much sprays dry, and a dry coat is gritty and weak.',
    steps: [
      'Check its regulator and the header.',
      'With the gun vented, clean or change the cap; then see the pattern on glass.',
      'Spray a panel before any more parts.',
    ],
    doNot: ['make up for it with more or less fluid'],
    caution: `${pressure} Never point the gun at anybody.`,
  },
};

export const partAtGun: RuleTemplate = {
  ...shared,
  name: 'part-at-gun',
  kind: 'band',
  signals: ['part'],
  numbers: [
    {
      setting: 'low',
      value: '40 Cel',
      basis: commonPractice('preheated metal: a wet coat on cold bare steel rusts under itself'),
      confirm: 'DS',
      needs: 'the coldest metal at the gun (part_low of the material sheet)',
      fromSheet: (sheet) => celsius(sheet.partLowC),
    },
    {
      setting: 'high',
      value: '65 Cel',
      basis: commonPractice('preheated metal: hotter, the coat dries before it flows'),
      confirm: 'DS',
      needs: 'the hottest metal at the gun (part_high of the material sheet)',
      fromSheet: (sheet) => celsius(sheet.partHighC),
    },
    tuning('deadband', '1 K'),
  ],
  gate: { signal: 'spraying', low: '1 1' },
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'preheat',
  hold: 'rack',
  named: ['rack-in', 'coated'],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: metal at the gun at {$value}; the limit is {$limit}.',
    consequence: 'Cold metal makes runs and flash rust, hot metal a dry spray that does not flow.',
    steps: [
      'Tag the rack “hold” where it is taken off.',
      'Check the preheat, and the gap between it and the gun.',
      'Send the next part only once its metal is right.',
    ],
    doNot: ['spray cold parts “thicker”'],
    caution: hotParts,
  },
};

const dryGun = {
  ...shared,
  kind: 'sequence',
  priority: ['low', 'low'],
  respond: '30 min',
  hazard: 'dry-gun',
} as const;
const flushLabel = {
  word: 'NOTICE',
  consequence: 'Material dries in the tip; it plugs, or comes off in lumps onto the next parts.',
  steps: [
    'Flush guns and lines with deionised water; with the gun vented, clean the caps.',
    'Write down that it was flushed.',
    'At the restart measure a first part before release.',
  ],
  doNot: ['put solvent on wet adhesive', 'poke the tip with steel'],
  caution: `${pressure} ${wear}`,
} as const;
const idleFor = {
  setting: 'within',
  value: '20 min',
  basis: judgement('longer, and the tip begins to dry'),
  confirm: 'DS',
  needs: 'the longest time a gun may lie idle (idle_tip of the material sheet)',
  fromSheet: (sheet: NonNullable<Given['sheet']>) => minutes(sheet.idleTipMs),
} as const;

export const flushLate: RuleTemplate = {
  ...dryGun,
  name: 'flush-late',
  signals: [],
  marks: ['shift-ended', 'flushed'],
  numbers: [
    {
      setting: 'within',
      value: '30 min',
      basis: judgement('time to flush at the end of a shift'),
      confirm: 'DS',
      needs: 'how soon after the last part guns and lines are flushed (rule flush-late: within)',
    },
  ],
  label: {
    ...flushLabel,
    sentence:
      '{$station}: the shift ended at {$clock}, and nobody wrote down a flush for {$reached}.',
  },
};

export const tipIdle: RuleTemplate = {
  ...dryGun,
  name: 'tip-idle',
  signals: ['spraying'],
  marks: ['flushed'],
  numbers: [{ setting: 'first_high', value: '0 1', basis: judgement('nobody sprays') }, idleFor],
  fixed: { while_first: true },
  label: {
    ...flushLabel,
    sentence: '{$station}: the guns have lain idle since {$clock}, for {$reached}, unflushed.',
  },
};

/** Where nothing tells whether somebody sprays. */
export const tipIdleSaid: RuleTemplate = {
  ...dryGun,
  name: 'tip-idle-said',
  signals: [],
  marks: ['guns-idle', 'flushed'],
  numbers: [idleFor],
  label: {
    ...flushLabel,
    sentence:
      '{$station}: the guns were laid down at {$clock} and have lain for {$reached}, unflushed.',
  },
};

const unreleased = (
  name: string,
  mark: string,
  sentence: string,
  consequence: string,
): RuleTemplate => ({
  ...shared,
  name,
  kind: 'sequence',
  signals: ['spraying'],
  marks: [mark, 'first-off'],
  numbers: [
    { setting: 'counting_low', value: '1 1', basis: judgement('only time that is sprayed counts') },
    {
      setting: 'within',
      value: '5 min',
      basis: judgement('time to purge, see the pattern and measure a panel'),
    },
  ],
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'first-parts',
  hold: 'rack',
  named: ['rack-in', 'coated'],
  label: {
    word: 'NOTICE',
    sentence,
    consequence,
    steps: [
      'Release no part; tag the rack at the guns “hold”.',
      'Purge the volume of line and gun, see the pattern on glass, spray a panel and measure it.',
      'Good: write down the first-off, and which parts were sprayed before it.',
    ],
    doNot: ['release parts on looks'],
    caution: `${pressure} ${wear}`,
  },
});

export const firstOffMissing = unreleased(
  'first-off-missing',
  'flushed',
  '{$station}: the guns have sprayed for {$reached} since the flush of {$clock}, and no first part was released.',
  'Water stands in the line after a flush; the first parts are thin.',
);

export const firstOffAfterChange = unreleased(
  'first-off-after-change',
  'drum-changed',
  '{$station}: the guns have sprayed for {$reached} since container {$item} was connected at {$clock}, and no first part was released.',
  'Another container may be of other solids, or unmixed; the first parts tell.',
);

const worn = (
  name: string,
  signals: readonly [string, string],
  what: string,
  mark: string,
): RuleTemplate => ({
  ...shared,
  name,
  kind: 'band',
  signals,
  numbers: [
    {
      setting: 'high',
      value: null,
      basis: { mark: 'DS', note: `what the gun’s maker gives the ${what}`, source: null },
      confirm: 'DS',
      needs: `how long the ${what} lasts, from the gun’s maker or your own cards, as "400 h" (rule ${name}: high)`,
    },
  ],
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'worn-gun',
  facts: (given) => ({ high: hoursOf(given.number(name, 'high')) }),
  label: {
    word: 'NOTICE',
    sentence: `{$station}: the guns have sprayed for more than {$high} since the last change of ${what}.`,
    consequence: 'A worn gun sprays a pattern that drifts, shift by shift, and nobody sees when.',
    steps: [
      `Have ${what} and seals changed with the rebuild kit, gun vented and flushed.`,
      'See the pattern on glass and measure a panel.',
      `Write down the change (${mark}).`,
    ],
    doNot: ['turn fluid or air up to make up for wear'],
    caution: `${pressure} ${wear}`,
  },
});

/** In hours, however long: a gun’s life is counted in them. */
const hoursOf = (written: string | null): Bilingual =>
  written === null
    ? { text: 'its time', german: 'vorgesehen' }
    : { text: written.replace(/ h$/, ' hours'), german: written.replace(/ h$/, ' Stunden') };

export const needleWorn = worn(
  'needle-worn',
  ['needle-hours', 'needle-counter'],
  'needle and nozzle',
  'needle-changed',
);
export const capWorn = worn('cap-worn', ['cap-hours', 'cap-counter'], 'air cap', 'cap-changed');
