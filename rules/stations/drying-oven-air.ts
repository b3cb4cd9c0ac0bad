/** The drying oven's air: zones, second sensors, exhaust. */

import { ovenZones } from './drying-oven-signals.ts';
import { firePlanFacts } from './fire-plan.ts';
import { judgement, managedClass, plainClass, type RuleTemplate, tuning } from './station.ts';

const airMeansNothing: RuleTemplate['moot'] = ({ heating }) =>
  heating === 'infrared'
    ? 'Infrared heats the part and not the air: air temperature says nothing here. Bind metal, by contact or by a pyrometer set for the coated part.'
    : null;

const zoneHigh = (zone: number): RuleTemplate => ({
  name: `zone-${zone}-high`,
  kind: 'deviation',
  signals: [`zone-${zone}-air`],
  moot: airMeansNothing,
  numbers: [
    {
      setting: 'target',
      value: null,
      basis: { mark: 'SITE', note: `set-point of zone ${zone}`, source: null },
      confirm: 'SITE',
      needs: `the set-point of zone ${zone} (rule zone-${zone}-high: target)`,
    },
    { setting: 'above', value: '10 K', basis: judgement('beyond what a healthy control swings') },
    tuning('on_delay', '2 min'),
    tuning('deadband', '2 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'over-bake',
  hold: null,
  firePlan: true,
  facts: firePlanFacts,
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, {$difference} above its set-point of {$reference}, for {$duration}.',
    consequence: 'Parts over-bake, and dried residue heats up towards its ignition limit.',
    steps: [
      'Smoke, glow or burning smell: leave, fire alarm, site fire plan{$plan}.',
      'Otherwise compare it with the zone’s second sensor and the control’s own display, and lower the zone at its control.',
      'Tag what was inside “hold” and tell the process engineer.',
    ],
    doNot: ['trust one sensor', 'reach into the oven with a probe'],
    caution: 'Hot surfaces; work on burners and controls is for licensed people.',
  },
});

const sensorsDisagree = (zone: number): RuleTemplate => ({
  name: `sensors-disagree-${zone}`,
  kind: 'disagree',
  signals: [`zone-${zone}-air`, `zone-${zone}-check`],
  moot: airMeansNothing,
  numbers: [
    { setting: 'allowed', value: '5 K', basis: judgement('more than two healthy sensors differ') },
    { setting: 'steady', value: '3 K', basis: judgement('what a healthy control swings') },
    {
      setting: 'steady_for',
      value: '10 min',
      basis: judgement('longer than a door or a load moves one before the other'),
    },
    tuning('deadband', '1 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '8 h',
  hazard: 'blind',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$signals} differ by {$difference}, more than {$allowed}, although the oven is steady; go by {$which}, the hotter, until it is known which is right.',
    consequence: 'One of the two is wrong; the oven is judged by a number nobody can trust.',
    steps: [
      'Compare both with the control’s own display; tag the one that is wrong.',
      'Tell maintenance: with the oven cold and isolated they put a third probe beside the two.',
      'Until then go by the more cautious of the two.',
    ],
    doNot: ['average them', 'reach into the oven with a probe'],
    caution: 'Reach the sensors only where it is safe to, with the oven cold.',
  },
});

const exhaustLabel: RuleTemplate['label'] = {
  word: 'WARNING',
  sentence: '{$station}: the exhaust has not been proven to flow since {$clock}, for {$duration}.',
  consequence: 'Vapour and moisture gather in the oven and in the room.',
  steps: [
    'Load no more.',
    'See at the oven’s own panel that the burner has tripped; if not, turn the heat off at the outside control.',
    'Call the maintainer; keep people out of the room until it flows again. Whoever feels unwell goes to fresh air.',
  ],
  doNot: ['bridge the airflow switch'],
  caution: 'The interlock is the oven’s own; this page is none. Work on it is for licensed people.',
};

export const exhaustLost: RuleTemplate = {
  name: 'exhaust-lost',
  kind: 'band',
  signals: ['exhaust-proof'],
  numbers: [
    { setting: 'low', value: '1 1', basis: judgement('the proof of flow is off') },
    tuning('on_delay', '30 s'),
  ],
  gate: { signal: 'heat', low: '1 1' },
  class: managedClass,
  priority: ['high', 'high'],
  respond: '1 min',
  hazard: 'exhaust',
  hold: null,
  label: exhaustLabel,
};

export const exhaustWeak: RuleTemplate = {
  ...exhaustLost,
  name: 'exhaust-weak',
  kind: 'deviation',
  signals: ['exhaust-dp'],
  numbers: [
    {
      setting: 'target',
      value: null,
      basis: {
        mark: 'SITE',
        note: 'pressure drop at the flow the oven was set up with',
        source: null,
      },
      confirm: 'SITE',
      needs: 'the exhaust’s normal pressure drop (rule exhaust-weak: target)',
    },
    { setting: 'below', value: '50 %', basis: judgement('half of the normal pressure drop') },
    tuning('on_delay', '30 s'),
    tuning('deadband', '5 %'),
  ],
  label: {
    ...exhaustLabel,
    sentence:
      '{$station}: exhaust at {$value}, far below the normal {$reference}, for {$duration}.',
  },
};

export const dryingOvenAir: readonly RuleTemplate[] = [
  exhaustLost,
  exhaustWeak,
  ...ovenZones.map(zoneHigh),
  ...ovenZones.map(sensorsDisagree),
];
