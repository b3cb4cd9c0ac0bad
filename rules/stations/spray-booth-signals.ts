/** What can be measured in a spray booth, and where; what is worked out from it. */

import { partsSince } from './parts-since.ts';
import { fromDataSheet, fromSite, written } from './sheet-number.ts';
import { potDerived, potSignals } from './spray-booth-pot-signals.ts';
import { askFirst } from './spray-booth-words.ts';
import { judgement, type StationDerived, type StationSignal } from './station.ts';

const state = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;
const thickness = {
  unit: 'um',
  resolution: 0.0001,
  range: ['0 um', '2000 um'],
  byHand: true,
  stuckAfter: null,
} as const;
const hours = {
  unit: 'h',
  resolution: 1,
  range: ['0 h', '20000 h'],
  byHand: true,
  stuckAfter: null,
} as const;
const gauged = 'mean of three readings at least, on a flat smooth panel beside the part, dried';

export const sprayBoothSignals: readonly StationSignal[] = [
  {
    name: 'face-velocity',
    unit: 'm/s',
    resolution: 0.01,
    range: ['0 m/s', '10 m/s'],
    meaning:
      'speed of the air into the booth; what one place reads must be fitted to the survey’s average over its face',
    where: `behind the filters in the exhaust, clear of overspray, set against the yearly survey over the face. ${askFirst}`,
    stuckAfter: '24 h',
  },
  {
    name: 'fan-proof',
    ...state,
    meaning: '1 while the booth’s exhaust is proven to flow, else 0',
    where: `second contact of the booth’s airflow switch through a relay; never in its interlock. ${askFirst}`,
  },
  {
    name: 'filter-dp',
    unit: 'Pa',
    resolution: 0.001,
    range: ['-500 Pa', '2500 Pa'],
    meaning: 'pressure drop across the booth’s exhaust filters',
    where: `taps on both sides of the filter wall, with purge or trap: plugged ones read 0, as if clean. ${askFirst}`,
    stuckAfter: null,
  },
  {
    name: 'spraying',
    ...state,
    meaning: '1 while somebody sprays here, pauses of a few minutes included, else 0',
    where: `contact of the guns’ enable or of the robot’s program through a relay, not the single trigger: its bursts are shorter than the delays. ${askFirst}`,
  },
  {
    name: 'trigger',
    ...state,
    meaning: '1 while the gun’s trigger is pulled, else 0',
    where: `flow switch in the gun’s air line, or the robot’s output through a relay. ${askFirst}`,
  },
  {
    name: 'air',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '60 Cel'],
    meaning: 'temperature of the booth’s air',
    where: 'in the supply plenum, shielded: in overspray it is coated within weeks',
    stuckAfter: '24 h',
  },
  {
    name: 'humidity',
    unit: '%',
    resolution: 0.1,
    range: ['0 %', '105 %'],
    meaning: 'relative humidity of the booth’s air',
    where: 'in the same shield as the air; not near an oven’s mouth',
    stuckAfter: '24 h',
  },
  {
    name: 'part',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '200 Cel'],
    meaning: 'temperature of the metal as it comes to the gun; speaks only while a part is there',
    where: `pyrometer before the gun, set for the bare or primed metal, switched by the part. ${askFirst}`,
    stuckAfter: null,
  },
  {
    name: 'atomising-air',
    unit: 'bar',
    resolution: 0.1,
    range: ['-0.1 bar', '10 bar'],
    meaning: 'gauge pressure of the atomising air, at the gun',
    where: `at the gun’s inlet with the trigger on; at the regulator it reads too high. ${askFirst}`,
    stuckAfter: null,
  },
  ...potSignals,
  {
    name: 'film-base',
    ...thickness,
    meaning: 'what the gauge reads on the bare surface; 0 where it was zeroed on it',
    where:
      'the same uncoated surface, of the same batch and preparation: blasted steel reads as some film, and phosphate too',
  },
  {
    name: 'film-gauge',
    ...thickness,
    meaning: 'what the gauge reads on the coat, in the middle',
    where: `${gauged}, one coat; the number of readings and the place in the note`,
  },
  {
    name: 'film-edge-gauge',
    ...thickness,
    meaning: 'what the gauge reads on the coat, towards the edge',
    where: `${gauged}, two widths of the probe from the edge: nearer, and on small radii, it is not to be trusted`,
  },
  {
    name: 'film-total-gauge',
    ...thickness,
    meaning: 'what the gauge reads on all coats together',
    where: gauged,
  },
  {
    name: 'wet-film',
    ...thickness,
    meaning: 'wet film by comb or wheel',
    where: 'on the panel at once after the gun; seconds later water has gone',
  },
  {
    name: 'needle-counter',
    ...hours,
    meaning: 'hours of spraying since needle and nozzle were changed',
    where: 'from the gun’s own counter or the maintenance card',
  },
  {
    name: 'cap-counter',
    ...hours,
    meaning: 'hours of spraying since the air cap was changed',
    where: 'from the gun’s own counter or the maintenance card',
  },
];

