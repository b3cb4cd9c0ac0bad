import { type Sourced, sources } from './sourced.ts';

export interface WaterDensityRow extends Sourced {
  readonly temperatureC: number;
  readonly kgPerM3: number;
  readonly toleranceKgPerM3: number;
}
// Kell's own figures to their last digit. IAPWS-95 and the CIPM formula lie up to 0.003 kg/m3 off,
// for the better-known water of later standards and the temperature scale of 1990.
const kell = { toleranceKgPerM3: 5e-6, source: 'Kell 1975, computed from its constants', flag: 'calc' } as const;
const tanaka = { toleranceKgPerM3: 0.005, source: 'CIPM formula, Tanaka and others, Metrologia 38 (2001) 301, computed from its constants', flag: 'calc' } as const;
const iapws = { toleranceKgPerM3: 0.005, source: 'IAPWS-95 at 0.101325 MPa by python iapws 1.5.2', flag: 'seen' } as const;
export const waterDensityRows: readonly WaterDensityRow[] = [
  { temperatureC: 5, kgPerM3: 999.96382, ...kell },
  { temperatureC: 10, kgPerM3: 999.69963, ...kell },
  { temperatureC: 15, kgPerM3: 999.09961, ...kell },
  { temperatureC: 20, kgPerM3: 998.20413, ...kell },
  { temperatureC: 25, kgPerM3: 997.0449, ...kell },
  { temperatureC: 30, kgPerM3: 995.64726, ...kell },
  { temperatureC: 40, kgPerM3: 992.21577, ...kell },
  { temperatureC: 60, kgPerM3: 983.19888, ...kell },
  { temperatureC: 5, kgPerM3: 999.96678, ...tanaka },
  { temperatureC: 10, kgPerM3: 999.7027, ...tanaka },
  { temperatureC: 15, kgPerM3: 999.10257, ...tanaka },
  { temperatureC: 20, kgPerM3: 998.20675, ...tanaka },
  { temperatureC: 25, kgPerM3: 997.04702, ...tanaka },
  { temperatureC: 30, kgPerM3: 995.6488, ...tanaka },
  { temperatureC: 40, kgPerM3: 992.21521, ...tanaka },
  { temperatureC: 3.983035, kgPerM3: 999.97495, ...tanaka },
  { temperatureC: 5, kgPerM3: 999.966633545, ...iapws },
  { temperatureC: 10, kgPerM3: 999.702470188, ...iapws },
  { temperatureC: 15, kgPerM3: 999.102621467, ...iapws },
  { temperatureC: 20, kgPerM3: 998.207150468, ...iapws },
  { temperatureC: 25, kgPerM3: 997.04763676, ...iapws },
  { temperatureC: 30, kgPerM3: 995.649453938, ...iapws },
  { temperatureC: 40, kgPerM3: 992.216352873, ...iapws },
  { temperatureC: 60, kgPerM3: 983.195824227, ...iapws, toleranceKgPerM3: 0.01 },
  { temperatureC: 4, kgPerM3: 999.974869, ...iapws },
];

/** Relative to the densest water, on the old g/mL basis. */
export interface RelativeRow extends Sourced {
  readonly temperatureC: number;
  readonly relative: number;
  readonly tolerance: number;
}
// Half the last digit, and 1e-5 by which water was known less well when that table was made.
const handbook = { tolerance: 1.5e-5, source: 'a chemical handbook, as quoted in a public table of hydrometer corrections', flag: 'seen' } as const;
export const relativeRows: readonly RelativeRow[] = [
  { temperatureC: 20, relative: 0.99823, ...handbook },
  { temperatureC: 25, relative: 0.99707, ...handbook },
  { temperatureC: 40, relative: 0.99224, ...handbook },
  { temperatureC: 60, relative: 0.98324, ...handbook },
  { temperatureC: 80, relative: 0.97183, ...handbook },
  { temperatureC: 100, relative: 0.95838, ...handbook },
];

/** The denominator as one widely read copy prints it, digits swapped, and what that costs. */
export const swappedDigits = {
  denominatorPerC: 16.89785e-3,
  temperatureC: 20,
  errorKgPerM3: -0.27,
  toleranceKgPerM3: 0.01,
  source: 'the stored full text of a NIST paper quoting Kell 1975',
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export const densestWater = { temperatureC: 3.98, toleranceK: 0.02, source: sources.maths, flag: 'calc' } as const;
