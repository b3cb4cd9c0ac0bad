import type { Sourced } from './sourced.ts';

const essence = 'UCUM essence, ucum-org/ucum; codes and values by @lhncbc/ucum-lhc 7.1.10';
const tagged = { source: essence, flag: 'seen' } as const satisfies Sourced;

export const validCodes = {
  codes: ['Cel', 'K', '[degF]', '%', '%{RH}', 'kg/m3', 'g/mL', 'g/cm3', '{rpm}', '/min', '1/min', '{rev}/min', 'Hz', 'kPa', 'bar', 'mbar', '[psi]', 'm/s', 'um', '[mil_us]', 'N/mm', '[lbf_av]/[in_i]', 'mPa.s', 'cP', '[ppm]', 'mA', 'V', 's', 'min', 'h', 'L/min', 'kV', 'MOhm', 'mg/m3'],
  ...tagged,
} as const;
export const invalidCodes = { codes: ['ppm', 'ppb', 'r/min', '[rH]'], ...tagged } as const;

export interface ConversionRow extends Sourced {
  readonly value: number;
  readonly from: string;
  readonly is: number;
  readonly in: string;
  readonly toleranceShare: number;
}
/** Tolerance: half the last digit printed, or the rounding of a double where all are. */
export const conversionRows: readonly ConversionRow[] = [
  { value: 150, from: 'Cel', is: 423.15, in: 'K', toleranceShare: 1e-15, ...tagged },
  { value: 150, from: 'Cel', is: 302, in: '[degF]', toleranceShare: 1e-15, ...tagged },
  { value: 300, from: '[degF]', is: 148.88888888888889, in: 'Cel', toleranceShare: 1e-15, ...tagged },
  { value: 1, from: '[psi]', is: 6.894757293168359, in: 'kPa', toleranceShare: 1e-15, ...tagged },
  { value: 60, from: '/min', is: 1, in: 'Hz', toleranceShare: 1e-15, ...tagged },
  { value: 1.2, from: 'g/cm3', is: 1200, in: 'kg/m3', toleranceShare: 1e-15, ...tagged },
  { value: 1, from: '[lbf_av]/[in_i]', is: 0.1751268352, in: 'N/mm', toleranceShare: 3e-10, ...tagged },
  { value: 1, from: 'N/mm', is: 5.710147154732646, in: '[lbf_av]/[in_i]', toleranceShare: 1e-14, ...tagged },
  { value: 40, from: '[lbf_av]/[in_i]', is: 7.005073, in: 'N/mm', toleranceShare: 1e-7, ...tagged },
  { value: 1, from: '[mil_us]', is: 25.4000508, in: 'um', toleranceShare: 1e-9, ...tagged },
  { value: 1, from: '[mil_i]', is: 25.4, in: 'um', toleranceShare: 1e-15, source: 'NIST SP 811, Appendix B', flag: 'memory' },
];
