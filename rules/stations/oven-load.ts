/**
 * What every oven has: a load on its racks, the metal of its parts, and the heat they have had.
 *
 * All oven figures are of the metal. Where nobody measures it, it is worked out from the air beside
 * the load by a time constant that a trial run gave, and uncertain until one did; never with
 * infrared, which heats the part and not the air.
 */
import { celsius, fromDataSheet, fromSite, minutes, written } from './sheet-number.ts';
import {
  judgement,
  plainClass,
  type RuleTemplate,
  type StationDerived,
  type StationMark,
  type StationSignal,
  type TemplateNumber,
} from './station.ts';

const temperature = { unit: 'Cel', resolution: 0.1, range: ['-20 Cel', '400 Cel'] } as const;
const state = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;

export const loadSignals: readonly StationSignal[] = [
  {
    name: 'metal',
    ...temperature,
    meaning: 'temperature of the metal of the heaviest part',
    where:
      'welded or drilled in the heaviest section of a part or a dummy that travels with the load; with infrared heat a pyrometer set for the coated part',
    stuckAfter: null,
  },
  {
    name: 'loaded',
    ...state,
    meaning: '1 while a load is in the oven, else 0; it opens and closes an oven run',
    where:
      'light barrier or rack switch at the mouth, or the control’s own contact, through a relay',
  },
  {
    name: 'air',
    ...temperature,
    meaning: 'temperature of the air beside the load, from which its metal is worked out',
    where:
      'at part height beside the parts: of an oven of one zone its return stream, of several zones a sensor that travels with the load',
    stuckAfter: null,
  },
  {
    name: 'entry',
    ...temperature,
    meaning: 'temperature of the parts as they come in',
    where: 'pyrometer at the mouth, set for the coated part',
    stuckAfter: null,
  },
];

/** The conveyor, the heat and the exhaust, as contacts that only listen. */
export const ovenSignals: readonly StationSignal[] = [
  {
    name: 'conveyor',
    ...state,
    meaning: '1 while the conveyor moves, else 0',
    where: 'motion switch on the chain or shaft, not the motor’s contactor',
  },
  {
    name: 'heat',
    ...state,
    meaning: '1 while the oven heats, else 0',
    where: 'dry contact of the control through a relay; never in the burner’s safety chain',
  },
  {
    name: 'exhaust-proof',
    ...state,
    meaning: '1 while the exhaust is proven to flow, else 0',
    where: 'a second contact of the airflow switch through a relay; never in the safety chain',
  },
  {
    name: 'exhaust-dp',
    unit: 'Pa',
    resolution: 0.001,
    range: ['-2000 Pa', '2000 Pa'],
    meaning: 'pressure drop that the exhaust’s flow makes',
    where: 'across the exhaust fan or a fixed orifice; keep the taps clear',
    stuckAfter: null,
  },
];

const noAir = 'Infrared heats the part and not the air: nothing can be worked out from air.';

const doseNumbers: readonly TemplateNumber[] = [
  fromDataSheet('reference', 'the temperature its heat is counted at', 'dose_at', (sheet) =>
    celsius(sheet.doseAtC),
  ),
  {
    ...fromDataSheet('z_value', 'how many kelvin make ten times the rate', 'dose_z', (sheet) =>
      written(sheet.doseZK, 'K'),
    ),
    optional: true,
  },
  {
    ...fromDataSheet(
      'activation_energy',
      'how its early cure grows with temperature',
      'dose_z or dose_energy',
      (sheet) => (sheet.doseZK === null ? written(sheet.doseKJPerMol, 'kJ/mol') : null),
    ),
    unless: 'z_value',
  },
];

export const loadDerived: readonly StationDerived[] = [
  {
    name: 'part-temperature',
    kind: 'part-temperature',
    inputs: { air: 'air', loaded: 'loaded', entry: 'entry' },
    numbers: [
      fromSite(
        'time_constant',
        'how long these parts take to close two thirds of the distance to the air, from a trial run with thermocouples',
        'derived part-temperature: time_constant, from_trial_run, volume_per_area',
      ),
      {
        setting: 'entry',
        value: '20 Cel',
        basis: judgement('parts that come from a warm room; preheated ones are warmer'),
      },
    ],
    meaning: 'temperature of the metal, worked out from the air beside the load',
    moot: ({ heating }) => (heating === 'infrared' ? noAir : null),
  },
  {
    name: 'heat-dose',
    kind: 'heat-dose',
    inputs: { temperature: 'metal', loaded: 'loaded' },
    numbers: doseNumbers,
    meaning: 'what the heat of this load is worth, as time at the temperature it is counted at',
  },
  {
    name: 'rack-dose',
    kind: 'rack-dose',
    inputs: { temperature: 'metal', loaded: 'loaded' },
    numbers: doseNumbers,
    meaning:
      'what all the heat is worth that the rack inside has had, in every oven of the site it was scanned into, as time at the temperature it is counted at',
  },
];

