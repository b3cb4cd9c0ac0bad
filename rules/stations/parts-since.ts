/** Parts counted by the scans of their racks, since something that makes the first of them differ. */
import { fromSite } from './sheet-number.ts';
import type { StationDerived } from './station.ts';

/** It exists where the site says how many parts hang on a rack. */
export const partsSince = (
  name: string,
  startsOn: string,
  countsOn: string,
  what: string,
): StationDerived => ({
  name,
  kind: 'mark-count',
  inputs: {},
  startsOn: [startsOn],
  countsOn: [countsOn],
  onlyWritten: true,
  numbers: [fromSite('each', 'how many parts hang on a rack', `derived ${name}: each`)],
  meaning: `parts ${what}, by the racks that people scan: the first ones tell`,
});
