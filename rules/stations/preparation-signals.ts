/** What can be measured where metal is prepared, and what people write down of it. */
import type { StationDerived, StationMark, StationSignal } from './station.ts';

const yesOrNo = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;
const temperature = { unit: 'Cel', resolution: 0.1, range: ['-20 Cel', '120 Cel'] } as const;
const conductivity = {
  unit: 'uS/cm',
  resolution: 0.1,
  range: ['0 uS/cm', '20000 uS/cm'],
  stuckAfter: null,
} as const;

export const preparationSignals: readonly StationSignal[] = [
  {
    name: 'air',
    ...temperature,
    meaning: 'temperature of the air where prepared parts stand',
    where: 'beside the racks of prepared parts, shielded, away from blast cabinet and washer',
    stuckAfter: '24 h',
  },
  {
    name: 'humidity',
    unit: '%',
    resolution: 0.1,
    range: ['0 %', '105 %'],
    meaning: 'relative humidity of that air',
    where: 'in the same shield as the air; out of blast dust and of the washer’s steam',
    stuckAfter: '24 h',
  },
  {
    name: 'metal',
    ...temperature,
    meaning: 'temperature of the coldest prepared metal',
    where:
      'contact probe on the heaviest part of the rack that came last, or on a dummy that travels with it',
    stuckAfter: null,
  },
  {
    name: 'blast-pressure',
    unit: 'bar',
    resolution: 0.1,
    range: ['-0.1 bar', '16 bar'],
    meaning: 'gauge pressure at the blast nozzle',
    where:
      'as near to the nozzle as the machine allows; a needle gauge through the hose tells most',
    stuckAfter: null,
  },
  {
    name: 'blasting',
    ...yesOrNo,
    meaning: '1 while the blast runs, else 0',
    where:
      'contact of the blast machine’s control through a relay, never in its door’s safety chain',
  },
  {
    name: 'blast-profile',
    unit: 'um',
    resolution: 0.001,
    range: ['0 um', '500 um'],
    meaning: 'profile of the blasted metal, peak to valley',
    where: 'replica tape or stylus on a flat of a part from this rack, each shift',
    byHand: true,
    stuckAfter: null,
  },
  {
    name: 'media-oily',
    ...yesOrNo,
    meaning: '1 where blast media shaken in clean water leave a film or a sheen, else 0',
    where: 'a cupful from below the separator, each shift and after each top-up',
    byHand: true,
  },
  {
    name: 'water-break',
    ...yesOrNo,
    meaning: '1 where rinse water breaks up on the metal within a minute, 0 where it stays whole',
    where: 'ASTM F22, on a part of this rack after the last rinse or after degreasing',
    byHand: true,
  },
  {
    name: 'rust-bloom',
    ...yesOrNo,
    meaning: '1 where the prepared metal shows any rust bloom, else 0',
    where: 'in good light, on the rack that waited longest, before it is coated',
    byHand: true,
  },
  {
    name: 'phosphate-weight',
    unit: 'g/m2',
    resolution: 0.1,
    range: ['0 g/m2', '50 g/m2'],
    meaning: 'weight of the phosphate coat over its area',
    where: 'a panel of the same steel, weighed before and after stripping, each shift',
    byHand: true,
    stuckAfter: null,
  },
  {
    name: 'bath-points',
    unit: '1',
    resolution: 0.1,
    range: ['0 1', '200 1'],
    meaning: 'total acid of the phosphate bath, in points of its titration',
    where: 'a sample of the bath at its working temperature, titrated by its data sheet',
    byHand: true,
    stuckAfter: null,
  },
  {
    name: 'rinse-conductivity',
    ...conductivity,
    meaning: 'conductivity of the last rinse',
    where:
      'in the overflow of the last rinse, clear of foam; or by hand with a meter in a fresh sample',
  },
  {
    name: 'make-up-conductivity',
    ...conductivity,
    meaning: 'conductivity of the deionised water as it is drawn for rinse, bath and flush',
    where: 'at the tap it is drawn from, after a litre has run; meter checked on its standard',
    byHand: true,
  },
];

export const preparationDerived: readonly StationDerived[] = [
  {
    name: 'dew-margin',
    kind: 'dew-point-margin',
    inputs: { surface: 'metal', temperature: 'air', humidity: 'humidity' },
    meaning: 'how much warmer the coldest metal is than the dew point of the air around it',
  },
  {
    name: 'dew-point',
    kind: 'dew-point',
    inputs: { temperature: 'air', humidity: 'humidity' },
    meaning: 'dew point of that air; shown only',
  },
];

const preparer = 'the preparer, or the scanner there';

export const preparationMarks: readonly StationMark[] = [
  {
    name: 'degreased',
    what: 'rack',
    meaning: 'The parts of this rack were degreased.',
    fresh: true,
    byWhom: preparer,
  },
  {
    name: 'blasted',
    what: 'rack',
    meaning: 'The parts of this rack were blasted.',
    fresh: true,
    byWhom: preparer,
  },
  {
    name: 'converted',
    what: 'rack',
    meaning: 'The parts of this rack were phosphated, or given another conversion coat.',
    fresh: true,
    byWhom: preparer,
  },
  {
    name: 'rinsed',
    what: 'rack',
    meaning: 'The parts of this rack had their last rinse and went to dry.',
    byWhom: preparer,
  },
  {
    name: 'inspected',
    what: 'rack',
    meaning:
      'This rack is the one whose readings are entered next: bloom, water-break, profile, phosphate.',
    byWhom: 'the preparer, before the readings',
  },
  {
    name: 'coated',
    what: 'rack',
    meaning: 'The parts of this rack were given their first coat.',
    byWhom: 'the sprayer or dipper, or the scanner there',
  },
  {
    name: 'media-changed',
    what: null,
    meaning: 'Blast media were changed or topped up; which, and how much, in a note.',
    byWhom: 'the preparer',
  },
  {
    name: 'shift-checked',
    what: null,
    meaning:
      'The checks of the shift were made and entered: blast profile and pressure, media, water-break, bath, last rinse.',
    byWhom: 'the preparer, once each shift',
  },
];