export const loadMarks: readonly StationMark[] = [
  {
    name: 'rack-in',
    what: 'rack',
    meaning: 'This rack went into the oven.',
    byWhom: 'whoever loads it, or the scanner at the mouth',
  },
  {
    name: 'rack-out',
    what: 'rack',
    meaning: 'This rack came out of the oven.',
    byWhom: 'whoever unloads it, or the scanner at the exit',
  },
  {
    name: 'new-parts',
    what: 'rack',
    meaning: 'Other parts hang on this rack; the heat it had before is not theirs.',
    byWhom: 'whoever hangs them, where no other scan says so',
    fresh: true,
  },
  {
    name: 'profiled',
    what: null,
    meaning:
      'A temperature logger went through with a full load: probes on the coldest and hottest corner, the heaviest and the lightest part.',
    byWhom: 'the process engineer, for each new part and each quarter',
  },
];

/** The rack in the oven, until it is said to have left. */
export const rackInside = ['rack-in', 'rack-out'] as const;

export const gloves = 'Parts and racks are hot; gloves as the data sheet says.';

/** Time from entry to exit, without which a shortfall is told only at the exit. */
export const dwell = (rule: string): TemplateNumber => ({
  ...fromSite('dwell', 'time from entry to exit at this speed', `rule ${rule}: dwell`),
  optional: true,
  needs: `the time from entry to exit (rule ${rule}: dwell), without which it is told only at the exit`,
});

/** Peak, and time at or above an upper temperature: the far side of every oven heat. */
export const mostHeat: readonly TemplateNumber[] = [
  {
    ...fromDataSheet('upper', 'a metal temperature that ages the coat', 'bake_upper', (sheet) =>
      sheet.bakeUpperForMs === null ? null : celsius(sheet.bakeUpperC),
    ),
    optional: true,
  },
  {
    ...fromDataSheet('upper_for', 'the longest time at or above it', 'bake_upper_for', (sheet) =>
      sheet.bakeUpperC === null ? null : minutes(sheet.bakeUpperForMs),
    ),
    optional: true,
  },
  {
    ...fromDataSheet(
      'peak',
      'the highest metal temperature the coat may see before rubber',
      'bake_peak',
      (sheet) => celsius(sheet.bakePeakC),
    ),
    unless: 'upper',
  },
];

export const overDosed: RuleTemplate = {
  name: 'over-dosed',
  kind: 'band',
  signals: ['rack-dose', 'heat-dose'],
  numbers: [
    fromDataSheet('high', 'what all heat before rubber may be worth', 'dose_limit', (sheet) =>
      minutes(sheet.doseLimitMs),
    ),
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'over-bake',
  hold: 'rack',
  named: rackInside,
  facts: (given) => ({ high: given.number('over-dosed', 'high') ?? 'allowed' }),
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: the heat of this rack, with what it had in ovens before, is worth more than {$high} at the temperature it is counted at, which is all that it may have before rubber.',
    consequence:
      'Heat adds up over every oven; a coat that cured before it met the rubber looks perfect and does not hold.',
    steps: [
      'Tag the rack “hold” at the exit.',
      'Add from its card what no oven here saw: preheat, earlier passes that nobody scanned, minutes in a hot mould.',
      'The process engineer decides on a trial bond.',
    ],
    doNot: ['bake it again to be sure', 'mould held parts'],
    caution: gloves,
  },
};

export const profileLate: RuleTemplate = {
  name: 'profile-late',
  kind: 'age',
  signals: [],
  marks: ['profiled'],
  numbers: [
    { setting: 'limit', value: '90 d', basis: { mark: 'CP', note: 'each quarter', source: null } },
    { setting: 'early', value: '90 %', basis: judgement('time left to plan a run') },
  ],
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '5 d',
  hazard: 'profile',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: {$reached} since somebody wrote down that a temperature logger went through with a full load, of {$required} at most.',
    consequence:
      'Nobody knows what the coldest and the hottest part get; the time constant and the dwell rest on an old run.',
    steps: [
      'Send a logger through with the rack, fitted outside the oven on cold parts: probes welded or drilled on the coldest and hottest corner, the heaviest and the lightest part.',
      'Compare with the run before; fit the time constant and set the dwell anew.',
      'Write down that it was done.',
    ],
    doNot: ['tape a bead to the part: it reads air', 'reach into the oven for a logger that hangs'],
    caution: gloves,
  },
};
