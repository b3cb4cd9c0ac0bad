/**
 * The dip tank: parts are drawn out of adhesive that circulates over a weir and through a filter.
 *
 * Film follows viscosity, solids and the speed of withdrawal; a long fall beats air in, and a loop
 * that stands lets solids settle and skin form.
 */

import { dipTankDerived } from './dip-tank-derived.ts';
import { dipTankHand } from './dip-tank-hand.ts';
import { dipTankHandSignals } from './dip-tank-hand-signals.ts';
import { circulationLost, filterLoaded, filterTorn } from './dip-tank-loop.ts';
import { dipTankMarks, dipTankSignals } from './dip-tank-signals.ts';
import { movingRacks, wear } from './dip-tank-words.ts';
import { heldAtTank, heldIntoTank, heldUsed } from './held-use.ts';
import { celsius, fromDataSheet, written } from './sheet-number.ts';
import {
  commonPractice,
  judgement,
  plainClass,
  type RuleTemplate,
  type StationKind,
  tuning,
} from './station.ts';

const sheetOrTrial: 'DS' = 'DS';

const temperature: RuleTemplate = {
  name: 'bath-temperature',
  kind: 'deviation',
  signals: ['temperature'],
  numbers: [
    {
      ...fromDataSheet(
        'target',
        'the temperature the film was set up at',
        'bath_temperature',
        (sheet) => celsius(sheet.bathC),
      ),
      needs:
        'the bath’s target temperature (bath_temperature of the material sheet, or rule bath-temperature: target)',
    },
    { setting: 'below', value: '3 K', basis: commonPractice('viscosity and film move beyond it') },
    { setting: 'above', value: '3 K', basis: commonPractice('viscosity and film move beyond it') },
    { setting: 'far_below', value: '6 K', basis: judgement('twice as far') },
    { setting: 'far_above', value: '6 K', basis: judgement('twice as far') },
    tuning('on_delay', '15 min'),
    tuning('deadband', '0.5 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'medium'],
  respond: '1 h',
  hazard: 'film',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: bath at {$value}, {$difference} from {$reference}, for {$duration}.',
    consequence:
      'The adhesive flows thinner or thicker with temperature, and the film changes with it.',
    steps: [
      'Check the heat exchanger’s water, its pump and its valve.',
      'Measure a panel; compare its film with the run card.',
      'Read the density at this temperature before you correct anything.',
    ],
    doNot: ['heat it with an immersion rod'],
    caution: movingRacks,
  },
};

const solids: RuleTemplate = {
  name: 'bath-solids',
  kind: 'deviation',
  signals: ['solids'],
  numbers: [
    {
      setting: 'target',
      value: null,
      basis: { mark: 'DS', note: 'solids the bath is run at', source: null },
      confirm: sheetOrTrial,
      needs:
        'the bath’s target solids (target_solids of the material sheet, or rule bath-solids: target)',
      fromSheet: (sheet) =>
        sheet.targetSolidsPercent === null ? null : `${sheet.targetSolidsPercent} %`,
    },
    {
      setting: 'below',
      value: '1 %',
      basis: judgement('about twice what a hydrometer’s reading is uncertain by'),
    },
    {
      setting: 'above',
      value: '1 %',
      basis: judgement('about twice what a hydrometer’s reading is uncertain by'),
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'film',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: solids at {$value}, {$difference} from {$reference}.',
    consequence: 'The next racks get a film that is too thick or too thin.',
    steps: [
      'Let the sample’s foam settle, stir it, and read again at the bath’s temperature.',
      'Add half of the deionised water or adhesive that the correction needs, stir, and measure once more.',
      'Measure a panel before the next rack.',
    ],
    doNot: ['use tap water', 'order adhesive on a reading taken through foam'],
    caution: wear,
  },
};

/** By density, where that is what people read: out only where the reading cannot be wrong by so much. */
const solidsByDensity: RuleTemplate = {
  ...solids,
  name: 'bath-solids-density',
  kind: 'band',
  alike: { rule: 'bath-solids', only: ['priority', 'respond', 'hold'] },
  signals: ['solids-margin'],
  numbers: [
    {
      setting: 'low',
      value: '0 %',
      basis: judgement('out by more than is allowed, and by more than twice the uncertainty'),
    },
  ],
  facts: (given) => ({ target: given.number('bath-solids', 'target') ?? 'its target' }),
  label: {
    ...solids.label,
    sentence:
      '{$station}: solids by density are too far from {$target}; room to the limit {$value}, counting what the reading can be wrong by.',
    steps: [
      'Let the sample’s foam settle, stir it, and read density and temperature again.',
      'Water is missing only if the level is low too; else look for settling or a wrong lot.',
      'Add half of the deionised water or adhesive that the correction needs, stir, measure once more, and draw a panel.',
    ],
  },
};

const weir: RuleTemplate = {
  name: 'weir-fall',
  kind: 'band',
  signals: ['weir-fall'],
  numbers: [
    {
      setting: 'high',
      value: '30 mm',
      basis: commonPractice('the fall is kept small; the figure itself is judgement'),
      confirm: 'SITE',
      needs: 'the fall from which this weir foams (rule weir-fall: high)',
    },
    tuning('on_delay', '2 min'),
    tuning('deadband', '5 mm'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '15 min',
  hazard: 'foam',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: liquid falls {$value} over the weir, above {$limit}, for {$duration}.',
    consequence: 'A long fall beats air in; foam marks the film and spoils density readings.',
    steps: [
      'Top up slowly under the surface, with adhesive of the same lot and solids.',
      'Set the pump’s rate so that the level behind the weir rises.',
      'Foam that stays: once the rack is out at the end of its cycle, and hoist and paddle are parked and locked by somebody who may, skim it; a loaded conveyor is not stopped inside an oven for this. Measure a panel.',
    ],
    doNot: [
      'pour from a height',
      'add defoamer of your own choice',
      'lean over the tank while racks move',
    ],
    caution: movingRacks,
  },
};

const withdrawal: RuleTemplate = {
  name: 'withdrawal',
  kind: 'deviation',
  signals: ['withdrawal'],
  numbers: [
    {
      setting: 'target',
      value: '1 m/min',
      basis: commonPractice(
        'how thick the film is, and how even along the part, is set by this speed',
      ),
      confirm: sheetOrTrial,
      needs:
        'the withdrawal speed the film was set up at (withdrawal_speed of the material sheet, or rule withdrawal: target)',
      fromSheet: (sheet) =>
        written(sheet.withdrawalMPerS === null ? null : sheet.withdrawalMPerS * 60, 'm/min'),
    },
    { setting: 'below', value: '10 %', basis: commonPractice('film moves beyond it') },
    { setting: 'above', value: '10 %', basis: commonPractice('film moves beyond it') },
    tuning('on_delay', '10 s'),
    tuning('deadband', '2 %'),
  ],
  gate: { signal: 'withdrawing', low: '1 1' },
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'film',
  hold: 'rack',
  named: ['rack-in'],
  label: {
    word: 'NOTICE',
    sentence: '{$station}: parts drawn out at {$value}, {$difference} from {$reference}.',
    consequence: 'Faster leaves a thicker film and slower a thinner one, uneven along the part.',
    steps: [
      'Tag the rack “hold” where it is taken off.',
      'Have the hoist’s or the conveyor’s drive seen to.',
      'Measure a panel before the next rack.',
    ],
    doNot: ['correct it with dilution'],
    caution: 'Moving racks and chain. Isolate and lock out by local rules before any work on them.',
  },
};

export const dipTank: StationKind = {
  name: 'dip-tank',
  summary: 'A tank of circulating adhesive that parts are drawn out of.',
  signals: [...dipTankSignals, ...dipTankHandSignals],
  derived: dipTankDerived,
  marks: dipTankMarks,
  hazards: [
    {
      id: 'film',
      words:
        'The film becomes too thick or too thin: temperature, solids or speed of withdrawal moved.',
      people: false,
      byHand: null,
    },
    { id: 'foam', words: 'A long fall beats foam into the bath.', people: false, byHand: null },
    {
      id: 'standing',
      words: 'Circulation stops: solids settle and skin forms.',
      people: false,
      byHand: null,
    },
    {
      id: 'particles',
      words: 'A loaded filter starves the loop; a torn one lets particles through.',
      people: false,
      byHand: null,
    },
    {
      id: 'bath-chemistry',
      words: 'The bath is spoilt by what parts carry in, by hard water or by skin.',
      people: false,
      byHand: null,
    },
    heldUsed,
  ],
  rules: [
    temperature,
    solids,
    solidsByDensity,
    weir,
    circulationLost,
    filterLoaded,
    filterTorn,
    withdrawal,
    ...dipTankHand,
    heldAtTank,
    heldIntoTank,
  ],
};
