/** What the heat a rack has had over every oven is worth, in time at one reference temperature. */
import { quality } from '../signal/quality.ts';
import type { HeatCount, SettledKind } from './derived-kind.ts';
import { heatDose } from './heat-dose.ts';

export const rackDose: SettledKind<HeatCount> = {
  name: 'rack-dose',
  summary:
    'Time at a reference temperature that all heat is worth which the rack inside has had, in this oven and every other of the site that people scan it into; of several racks the one that has had most. It begins at nothing when other parts hang on the rack, and is uncertain, at least so much, where part of it was not observed or nobody said which rack is inside.',
  inputs: heatDose.inputs,
  unit: 's',
  digits: 0,
  source: heatDose.source,
  range: heatDose.range!,
  written: heatDose.written,
  compile(read) {
    const { referenceC, kinetics } = heatDose.compile(read);
    return { referenceC, kinetics };
  },
  counts: (by) => by,
  settled(_, now) {
    const { carried } = now;
    if (carried == null) return null;
    if (carried.partial) now.doubt = quality.unobserved;
    return carried.ms / 1_000;
  },
};
