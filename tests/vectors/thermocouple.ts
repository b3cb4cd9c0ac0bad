import type { ThermocoupleType } from '#rules/process/thermocouple-coefficients.ts';
import type { Sourced } from './sourced.ts';

const nist = { source: 'NIST ITS-90 thermocouple tables (SRD 60), printed to 0.001 mV', flag: 'seen' } as const;
const reference = { source: 'NIST ITS-90 reference function, computed from its coefficients', flag: 'calc' } as const;
const inverse = { source: 'NIST ITS-90 approximate inverse, computed from its coefficients', flag: 'calc' } as const;
const wire = { source: 'IEC 60584-2 and JIS C1602 as tabled by two suppliers of wire', flag: 'seen' } as const;

export interface VoltageRow extends Sourced {
  readonly type: ThermocoupleType;
  readonly temperatureC: number;
  readonly mv: number;
  readonly toleranceMv: number;
}
const rows = (type: ThermocoupleType, toleranceMv: number, sourced: Sourced, pairs: readonly (readonly [number, number])[]): VoltageRow[] =>
  pairs.map(([temperatureC, mv]) => ({ type, temperatureC, mv, toleranceMv, ...sourced }));

// Half the last printed digit, and the dust of arithmetic.
const printed = 0.00051;
export const voltageRows: readonly VoltageRow[] = [
  ...rows('K', printed, nist, [
    [-100, -3.554], [-20, -0.778], [0, 0], [25, 1], [50, 2.023], [100, 4.096], [112, 4.591],
    [140, 5.735], [155, 6.339], [200, 8.138], [300, 12.209],
  ]),
  ...rows('J', printed, nist, [
    [-210, -8.095], [-200, -7.89], [-150, -6.5], [-100, -4.633], [-50, -2.431], [-20, -0.995], [0, 0],
    [25, 1.277], [50, 2.585], [100, 5.269], [112, 5.923], [140, 7.459], [155, 8.286], [200, 10.779],
    [300, 16.327], [400, 21.848], [500, 27.393], [600, 33.102], [700, 39.132], [760, 42.919],
    [800, 45.494], [900, 51.877], [1000, 57.953], [1100, 63.792], [1200, 69.553],
  ]),
  ...rows('T', printed, nist, [
    [-270, -6.258], [-250, -6.18], [-200, -5.603], [-150, -4.648], [-100, -3.379], [-50, -1.819],
    [-20, -0.757], [0, 0], [25, 0.992], [50, 2.036], [75, 3.132], [100, 4.279], [112, 4.845],
    [140, 6.206], [155, 6.956], [200, 9.288], [250, 12.013], [300, 14.862], [350, 17.819], [400, 20.872],
  ]),
  ...rows('K', 5e-7, reference, [
    [-20, -0.77754], [25, 1.000242], [50, 2.023078], [100, 4.09623], [112, 4.591398], [140, 5.734508],
    [155, 6.339499], [200, 8.138473], [300, 12.208566],
  ]),
  ...rows('J', 5e-7, reference, [
    [-20, -0.994726], [25, 1.277288], [50, 2.585315], [100, 5.268916], [112, 5.922802],
    [140, 7.458677], [155, 8.285938], [200, 10.778746], [300, 16.327206],
  ]),
  ...rows('T', 5e-7, reference, [
    [-20, -0.756838], [25, 0.991977], [50, 2.035722], [100, 4.278519], [112, 4.845106],
    [140, 6.205689], [155, 6.955661], [200, 9.288102], [300, 14.861928],
  ]),
];

export interface ApproximateRow extends Sourced {
  readonly type: ThermocoupleType;
  readonly temperatureC: number;
  readonly approximateC: number;
}
/** The approximate inverse of the voltage at a temperature, to 5e-5 °C. */
export const approximateRows: readonly ApproximateRow[] = [
  { type: 'K', temperatureC: 112, approximateC: 111.9797, ...inverse },
  { type: 'K', temperatureC: 140, approximateC: 140.0219, ...inverse },
  { type: 'K', temperatureC: 155, approximateC: 155.0299, ...inverse },
  { type: 'K', temperatureC: 200, approximateC: 199.9839, ...inverse },
  { type: 'J', temperatureC: 112, approximateC: 112.0228, ...inverse },
  { type: 'J', temperatureC: 140, approximateC: 140.0192, ...inverse },
  { type: 'J', temperatureC: 155, approximateC: 155.0129, ...inverse },
  { type: 'T', temperatureC: 112, approximateC: 112.0097, ...inverse },
  { type: 'T', temperatureC: 140, approximateC: 140.0088, ...inverse },
];

export interface ErrorBandRow extends Sourced {
  readonly type: ThermocoupleType;
  readonly fromC: number;
  readonly toC: number;
  readonly leastK: number;
  readonly mostK: number;
}
const band = { source: 'NIST ITS-90 thermocouple tables (SRD 60), error range of the inverse', flag: 'seen' } as const;
/** How far the approximate inverse strays, printed to 0.01 °C. */
export const errorBandRows: readonly ErrorBandRow[] = [
  { type: 'K', fromC: -200, toC: 0, leastK: -0.02, mostK: 0.04, ...band },
  { type: 'K', fromC: 0, toC: 500, leastK: -0.05, mostK: 0.04, ...band },
  { type: 'K', fromC: 500, toC: 1372, leastK: -0.05, mostK: 0.06, ...band },
  { type: 'J', fromC: -210, toC: 0, leastK: -0.05, mostK: 0.03, ...band },
  { type: 'J', fromC: 0, toC: 760, leastK: -0.04, mostK: 0.04, ...band },
  { type: 'J', fromC: 760, toC: 1200, leastK: -0.04, mostK: 0.03, ...band },
  { type: 'T', fromC: -200, toC: 0, leastK: -0.02, mostK: 0.04, ...band },
  { type: 'T', fromC: 0, toC: 400, leastK: -0.03, mostK: 0.03, ...band },
];

/** The cold junction added as a voltage, and what adding its degrees would give. */
export const coldJunction = {
  type: 'K',
  mv: 5,
  coldJunctionC: 25,
  temperatureC: 146.574,
  addedAsDegreesC: 146.957,
  toleranceC: 0.0006,
  ...reference,
} as const;

export interface ToleranceRow extends Sourced {
  readonly type: ThermocoupleType;
  readonly grade: 1 | 2;
  readonly temperatureC: number;
  readonly toleranceK: number;
}
export const toleranceRows: readonly ToleranceRow[] = [
  { type: 'K', grade: 1, temperatureC: 155, toleranceK: 1.5, ...wire },
  { type: 'K', grade: 1, temperatureC: 375, toleranceK: 1.5, ...wire },
  { type: 'K', grade: 1, temperatureC: 500, toleranceK: 2, ...wire },
  { type: 'K', grade: 2, temperatureC: 155, toleranceK: 2.5, ...wire },
  { type: 'K', grade: 2, temperatureC: 400, toleranceK: 3, ...wire },
  { type: 'J', grade: 1, temperatureC: 155, toleranceK: 1.5, ...wire },
  { type: 'J', grade: 2, temperatureC: 333, toleranceK: 2.5, ...wire },
  { type: 'T', grade: 1, temperatureC: 125, toleranceK: 0.5, ...wire },
  { type: 'T', grade: 1, temperatureC: 155, toleranceK: 0.62, ...wire },
  { type: 'T', grade: 2, temperatureC: 133, toleranceK: 1, ...wire },
];
