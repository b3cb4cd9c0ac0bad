/** Which water class of ISO 8573-1 the air has, by its pressure dew point; nothing of oil or particles. */
import { waterClassByDewPoint } from '../process/compressed-air.ts';
import type { FormulaKind } from './derived-kind.ts';

export const pressureWaterClass: FormulaKind = {
  name: 'pressure-water-class',
  summary:
    'Water class of the air by its pressure dew point, 1 the driest, to 6. It says nothing of oil or particles, which only a laboratory can.',
  inputs: [
    {
      name: 'pressure-dew-point',
      unit: 'Cel',
      meaning: 'dew point at line pressure, below 0 °C over ice',
    },
  ],
  unit: '1',
  digits: 0,
  source: 'ISO 8573-1:2010, table 2',
  range: 'up to 10 °C; the classes beyond go by liquid water, which no dew point shows',
  compute: (inputs) => waterClassByDewPoint(inputs[0]!),
};
