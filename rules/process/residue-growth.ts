/**
 * How fast residue grows between cleanings, and when the next one is due.
 *
 * From gaugings by hand since the last cleaning: a slope that one wild gauging cannot bend, and its
 * upper bound, because a place that is cleaned too late is a danger and one cleaned too early is
 * not. Without gaugings, from what was sprayed past the parts: all of it on that place. Time is
 * hours in which residue can grow, of spraying or of the clock, as the caller counts them.
 *
 * Source: P. K. Sen as in trend.ts; the deposit follows from a mass balance.
 */
import type { Subject } from './subject.ts';
import { confidenceZ, type SenSlope, senSlope } from './trend.ts';

export const subject: Subject = {
  title: 'Growth of residue',
  about:
    'Growth of residue at a place between two cleanings and the hours left until it must be cleaned. An estimate that no gauging by hand and no fixed cleaning interval may wait for: it can call a cleaning earlier, never put one off.',
  symbols: {
    d: 'thickness, mm',
    t: 'hours in which residue grows: of spraying, or of the clock',
    Q: 'adhesive sprayed, L/h',
    eta: 'share of it that lands on parts, 0 to 1',
    phi: 'volume solids, 0 to 1',
    A: 'area the rest lands on, m2',
  },
  source: 'Theil-Sen slope (see trend); mass balance',
  uncertainty:
    'from two gaugings there is a slope and no bound, marked uncertain; bounds are fair from some ten gaugings; the deposit is an upper estimate, since some is drawn off as overspray',
  functions: {
    residueGrowth: {
      formula: 'Theil-Sen slope of d over t, with its one-sided 95 % upper bound',
      range:
        'at least 2 gaugings since the last cleaning, 0 to 200 mm, hours ascending; refused outside',
    },
    hoursUntilThick: {
      formula: '(limit - d)/(upper bound of growth)',
      range: 'limit over 0; 0 where it is that thick already; nothing where no growth is seen',
    },
    residueDepositMm: {
      formula: 'Q t (1 - eta) phi / A',
      range:
        'Q 0 to 1000 L/h, t 0 to 10000 h, eta and phi 0 to 1, A 0.01 to 10000 m2; nothing outside',
    },
  },
};

export interface Growth {
  readonly mmPerH: number;
  /** One-sided 95 % bound; the steepest pair of gaugings where too few bound it. */
  readonly highMmPerH: number;
  readonly lastMm: number;
  /** Too few gaugings to bound it. */
  readonly uncertain: boolean;
}

export interface GrowthRefusal {
  readonly refused: 'too-few' | 'out-of-range';
}

const thicknessMmMax = 200;

/** Of gaugings since the last cleaning, oldest first. */
export function residueGrowth(
  timesH: readonly number[],
  thicknessesMm: readonly number[],
): Growth | GrowthRefusal {
  const count = thicknessesMm.length;
  if (count < 2) return { refused: 'too-few' };
  if (timesH.length !== count) return { refused: 'out-of-range' };
  if (!thicknessesMm.every((each) => each >= 0 && each <= thicknessMmMax)) {
    return { refused: 'out-of-range' };
  }
  const slope: SenSlope | null = senSlope(timesH, thicknessesMm, count, confidenceZ.p90);
  if (slope === null) return { refused: 'out-of-range' };
  const bounded = Number.isFinite(slope.high);
  return {
    mmPerH: slope.slope,
    highMmPerH: bounded ? slope.high : steepest(timesH, thicknessesMm),
    lastMm: thicknessesMm[count - 1]!,
    uncertain: !bounded,
  };
}

/** Hours from the last gauging, by the upper bound; null where no growth is seen: clean by the fixed interval. */
export function hoursUntilThick(growth: Growth, limitMm: number): number | null {
  if (!(limitMm > 0)) return null;
  if (growth.lastMm >= limitMm) return 0;
  if (!(growth.highMmPerH > 0)) return null;
  const hours = (limitMm - growth.lastMm) / growth.highMmPerH;
  return Number.isFinite(hours) ? hours : null;
}

/** Thickness if all that misses the parts dries on one area, mm; null outside. */
export function residueDepositMm(
  sprayedLPerH: number,
  hours: number,
  ontoPartsShare: number,
  volumeSolidsShare: number,
  areaM2: number,
): number | null {
  if (!within(sprayedLPerH, 0, 1_000) || !within(hours, 0, 10_000)) return null;
  if (!within(ontoPartsShare, 0, 1) || !within(volumeSolidsShare, 0, 1)) return null;
  if (!within(areaM2, 0.01, 10_000)) return null;
  // 1 L over 1 m2 is 1 mm.
  return (sprayedLPerH * hours * (1 - ontoPartsShare) * volumeSolidsShare) / areaM2;
}

const within = (value: number, least: number, most: number): boolean =>
  value >= least && value <= most;

function steepest(timesH: readonly number[], thicknessesMm: readonly number[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < timesH.length; i += 1) {
    for (let j = 0; j < i; j += 1) {
      most = Math.max(most, (thicknessesMm[i]! - thicknessesMm[j]!) / (timesH[i]! - timesH[j]!));
    }
  }
  return most;
}
