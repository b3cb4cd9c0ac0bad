/**
 * A hot surface that gathers dried residue: on its way to the limit, early, act, at it, and past all
 * limits where the residue heats itself.
 *
 * 112 °C is a figure without a thickness, a time or a test behind it; thicker residue lights
 * cooler. So it may be lowered by anybody and raised only on a basket test of this very residue.
 */

import type { Label } from '../alarm/label.ts';
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import { firePlanFacts, planOverrules } from './fire-plan.ts';
import {
  type Basis,
  type Given,
  judgement,
  latchedClass,
  managedClass,
  type RuleTemplate,
  type TemplateNumber,
  tuning,
} from './station.ts';

const ignitionC = 112;
const earlyK = 20;
const actK = 10;

const celsius = (value: number): string => `${Number(value.toFixed(3))} Cel`;

function degreesC(written: string): number | null {
  const read = parseQuantity(written);
  return read.ok ? toCanonical(read.value.value, read.value.unit) : null;
}

const limitBasis: Basis = {
  mark: 'CP',
  note: 'where dried residue may light itself; no thickness, no time and no test method stand behind it',
  source: null,
};

const needsLimit =
  'the ignition limit that the site’s hazard review sets for this residue and its thickness (rule at-limit: high)';

const atLimitNumber: TemplateNumber = {
  setting: 'high',
  value: celsius(ignitionC),
  basis: limitBasis,
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  fromSheet: (sheet) =>
    sheet.residueLimitC === null ? null : celsius(Math.min(ignitionC, sheet.residueLimitC)),
};

/** So many kelvin below the limit, wherever the limit is. */
const below = (marginK: number): TemplateNumber => ({
  setting: 'high',
  value: celsius(ignitionC - marginK),
  basis: judgement(`${marginK} K below the limit`),
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  follows: (given) => {
    const limitC = degreesC(given.number('at-limit', 'high') ?? '');
    if (limitC === null) return null;
    return { written: celsius(limitC - marginK), confirmed: given.confirmed('at-limit', 'high') };
  },
});

/** The limit itself, in another rule. */
const theLimit: TemplateNumber = {
  setting: 'high',
  value: celsius(ignitionC),
  basis: limitBasis,
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  follows: (given) => ({
    written: given.number('at-limit', 'high') ?? celsius(ignitionC),
    confirmed: given.confirmed('at-limit', 'high'),
  }),
};

const noMargin = 'No temperature margin here. Cleaning is the only barrier.';

/** Why a rule means nothing where the place itself runs past its limit. */
const moot =
  (rule: string) =>
  (given: Given): string | null => {
    const placeC = degreesC(given.processTemperature ?? '');
    const limitC = degreesC(given.number('at-limit', 'high') ?? '');
    const ownC = degreesC(given.number(rule, 'high') ?? '');
    if (placeC === null || limitC === null || ownC === null) return null;
    if (placeC >= limitC) return noMargin;
    if (placeC < ownC) return null;
    return `The place itself runs at ${given.processTemperature}, past this warning; the ones nearer the limit stand.`;
  };

const tellEhs = 'Call EHS; hand over in person; nobody re-enters until they say so.';

const earlyLabel: Label = {
  word: 'WARNING',
  sentence:
    '{$signal} at {$value}, at or above {$limit}, for {$duration}: on the way to the ignition limit set for dried residue.',
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
  facts: firePlanFacts,
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
  moot: moot('approaching'),
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
  // Below this an oven that heats up in the morning would be foretold to burn.
  gate: { signal: 'surface', low: '80 Cel' },
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
      '{$signal} at {$value}, at or above {$limit}, for {$duration}: close to the ignition limit set for dried residue.',
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
      'Keep everyone away. Smoke, glow, smell or doubt: fire alarm now, site fire plan{$plan}; account for people.',
      'If it is safe to reach, stop the oven at its outside control by its emergency instruction, which also governs conveyor, fans and exhaust.',
      tellEhs,
    ],
    doNot: [
      'open a door, since air feeds fire; go in; blow air at it',
      'fight it unless trained and the site’s plan says so',
      'take a falling number as all-clear',
    ],
    caution: planOverrules,
  },
};

export const selfHeating: RuleTemplate = {
  ...shared,
  name: 'self-heating',
  kind: 'self-heat',
  signals: ['self-heat-excess', 'surface'],
  hazard: 'reaction',
  numbers: [
    {
      setting: 'excess',
      value: '5 K',
      basis: judgement(
        'more than a healthy surface is hotter than its air; set it from what this place shows when all is well',
      ),
      confirm: 'SITE',
      needs:
        'how much hotter this surface is than the air beside it when all is well (rule self-heating: excess)',
    },
    { setting: 'rise', value: '1 K', basis: judgement('faster than a steady oven drifts') },
    { setting: 'rise_per', value: '1 min', basis: judgement('the time that rise takes') },
    { setting: 'window', value: '5 min', basis: judgement('long enough for a slope to be told') },
    tuning('on_delay', '60 s'),
  ],
  class: latchedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  label: {
    word: 'DANGER',
    sentence:
      '{$which}: the surface is {$value} hotter than the air beside it and rising {$minuteslope} a minute with the heat steady or off.',
    consequence:
      'The residue is reacting; it can burn at any oven temperature, and smothering may not stop it.',
    steps: [
      'Leave, keep everyone away, raise the fire alarm by the site fire plan{$plan}.',
      'Heat off from outside, only if that is safe to reach.',
      tellEhs,
    ],
    doNot: [
      'open a door',
      'go near alone; fight it alone',
      'scrape, blow or spray water at it',
      'take a falling number as all-clear',
    ],
    caution: `${planOverrules} Fumes can be toxic: data sheet, sections 5 and 10.`,
  },
};
