/**
 * The adhesive drying oven: water out of the coat, on metal temperature, within two sides.
 *
 * Too little leaves water in the coat, too much cures it before it meets rubber. Air leads the
 * metal by tens of kelvin, so no air temperature says that a part is dry. Neither pre-bake nor
 * cure: those are other heats with other numbers.
 */
import { dryingOvenAir } from './drying-oven-air.ts';
import { conveyorStopped, overBaked, underDried } from './drying-oven-load.ts';
import { dryingOvenSignals, ovenZones } from './drying-oven-signals.ts';
import { loadDerived, loadMarks, overDosed, profileLate, rackInside } from './oven-load.ts';
import type { StationKind } from './station.ts';

export const dryingOven: StationKind = {
  name: 'drying-oven',
  summary: 'An oven that dries the adhesive coat before the rack store.',
  signals: dryingOvenSignals,
  derived: loadDerived,
  marks: loadMarks,
  hazards: [
    {
      id: 'under-drying',
      words: 'Water stays in the coat: it blisters, or the rubber sweeps it off in the mould.',
      people: false,
      byHand: null,
    },
    {
      id: 'over-bake',
      words: 'The coat cures before it meets the rubber, and the rubber does not hold.',
      people: false,
      byHand: null,
    },
    {
      id: 'soak',
      words: 'A load stands in the heat; it over-bakes, and dried residue may light itself.',
      people: true,
      byHand: null,
    },
    {
      id: 'exhaust',
      words: 'The exhaust fails; vapour gathers in the oven and the room.',
      people: true,
      byHand: null,
    },
    {
      id: 'blind',
      words: 'The oven is judged by a sensor that is wrong.',
      people: false,
      byHand: null,
    },
    {
      id: 'heat-before',
      words: 'Heat of earlier ovens and passes adds up until the coat is cured before the rubber.',
      people: false,
      byHand:
        'write the dose of each pass on the rack’s card, preheat and primer too, and add them up before another bake',
    },
    {
      id: 'profile',
      words:
        'Parts in another corner, or heavier or lighter ones, get another heat than the one that is measured.',
      people: false,
      byHand: null,
    },
  ],
  rules: [underDried, overBaked, overDosed, conveyorStopped, ...dryingOvenAir, profileLate],
  run: {
    loaded: 'loaded',
    metal: 'metal',
    metalElse: 'part-temperature',
    beside: ovenZones.map((zone) => `zone-${zone}-air`),
    racks: rackInside,
    least: 'under-dried',
    most: 'over-baked',
  },
};
