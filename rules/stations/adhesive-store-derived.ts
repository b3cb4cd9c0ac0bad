/** What is worked out of the store: how its drums stand the cold, how a way would end, what its heat has done. */
import { celsius } from './sheet-number.ts';
import { type Given, judgement, type StationDerived, type TemplateNumber } from './station.ts';

const transfer: TemplateNumber = {
  setting: 'transfer',
  value: '8 W/(m2.K)',
  basis: judgement('a drum in still air; known to a factor of two'),
};

const comparison = 'to compare stores and seasons; it says nothing of shelf life';

/** A limit of a rule of this station, as the site, the sheet or the station gives it. */
const limitOf =
  (rule: string, setting: string) =>
  (given: Given): { written: string; confirmed: boolean } | null => {
    const written = given.number(rule, setting);
    return written === null ? null : { written, confirmed: given.confirmed(rule, setting) };
  };

const floor: TemplateNumber = {
  setting: 'floor',
  value: '5 Cel',
  basis: { mark: 'CP', note: 'least storage temperature of waterborne adhesives', source: null },
  fromSheet: (sheet) => celsius(sheet.storageLowC),
  follows: limitOf('cold-adhesive', 'low_low'),
};

const span: TemplateNumber = {
  setting: 'span',
  value: '30 d',
  basis: judgement('a month, long enough to compare one with another'),
};

export const adhesiveStoreDerived: readonly StationDerived[] = [
  {
    name: 'air-dew-point',
    kind: 'dew-point',
    inputs: { temperature: 'air', humidity: 'humidity' },
    meaning: 'dew point of the air: water settles on anything colder',
  },
  {
    name: 'drum-wall',
    kind: 'drum-wall-temperature',
    inputs: { air: 'air' },
    numbers: [transfer],
    meaning: 'temperature at the wall of an unstirred drum that stands in this air, an estimate',
  },
  {
    name: 'drum-time-left',
    kind: 'drum-time-to-floor',
    inputs: { air: 'air' },
    numbers: [transfer, floor],
    meaning: 'time until the wall of such a drum is too cold, if the air stays as it is',
  },
  {
    name: 'outside-week',
    kind: 'moving-average',
    inputs: { signal: 'outside' },
    numbers: [
      {
        setting: 'span',
        value: '7 d',
        basis: judgement('about as long as a delivery is on its way'),
      },
    ],
    meaning: 'mean temperature outdoors of the last seven days',
  },
  {
    name: 'way-margin',
    kind: 'freight-margin',
    inputs: { coldest: 'way-coldest', transit: 'way-time' },
    numbers: [
      transfer,
      {
        setting: 'start',
        value: '20 Cel',
        basis: judgement('loaded from a heated store'),
      },
      floor,
    ],
    meaning:
      'time that the wall of an unheated drum has left at its arrival, were it as cold as forecast all the way',
  },
  {
    name: 'cold-degree-hours',
    kind: 'degree-hours',
    inputs: { temperature: 'air' },
    numbers: [
      {
        setting: 'below',
        value: '7 Cel',
        basis: judgement('where the cold is told'),
        follows: limitOf('cold-adhesive', 'low'),
      },
      span,
    ],
    meaning: `kelvin below the cold limit times hours in a month, ${comparison}`,
  },
  {
    name: 'warm-degree-hours',
    kind: 'degree-hours',
    inputs: { temperature: 'air' },
    numbers: [
      {
        setting: 'above',
        value: '30 Cel',
        basis: judgement('where the heat is told'),
        follows: limitOf('warm-store', 'high'),
      },
      span,
    ],
    meaning: `kelvin above the warm limit times hours in a month, ${comparison}`,
  },
  {
    name: 'mean-kinetic-temperature',
    kind: 'mean-kinetic-temperature',
    inputs: { temperature: 'air' },
    numbers: [span],
    meaning: `one temperature that would have aged the store as its own did in a month, ${comparison}`,
  },
];
