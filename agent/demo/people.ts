/**
 * What people and scanners of the demo line write down: racks on their way, rounds, deliveries, and
 * what they read with hand instruments. Each says it at a ten of a second, so that the history,
 * which is made in steps of ten, has all of it.
 */
import type { Draft } from './message.ts';
import type { Moment } from './moment.ts';
import { deliveries } from './people-deliveries.ts';
import { rackMarks } from './people-racks.ts';
import { mark, phase, reading, type Says } from './people-says.ts';
import type { Plant } from './plant.ts';
import { preRollMin } from './timetable.ts';

const hourS = 3_600;

/** True once in a round: every 20 min while somebody watches, every two hours in an ordinary week. */
function onRound(now: Moment, offsetS: number): boolean {
  const periodS = now.lineS < -preRollMin * 60 ? 2 * hourS : 1_200;
  return phase(now.lineS, periodS) === offsetS;
}

const done =
  (offsetS: number): Says =>
  (_, now) =>
    onRound(now, offsetS) ? 'done' : null;

/** Read on the round; the text is what the instrument shows. */
const read =
  (offsetS: number, value: (plant: Plant, now: Moment) => string): Says =>
  (plant, now) =>
    onRound(now, offsetS) ? value(plant, now) : null;

const badWhile =
  (fault: Parameters<Moment['fault']>[0], bad: string, good: string) =>
  (_: Plant, now: Moment): string =>
    now.fault(fault) > 0 ? bad : good;

/** Waterborne adhesive as a mixture of water and solids: 1 / rho = s / rho_solids + (1 - s) / rho_water. */
const densityGPerMl = (solidsPercent: number): number => {
  const share = solidsPercent / 100;
  return 1 / (share / 1.3363 + (1 - share) / 0.9975);
};

const preparation: readonly Draft[] = [
  mark('prep-1', 'shift-checked', done(120)),
  reading('prep-1', 'water-break', read(140, badWhile('water-breaks', '1', '0'))),
  reading('prep-1', 'rust-bloom', read(150, badWhile('rack-left-bare', '1', '0'))),
  reading('prep-1', 'blast-profile', read(160, badWhile('blast-media-worn', '21', '46'))),
];

const tank: readonly Draft[] = [
  reading(
    'tank-1',
    'sample-temperature',
    read(720, (plant) => plant.bath.bathC.toFixed(1)),
  ),
  reading(
    'tank-1',
    'density',
    read(730, (plant) => densityGPerMl(plant.bath.solidsPercent).toFixed(4)),
  ),
  reading('tank-1', 'panel-film', read(740, badWhile('bath-thinned', '11.9', '18.4'))),
  mark('tank-1', 'made-up', (_, now) => (now.since('bath-thinned') === 0 ? 'done' : null)),
  mark('tank-1', 'first-off', (_, now) => (now.over('bath-thinned') === 120 ? 'done' : null)),
  reading('tank-1', 'foam', read(750, badWhile('bath-foams', '1', '0'))),
  reading('tank-1', 'skin', read(760, badWhile('bath-skins', '1', '0'))),
  reading('tank-1', 'make-up-conductivity', read(770, badWhile('resin-spent', '14', '2.5'))),
];

/** Guns that were left are flushed by whoever finds them; nobody thinks of the first part. */
const flushed: Says = (_, now) =>
  now.over('guns-left') === 0 || phase(now.lineS, 8 * hourS) === 20_360 ? 'done' : null;
const firstOff: Says = (_, now) =>
  now.over('guns-left') === 420 || phase(now.lineS, 8 * hourS) === 20_540 ? 'done' : null;
const shiftEnded: Says = (_, now) =>
  now.since('guns-left') === 60 || phase(now.lineS, 8 * hourS) === 20_000 ? 'done' : null;

const booth: readonly Draft[] = [
  mark('booth-1', 'shift-ended', shiftEnded),
  mark('booth-1', 'guns-idle', (_, now) => (now.since('guns-left') === 30 ? 'done' : null)),
  mark('booth-1', 'flushed', flushed),
  mark('booth-1', 'first-off', firstOff),
  mark('booth-1', 'panel-taken', done(330)),
  reading(
    'booth-1',
    'film-base',
    read(300, () => '2.0'),
  ),
  reading('booth-1', 'film-gauge', read(310, badWhile('film-thin', '11.6', '20.1'))),
];

const rounds: readonly Draft[] = [
  reading('air-1', 'blotter', read(780, badWhile('air-oily', '1', '0'))),
  mark('air-1', 'blotter-tested', done(800)),
  mark('air-1', 'separators-drained', done(800)),
  mark('residue-1', 'bin-emptied', done(960)),
  mark('residue-1', 'cleaned', done(960)),
];

export const people: readonly Draft[] = [
  ...rackMarks,
  ...preparation,
  ...tank,
  ...booth,
  ...rounds,
  ...deliveries,
];
