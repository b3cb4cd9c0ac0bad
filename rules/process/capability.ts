/**
 * Capability: how a steady process fits between its limits, and how well that is known.
 *
 * Cp = (high - low)/(6 s), Cpk = min(high - mean, mean - low)/(3 s). Here s is the spread of all
 * values, short and long term together, so that strictly they are Pp and Ppk. From few values an
 * index is a guess: from 30 values a Cpk of 1.33 may be 1.0 or 1.7. So it comes with its interval,
 * and under 30 values not at all. It means nothing of a process that a chart shows to be unsteady.
 *
 * Sources: NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6; A. F. Bissell, How reliable is
 * your capability index?, Applied Statistics 39 (1990) 331-340.
 */
import { chiSquareQuantile } from './chi-square.ts';
import type { Subject } from './subject.ts';
import { confidenceZ } from './trend.ts';

export const subject: Subject = {
  title: 'Capability',
  about:
    'How the spread of a steady process fits between its limits, with a 95 % interval. Refused for fewer than 30 values; not to be quoted of a process that its chart shows to be unsteady.',
  symbols: {
    s: 'standard deviation of all values, their unit; so strictly Pp and Ppk',
    n: 'values',
    k: 'how far the mean is off the middle, in half the width between the limits',
  },
  source: 'NIST/SEMATECH e-Handbook 6.1.6; Bissell, Applied Statistics 39 (1990) 331-340',
  uncertainty:
    'the interval of Cp is exact for normal values, that of Cpk an approximation fair from 30 values; the least number is engineering judgement',
  functions: {
    capabilityRatios: {
      formula:
        'Cp = (high - low)/(6 s); Cpu = (high - mean)/(3 s); Cpl = (mean - low)/(3 s); Cpk the smaller',
      range: 's over 0, one limit at least, low under high; nothing outside',
    },
    cpInterval: {
      formula: 'Cp sqrt(chi2(n - 1, 0.025)/(n - 1)) to Cp sqrt(chi2(n - 1, 0.975)/(n - 1))',
      range: 'Cp over 0, n 2 to 10001; nothing outside',
    },
    cpkInterval: {
      formula: 'Cpk -+ 1.96 sqrt(1/(9 n) + Cpk^2/(2 (n - 1)))',
      range: 'n 2 to 10001; nothing outside',
    },
    capability: {
      formula: 'mean and standard deviation (n - 1) of the values, then the others',
      range:
        '30 to 10001 finite values with some spread; refused outside, and without sound limits',
    },
  },
};

const valuesLeast = 30;
const valuesMost = 10_001;

export interface CapabilityRatios {
  /** Null with one limit only. */
  readonly cp: number | null;
  readonly cpk: number;
  /** Towards each limit; null without it. */
  readonly cpu: number | null;
  readonly cpl: number | null;
  readonly k: number | null;
}

export interface Bounds {
  readonly low: number;
  readonly high: number;
}

export interface Capability extends CapabilityRatios {
  readonly mean: number;
  readonly sigma: number;
  readonly valuesCount: number;
  /** 95 %. */
  readonly cpBounds: Bounds | null;
  readonly cpkBounds: Bounds;
}

export interface CapabilityRefusal {
  readonly refused: 'too-few' | 'too-many' | 'no-spread' | 'no-limits' | 'not-finite';
}

/** One limit may be null. Null for neither, for limits that cross and unless sigma is over 0. */
export function capabilityRatios(
  mean: number,
  sigma: number,
  low: number | null,
  high: number | null,
): CapabilityRatios | null {
  if (!soundLimits(low, high) || !(sigma > 0) || !Number.isFinite(mean / sigma)) return null;
  const cpu = high === null ? null : (high - mean) / (3 * sigma);
  const cpl = low === null ? null : (mean - low) / (3 * sigma);
  const cpk = Math.min(cpu ?? Number.POSITIVE_INFINITY, cpl ?? Number.POSITIVE_INFINITY);
  if (!Number.isFinite(cpk)) return null;
  if (low === null || high === null) return { cp: null, cpk, cpu, cpl, k: null };
  const width = high - low;
  const k = Math.abs((low + high) / 2 - mean) / (width / 2);
  return { cp: width / (6 * sigma), cpk, cpu, cpl, k };
}

/** 95 %, exact for normal values; null outside 2 to 10 001 values and unless Cp is over 0. */
export function cpInterval(cp: number, valuesCount: number): Bounds | null {
  const low = chiSquareQuantile(valuesCount - 1, 0.025);
  const high = chiSquareQuantile(valuesCount - 1, 0.975);
  if (low === null || high === null || !(cp > 0)) return null;
  const share = (chiSquare: number): number => cp * Math.sqrt(chiSquare / (valuesCount - 1));
  return { low: share(low), high: share(high) };
}

/** 95 %, by Bissell's approximation; null outside 2 to 10 001 values. */
export function cpkInterval(cpk: number, valuesCount: number): Bounds | null {
  if (!Number.isInteger(valuesCount) || valuesCount < 2 || valuesCount > valuesMost) return null;
  if (!Number.isFinite(cpk)) return null;
  const half =
    confidenceZ.p95 * Math.sqrt(1 / (9 * valuesCount) + cpk ** 2 / (2 * (valuesCount - 1)));
  return { low: cpk - half, high: cpk + half };
}

/** Of all values together, in their unit; one limit may be null. */
export function capability(
  values: readonly number[],
  low: number | null,
  high: number | null,
): Capability | CapabilityRefusal {
  const n = values.length;
  if (n < valuesLeast) return { refused: 'too-few' };
  if (n > valuesMost) return { refused: 'too-many' };
  if (!soundLimits(low, high)) return { refused: 'no-limits' };
  if (!values.every(Number.isFinite)) return { refused: 'not-finite' };
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sigma = Math.sqrt(squares / (n - 1));
  if (sigma === 0) return { refused: 'no-spread' };
  const ratios = capabilityRatios(mean, sigma, low, high);
  const cpkBounds = ratios === null ? null : cpkInterval(ratios.cpk, n);
  if (ratios === null || cpkBounds === null) return { refused: 'not-finite' };
  const cpBounds = ratios.cp === null ? null : cpInterval(ratios.cp, n);
  return { ...ratios, mean, sigma, valuesCount: n, cpBounds, cpkBounds };
}

function soundLimits(low: number | null, high: number | null): boolean {
  if (low === null && high === null) return false;
  if (!Number.isFinite(low ?? 0) || !Number.isFinite(high ?? 0)) return false;
  return low === null || high === null || low < high;
}
