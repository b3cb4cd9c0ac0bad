/** What the pressure dew point of a line becomes once the air has expanded to the atmosphere. */
import { atmosphericFrostPointC } from '../process/compressed-air.ts';
import type { DerivedKind } from './derived-kind.ts';

export const atmosphericDewPoint: DerivedKind = {
  name: 'atmospheric-dew-point',
  summary:
    'Dew point of the line air expanded to 101.325 kPa; below 0 °C the frost point over ice.',
  inputs: [
    {
      name: 'pressure-dew-point',
      unit: 'Cel',
      meaning: 'dew point at line pressure, below 0 °C over ice',
    },
    { name: 'line-pressure', unit: 'kPa', meaning: 'gauge pressure at the dew point sensor' },
  ],
  unit: 'Cel',
  digits: 1,
  source: 'constant share of vapour, e(t2) p1 = e(t1) p2, with Sonntag 1990',
  compute: (inputs) => atmosphericFrostPointC(inputs[0]!, inputs[1]!),
};
