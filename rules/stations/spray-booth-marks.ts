/** What people write down at a spray booth: flush, first part, panels, changes, tests. */
import type { StationMark } from './station.ts';

const sprayer = 'the sprayer';
const maintainer = 'the maintainer';

const atPlace = (name: string, meaning: string, byWhom: string): StationMark => ({
  name,
  what: null,
  meaning,
  byWhom,
});

export const sprayBoothMarks: readonly StationMark[] = [
  {
    name: 'rack-in',
    what: 'rack',
    meaning: 'This rack came to the guns.',
    byWhom: 'the sprayer, or the scanner at the booth',
  },
  {
    name: 'coated',
    what: 'rack',
    meaning: 'The parts of this rack were coated, and it left the booth.',
    byWhom: 'the sprayer, or the scanner at the booth',
  },
  {
    name: 'drum-changed',
    what: 'container',
    meaning: 'This container was connected to the guns or filled into the pot.',
    byWhom: sprayer,
  },
  atPlace(
    'flushed',
    'Guns and lines were flushed with deionised water, and the caps cleaned.',
    sprayer,
  ),
  atPlace('guns-idle', 'The guns were laid down; nobody sprays for a while.', sprayer),
  atPlace('shift-ended', 'The last parts of the shift were sprayed; the flush follows.', sprayer),
  atPlace(
    'first-off',
    'Purged, pattern seen on glass, panel measured: parts were released after a flush or a change.',
    'whoever releases it',
  ),
  atPlace('panel-taken', 'A film panel was sprayed and measured, its readings entered.', sprayer),
  atPlace(
    'filters-changed',
    'Exhaust filters were changed and bagged as residue waste.',
    maintainer,
  ),
  atPlace('needle-changed', 'Needle, nozzle and seals of the guns were changed.', maintainer),
  atPlace('cap-changed', 'The air caps of the guns were changed.', maintainer),
  atPlace('relief-tested', 'The pot’s relief valve was tested by a licensed person.', maintainer),
  atPlace(
    'velocity-surveyed',
    'The air speed over the booth’s face was surveyed, and its average entered in a note.',
    'EHS',
  ),
];
