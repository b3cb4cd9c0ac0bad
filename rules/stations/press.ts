/**
 * The press: insert and rubber cure together, in a hot mould, under pressure, for their time.
 *
 * Cure happens here and nowhere before. Its temperature is the cavity's, not the platen's; what an
 * insert waits in the hot mould counts as heat the film has had; and every doubt is about a shot.
 */

import { heldCompound, heldInserts, heldUsed } from './held-use.ts';
import { cavities, cavitySpread, mouldCold, mouldHot } from './press-mould.ts';
import { cureShort, insertWaits, pressureLow } from './press-shot.ts';
import type { StationKind, StationMark, StationSignal } from './station.ts';

const state = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;

const signals: readonly StationSignal[] = [
  ...cavities.map(
    (cavity): StationSignal => ({
      name: `cavity-${cavity}`,
      unit: 'Cel',
      resolution: 0.1,
      range: ['-20 Cel', '400 Cel'],
      meaning: `temperature of the mould at cavity ${cavity}`,
      where: `thermocouple in a bore that ends some millimetres from the wall of cavity ${cavity}; the platen’s own reads something else; prove it with a contact probe`,
      stuckAfter: '24 h',
    }),
  ),
  {
    name: 'producing',
    ...state,
    meaning: '1 while the press is making parts, else 0',
    where: 'contact of the press’s control through a relay, never in the guard’s safety chain',
  },
  {
    name: 'insert-in',
    ...state,
    meaning: '1 from when the first insert of a shot lies in the mould until the mould is empty',
    where:
      'light barrier over the loading side, or a button the moulder presses with the first insert; never in the guard’s safety chain',
  },
  {
    name: 'closed',
    ...state,
    meaning: '1 while the mould is closed, also through its bumps, else 0',
    where:
      'limit switch of the press through a relay that outlasts a bump, never in the guard’s safety chain',
  },
  {
    name: 'pressure',
    unit: 'MPa',
    resolution: 1,
    range: ['-0.1 MPa', '250 MPa'],
    meaning: 'pressure of the press while it cures',
    where:
      'in the hydraulic line at the cylinder, or a sensor in the cavity; a licensed person fits it',
    stuckAfter: null,
  },
];

const marks: readonly StationMark[] = [
  {
    name: 'inserts-in',
    what: 'shot',
    meaning: 'The first insert of this shot was laid into the hot mould.',
    byWhom: 'the moulder, or the press’s control',
  },
  {
    name: 'insert-lot',
    what: 'lot',
    meaning: 'This lot of coated inserts came to the press.',
    byWhom: 'the moulder, by scanning the rack',
  },
  {
    name: 'compound-batch',
    what: 'lot',
    meaning: 'This batch of compound came to the press; its age in a note.',
    byWhom: 'the moulder, by scanning the batch',
  },
  {
    name: 'release-agent',
    what: null,
    meaning: 'Release agent was put onto the mould; which, and where, in a note.',
    byWhom: 'the moulder',
  },
];

export const press: StationKind = {
  name: 'press',
  summary: 'A press whose hot mould cures rubber onto the coated inserts.',
  signals,
  derived: [],
  marks,
  hazards: [
    {
      id: 'no-cure',
      words: 'Mould too cold, cure too short or pressure too low: rubber and insert do not bond.',
      people: false,
      byHand: null,
    },
    {
      id: 'pre-cure',
      words:
        'The film cures on the insert before the rubber comes: hot mould, or a long wait in it.',
      people: false,
      byHand: null,
    },
    {
      id: 'one-cavity',
      words: 'One cavity runs hotter or colder than the others.',
      people: false,
      byHand: null,
    },
    {
      id: 'compound',
      words: 'Old, scorched or bloomed compound, or release agent on the film, spoils the bond.',
      people: false,
      byHand:
        'scan the compound’s batch and age to the press, and write down each application of release agent',
    },
    {
      id: 'flash',
      words: 'Flash and scrapings of the film lie hot on the press table and burn later, in a bin.',
      people: true,
      byHand:
        'take flash and scrapings out each shift as residue waste, by the station residue’s rules',
    },
    heldUsed,
  ],
  rules: [
    ...cavities.map(mouldCold),
    ...cavities.map(mouldHot),
    cavitySpread,
    insertWaits,
    cureShort,
    pressureLow,
    heldInserts,
    heldCompound,
  ],
};
