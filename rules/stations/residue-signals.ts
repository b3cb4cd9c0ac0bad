/** What can be measured of dried residue, and where. */
import { theLimit } from './residue-limit.ts';
import type { StationDerived, StationMark, StationSignal } from './station.ts';

export const residueSignals: readonly StationSignal[] = [
  {
    name: 'surface',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '400 Cel'],
    meaning:
      'temperature of a surface that gathers residue; one for each place, as floor, shroud, duct and filter, where the topic has a +',
    where:
      'mineral-insulated thermocouple pressed onto the worst place: oven floor below the racks, side of the shroud, duct, filter bank',
    stuckAfter: '24 h',
  },
  {
    name: 'air',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '400 Cel'],
    meaning: 'temperature of the air beside that surface; one for all places, or one for each',
    where: 'some 50 mm from the surface, shielded from its radiation',
    stuckAfter: '24 h',
  },
  {
    name: 'thickness',
    unit: 'mm',
    resolution: 0.1,
    range: ['0 mm', '200 mm'],
    meaning: 'thickness of the residue on that surface',
    where: 'gauged by hand when the place is cold, isolated and released for work',
    byHand: true,
    stuckAfter: null,
  },
  {
    name: 'bin',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-40 Cel', '400 Cel'],
    meaning: 'temperature inside the bin for scrapings, used filters and wipes',
    where: 'thermocouple fixed in the middle of the bin, put there while it was empty and cold',
    stuckAfter: '24 h',
  },
  {
    name: 'bin-air',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-40 Cel', '85 Cel'],
    meaning: 'temperature of the air around the bin',
    where: 'in the shade, some metres from the bin',
    stuckAfter: '24 h',
  },
  {
    name: 'stack',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-40 Cel', '400 Cel'],
    meaning: 'temperature in the middle of the stacked racks',
    where: 'thermocouple that hangs between the racks, or a pyrometer from a safe distance',
    stuckAfter: null,
  },
];

export const residueDerived: readonly StationDerived[] = [
  {
    name: 'self-heat-excess',
    kind: 'self-heat-excess',
    inputs: { surface: 'surface', air: 'air' },
    meaning: 'how much hotter the surface is than the air beside it',
  },
  {
    name: 'ignition-margin',
    kind: 'residue-margin',
    inputs: { surface: 'surface', thickness: 'thickness' },
    numbers: [{ ...theLimit, setting: 'limit' }],
    meaning: 'how far the surface is from where residue as thick as gauged may light itself',
  },
  {
    name: 'bin-excess',
    kind: 'self-heat-excess',
    inputs: { surface: 'bin', air: 'bin-air' },
    meaning: 'how much hotter the bin is than the air around it',
  },
];

export const residueMarks: readonly StationMark[] = [
  {
    name: 'cleaned',
    what: null,
    meaning: 'This place was cleaned of residue, cold, and the waste taken out of the building.',
    byWhom: 'whoever cleaned it, for EHS',
  },
  {
    name: 'bin-emptied',
    what: null,
    meaning: 'The waste bin was emptied and used filters were taken out as residue waste.',
    byWhom: 'whoever empties it, each shift',
  },
];
