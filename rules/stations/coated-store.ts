/**
 * The coated-part store: from the last drying to the press.
 *
 * A coat waits, and ages while it does: rack by rack its layover runs from the day it was dried, use
 * in the press ends it, and no other bake begins it anew. What settles on cold metal, or soaks into
 * the coat from damp air, lifts the bond; a rack from the cold stays wrapped until it is warm.
 */
import {
  coatedStoreDerived,
  coatedStoreMarks,
  coatedStoreSignals,
} from './coated-store-signals.ts';
import { heldMoulded, heldUsed } from './held-use.ts';
import { celsius, written } from './sheet-number.ts';
import {
  commonPractice,
  judgement,
  plainClass,
  type RuleTemplate,
  type StationKind,
  tuning,
} from './station.ts';

const msPerD = 86_400_000;
const gloves = 'Handle with clean gloves; what touches the coat stays on it.';
const byShiftEnd = {
  gate: null,
  class: plainClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hold: null,
} as const;

const layover: RuleTemplate = {
  ...byShiftEnd,
  name: 'layover',
  kind: 'age',
  signals: [],
  marks: ['coated', 'moulded', 'scrapped'],
  numbers: [
    {
      setting: 'limit',
      value: '30 d',
      basis: commonPractice('covered, dry and untouched'),
      confirm: 'DS',
      needs: 'the longest time from the coat to the press (layover of the material sheet)',
      fromSheet: (sheet) =>
        written(sheet.layoverMs === null ? null : sheet.layoverMs / msPerD, 'd'),
    },
    { setting: 'early', value: '80 %', basis: judgement('time left to use it') },
  ],
  fixed: { once: true },
  hazard: 'layover',
  hold: 'rack',
  label: {
    word: 'NOTICE',
    sentence: 'Rack {$item}, coated {$clock}, has waited {$reached} of the {$required} it may.',
    consequence: 'An aged or soiled coat may not bond.',
    steps: [
      'Use the oldest rack next, while its time lasts; past it, take the rack out of the press queue and tag it “hold”.',
      'Note whether it stayed covered, dry and untouched.',
      'The process engineer decides on a trial bond: use, coat anew or scrap.',
    ],
    doNot: ['mould held parts', 'wipe it with solvent', 'bake it again to begin its time anew'],
    caution: `${gloves} Stripping only as the data sheet says.`,
  },
};

const humid: RuleTemplate = {
  ...byShiftEnd,
  name: 'humid',
  kind: 'band',
  signals: ['humidity'],
  numbers: [
    { setting: 'high', value: '65 %', basis: commonPractice('above it coats take up water') },
    tuning('on_delay', '4 h'),
    tuning('deadband', '3 %'),
  ],
  hazard: 'moisture',
  label: {
    word: 'NOTICE',
    sentence: '{$signal} at {$value}, above {$limit}, for {$duration}.',
    consequence: 'The coat takes up water and the metal rusts under its edges; the bond suffers.',
    steps: [
      'Close the doors and cover the racks.',
      'Bring in dry air, or move the racks to a drier place.',
      'Inspect them for rust and whitened film before the press; put any you doubt on hold.',
    ],
    doNot: ['wipe the parts'],
    caution: gloves,
  },
};

const dewBasis = commonPractice(
  'a customary margin of coating work; no standard names it for this store',
);

const dewMargin: RuleTemplate = {
  ...humid,
  name: 'dew-margin',
  signals: ['dew-margin'],
  numbers: [
    { setting: 'low', value: '3 K', basis: dewBasis },
    tuning('on_delay', '15 min'),
    tuning('deadband', '0.5 K'),
  ],
  label: {
    ...humid.label,
    sentence:
      '{$station}: the coldest metal’s margin to the dew point is {$value}, below {$limit}, for {$duration}.',
    consequence: 'Water settles on coat and bare metal: spots, rust, bond lost from the edge.',
    steps: [
      'Cover the racks and close the doors to damp air.',
      'Warm the store slowly or bring in dry air; move racks away from the cold wall.',
      'Inspect them for water spots and rust before the press; put any you doubt on hold.',
    ],
  },
};

const coldIntoWarm: RuleTemplate = {
  ...byShiftEnd,
  name: 'cold-into-warm',
  kind: 'present',
  signals: ['move-margin'],
  marks: ['brought-in', 'unwrapped'],
  numbers: [
    { setting: 'low', value: '3 K', basis: dewBasis },
    { setting: 'deadband', value: '0.5 K', basis: judgement('as exact as a contact probe') },
  ],
  fixed: { last_only: true },
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'condensation',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: the margin of parts brought in to the room’s dew point is {$value}; they need {$limit} before they are unwrapped.',
    consequence: 'Water condenses on the coat the moment its wrapping is off.',
    steps: [
      'Keep it wrapped.',
      'Wait; measure the heaviest part again and enter the reading.',
      'Unwrap it once this alarm is over.',
    ],
    doNot: ['blow it dry with shop air', 'warm it in an oven or before a heater'],
    caution: gloves,
  },
};

const hot: RuleTemplate = {
  ...byShiftEnd,
  name: 'hot-store',
  kind: 'band',
  signals: ['air'],
  numbers: [
    {
      setting: 'high',
      value: '35 Cel',
      basis: commonPractice('as adhesive itself is stored'),
      confirm: 'DS',
      needs:
        'the highest temperature at which coated parts may wait (coated_high of the material sheet)',
      fromSheet: (sheet) => celsius(sheet.coatedHighC),
    },
    tuning('on_delay', '4 h'),
    tuning('deadband', '1 K'),
  ],
  hazard: 'heat',
  label: {
    word: 'NOTICE',
    sentence: '{$signal} at {$value}, above {$limit}, for {$duration}.',
    consequence: 'Heat ages the coat: it begins to cure before it meets the rubber.',
    steps: [
      'Move the racks to a cooler place, the oldest first, or cool the store.',
      'Count this heat with what the racks had in the ovens.',
      'Have the process engineer shorten their layover.',
    ],
    doNot: ['lengthen a layover for cool weeks'],
    caution: gloves,
  },
};

export const coatedStore: StationKind = {
  name: 'coated-store',
  summary: 'Where coated parts wait on their racks, from the last drying to the press.',
  signals: coatedStoreSignals,
  derived: coatedStoreDerived,
  marks: coatedStoreMarks,
  hazards: [
    {
      id: 'layover',
      words: 'A coat waits too long for the rubber and does not bond.',
      people: false,
      byHand: null,
    },
    {
      id: 'moisture',
      words: 'Damp air soaks into the coat, or settles on cold metal and rusts it.',
      people: false,
      byHand: null,
    },
    {
      id: 'condensation',
      words: 'Water condenses on cold parts that are unwrapped in a warm room.',
      people: false,
      byHand: null,
    },
    {
      id: 'heat',
      words: 'Heat ages the coat before it meets the rubber.',
      people: false,
      byHand: null,
    },
    heldUsed,
  ],
  rules: [layover, humid, dewMargin, coldIntoWarm, hot, heldMoulded],
};
