/** How much hotter a surface is than the air beside it: residue that reacts heats itself. */
import type { DerivedKind } from './derived-kind.ts';

export const selfHeatExcess: DerivedKind = {
  name: 'self-heat-excess',
  summary:
    'Surface temperature above the air beside it; residue that heats itself is hotter than its surroundings.',
  inputs: [
    { name: 'surface', unit: 'Cel', meaning: 'temperature of the surface that gathers residue' },
    { name: 'air', unit: 'Cel', meaning: 'temperature of the air some 50 mm from it' },
  ],
  unit: 'K',
  digits: 1,
  source: 'difference of two readings',
  compute: (inputs) => {
    const difference = inputs[0]! - inputs[1]!;
    return Number.isFinite(difference) ? difference : null;
  },
};
