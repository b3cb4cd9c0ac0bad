/**
 * The drum mixer: the large agitator built into a drum, 20 to 30 turns a minute at the shaft.
 *
 * These speeds hold for that agitator alone; pail mixers, pot and tank paddles need their own.
 * Too slow settles the solids, too fast shears and foams, and a blade that breaks the surface
 * foams at any speed.
 */
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import {
  commonPractice,
  type Given,
  judgement,
  plainClass,
  type RuleTemplate,
  type StationKind,
  tuning,
} from './station.ts';

const perMin = (value: number): string => `${Number(value.toFixed(3))} /min`;
const slowestPerMin = 20;
const fastestPerMin = 30;
/** Below this the shaft counts as standing: hand-cranking and a coasting blade are slower. */
const standing = '5 /min';
const maxRestMsFallback = 7_200_000;
/** A 208 L drum after standing: common practice, no published source. */
const stirMsFallback = 8 * 3_600_000;

const minutes = (ms: number): string => `${Number((ms / 60_000).toFixed(3))} min`;

function facts(given: Given): Record<string, string> {
  const low = given.number('agitator-slow', 'low') ?? perMin(slowestPerMin);
  const high = given.number('agitator-fast', 'high') ?? perMin(fastestPerMin);
  return {
    low,
    high,
    target: between(low, high),
    rest: minutes(given.sheet?.maxRestMs ?? maxRestMsFallback),
    stir: minutes(given.sheet?.stirTimeMs ?? stirMsFallback),
  };
}

/** Half-way; the lower one where the two cannot be read. */
function between(low: string, high: string): string {
  const [a, b] = [parseQuantity(low), parseQuantity(high)];
  if (!a.ok || !b.ok) return low;
  return perMin(
    (toCanonical(a.value.value, a.value.unit) + toCanonical(b.value.value, b.value.unit)) / 2,
  );
}

const shaftCaution = 'It can start without warning. Lock out by local rules before hands go near.';
const inUse = { signal: 'in-use', low: '1 1' } as const;

const stoppedSteps = [
  'Ask whether someone is working on it; if so, leave it.',
  'Stop drawing from the drum. From outside the guard see whether the shaft turns; check the air supply and its regulator.',
  'Past a rest of {$rest} take the drum off line; once an authorised person restarts it, stir for {$stir} and take a hydrometer reading before use.',
] as const;
const stoppedDoNot = [
  'restart it unseen, or at speed on a settled bottom',
  'shake, roll or tumble the drum',
  'reset a trip whose cause is unknown',
] as const;

const stopped: RuleTemplate = {
  name: 'agitator-stopped',
  kind: 'band',
  signals: ['agitator'],
  numbers: [
    { setting: 'low', value: standing, basis: judgement('slower than this the shaft stands') },
    tuning('on_delay', '10 min'),
  ],
  gate: inUse,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'settling',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: agitator at rest since {$clock}, for {$duration}.',
    consequence:
      'Solids settle; film drawn from the drum becomes uneven, first too thin, then too thick.',
    steps: stoppedSteps,
    doNot: stoppedDoNot,
    caution: shaftCaution,
  },
  facts,
};

const rest: RuleTemplate = {
  ...stopped,
  name: 'agitator-rest',
  alike: { rule: 'agitator-stopped', only: ['low', 'gate'] },
  numbers: [
    { setting: 'low', value: standing, basis: judgement('slower than this the shaft stands') },
    {
      setting: 'on_delay',
      value: '1 h',
      basis: judgement('half of a longest rest of 2 h'),
      confirm: 'DS',
      needs: 'the longest rest the material’s data sheet allows (max_rest)',
      fromSheet: (sheet) => (sheet.maxRestMs === null ? null : minutes(sheet.maxRestMs / 2)),
    },
  ],
  priority: ['high', 'high'],
  label: {
    ...stopped.label,
    sentence: '{$station}: agitator still at rest, for {$duration} of the {$rest} it may rest.',
  },
};

