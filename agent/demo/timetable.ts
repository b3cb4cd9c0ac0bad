/**
 * What goes wrong, and when. Two timetables: the show, an hour in which every rule of the line
 * has its turn, over and over; and the ordinary week before it, with a few faults a day.
 *
 * The show wraps round: what begins late in the hour lasts into the next. So whoever starts half
 * an hour before its beginning meets, at its beginning, faults of every age.
 */
import { chanceAt } from './chance.ts';

export interface Fault {
  readonly name: FaultName;
  /** What it is, as a person would say it. */
  readonly words: string;
  /** Minutes into the hour; it may end beyond 60. */
  readonly fromMin: number;
  readonly lengthMin: number;
}

export const showMin = 60;
/** So long before its beginning the show is entered, so that it begins in the middle of things. */
export const preRollMin = 30;

export const faultNames = [
  'gate-open',
  'store-heater-full',
  'store-wall-silent',
  'store-humidity-nonsense',
  'store-air-hangs',
  'agitator-stopped',
  'agitator-fast',
  'agitator-slow',
  'drum-drawn-low',
  'rinse-dirty',
  'tank-valve-stuck',
  'weir-low',
  'tank-pump-weak',
  'tank-filter-clogged',
  'tank-filter-torn',
  'bath-thinned',
  'withdrawal-fast',
  'fan-belt-slips',
  'booth-filter-loaded',
  'pot-high',
  'header-sags',
  'dryer-fails',
  'separator-loaded',
  'zone-hot',
  'zone-sensor-off',
  'oven-cold',
  'oven-exhaust-lost',
  'conveyor-stops',
  'hot-spot',
  'filter-reacts',
  'bin-reacts',
  'residue-thick',
  'stack-hot',
  'rack-room-damp',
  'mould-cold',
  'mould-hot',
  'booth-filter-missing',
  'booth-fan-trips',
  'pot-over-rating',
  'pot-paddle-stands',
  'pot-drawn-low',
  'cold-parts-at-gun',
  'supply-air-unheated',
  'film-thin',
  'guns-left',
  'rack-left-bare',
  'prepared-metal-cold',
  'water-breaks',
  'blast-media-worn',
  'drawn-in-haste',
  'delivery-froze',
  'delivery-unlogged',
  'pallet-old',
  'probe-cold',
  'bath-foams',
  'bath-skins',
  'resin-spent',
  'air-oily',
  'prebake-cold',
  'prebake-zones-apart',
  'primer-stood',
  'covered-in-haste',
  'rack-overaged',
  'rack-from-the-cold',
  'insert-stuck',
  'press-pump-weak',
  'cavity-apart',
] as const;
export type FaultName = (typeof faultNames)[number];

const fault = (name: FaultName, fromMin: number, lengthMin: number, words: string): Fault => ({
  name,
  words,
  fromMin,
  lengthMin,
});

