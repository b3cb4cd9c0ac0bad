/** How far the liquid falls from the tank over its weir: a long fall beats air in. */
import type { DerivedKind } from './derived-kind.ts';

export const weirFall: DerivedKind = {
  name: 'weir-fall',
  summary: 'Level of the tank above the level behind its weir.',
  inputs: [
    { name: 'tank', unit: 'mm', meaning: 'level of the tank above a common mark' },
    { name: 'weir', unit: 'mm', meaning: 'level behind the weir above the same mark' },
  ],
  unit: 'mm',
  digits: 0,
  source: 'difference of two readings',
  compute: (inputs) => {
    const difference = inputs[0]! - inputs[1]!;
    return Number.isFinite(difference) ? difference : null;
  },
};
