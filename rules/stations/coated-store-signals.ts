/** What is measured, read by hand and written down where coated parts wait, and what follows from it. */
import {
  type Given,
  judgement,
  type StationDerived,
  type StationMark,
  type StationSignal,
} from './station.ts';

const temperature = { unit: 'Cel', resolution: 0.1, range: ['-40 Cel', '85 Cel'] } as const;
const humidity = {
  unit: '%',
  resolution: 0.1,
  range: ['0 %', '100 %'],
  stuckAfter: '12 h',
} as const;

export const coatedStoreSignals: readonly StationSignal[] = [
  {
    name: 'air',
    ...temperature,
    meaning: 'air temperature of the store',
    where: 'at the height of the racks, out of draught and sun, shielded',
    stuckAfter: '12 h',
  },
  {
    name: 'humidity',
    ...humidity,
    meaning: 'relative humidity of the air',
    where: 'beside the air temperature; check it at 33 and 75 % over salts each half year',
  },
  {
    name: 'metal',
    ...temperature,
    meaning: 'temperature of the coldest metal in the store',
    where: 'thermocouple fixed on a heavy part on the lowest rack by the coldest outer wall',
    stuckAfter: '24 h',
  },
  {
    name: 'room-air',
    ...temperature,
    meaning: 'air temperature of the room where racks are unwrapped',
    where: 'in the moulding shop, where racks are unwrapped, out of the press’s heat',
    stuckAfter: '12 h',
  },
  {
    name: 'room-humidity',
    ...humidity,
    meaning: 'relative humidity of the room where racks are unwrapped',
    where: 'beside the room’s air temperature',
  },
  {
    name: 'part-probe',
    ...temperature,
    meaning: 'temperature of the heaviest part of a rack that was brought in from the cold',
    where:
      'contact probe on bare metal of the heaviest part, under the wrapping; write down brought-in with the rack’s name first',
    byHand: true,
    stuckAfter: null,
  },
];

const rack = { what: 'rack' } as const;
const mover = 'whoever moves it, or the scanner at the door';

export const coatedStoreMarks: readonly StationMark[] = [
  {
    name: 'coated',
    ...rack,
    meaning: 'The parts of this rack came out of their last drying; layover begins.',
    byWhom: 'whoever unloads the drying oven, or the scanner there',
  },
  { name: 'moved-in', ...rack, meaning: 'This rack came into the store.', byWhom: mover },
  { name: 'moved-out', ...rack, meaning: 'This rack left the store.', byWhom: mover },
  {
    name: 'brought-in',
    ...rack,
    meaning: 'This rack came from the cold into the room where it is unwrapped, still wrapped.',
    byWhom: mover,
  },
  {
    name: 'unwrapped',
    ...rack,
    meaning: 'The wrapping was taken off this rack.',
    byWhom: 'whoever unwraps it',
  },
  {
    name: 'moulded',
    ...rack,
    meaning: 'The parts of this rack went into the press.',
    fresh: true,
    byWhom: 'whoever loads the press, or the scanner there',
  },
  {
    name: 'scrapped',
    ...rack,
    meaning: 'The parts of this rack were scrapped, or stripped to be coated anew.',
    fresh: true,
    byWhom: 'quality',
  },
];

const hot = (given: Given): { written: string; confirmed: boolean } | null => {
  const written = given.number('hot-store', 'high');
  return written === null ? null : { written, confirmed: given.confirmed('hot-store', 'high') };
};
const span = {
  setting: 'span',
  value: '30 d',
  basis: judgement('as long as parts commonly wait'),
} as const;
const comparison = 'to compare stores and seasons; it says nothing of layover';

export const coatedStoreDerived: readonly StationDerived[] = [
  {
    name: 'air-dew-point',
    kind: 'dew-point',
    inputs: { temperature: 'air', humidity: 'humidity' },
    meaning: 'dew point of the store’s air: water settles on anything colder',
  },
  {
    name: 'dew-margin',
    kind: 'dew-point-margin',
    inputs: { surface: 'metal', temperature: 'air', humidity: 'humidity' },
    meaning: 'coldest metal above the dew point of the store’s air',
  },
  {
    name: 'room-dew-point',
    kind: 'dew-point',
    inputs: { temperature: 'room-air', humidity: 'room-humidity' },
    meaning: 'dew point of the room where racks are unwrapped',
  },
  {
    name: 'move-margin',
    kind: 'dew-point-margin',
    inputs: { surface: 'part-probe', temperature: 'room-air', humidity: 'room-humidity' },
    meaning: 'part that was brought in, above the dew point of the room where it is unwrapped',
  },
  {
    name: 'hot-degree-hours',
    kind: 'degree-hours',
    inputs: { temperature: 'air' },
    numbers: [
      {
        setting: 'above',
        value: '35 Cel',
        basis: judgement('where the heat is told'),
        follows: hot,
      },
      span,
    ],
    meaning: `kelvin above the hot limit times hours in a month, ${comparison}`,
  },
  {
    name: 'mean-kinetic-temperature',
    kind: 'mean-kinetic-temperature',
    inputs: { temperature: 'air' },
    numbers: [span],
    meaning: `one temperature that would have aged the parts as their own did in a month, ${comparison}`,
  },
];
