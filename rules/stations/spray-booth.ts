/**
 * The spray booth with its pressure pot: adhesive or primer sprayed onto warm prepared metal.
 *
 * The exhaust protects people and comes first. The film follows pot, air, metal and hand, and the
 * panel tells; what comes out of a gun first after a flush is thin. Before any sensor goes in, somebody
 * must ask how the area is classified.
 */

import { heldAtGuns, heldContainer } from './held-use.ts';
import {
  boothClimate,
  boothHumidity,
  exhaustAirflow,
  exhaustLost,
  filterLoaded,
  filterMissing,
  surveyLate,
} from './spray-booth-air.ts';
import { film, filmChart, filmEdge, filmTotal, panelLate } from './spray-booth-film.ts';
import {
  atomisingAir,
  capWorn,
  firstOffAfterChange,
  firstOffMissing,
  flushLate,
  needleWorn,
  partAtGun,
  tipIdle,
  tipIdleSaid,
} from './spray-booth-gun.ts';
import { sprayBoothHazards } from './spray-booth-hazards.ts';
import { sprayBoothMarks } from './spray-booth-marks.ts';
import {
  dipTubeNear,
  potPressure,
  potRating,
  potUnstirred,
  reliefLate,
} from './spray-booth-pot.ts';
import { sprayBoothDerived, sprayBoothSignals } from './spray-booth-signals.ts';
import type { StationKind } from './station.ts';

export const sprayBooth: StationKind = {
  name: 'spray-booth',
  summary: 'A booth where guns, fed from a pressure pot or a drum, spray adhesive or primer.',
  signals: sprayBoothSignals,
  derived: sprayBoothDerived,
  marks: sprayBoothMarks,
  hazards: sprayBoothHazards,
  rules: [
    exhaustAirflow,
    exhaustLost,
    surveyLate,
    potRating,
    reliefLate,
    filterLoaded,
    filterMissing,
    potPressure,
    potUnstirred,
    dipTubeNear,
    atomisingAir,
    partAtGun,
    film,
    filmEdge,
    filmTotal,
    filmChart,
    panelLate,
    flushLate,
    tipIdle,
    tipIdleSaid,
    firstOffMissing,
    firstOffAfterChange,
    needleWorn,
    capWorn,
    boothClimate,
    boothHumidity,
    heldContainer('drum-changed'),
    heldAtGuns,
  ],
};
