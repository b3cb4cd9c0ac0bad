/**
 * A hot surface that gathers dried residue: on its way to the limit, early, act, at it. Where the
 * limit lies stands in residue-limit.ts, what residue does that heats itself in residue-reaction.ts.
 */

import type { Label } from '../alarm/label.ts';
import { provenThicknessMm } from '../process/residue-ignition.ts';
import { planOverrules } from './fire-plan.ts';
import {
  actK,
  approachingMoot,
  atLimitNumber,
  below,
  earlyK,
  foretoldFromC,
  moot,
  theLimit,
} from './residue-limit.ts';
import { fireFacts, fumes, tellEhs } from './residue-texts.ts';
import { judgement, latchedClass, managedClass, type RuleTemplate, tuning } from './station.ts';

const earlyLabel: Label = {
  word: 'WARNING',
  sentence:
    '{$signal} at {$value}, at or above {$limit}, for {$duration}: past the early limit set for dried residue.',
  consequence:
    'Dried residue can light itself with no spark, thicker residue at a lower temperature; friction or a spark lights it even cold.',
  steps: [
    'Smoke, glow or burning smell: leave, fire alarm, site fire plan{$plan}.',
    'Otherwise load no more and lower the heat at the outside control, as the oven’s instruction says; compare with the neighbouring sensors.',
    'Tell the shift lead; watch the reading from a safe place until it has fallen for 10 min.',
  ],
  doNot: ['open the oven to look', 'reach in', 'scrape, sweep or blow hot residue'],
  caution:
    'Hot surfaces, fire. Cleaning waits until cold, with non-sparking tools, under the site’s permit.',
};

const shared = {
  signals: ['surface'],
  gate: null,
  hazard: 'ignition',
  hold: null,
  firePlan: true,
  facts: fireFacts,
} as const;

export const early: RuleTemplate = {
  ...shared,
  name: 'early',
  kind: 'band',
  moot: moot('early'),
  numbers: [below(earlyK), tuning('on_delay', '60 s'), tuning('deadband', '3 K')],
  fixed: { inclusive: true },
  class: managedClass,
  priority: ['medium', 'medium'],
  respond: '15 min',
  label: earlyLabel,
};

export const approaching: RuleTemplate = {
  ...shared,
  name: 'approaching',
  kind: 'approach',
  moot: approachingMoot,
  numbers: [
    theLimit,
    {
      setting: 'within',
      value: '30 min',
      basis: judgement('time to lower the heat and see it fall'),
    },
    {
      setting: 'window',
      value: '10 min',
      basis: judgement('shorter than an oven takes to heat up'),
    },
    tuning('on_delay', '60 s'),
  ],
  gate: { signal: 'surface', low: `${foretoldFromC} Cel` },
  class: managedClass,
  priority: ['medium', 'medium'],
  respond: '15 min',
  label: {
    ...earlyLabel,
    sentence:
      '{$signal} at {$value}, rising {$minuteslope} a minute; ignition limit set for dried residue, {$limit}, in {$early} to {$late}.',
  },
};

export const act: RuleTemplate = {
  ...shared,
  name: 'act',
  kind: 'band',
  moot: moot('act'),
  numbers: [below(actK), tuning('on_delay', '30 s'), tuning('deadband', '3 K')],
  fixed: { inclusive: true },
  class: managedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  label: {
    ...earlyLabel,
    sentence:
      '{$signal} at {$value}, at or above {$limit}, for {$duration}: past the limit to act set for dried residue.',
    consequence: 'Ignition is possible now; people nearby can be burned or overcome by smoke.',
    steps: [
      'Smoke, glow, smell or doubt: leave, fire alarm, site fire plan{$plan}.',
      'Otherwise turn the heat off at the outside control and keep everyone away.',
      'Call EHS; the site’s plan says what becomes of conveyor, fans and dampers.',
    ],
    doNot: [
      'stop the conveyor unless the site’s plan says so: a stopped load goes on heating',
      'open the oven to look',
      'scrape, sweep or blow hot residue',
    ],
  },
};

export const atLimit: RuleTemplate = {
  ...shared,
  name: 'at-limit',
  kind: 'band',
  moot: moot('at-limit'),
  numbers: [atLimitNumber, tuning('on_delay', '5 s')],
  fixed: { inclusive: true },
  class: latchedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  label: {
    word: 'WARNING',
    sentence:
      '{$signal} at {$value}, past the ignition limit set for dried residue, {$limit}, since {$clock}; a fire may have begun that this sensor cannot see.',
    consequence:
      'Fire in the oven or its exhaust; people nearby can be burned or overcome by smoke.',
    steps: [
      'Leave; keep everyone away. Smoke, glow, smell or doubt: fire alarm now, site fire plan{$plan}; account for people.',
      'If it is safe to reach, stop the oven at its outside control by its emergency instruction, which also governs conveyor, fans and exhaust.',
      tellEhs,
    ],
    doNot: [
      'go in',
      'open a door or blow air at it: air feeds fire',
      'fight it unless trained and the site’s plan says so',
      'take a falling number as all-clear',
    ],
    caution: `${planOverrules} ${fumes}`,
  },
};

/** Of residue gauged thicker than the limit is taken for; `act` speaks for the rest. */
export const actThick: RuleTemplate = {
  ...act,
  name: 'act-thick',
  signals: ['ignition-margin'],
  moot: () => null,
  numbers: [
    {
      setting: 'low',
      value: `${actK} K`,
      basis: judgement(`${actK} K below where residue so thick may light itself`),
    },
    tuning('on_delay', '30 s'),
    tuning('deadband', '3 K'),
  ],
  gate: { signal: 'thickness', low: `${provenThicknessMm} mm` },
  label: {
    ...act.label,
    sentence:
      '{$signal}: {$value} left to where residue as thick as gauged here may light itself, at or below {$limit}, for {$duration}.',
  },
};