const filmOf = (name: string, gauge: string, meaning: string): StationDerived => ({
  name,
  kind: 'film-over-base',
  inputs: { gauge, base: 'film-base' },
  meaning,
});
const whileTriggered = [
  { setting: 'above', value: '1 1', basis: judgement('the trigger is pulled') },
];

export const sprayBoothDerived: readonly StationDerived[] = [
  {
    name: 'face-velocity-mean',
    kind: 'moving-average',
    inputs: { signal: 'face-velocity' },
    numbers: [{ setting: 'span', value: '30 s', basis: judgement('a booth’s air flutters') }],
    meaning: 'speed of the air into the booth, averaged over time',
  },
  {
    name: 'filter-share',
    kind: 'filter-share',
    inputs: { drop: 'filter-dp' },
    numbers: [
      {
        ...fromSite(
          'clean',
          'the pressure drop of clean filters with the fan running',
          'rule filter-loaded: target',
        ),
        follows: (given) => {
          const clean = given.number('filter-loaded', 'target');
          return clean === null ? null : { written: clean, confirmed: true };
        },
      },
    ],
    meaning: 'the filters’ pressure drop as a share of what clean ones make',
  },
  filmOf('film', 'film-gauge', 'dry film of this coat, in the middle'),
  filmOf('film-edge', 'film-edge-gauge', 'dry film of this coat, towards the edge'),
  filmOf('film-total', 'film-total-gauge', 'dry film of all coats together'),
  {
    name: 'film-from-wet',
    kind: 'wet-to-dry',
    inputs: { wet: 'wet-film' },
    numbers: [
      fromDataSheet('volume_solids', 'the solids by volume', 'volume_solids', (sheet) =>
        written(sheet.volumeSolidsPercent, '%'),
      ),
    ],
    meaning: 'dry film that the wet film will leave',
  },
  {
    name: 'dew-point',
    kind: 'dew-point',
    inputs: { temperature: 'air', humidity: 'humidity' },
    meaning: 'dew point of the booth’s air; shown only',
  },
  {
    name: 'since-flush',
    kind: 'runtime',
    inputs: { signal: 'trigger' },
    startsOn: ['flushed'],
    numbers: whileTriggered,
    meaning:
      'time sprayed since the last flush: the first parts after it are thin; where racks are scanned, parts-since-flush counts them',
  },
  partsSince('parts-since-flush', 'flushed', 'coated', 'sprayed since the last flush'),
  {
    name: 'needle-hours',
    kind: 'runtime',
    inputs: { signal: 'trigger' },
    startsOn: ['needle-changed'],
    numbers: whileTriggered,
    meaning: 'time sprayed since needle and nozzle were changed',
  },
  {
    name: 'cap-hours',
    kind: 'runtime',
    inputs: { signal: 'trigger' },
    startsOn: ['cap-changed'],
    numbers: whileTriggered,
    meaning: 'time sprayed since the air cap was changed',
  },
  ...potDerived,
];
