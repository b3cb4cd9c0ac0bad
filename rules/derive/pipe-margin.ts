/** How far the coldest air pipe is from running with water inside. */
import type { DerivedKind } from './derived-kind.ts';

export const pipeMargin: DerivedKind = {
  name: 'pipe-margin',
  summary:
    'Temperature of the coldest pipe above the pressure dew point; at or below 0 K liquid water settles in the line.',
  inputs: [
    { name: 'pipe', unit: 'Cel', meaning: 'temperature of the coldest pipe after the dryer' },
    { name: 'pressure-dew-point', unit: 'Cel', meaning: 'dew point at line pressure' },
  ],
  unit: 'K',
  digits: 1,
  source: 'definition of the pressure dew point',
  compute: (inputs) => {
    const pipeC = inputs[0]!;
    const dewPointC = inputs[1]!;
    const plausible = pipeC >= -100 && pipeC <= 100 && dewPointC >= -100 && dewPointC <= 100;
    return plausible ? pipeC - dewPointC : null;
  },
};
