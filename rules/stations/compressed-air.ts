/**
 * Compressed air: what drives guns, agitators and pumps, and what can carry water and oil to a part.
 *
 * The hazard is liquid water: a pressure dew point above the coldest pipe. A dew point says
 * nothing of oil or particles, so no purity class is ever shown for them.
 */
import {
  type Basis,
  judgement,
  plainClass,
  type RuleTemplate,
  type StationKind,
  tuning,
} from './station.ts';

const storedPressure = 'Stored pressure. Vent and lock out by local rules.';

const instrumentAir: Basis = {
  mark: 'PUB',
  note: 'dew point at least 10 K below the coldest the pipe gets; said of instrument air, taken over',
  source: 'ANSI/ISA-7.0.01 (from secondary sources)',
};

const waterSteps = [
  'Stop spraying parts.',
  'Drain the separators by their instruction; read the dryer’s own display.',
  'Once the reading is back within its limit, blow onto a white collector for a minute (ASTM D4285) and spray a test panel; go on if neither shows water or oil.',
] as const;
const waterDoNot = [
  'go on because the gauge looks right',
  'open a bowl or fitting under pressure',
  'point air at anyone',
] as const;
const waterConsequence =
  'Liquid water reaches gun and film: craters, pinholes, blisters, rust, a weak bond.';

const airDewPoint: RuleTemplate = {
  name: 'air-dew-point',
  kind: 'band',
  signals: ['pdp'],
  numbers: [
    {
      setting: 'high',
      value: '5 Cel',
      basis: judgement('never above +5 °C, whatever the pipes; class 4 of ISO 8573-1 is +3 °C'),
    },
    tuning('on_delay', '10 min'),
    tuning('deadband', '1 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 h',
  hazard: 'water',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: air at pressure dew point {$value}, above {$limit}, for {$duration}.',
    consequence: waterConsequence,
    steps: waterSteps,
    doNot: waterDoNot,
    caution: storedPressure,
  },
};

const pipeMargin: RuleTemplate = {
  name: 'pipe-margin',
  kind: 'band',
  signals: ['pipe-margin'],
  numbers: [
    { setting: 'low', value: '10 K', basis: instrumentAir },
    tuning('on_delay', '10 min'),
    tuning('deadband', '1 K'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 h',
  hazard: 'water',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: coldest pipe {$value} above the dew point of the air, less than {$limit}, for {$duration}.',
    consequence: waterConsequence,
    steps: waterSteps,
    doNot: waterDoNot,
    caution: storedPressure,
  },
};

const headerLow: RuleTemplate = {
  name: 'header-low',
  kind: 'band',
  signals: ['header'],
  numbers: [
    {
      setting: 'low',
      value: '5.5 bar',
      basis: judgement('gauge pressure most guns and air motors need'),
      confirm: 'SITE',
      needs: 'the gauge pressure this line needs (rule header-low: low)',
    },
    tuning('on_delay', '30 s'),
    tuning('deadband', '0.2 bar'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '15 min',
  hazard: 'pressure-low',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: header at {$value}, below {$limit}, for {$duration}.',
    consequence:
      'Guns, agitators and pumps all slow down together: film, mixing and circulation suffer.',
    steps: [
      'See whether the compressor runs and loads.',
      'Listen for a leak or a drain that stays on.',
      'Check the agitators and pumps; write down which slowed.',
    ],
    doNot: ['raise all regulators'],
    caution: storedPressure,
  },
};

const separator: RuleTemplate = {
  name: 'separator-dp',
  kind: 'band',
  signals: ['separator-dp'],
  numbers: [
    {
      setting: 'high',
      value: '0.35 bar',
      basis: judgement('a common change point of coalescing elements'),
      confirm: 'DS',
      needs:
        'the pressure drop at which the filter’s data sheet changes the element (rule separator-dp: high)',
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '0.02 bar'),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'carry-over',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: separator drop at {$value}, above {$limit}, for {$duration}.',
    consequence: 'A loaded element lets water and oil through to the guns.',
    steps: [
      'Depressurise and lock out the separator by its instruction.',
      'Have the element changed and the drain tested.',
      'Write down the pressure drop before and after.',
    ],
    doNot: ['open a bowl under pressure'],
    caution: storedPressure,
  },
};

export const compressedAir: StationKind = {
  name: 'compressed-air',
  summary: 'Dryer, separators and header that feed guns, agitators and pumps.',
  signals: [
    {
      name: 'pdp',
      unit: 'Cel',
      resolution: 0.1,
      range: ['-100 Cel', '60 Cel'],
      meaning:
        'pressure dew point: below this temperature water settles out of the air at line pressure',
      where: 'after the dryer, at line pressure, in a sample cell with a bleed; short hose',
      stuckAfter: '24 h',
    },
    {
      name: 'pipe',
      unit: 'Cel',
      resolution: 0.1,
      range: ['-40 Cel', '85 Cel'],
      meaning: 'temperature of the coldest pipe',
      where: 'strapped and insulated on the coldest drop',
      stuckAfter: '24 h',
    },
    {
      name: 'header',
      unit: 'bar',
      resolution: 0.1,
      range: ['-1 bar', '16 bar'],
      meaning: 'gauge pressure in the header, the main air pipe',
      where: 'on the header, after the dryer',
      stuckAfter: '24 h',
    },
    {
      name: 'separator-dp',
      unit: 'bar',
      resolution: 0.1,
      range: ['-0.1 bar', '2 bar'],
      meaning: 'pressure drop across the separator’s element',
      where: 'across the element at the point of use; keep the taps clear',
      stuckAfter: null,
    },
  ],
  derived: [
    {
      name: 'pipe-margin',
      kind: 'pipe-margin',
      inputs: { pipe: 'pipe', 'pressure-dew-point': 'pdp' },
      meaning: 'how much warmer the coldest pipe is than the air’s pressure dew point',
    },
    {
      name: 'atmospheric-dew-point',
      kind: 'atmospheric-dew-point',
      inputs: { 'pressure-dew-point': 'pdp', 'line-pressure': 'header' },
      meaning: 'dew point of the same air once it has left the gun; shown only, no rule judges it',
    },
  ],
  hazards: [
    {
      id: 'water',
      words: 'Liquid water in the air spoils film and prepared metal.',
      people: false,
      byHand: null,
    },
    {
      id: 'pressure-low',
      words: 'Guns, agitators and pumps lose their air.',
      people: false,
      byHand: null,
    },
    {
      id: 'carry-over',
      words: 'A loaded separator lets water and oil through.',
      people: false,
      byHand: null,
    },
    {
      id: 'oil',
      words: 'Oil in the air makes small craters (fish-eyes) and bare spots in the film.',
      people: false,
      byHand: 'each shift blow onto a white collector for a minute (ASTM D4285); any trace rejects',
    },
  ],
  rules: [airDewPoint, pipeMargin, headerLow, separator],
};
