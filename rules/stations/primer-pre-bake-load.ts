/** What a rack of primed parts can suffer: too little heat, too much, a cover coat at the wrong time. */
import { dwell, gloves, mostHeat, rackInside } from './oven-load.ts';
import { celsius, fromDataSheet, minutes } from './sheet-number.ts';
import { judgement, plainClass, type RuleTemplate } from './station.ts';

const decides =
  'The process engineer decides: bake again only as the data sheet says, test, or scrap.';

export const underBaked: RuleTemplate = {
  name: 'under-baked',
  kind: 'dry',
  signals: ['metal', 'loaded'],
  instead: { metal: 'part-temperature' },
  numbers: [
    {
      ...fromDataSheet(
        'above',
        'the metal temperature at which the primer’s water leaves it',
        'prebake_above',
        (sheet) => celsius(sheet.prebakeAboveC),
      ),
      value: '65 Cel',
      basis: { mark: 'CP', note: 'metal of about 65 °C drives the water out', source: null },
    },
    fromDataSheet('above_for', 'the least time at or above it', 'prebake_for', (sheet) =>
      minutes(sheet.prebakeForMs),
    ),
    dwell('under-baked'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'under-bake',
  hold: 'rack',
  named: rackInside,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}, load of {$clock}: metal at or above {$limit} for {$reached} of {$required}, and {$left} left before exit: the pre-bake can no longer be met.',
    consequence: 'Water stays in the primer; under the cover coat it blisters, and the two split.',
    steps: [
      'Tag the rack “hold” at the exit, before the cover coat.',
      'Compare line speed, air and load with the run card; load no more until explained.',
      decides,
    ],
    doNot: ['cover-coat it wet', 'raise the heat to catch up'],
    caution: gloves,
  },
};

export const overBaked: RuleTemplate = {
  name: 'over-baked',
  kind: 'dry',
  signals: ['metal', 'loaded'],
  instead: { metal: 'part-temperature' },
  numbers: mostHeat,
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'over-bake',
  hold: 'rack',
  named: rackInside,
  label: {
    word: 'NOTICE',
    sentence: '{$station}, load of {$clock}: metal reached {$value}; limit {$limit}.',
    consequence: 'A primer baked dead is smooth and dull, and the cover coat does not hold on it.',
    steps: [
      'Tag the rack “hold” at the exit, before the cover coat.',
      'Check the set-points against the run card; compare the second sensor or the control’s own display.',
      'Coat and bond a panel from this rack; the process engineer decides.',
    ],
    doNot: ['count it as “dry enough”', 'cover-coat held parts'],
    caution: gloves,
  },
};

const clockLabel = {
  steps: [
    'Tag the rack “hold”; keep it covered, dry and untouched.',
    'Write down how it stood since priming: where, how long, covered or not.',
    'The process engineer decides: panel test, go on, or strip and prime anew.',
  ],
  doNot: ['prime over it unasked', 'wipe it with solvent'],
  caution: 'Handle with clean gloves; wear what the material’s data sheet asks for.',
};

export const coverTooSoon: RuleTemplate = {
  name: 'cover-too-soon',
  kind: 'too-soon',
  signals: [],
  marks: ['primed', 'covered'],
  numbers: [
    fromDataSheet(
      'not_before',
      'the least time from priming to the cover coat',
      'cover_after',
      (sheet) => minutes(sheet.coverAfterMs),
    ),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'interval',
  hold: 'rack',
  label: {
    ...clockLabel,
    word: 'NOTICE',
    sentence:
      'Rack {$item} was cover-coated {$reached} after priming at {$clock}; {$required} are needed first.',
    consequence: 'The cover coat closes over a primer that is still wet, and the two split.',
  },
};

export const coverTooLate: RuleTemplate = {
  ...coverTooSoon,
  name: 'cover-too-late',
  kind: 'age',
  numbers: [
    fromDataSheet(
      'limit',
      'the longest time from priming to the cover coat',
      'cover_within',
      (sheet) => minutes(sheet.coverWithinMs),
    ),
    { setting: 'early', value: '80 %', basis: judgement('time left to coat it') },
  ],
  label: {
    ...clockLabel,
    word: 'NOTICE',
    sentence:
      'Rack {$item}, primed at {$clock}, has waited {$reached} for its cover coat, of {$required} at most.',
    consequence:
      'A primer that stands gathers dust and moisture, and the cover coat splits off it.',
    steps: [
      'Give it its cover coat now, if the time is not over.',
      'Over it: tag the rack “hold”, and write down how it stood since priming.',
      'The process engineer decides: panel test, go on, or strip and prime anew.',
    ],
  },
};
