import { type Sourced, sources } from './sourced.ts';

export interface AtmosphericRow extends Sourced {
  readonly pressureDewPointC: number;
  readonly lineGaugeKPa: number;
  readonly over: 'ice' | 'water';
  readonly pointC: number;
  readonly toleranceK: number;
}
// Computed rows are printed to 0.01 K; 0.05 K leaves room for another saturation formula.
export const atmosphericRows: readonly AtmosphericRow[] = [
  { pressureDewPointC: 3, lineGaugeKPa: 700, over: 'ice', pointC: -20.77, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: 3, lineGaugeKPa: 700, over: 'ice', pointC: -20.77, toleranceK: 0.05, source: sources.wmo, flag: 'calc' },
  { pressureDewPointC: 3, lineGaugeKPa: 700, over: 'water', pointC: -23.09, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: 2, lineGaugeKPa: 700, over: 'ice', pointC: -21.51, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: 2, lineGaugeKPa: 700, over: 'water', pointC: -23.9, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: 10, lineGaugeKPa: 700, over: 'ice', pointC: -15.67, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: 10, lineGaugeKPa: 700, over: 'water', pointC: -17.51, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: -20, lineGaugeKPa: 700, over: 'ice', pointC: -39.85, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: -40, lineGaugeKPa: 700, over: 'ice', pointC: -56.95, toleranceK: 0.05, source: sources.sonntag, flag: 'calc' },
];

/** A published -23 °C for +2 °C at 7 bar: only the water convention gives it within its last digit. */
export const publishedTable = {
  pressureDewPointC: 2,
  lineGaugeKPa: 700,
  pointC: -23,
  toleranceK: 1,
  source: 'a compressed air equipment maker, learning pages on drying compressed air',
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** One air of -40 °F at 200 psi(g), let down to two pressures. Published in whole °F, convention not said. */
export const letDown = {
  dewPointF: -40,
  fromGaugePsi: 200,
  rows: [
    { toGaugePsi: 100, publishedF: -50, toleranceF: 1, frostF: -49.74, overWaterF: null },
    { toGaugePsi: 5, publishedF: -77, toleranceF: 3, frostF: -74.85, overWaterF: -77.56 },
  ],
  source: 'a trade article of 2012 on compressed air dew points; frost and water figures computed from Sonntag 1990',
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** Doubling the pressure of air with dew point -10 °C. */
export const doubledPressure = {
  dewPointC: -10,
  fromKPa: 101.33,
  toKPa: 202.66,
  publishedC: -1,
  toleranceK: 0.3,
  fromPa: 286.5,
  toPa: 573.0,
  pointC: -0.88,
  source: 'a technical library page on dew point; 2.865 to 5.730 mbar and -0.88 °C over water computed',
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

export interface ContentRow extends Sourced {
  readonly pressureDewPointC: number;
  readonly lineGaugeKPa: number;
  readonly ppm: number;
  readonly tolerancePpm: number;
  /** Of the expanded air at 20 °C and 101.325 kPa. */
  readonly gPerM3: number;
  readonly toleranceGPerM3: number;
}
export const contentRows: readonly ContentRow[] = [
  { pressureDewPointC: 3, lineGaugeKPa: 700, ppm: 946.0, tolerancePpm: 0.05, gPerM3: 0.708, toleranceGPerM3: 0.001, source: sources.sonntag, flag: 'calc' },
  { pressureDewPointC: -40, lineGaugeKPa: 700, ppm: 16.02, tolerancePpm: 0.005, gPerM3: 0.012, toleranceGPerM3: 5e-5, source: sources.sonntag, flag: 'calc' },
];

/** Water taken in by a compressor of 200 L/s free air at 20 °C and 80 % in 8 h. */
export const waterLoad = {
  temperatureC: 20,
  humidityPct: 80,
  litresPerS: 200,
  hours: 8,
  publishedKg: 80,
  toleranceShare: 0.02,
  computedKg: 79.67,
  source: 'a compressed air equipment maker, learning pages; 79.67 kg computed',
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;

/** The class holds up to and including its dew point. */
export const waterClasses = {
  limits: [
    { class: 1, dewPointC: -70 },
    { class: 2, dewPointC: -40 },
    { class: 3, dewPointC: -20 },
    { class: 4, dewPointC: 3 },
    { class: 5, dewPointC: 7 },
    { class: 6, dewPointC: 10 },
  ],
  source: sources.isoAir,
  flag: 'seen',
} as const satisfies Sourced & Record<string, unknown>;
