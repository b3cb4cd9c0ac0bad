/** What is measured, read by hand and written down where adhesive is kept, and at its dock. */
import type { StationMark, StationSignal } from './station.ts';

const pail = 'Pt100 in a closed pail of plain water';
const temperature = { unit: 'Cel', resolution: 0.1, range: ['-40 Cel', '85 Cel'] } as const;
const byHand = { byHand: true, stuckAfter: null } as const;

export const adhesiveStoreSignals: readonly StationSignal[] = [
  {
    name: 'wall',
    ...temperature,
    meaning: 'temperature at the coldest outer wall',
    where: `${pail}, by the coldest outer wall, near the floor`,
    stuckAfter: '24 h',
  },
  {
    name: 'bottom',
    ...temperature,
    meaning: 'temperature at the floor, where containers stand coldest',
    where: `${pail}, on the floor or lowest shelf`,
    stuckAfter: '24 h',
  },
  {
    name: 'air',
    ...temperature,
    meaning: 'air temperature of the store',
    where: 'at the height of the containers, out of draught and sun',
    stuckAfter: '12 h',
  },
  {
    name: 'humidity',
    unit: '%',
    resolution: 0.1,
    range: ['0 %', '100 %'],
    meaning: 'relative humidity of the air',
    where: 'beside the air temperature',
    stuckAfter: '12 h',
  },
  {
    name: 'outside',
    ...temperature,
    meaning: 'temperature outdoors, which tells the frost season',
    where:
      'on the north side of the building, shielded from rain and sun, away from doors and vents',
    stuckAfter: '24 h',
  },
  {
    name: 'probe-wall',
    ...temperature,
    meaning: 'temperature of the adhesive at the wall of one container',
    where:
      'clean stainless probe in the adhesive, at the container’s wall and near its bottom; write down checked with the container’s name first',
    ...byHand,
  },
  {
    name: 'seen-frozen',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: '1 where ice, grains or lumps are seen in a container, else 0',
    where: 'by eye at the container’s wall; write down checked with the container’s name first',
    ...byHand,
  },
  {
    name: 'freight-low',
    ...temperature,
    meaning: 'lowest temperature that the logger of a delivery shows',
    where:
      'logger that travelled between the containers, read at the dock; write down received for each container first',
    ...byHand,
  },
  {
    name: 'freight-high',
    ...temperature,
    meaning: 'highest temperature that the logger of a delivery shows',
    where: 'the same logger, read with its lowest',
    ...byHand,
  },
  {
    name: 'way-coldest',
    unit: 'Cel',
    resolution: 1,
    range: ['-60 Cel', '60 Cel'],
    meaning: 'coldest air forecast on the way of a delivery that is planned',
    where: 'weather forecast of every place and night on the way, before it is ordered out',
    ...byHand,
  },
  {
    name: 'way-time',
    unit: 'h',
    resolution: 1,
    range: ['0 h', '1000 h'],
    meaning: 'time from loading to unloading, weekends on the road included',
    where: 'the carrier’s plan',
    ...byHand,
  },
];

const container = { what: 'container' } as const;
const dock = 'whoever takes deliveries in, or the scanner at the dock';
const keeper = 'the storekeeper, or the scanner at the store';

export const adhesiveStoreMarks: readonly StationMark[] = [
  {
    name: 'received',
    ...container,
    meaning: 'This container was taken off the lorry.',
    byWhom: dock,
  },
  {
    name: 'logger-read',
    ...container,
    meaning:
      'The logger that travelled with this container was read, and its lowest and highest were entered.',
    byWhom: dock,
  },
  {
    name: 'put-away',
    ...container,
    meaning: 'This container went from the dock to its place in the store, or to the hold area.',
    byWhom: keeper,
  },
  {
    name: 'taken',
    ...container,
    meaning: 'This container left the store.',
    byWhom: keeper,
  },
  {
    name: 'checked',
    ...container,
    meaning: 'This container was looked over; what was measured or seen is entered right after.',
    byWhom: keeper,
  },
  {
    name: 'manufactured',
    ...container,
    meaning: 'The maker filled this container; the time is the date of manufacture on its label.',
    byWhom: dock,
  },
  {
    name: 'opened',
    ...container,
    meaning: 'This container was first drawn from.',
    byWhom: 'whoever draws from it',
  },
  {
    name: 'let-down',
    ...container,
    meaning: 'The adhesive in this container was let down with water.',
    byWhom: 'whoever lets it down',
  },
  {
    name: 'used-up',
    ...container,
    meaning: 'This container is empty, scrapped or sent back.',
    byWhom: 'whoever empties it',
  },
];