/** Someone can be hurt, a shift is in trouble, something can wait: one of each in the first minute. */
export const show: readonly Fault[] = [
  fault('gate-open', 30, 27, 'the store gate is left open in the frost'),
  fault('store-wall-silent', 56, 6, 'the gateway of the wall sensor loses its power'),
  fault('agitator-fast', 56, 8, 'the agitator’s regulator was turned up'),
  fault('hot-spot', 40, 26, 'a burner shroud has slipped; residue on the floor gets hot'),
  fault('booth-filter-loaded', 50, 15, 'the booth’s filter is full of overspray'),
  fault('header-sags', 0, 4, 'the compressor idles; the header sags'),
  fault('fan-belt-slips', -1, 6, 'the booth fan’s belt slips while somebody sprays'),
  fault('rinse-dirty', -2, 11, 'the last rinse is used up'),
  fault('store-heater-full', -3, 32, 'in haste the store heater is turned up, and left'),
  fault('weir-low', 6, 6, 'the tank is not topped up'),
  fault('agitator-stopped', 9, 19, 'the agitator stands'),
  fault('tank-pump-weak', 13, 6, 'the tank’s pump draws air'),
  fault('filter-reacts', 17, 9, 'overspray in the exhaust filter heats itself'),
  fault('pot-high', 20, 4, 'the pressure pot’s regulator creeps'),
  fault('dryer-fails', 22, 20, 'the air dryer ices up'),
  fault('zone-hot', 26, 12, 'the oven’s control runs away'),
  fault('withdrawal-fast', 29, 6, 'the hoist drive runs fast'),
  fault('store-humidity-nonsense', 30, 8, 'the humidity transmitter sends nonsense'),
  fault('conveyor-stops', 34, 3, 'the conveyor stops with racks in the oven'),
  fault('bin-reacts', 35, 21, 'wipes in the waste bin warm up'),
  fault('agitator-slow', 36, 9, 'the agitator’s air filter clogs'),
  fault('tank-filter-clogged', 37, 9, 'the tank’s filter clogs'),
  fault('oven-exhaust-lost', 39, 3, 'the oven’s exhaust fan trips'),
  fault('mould-cold', 40, 9, 'a heater of the mould fails'),
  fault('oven-cold', 1, 16, 'the oven is set back for the hot floor; a rack comes out under-dried'),
  fault('tank-valve-stuck', 12, 30, 'the exchanger’s valve sticks on the hot loop'),
  fault('separator-loaded', 44, 10, 'the separator’s element is loaded'),
  fault('rack-room-damp', 46, 16, 'somebody washes the floor of the rack room'),
  fault('drum-drawn-low', 47, 10, 'the drum is drawn down past the blade'),
  fault('tank-filter-torn', 48, 8, 'the tank’s filter tears'),
  fault('zone-sensor-off', 12, 14, 'the second sensor of zone 1 drifts'),
  fault('mould-hot', 52, 6, 'the mould’s controller overshoots'),
  fault('store-air-hangs', 36, 22, 'the gateway repeats an old air temperature'),
  fault('bath-thinned', 50, 6, 'somebody tops the bath up with too much water'),
  fault('stack-hot', 18, 1, 'racks are stacked straight from the oven'),
  fault('booth-filter-missing', 8, 10, 'a filter was taken out, and none put in'),
  fault('booth-fan-trips', 31, 3, 'the booth’s fan trips; somebody starts it again'),
  fault('pot-over-rating', 28, 2, 'the pot is set to the header by mistake'),
  fault('pot-paddle-stands', 4, 9, 'the pot’s paddle has run out of air'),
  fault('pot-drawn-low', 33, 4, 'the pot is drawn down to its dip tube'),
  fault('cold-parts-at-gun', 11, 5, 'racks come to the gun cold'),
  fault('supply-air-unheated', 53, 17, 'the booth’s supply air is not heated'),
  fault('film-thin', 24, 3, 'the gun is set thin; the panel tells'),
  fault('guns-left', 40, 12, 'the sprayer is called away; the guns lie with their tips full'),
  fault('rack-left-bare', 5, 22, 'a blasted rack is found that nobody coated'),
  fault(
    'prepared-metal-cold',
    27,
    13,
    'racks come in from the yard and stand bare beside the blast',
  ),
  fault('water-breaks', 41, 5, 'rinsed water breaks up on the metal'),
  fault('blast-media-worn', 41, 5, 'the blast media are worn fine'),
  fault('drawn-in-haste', 0, 3, 'a new drum is drawn from before it is mixed'),
  fault('delivery-froze', 8, 18, 'a delivery comes whose logger saw frost'),
  fault('delivery-unlogged', 10, 20, 'a delivery comes without its logger'),
  fault('pallet-old', 36, 14, 'a pallet is found that was made long ago'),
  fault('probe-cold', 47, 20, 'somebody measures a pallet at its wall'),
  fault('bath-foams', 31, 3, 'foam stands on the bath'),
  fault('bath-skins', 51, 3, 'skin gathers in a corner of the tank'),
  fault('resin-spent', 31, 3, 'the deioniser’s resin is spent'),
  fault('air-oily', 32, 3, 'the compressor lets oil through'),
  fault('prebake-cold', 2, 14, 'the pre-bake oven is set for another primer'),
  fault('prebake-zones-apart', 34, 18, 'zone 2 of the pre-bake oven loses a burner'),
  fault('primer-stood', 19, 14, 'a primed rack is found that stood for a week'),
  fault('covered-in-haste', 44, 1, 'a rack is dipped while its primer is wet'),
  fault('rack-overaged', 27, 18, 'a coated rack is found that waited a month'),
  fault('rack-from-the-cold', 21, 13, 'a wrapped rack is brought in from the yard'),
  fault('insert-stuck', 20.5, 2, 'an insert does not fit; the press closes late'),
  fault('press-pump-weak', 30, 8, 'the press’s pump is weak'),
  fault('cavity-apart', 8, 12, 'a heater of cavity 2 runs on'),
  fault('residue-thick', 15, 25, 'a thickness over the cleaning limit is entered'),
];

/** How much of a fault is there, 0 to 1, at a moment of the show; `atS` may be negative. */
export function shown(seed: number, fault: Fault, index: number, atS: number): number {
  const cycle = Math.floor(atS / 60 / showMin);
  for (const each of [cycle - 1, cycle, cycle + 1]) {
    // The first hour, and the way into it, keep to the timetable; later ones vary.
    const varied = each > 0;
    const shiftMin = varied ? chanceAt(seed, index, each) * 2 - 1 : 0;
    const fromS = (each * showMin + fault.fromMin + shiftMin) * 60;
    if (atS >= fromS && atS < fromS + fault.lengthMin * 60)
      return varied ? 0.94 + 0.06 * chanceAt(seed, index + 1_000, each) : 1;
  }
  return 0;
}

const dayS = 86_400;
/** An ordinary day has this many chances of a fault, each taken or not. */
const chancesADay = 12;
const takenShare = 0.3;

/** How much of a fault is there on an ordinary day; `atS` counts from any fixed moment. */
export function ordinary(seed: number, fault: Fault, index: number, atS: number): number {
  const slotS = dayS / chancesADay;
  const slot = Math.floor(atS / slotS);
  // One fault of all may come in a slot, at its middle.
  if (chanceAt(seed, 5_000, slot) >= takenShare) return 0;
  if (Math.floor(chanceAt(seed, 5_001, slot) * show.length) !== index) return 0;
  const intoS = atS - slot * slotS - slotS / 3;
  return intoS >= 0 && intoS < fault.lengthMin * 60 ? 1 : 0;
}
