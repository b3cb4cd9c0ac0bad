/**
 * Compressed air: what drives guns, agitators and pumps, and what can carry water and oil to a part.
 *
 * The hazard is liquid water: a pressure dew point above the coldest pipe. A dew point says
 * nothing of oil or particles, so no purity class is ever shown for them.
 */
import { blotterFailed, blotterLate, separatorRoundLate } from './compressed-air-checks.ts';
import {
  compressedAirDerived,
  compressedAirMarks,
  compressedAirSignals,
} from './compressed-air-signals.ts';
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
  'Once the reading is back within its limit, make a blotter test (ASTM D4285) and spray a test panel; go on if neither shows water or oil.',
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
      '{$station}: margin of the coldest pipe over the dew point of the air {$value}, below {$limit}, for {$duration}; under zero water settles in it.',
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
      'Check the agitators and pumps from outside their guards; write down which slowed.',
    ],
    doNot: ['raise regulators to make up for it', 'feel for a leak with the hand'],
    caution: `${storedPressure} Agitators and air tools start when the pressure returns.`,
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
    sentence:
      '{$station}: pressure drop across the separator at {$value}, above {$limit}, for {$duration}.',
    consequence: 'A loaded element lets water and oil through to the guns.',
    steps: [
      'Have the separator depressurised and locked out by somebody who may, by its instruction.',
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
  signals: compressedAirSignals,
  derived: compressedAirDerived,
  marks: compressedAirMarks,
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
      byHand: null,
    },
    {
      id: 'air-purity',
      words: 'Oil vapour and fine particles pass every test of the shift.',
      people: false,
      byHand:
        'have a laboratory sample the air at the point of use, as often as the quality plan says; a class of ISO 8573-1 for oil or particles comes from there alone',
    },
  ],
  rules: [
    airDewPoint,
    pipeMargin,
    blotterFailed,
    blotterLate,
    headerLow,
    separator,
    separatorRoundLate,
  ],
};
