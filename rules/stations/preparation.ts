/**
 * Preparation of the metal: degrease, blast, convert, rinse, dry. The first suspect when a bond fails
 * at the metal, and most of it only a person can see.
 *
 * Wet waterborne film on cold bare steel rusts under itself: preheat, then coat.
 */
import { blastToCoat, conversionToCoat, shiftCheckLate } from './preparation-clocks.ts';
import { preparationDerived, preparationMarks, preparationSignals } from './preparation-signals.ts';
import {
  blastPressure,
  blastProfile,
  dewMargin,
  mediaOily,
  rustBloom,
  waterBreak,
} from './preparation-surface.ts';
import {
  bathPoints,
  makeUpWater,
  phosphateWeight,
  rinseConductivity,
} from './preparation-water.ts';
import type { StationKind } from './station.ts';

export const preparation: StationKind = {
  name: 'preparation',
  summary: 'Where metal is degreased, blasted, phosphated, rinsed and dried before its coat.',
  signals: preparationSignals,
  derived: preparationDerived,
  marks: preparationMarks,
  hazards: [
    {
      id: 'flash-rust',
      words: 'Bare steel rusts before it is coated.',
      people: false,
      byHand: null,
    },
    {
      id: 'conversion-aged',
      words: 'A phosphate coat takes up water and dirt before it is coated.',
      people: false,
      byHand: null,
    },
    {
      id: 'soiled',
      words: 'Oil of the part, the media or the air stays under the coat.',
      people: false,
      byHand: null,
    },
    {
      id: 'profile',
      words: 'The blasted metal is too smooth, or too rough.',
      people: false,
      byHand: null,
    },
    {
      id: 'phosphate',
      words: 'The phosphate coat is thin, heavy or powdery.',
      people: false,
      byHand: null,
    },
    {
      id: 'salts',
      words: 'Salts of bath and water stay on the metal, or spoil what the water goes into.',
      people: false,
      byHand: null,
    },
    {
      id: 'condensation',
      words: 'Water settles on cold metal.',
      people: false,
      byHand: null,
    },
    {
      id: 'unchecked',
      words: 'The shift’s checks are not made, and what drifts is found at the failed bond.',
      people: false,
      byHand: null,
    },
    {
      id: 'cleaner-vapour',
      words:
        'Vapour of a solvent degreaser, mist of hot baths or blast dust harms whoever works there.',
      people: true,
      byHand:
        'extraction of degreaser, baths and blast as their makers and local rules say; before any sensor goes near a solvent degreaser ask how the area is classified',
    },
  ],
  rules: [
    blastToCoat,
    conversionToCoat,
    rustBloom,
    waterBreak,
    mediaOily,
    blastProfile,
    blastPressure,
    phosphateWeight,
    bathPoints,
    rinseConductivity,
    makeUpWater,
    dewMargin,
    shiftCheckLate,
  ],
};
