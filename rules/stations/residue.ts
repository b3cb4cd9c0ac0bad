/**
 * Dried residue: fuel that gathers on floor, racks, filters and ducts, and in the waste bin.
 *
 * Temperature is a barrier only where the place runs cooler than the residue can stand; elsewhere
 * thickness and cleaning are, and coverage says so. Highly managed throughout: operators do not
 * take these alarms out of sight.
 */
import { cleaningLate, thick } from './residue-cleaning.ts';
import { selfHeating } from './residue-reaction.ts';
import { residueDerived, residueMarks, residueSignals } from './residue-signals.ts';
import { act, actThick, approaching, atLimit, early } from './residue-surface.ts';
import { hotStack, unemptied, warmBin } from './residue-waste.ts';
import type { StationKind } from './station.ts';

export const residue: StationKind = {
  name: 'residue',
  summary: 'Surfaces that gather dried residue, the waste bin, stacked racks.',
  signals: residueSignals,
  derived: residueDerived,
  marks: residueMarks,
  hazards: [
    {
      id: 'ignition',
      words: 'Dried residue on a hot surface lights itself.',
      people: true,
      byHand: null,
    },
    {
      id: 'reaction',
      words: 'Residue reacts and heats itself, at any temperature of the oven.',
      people: true,
      byHand: null,
    },
    {
      id: 'thickness',
      words: 'Residue grows thick, and lights at a lower temperature.',
      people: true,
      byHand: null,
    },
    {
      id: 'waste',
      words: 'Waste bin or stacked racks burn hours later.',
      people: true,
      apart: true,
      byHand: null,
    },
    {
      id: 'bin-full',
      words: 'Scrapings, filters and wipes stay in the building.',
      people: true,
      byHand: null,
    },
    {
      id: 'friction',
      words: 'Friction, impact or a spark lights residue, even cold.',
      people: true,
      byHand:
        'clean only cold, isolated and under permit, with non-sparking tools, never with grinder or steel scraper',
    },
  ],
  rules: [
    early,
    approaching,
    act,
    actThick,
    atLimit,
    selfHeating,
    thick,
    cleaningLate,
    warmBin,
    hotStack,
    unemptied,
  ],
};
