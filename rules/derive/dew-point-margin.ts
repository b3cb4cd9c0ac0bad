/** How far a surface is from taking on moisture out of the air beside it. */
import { surfaceMarginK } from '../process/humidity.ts';
import type { DerivedKind } from './derived-kind.ts';

export const dewPointMargin: DerivedKind = {
  name: 'dew-point-margin',
  summary:
    'Surface temperature above the dew point of the air, below 0 °C above the frost point; negative where the surface is wet.',
  inputs: [
    { name: 'surface', unit: 'Cel', meaning: 'temperature of the coldest metal' },
    { name: 'temperature', unit: 'Cel', meaning: 'air temperature beside the humidity sensor' },
    { name: 'humidity', unit: '%', meaning: 'relative humidity over water, 0 to 105 %' },
  ],
  unit: 'K',
  digits: 1,
  source: 'Sonntag 1990; the margin as used with ISO 8502-4, which names no single figure',
  compute: (inputs) => surfaceMarginK(inputs[0]!, inputs[1]!, inputs[2]!),
};
