/** The pre-bake oven's air: zones off their set-points, zones apart. */
import { loadSignals, ovenSignals } from './oven-load.ts';
import { fromSite } from './sheet-number.ts';
import { judgement, plainClass, type RuleTemplate, type StationSignal, tuning } from './station.ts';

export const preBakeZones = [1, 2, 3] as const;

export const preBakeSignals: readonly StationSignal[] = [
  ...loadSignals,
  ...preBakeZones.map(
    (zone): StationSignal => ({
      name: `zone-${zone}-air`,
      unit: 'Cel',
      resolution: 0.1,
      range: ['-20 Cel', '400 Cel'],
      meaning: `air of zone ${zone}`,
      where: `return stream of zone ${zone} at part height, apart from the control’s sensor; not on the wall`,
      stuckAfter: null,
    }),
  ),
  ...ovenSignals,
];

const airMeansNothing: RuleTemplate['moot'] = ({ heating }) =>
  heating === 'infrared'
    ? 'Infrared heats the part and not the air: air temperature says nothing here. Bind metal, by contact or by a pyrometer set for the coated part.'
    : null;

const shared = {
  moot: airMeansNothing,
  gate: { signal: 'loaded', low: '1 1' },
  class: plainClass,
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'uneven',
  hold: null,
} as const;

const caution = 'Hot surfaces. Work on burners, elements and controls is for licensed people.';

export const zoneOff = (zone: number): RuleTemplate => ({
  ...shared,
  name: `zone-off-${zone}`,
  kind: 'deviation',
  signals: [`zone-${zone}-air`],
  numbers: [
    fromSite('target', `the set-point of zone ${zone}`, `rule zone-off-${zone}: target`),
    { setting: 'below', value: '8 K', basis: judgement('beyond what a healthy control swings') },
    { setting: 'above', value: '8 K', basis: judgement('beyond what a healthy control swings') },
    tuning('on_delay', '3 min'),
    tuning('deadband', '2 K'),
  ],
  label: {
    word: 'NOTICE',
    sentence:
      '{$signal} at {$value}, {$difference} from its set-point of {$reference}, for {$duration}.',
    consequence: 'Racks get another heat than was set up, some too little and some too much.',
    steps: [
      'Check the zone’s fan and its heating element at the oven’s own panel.',
      'Compare the sensor with the zone’s second sensor or the control’s own display.',
      'Watch what the metal gets; tell the process engineer.',
    ],
    doNot: ['shift the set-point to make up for it', 'reach into the oven with a probe'],
    caution,
  },
});

export const zonesApart: RuleTemplate = {
  ...shared,
  name: 'zones-apart',
  kind: 'disagree',
  signals: preBakeZones.map((zone) => `zone-${zone}-air`),
  numbers: [
    { setting: 'allowed', value: '10 K', basis: judgement('zones run at one set-point') },
    { setting: 'steady', value: '3 K', basis: judgement('what a healthy control swings') },
    {
      setting: 'steady_for',
      value: '3 min',
      basis: judgement('a load cools one zone before the other'),
    },
    tuning('deadband', '2 K'),
  ],
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: zones {$difference} apart, more than {$allowed}; the hotter is {$which}.',
    consequence: 'Racks get another heat than was set up, some too little and some too much.',
    steps: [
      'Check fans and heating elements of both zones at the oven’s own panel.',
      'Compare each sensor with its zone’s second sensor or the control’s own display.',
      'Where zones are set apart on purpose, the process engineer sets this limit to it.',
    ],
    doNot: ['shift the set-point to make up for it', 'reach into the oven with a probe'],
    caution,
  },
};
