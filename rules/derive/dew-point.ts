/** Dew point of room air, from its temperature and relative humidity. */
import { dewPointOverWaterFromHumidityC } from '../process/humidity.ts';
import type { DerivedKind } from './derived-kind.ts';

export const dewPoint: DerivedKind = {
  name: 'dew-point',
  summary: 'Dew point of the air over liquid water, also below 0 °C.',
  inputs: [
    { name: 'temperature', unit: 'Cel', meaning: 'air temperature beside the humidity sensor' },
    { name: 'humidity', unit: '%', meaning: 'relative humidity over water, 0 to 105 %' },
  ],
  unit: 'Cel',
  digits: 1,
  source: 'Sonntag 1990; humidity over water as in WMO-No. 8',
  compute: (inputs) => dewPointOverWaterFromHumidityC(inputs[0]!, inputs[1]!),
};
