/** The dip tank's loop: its pump and its filter. */
import {
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
  tuning,
} from './station.ts';

const normal: TemplateNumber = {
  setting: 'target',
  value: null,
  basis: { mark: 'SITE', note: 'what the pump gives when all is well', source: null },
  confirm: 'SITE',
  needs: 'the loop’s normal flow or strokes (rule circulation-lost: target)',
};
const clean: TemplateNumber = {
  setting: 'target',
  value: null,
  basis: { mark: 'SITE', note: 'the drop across the filter when it is clean', source: null },
  confirm: 'SITE',
  needs: 'the pressure drop of the clean filter at normal flow (rule filter-loaded: target)',
};
const storedPressure =
  'Stored pressure, and a pump and paddle that can start without warning. Vent and lock out by local rules.';

export const circulationLost: RuleTemplate = {
  name: 'circulation-lost',
  kind: 'deviation',
  signals: ['flow', 'strokes'],
  numbers: [
    normal,
    { setting: 'below', value: '50 %', basis: judgement('half of what the loop needs') },
    tuning('on_delay', '2 min'),
    tuning('deadband', '5 %'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'standing',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: circulation at {$value}, far below {$reference}, for {$duration}.',
    consequence: 'Solids settle and skin forms; film becomes uneven.',
    steps: [
      'Check the air to the pump and its regulator.',
      'Check the filter’s pressure drop; where it is loaded, have it vented and changed by somebody who may.',
      'See that the tank’s own paddle runs until the loop is back.',
    ],
    doNot: ['put a piston or centrifugal pump in its place'],
    caution: storedPressure,
  },
};

export const filterLoaded: RuleTemplate = {
  name: 'filter-loaded',
  kind: 'deviation',
  signals: ['filter-dp'],
  numbers: [
    clean,
    {
      setting: 'above',
      value: '0.5 bar',
      basis: judgement('a loaded inline filter'),
      confirm: 'DS',
      needs:
        'the pressure drop at which the filter’s data sheet changes it (rule filter-loaded: above)',
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '0.05 bar'),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'particles',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: filter at {$value}, {$difference} above the clean filter, for {$duration}.',
    consequence: 'A loaded filter starves the loop and may tear.',
    steps: [
      'Have the loop stopped and its filter vented by somebody who may; then have the 300 µm element changed by its instruction.',
      'Keep what it caught and write down what it is.',
      'Find where it comes from: skin, lumps, or what parts carry in.',
    ],
    doNot: ['run on through the bypass', 'open the housing under pressure'],
    caution: storedPressure,
  },
};

export const filterTorn: RuleTemplate = {
  ...filterLoaded,
  name: 'filter-torn',
  alike: { rule: 'filter-loaded', only: ['target'] },
  numbers: [
    clean,
    {
      setting: 'below',
      value: '50 %',
      basis: judgement(
        'with the loop running, less than a clean filter makes: it is torn or missing',
      ),
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '5 %'),
  ],
  gate: { signal: 'flow', low: '1 L/min' },
  priority: ['medium', 'medium'],
  label: {
    ...filterLoaded.label,
    sentence:
      '{$station}: filter at {$value} with the loop running, far below the clean filter’s {$reference}.',
    consequence: 'A torn or missing filter lets lumps through to the parts.',
    steps: [
      'Have the loop stopped and its filter vented by somebody who may.',
      'Then have it seen whether the element is in its place and whole; have it changed by its instruction and keep the old one.',
      'Check the parts since the drop fell for lumps.',
    ],
  },
};