const fast: RuleTemplate = {
  name: 'agitator-fast',
  kind: 'band',
  signals: ['agitator'],
  numbers: [
    {
      setting: 'high',
      value: perMin(fastestPerMin),
      basis: commonPractice('the large built-in drum agitator, at the shaft'),
      fromSheet: (sheet) =>
        sheet.agitatorHighPerMin === null ? null : perMin(sheet.agitatorHighPerMin),
    },
    tuning('on_delay', '60 s'),
    tuning('deadband', '2 /min'),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'shear',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: agitator at {$value}, above {$limit}, for {$duration}.',
    consequence: 'Shear makes foam and lumps that do not go back; the film suffers.',
    steps: [
      'Slow it to {$target} at its control.',
      'From outside the guard watch for foam, skin and lumps, and check the level.',
      'If you see any, put the drum on hold and tell the process engineer.',
    ],
    doNot: ['reach past the guard', 'add water, solvent or defoamer'],
    caution: 'Turning shaft. Isolate and lock out by local rules before any work on it.',
  },
  facts,
};

const slow: RuleTemplate = {
  name: 'agitator-slow',
  kind: 'band',
  signals: ['agitator'],
  numbers: [
    {
      setting: 'low',
      value: perMin(slowestPerMin),
      basis: commonPractice('the large built-in drum agitator, at the shaft'),
      fromSheet: (sheet) =>
        sheet.agitatorLowPerMin === null ? null : perMin(sheet.agitatorLowPerMin),
    },
    tuning('on_delay', '5 min'),
    tuning('deadband', '2 /min'),
  ],
  gate: { signal: 'agitator', low: standing },
  class: plainClass,
  priority: ['low', 'low'],
  respond: '1 h',
  hazard: 'settling',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: agitator at {$value}, below {$limit}, for {$duration}.',
    consequence: 'Solids settle slowly; film from the drum slowly changes.',
    steps: [
      'Check the regulator and the filter of its air supply.',
      'Bring it to {$target} at its control; if it will not go, have the shaft seen to.',
      'Write down what you found.',
    ],
    doNot: ['raise it past {$high}', 'reach past the guard'],
    caution: 'Turning shaft. Isolate and lock out by local rules before any work on it.',
  },
  facts,
};

const uncovered: RuleTemplate = {
  name: 'blade-uncovered',
  kind: 'band',
  signals: ['level'],
  numbers: [
    {
      setting: 'low',
      value: null,
      basis: { mark: 'SITE', note: 'upper edge of the blade plus 50 mm', source: null },
      confirm: 'SITE',
      needs: 'the level at which the blade’s upper edge is 50 mm under (rule blade-uncovered: low)',
    },
    tuning('on_delay', '5 min'),
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '30 min',
  hazard: 'foam-at-blade',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$station}: level at {$value}, below {$limit}; the blade nears the surface.',
    consequence: 'A blade that breaks the surface beats air in; foam spoils the film.',
    steps: ['Slow the agitator, or stop it.', 'Change the drum.', 'Filter what is left in it.'],
    doNot: ['pour the rest into a new drum'],
    caution: shaftCaution,
  },
};

export const drumMixer: StationKind = {
  name: 'drum-mixer',
  summary: 'A drum of adhesive under its built-in agitator, feeding the line.',
  signals: [
    {
      name: 'agitator',
      unit: '/min',
      resolution: 0.1,
      range: ['0 /min', '500 /min'],
      meaning: 'speed of the agitator’s shaft',
      where: 'pick-up on the shaft below the coupling, two targets or more; never at the motor',
      stuckAfter: null,
    },
    {
      name: 'in-use',
      unit: '1',
      resolution: 1,
      range: ['0 1', '1 1'],
      meaning: '1 while a drum is connected and may be drawn from, else 0',
      where: 'contact at the drum’s connection, or a switch people set',
      stuckAfter: null,
    },
    {
      name: 'level',
      unit: 'mm',
      resolution: 1,
      range: ['0 mm', '2000 mm'],
      meaning: 'level of the adhesive above the drum’s floor',
      where: 'from above, clear of the shaft; wetted parts stainless or plastic',
      stuckAfter: null,
    },
  ],
  derived: [],
  hazards: [
    {
      id: 'settling',
      words: 'Solids settle; film is uneven, first too thin, then too thick.',
      people: false,
      byHand: null,
    },
    { id: 'shear', words: 'Shear makes foam and lumps that stay.', people: false, byHand: null },
    {
      id: 'foam-at-blade',
      words: 'The blade breaks the surface and foams the rest of the drum.',
      people: false,
      byHand: null,
    },
    {
      id: 'unmixed',
      words: 'Adhesive is drawn before it was mixed long enough.',
      people: false,
      byHand:
        'at each drum change note when the agitator was started; draw only once it ran as long as the data sheet says',
    },
  ],
  rules: [stopped, rest, fast, slow, uncovered],
};
