/** What a load in the drying oven can suffer: too little heat, too much, a conveyor that stands. */
import { firePlanFacts } from './fire-plan.ts';
import { dwell, gloves, mostHeat, rackInside } from './oven-load.ts';
import { celsius, fromDataSheet, minutes } from './sheet-number.ts';
import { judgement, managedClass, plainClass, type RuleTemplate } from './station.ts';

export const underDried: RuleTemplate = {
  name: 'under-dried',
  kind: 'dry',
  signals: ['metal', 'loaded'],
  instead: { metal: 'part-temperature' },
  numbers: [
    fromDataSheet('above', 'the metal temperature at which the coat dries', 'dry_above', (sheet) =>
      celsius(sheet.dryAboveC),
    ),
    fromDataSheet('above_for', 'the least time at or above it', 'dry_for', (sheet) =>
      minutes(sheet.dryForMs),
    ),
    dwell('under-dried'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'under-drying',
  hold: 'rack',
  named: rackInside,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}, load of {$clock}: metal {$reached} at or above {$limit}, {$required} needed, and only {$left} left before exit; the drying can no longer be met.',
    consequence:
      'Water can stay in the coat: it blisters, or the rubber sweeps it off in the mould; the bond may fail although the parts look right.',
    steps: [
      'Tag the rack “hold” at the exit.',
      'Compare set temperature, line speed, exhaust and load with the run card; load no more until explained.',
      'The process engineer decides: dry again only inside the allowed total heat, test, or scrap.',
    ],
    doNot: [
      'raise the heat to catch up: the limits of dried residue come first',
      'stack it wet, or mould held parts',
    ],
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
    consequence: 'A film that cured in the oven looks perfect, and the rubber does not hold on it.',
    steps: [
      'Tag the rack “hold” at the exit.',
      'Mark it as over-baked, with the peak and the time.',
      'The process engineer decides on a trial bond.',
    ],
    doNot: ['bake it again to be sure', 'mould held parts'],
    caution: gloves,
  },
};

export const conveyorStopped: RuleTemplate = {
  name: 'conveyor-stopped',
  kind: 'band',
  signals: ['conveyor'],
  numbers: [
    {
      setting: 'low',
      value: '1 1',
      basis: judgement('the conveyor stands while a load is inside'),
    },
    {
      setting: 'on_delay',
      value: '60 s',
      basis: judgement('a jog is no stop; with infrared heat 10 s, for the part heats within them'),
      follows: (given) =>
        given.heating === 'infrared' ? { written: '10 s', confirmed: true } : null,
    },
  ],
  gate: { signal: 'loaded', low: '1 1' },
  class: managedClass,
  priority: ['high', 'high'],
  respond: '5 min',
  hazard: 'soak',
  hold: 'rack',
  named: rackInside,
  firePlan: true,
  facts: firePlanFacts,
  label: {
    word: 'WARNING',
    sentence:
      '{$station}: the conveyor has stood since {$clock}, for {$duration}, with a load inside.',
    consequence:
      'The load stays in the heat and over-bakes; dried residue on racks and floor heats up and can light itself.',
    steps: [
      'Smoke, glow or burning smell: leave, fire alarm, site fire plan{$plan}.',
      'Otherwise turn the heat off at the oven’s outside control.',
      'Somebody who may restarts the conveyor by its instruction once nobody is at the chain; else the site’s plan for a stopped load holds. Tag the load “hold” at the exit.',
    ],
    doNot: [
      'reach in',
      'leave the heat on under a standing load',
      'reset an emergency stop whose cause is unknown',
    ],
    caution: 'Hot surfaces; a chain that can start without warning. Lock out by local rules.',
  },
};
