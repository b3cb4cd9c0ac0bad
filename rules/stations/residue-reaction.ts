/** Residue hotter than what surrounds it: it reacts, at any temperature of the oven. */
import { planOverrules } from './fire-plan.ts';
import { fireFacts, fumes, tellEhs } from './residue-texts.ts';
import { judgement, latchedClass, type RuleTemplate, tuning } from './station.ts';

export const selfHeating: RuleTemplate = {
  firePlan: true,
  facts: fireFacts,
  gate: null,
  hold: null,
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
    consequence: 'The residue is reacting; it can burn at any oven temperature, and {$smother}.',
    steps: [
      'Leave, keep everyone away, raise the fire alarm by the site fire plan{$plan}.',
      'Heat off from outside, only if that is safe to reach.',
      tellEhs,
    ],
    doNot: [
      'open a door',
      'go near it or fight it',
      'scrape, blow or spray water at it',
      'take a falling number as all-clear',
    ],
    caution: `${planOverrules} ${fumes}`,
  },
};
