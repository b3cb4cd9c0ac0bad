/** The agitator: standing, standing too long, too fast, too slow, at the surface. */
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import { minutes, mixingFacts, onlyBuiltIn, standing, standingBasis } from './drum-mixer-sizes.ts';
import { fromSite } from './sheet-number.ts';
import {
  commonPractice,
  type Given,
  judgement,
  plainClass,
  type RuleTemplate,
  tuning,
} from './station.ts';

const perMin = (value: number): string => `${Number(value.toFixed(3))} /min`;
const slowestPerMin = 20;
const fastestPerMin = 30;
const maxRestMsFallback = 7_200_000;

export function agitatorFacts(given: Given): Record<string, string> {
  const low = given.number('agitator-slow', 'low') ?? perMin(slowestPerMin);
  const high = given.number('agitator-fast', 'high') ?? perMin(fastestPerMin);
  const stirMs = given.sheet?.stirTimeMs ?? null;
  return {
    ...mixingFacts(given),
    low,
    high,
    target: between(low, high),
    rest: minutes(given.sheet?.maxRestMs ?? maxRestMsFallback),
    ...(stirMs === null ? {} : { stir: minutes(stirMs) }),
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

export const shaftCaution =
  'It can start without warning. Lock out by local rules before hands go near.';
const turning = 'Turning shaft. Isolate and lock out by local rules before any work on it.';
const inUse = { signal: 'in-use', low: '1 1' } as const;
/** At the bottom the agitator is slowed or stopped on purpose, before it beats air in. */
const covered = { signal: 'level', lowFrom: ['blade-uncovered', 'low'] } as const;

const stopped: RuleTemplate = {
  name: 'agitator-stopped',
  kind: 'band',
  signals: ['agitator'],
  numbers: [
    { setting: 'low', value: standing, basis: standingBasis },
    tuning('on_delay', '10 min'),
  ],
  gate: [inUse, covered],
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
    steps: [
      'Ask whether someone is working on it; if so, leave it.',
      'Stop drawing from the drum. From outside the guard see whether the shaft turns; check the air supply and its regulator.',
      'Past a rest of {$rest} take the drum off line. Once an authorised person lets it be restarted, {$mixing} for {$stir}, and take a hydrometer reading before use.',
    ],
    doNot: [
      'restart it unseen, or at speed on a settled bottom',
      'shake, roll or tumble the drum',
      'reset a trip whose cause is unknown',
    ],
    caution: shaftCaution,
  },
  facts: agitatorFacts,
};

const rest: RuleTemplate = {
  ...stopped,
  name: 'agitator-rest',
  alike: { rule: 'agitator-stopped', only: ['low', 'gate'] },
  numbers: [
    { setting: 'low', value: standing, basis: standingBasis },
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
  moot: onlyBuiltIn('agitator-fast', 'high'),
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
    caution: turning,
  },
  facts: agitatorFacts,
};

const slow: RuleTemplate = {
  name: 'agitator-slow',
  kind: 'band',
  signals: ['agitator'],
  moot: onlyBuiltIn('agitator-slow', 'low'),
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
  gate: [{ signal: 'agitator', low: standing }, inUse, covered],
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
      'Bring it to {$target} at its control; if it will not go, have the shaft seen to, isolated and locked out.',
      'Write down what you found.',
    ],
    doNot: ['raise it past {$high}', 'reach past the guard'],
    caution: turning,
  },
  facts: agitatorFacts,
};

const uncovered: RuleTemplate = {
  name: 'blade-uncovered',
  kind: 'band',
  signals: ['level'],
  numbers: [
    {
      ...fromSite('low', 'upper edge of the blade plus 50 mm', 'rule blade-uncovered: low'),
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
    steps: [
      'Slow the agitator at its control, or stop it.',
      'Have it isolated and locked out; then change the drum with the drum lift.',
      'Filter what is left in it.',
    ],
    doNot: ['pour the rest into a new drum', 'reach past the guard'],
    caution: `${shaftCaution} Drums crush: site lifting rules.`,
  },
};

export const drumMixerSpeed: readonly RuleTemplate[] = [stopped, rest, fast, slow, uncovered];
