/**
 * Primer flash and pre-bake: water out of the primer at about 65 °C of metal, before the cover coat.
 *
 * Not drying of the adhesive and not cure: those are other heats with other numbers. Too little
 * leaves water under the cover coat, too much kills the primer; and between primer and cover coat
 * runs a clock of its own, rack by rack.
 */
import { exhaustLost, exhaustWeak } from './drying-oven-air.ts';
import { conveyorStopped } from './drying-oven-load.ts';
import { loadDerived, loadMarks, overDosed, profileLate, rackInside } from './oven-load.ts';
import { preBakeSignals, preBakeZones, zoneOff, zonesApart } from './primer-pre-bake-air.ts';
import { coverTooLate, coverTooSoon, overBaked, underBaked } from './primer-pre-bake-load.ts';
import type { StationKind } from './station.ts';

export const primerPreBake: StationKind = {
  name: 'primer-pre-bake',
  summary: 'An oven that takes the water out of the primer before the cover coat.',
  signals: preBakeSignals,
  derived: loadDerived,
  marks: [
    ...loadMarks,
    {
      name: 'primed',
      what: 'rack',
      meaning: 'The parts of this rack were coated with primer.',
      fresh: true,
      byWhom: 'the sprayer or the scanner at the primer booth',
    },
    {
      name: 'covered',
      what: 'rack',
      meaning: 'The parts of this rack were given their cover coat.',
      byWhom: 'the sprayer or the scanner at the adhesive booth',
    },
  ],
  hazards: [
    {
      id: 'under-bake',
      words: 'Water stays in the primer under the cover coat, and the two split.',
      people: false,
      byHand: null,
    },
    {
      id: 'over-bake',
      words: 'The primer is baked dead, and the cover coat does not hold on it.',
      people: false,
      byHand: null,
    },
    {
      id: 'interval',
      words: 'The cover coat comes before the primer is dry, or after it has gathered dirt.',
      people: false,
      byHand: null,
    },
    {
      id: 'uneven',
      words: 'Zones leave their set-points, and racks get another heat than was set up.',
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
      id: 'profile',
      words:
        'Parts in another corner, or heavier or lighter ones, get another heat than the one that is measured.',
      people: false,
      byHand: null,
    },
  ],
  rules: [
    underBaked,
    overBaked,
    overDosed,
    coverTooSoon,
    coverTooLate,
    ...preBakeZones.map(zoneOff),
    zonesApart,
    conveyorStopped,
    exhaustLost,
    exhaustWeak,
    profileLate,
  ],
  run: {
    loaded: 'loaded',
    metal: 'metal',
    metalElse: 'part-temperature',
    beside: preBakeZones.map((zone) => `zone-${zone}-air`),
    racks: rackInside,
    least: 'under-baked',
    most: 'over-baked',
  },
};
