import { type Sourced, sources } from './sourced.ts';

export interface SaturationRow extends Sourced {
  readonly over: 'ice' | 'water';
  readonly temperatureC: number;
  readonly pressurePa: number;
  /** Absolute when in Pa, else a share of the pressure. */
  readonly tolerancePa?: number;
  readonly toleranceShare?: number;
}

// Tolerances: 3e-4 is how far Hyland-Wexler (the handbook's formula) lies from IAPWS from -50 to
// 100 °C. Over water Sonntag lies nearer to IAPWS; over ice within 1e-4 down to -20 °C, 6e-4 at
// -60 °C and on the other side of it from Hyland-Wexler, so that the two are 9e-4 apart there.
const share = { toleranceShare: 3e-4 } as const;
export const saturationRows: readonly SaturationRow[] = [
  { over: 'ice', temperatureC: -60, pressurePa: 1.08, tolerancePa: 0.01, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'ice', temperatureC: -60, pressurePa: 1.0816731664634545, toleranceShare: 1e-3, source: sources.library, flag: 'seen' },
  { over: 'ice', temperatureC: -20, pressurePa: 103.24, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'ice', temperatureC: -20, pressurePa: 103.26037858050408, ...share, source: sources.library, flag: 'seen' },
  { over: 'ice', temperatureC: -20, pressurePa: 103.239029, toleranceShare: 1e-4, source: sources.iapws, flag: 'seen' },
  { over: 'ice', temperatureC: -5, pressurePa: 401.74, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'ice', temperatureC: -5, pressurePa: 401.7641224788012, ...share, source: sources.library, flag: 'seen' },
  { over: 'ice', temperatureC: -5, pressurePa: 401.74102212, toleranceShare: 1e-4, source: sources.iapws, flag: 'seen' },
  { over: 'water', temperatureC: 5, pressurePa: 872.6, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'water', temperatureC: 5, pressurePa: 872.4866542640299, ...share, source: sources.library, flag: 'seen' },
  { over: 'water', temperatureC: 5, pressurePa: 872.5748611, toleranceShare: 5e-5, source: sources.iapws, flag: 'seen' },
  { over: 'water', temperatureC: 20, pressurePa: 2338.8037000739814, ...share, source: sources.library, flag: 'seen' },
  { over: 'water', temperatureC: 20, pressurePa: 2339.214766777, toleranceShare: 5e-5, source: sources.iapws, flag: 'seen' },
  { over: 'water', temperatureC: 20, pressurePa: 2339.2492, tolerancePa: 5e-5, source: sources.sonntag, flag: 'calc' },
  // Magnus as WMO prints it is itself 0.3 % from the full formulas.
  { over: 'water', temperatureC: 20, pressurePa: 2332.596, toleranceShare: 3e-3, source: sources.wmo, flag: 'calc' },
  { over: 'water', temperatureC: 25, pressurePa: 3169.7, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'water', temperatureC: 25, pressurePa: 3169.2164701436277, ...share, source: sources.library, flag: 'seen' },
  { over: 'water', temperatureC: 25, pressurePa: 3169.746855, toleranceShare: 5e-5, source: sources.iapws, flag: 'seen' },
  { over: 'water', temperatureC: 50, pressurePa: 12351.3, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  { over: 'water', temperatureC: 100, pressurePa: 101418.0, ...share, source: sources.ashraeSaturation, flag: 'seen' },
  // The triple point: both curves must meet there.
  { over: 'water', temperatureC: 0.01, pressurePa: 611.657, tolerancePa: 0.01, source: sources.iapws, flag: 'seen' },
  { over: 'water', temperatureC: 0.01, pressurePa: 611.6571, tolerancePa: 5e-5, source: sources.sonntag, flag: 'calc' },
  { over: 'ice', temperatureC: 0.01, pressurePa: 611.657, tolerancePa: 0.01, source: sources.iapws, flag: 'seen' },
  { over: 'ice', temperatureC: 0.01, pressurePa: 611.6570243908766, tolerancePa: 0.01, source: sources.library, flag: 'seen' },
  { over: 'ice', temperatureC: 0.01, pressurePa: 611.657, tolerancePa: 5e-5, source: sources.sonntag, flag: 'calc' },
];

/** ASHRAE tables water to 200 °C, our formula ends at 100: this row must be refused, not extrapolated. */
export const beyondRange = { temperatureC: 150, pressurePa: 476101.4, source: sources.ashraeSaturation, flag: 'seen' } as const;
