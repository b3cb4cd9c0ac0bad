/** Containers on their way: delivered, put away, looked over, connected, used up; and the shots of the press. */
import { pressPlant } from './invented-plant.ts';
import type { Draft } from './message.ts';
import type { Moment } from './moment.ts';
import { itemAt, mark, oneOf, phase, reading, type Says } from './people-says.ts';

const dayMs = 86_400_000;
/** One delivery every four hours, and six names that come round. */
const everyS = 14_400;
const arrivesS = 1_800;
const names = 6;

/** The pallet of the ordinary deliveries that arrived so many seconds ago. */
const pallet =
  (agoS: number): Says =>
  (_, now) => {
    const arrivedS = now.lineS - agoS - arrivesS;
    if (phase(arrivedS, everyS) !== 0) return null;
    const number = arrivedS / everyS;
    return `pallet-${11 + (((number % names) + names) % names)}`;
  };

const when =
  (is: (now: Moment) => boolean, text: string): Says =>
  (_, now) =>
    is(now) ? text : null;

const made =
  (says: Says, agoDays: number): Says =>
  (plant, now) => {
    const item = says(plant, now);
    return item === null ? null : itemAt(item, now.atMs - agoDays * dayMs);
  };

/** The logger of an ordinary delivery, or of the one that froze on its way. */
const logger =
  (usual: string, cold: string): Says =>
  (plant, now) => {
    if (now.since('delivery-froze') === 60) return cold;
    return pallet(60)(plant, now) === null ? null : usual;
  };

const began = (fault: Parameters<Moment['since']>[0], text: string, afterS = 0): Says =>
  when((now) => now.since(fault) === afterS, text);
const ended = (fault: Parameters<Moment['over']>[0], text: string, afterS = 0): Says =>
  when((now) => now.over(fault) === afterS, text);

const shot: Says = (_, now) =>
  phase(now.lineS, pressPlant.shotEveryS) === 380
    ? `shot-${((Math.floor(now.atMs / 1_000 / pressPlant.shotEveryS) % 1_000) + 1_000) % 1_000}`
    : null;

export const deliveries: readonly Draft[] = [
  mark(
    'store-1',
    'received',
    oneOf(pallet(0), began('delivery-froze', 'pallet-31'), began('delivery-unlogged', 'pallet-32')),
  ),
  reading('store-1', 'freight-low', logger('11.5', '2.5')),
  reading('store-1', 'freight-high', logger('19.0', '14.0')),
  mark(
    'store-1',
    'logger-read',
    oneOf(
      pallet(90),
      began('delivery-froze', 'pallet-31', 90),
      ended('delivery-unlogged', 'pallet-32'),
    ),
  ),
  mark(
    'store-1',
    'manufactured',
    oneOf(made(pallet(120), 20), made(began('pallet-old', 'pallet-33'), 140)),
  ),
  mark(
    'store-1',
    'put-away',
    oneOf(
      pallet(600),
      when((now) => phase(now.lineS, 7_200) === 30, 'pallet-4'),
      ended('delivery-froze', 'pallet-31'),
      ended('delivery-unlogged', 'pallet-32', 60),
    ),
  ),
  mark(
    'store-1',
    'taken',
    oneOf(
      pallet(10_800),
      ended('delivery-froze', 'pallet-31', 300),
      ended('delivery-unlogged', 'pallet-32', 300),
    ),
  ),
  mark('store-1', 'used-up', oneOf(pallet(14_000), ended('pallet-old', 'pallet-33'))),
  mark('store-1', 'checked', began('probe-cold', 'pallet-4')),
  reading(
    'store-1',
    'probe-wall',
    oneOf(began('probe-cold', '0.6', 20), ended('probe-cold', '14.5')),
  ),
  mark('mixer-1', 'connected', (plant, now) =>
    plant.drum.connectedAtS === now.lineS ? `drum-${12 + (plant.drum.count % 6)}` : null,
  ),
  mark('press-1', 'inserts-in', shot),
];
