/**
 * Dry film from a magnetic or eddy-current gauge: the bare surface has a reading too.
 *
 * On blasted steel the gauge reads the profile: at 13 to 25 µm of film that rivals the film. So the
 * base reading, taken on the same uncoated surface, is subtracted with its own uncertainty. Where
 * nobody took one, the corrections of ISO 19840 by profile stand in (from memory) and the answer is
 * marked uncertain. Phosphate counts as film unless it was under the base reading. Edges and small
 * radii are not read. Outside its range a function answers null, never NaN.
 */
import { filmUmMax } from './film.ts';
import type { Subject } from './subject.ts';

export interface Readings {
  readonly meanUm: number;
  /** Standard uncertainty of the mean: s over the root of n. */
  readonly uUm: number;
  readonly count: number;
}

/** Mean of 3 or more readings with s/sqrt(n). Readings 0 to 10 000 µm; null for fewer and outside. */
export function meanOfReadings(readingsUm: readonly number[]): Readings | null {
  const count = readingsUm.length;
  if (count < 3 || !readingsUm.every((um) => um >= 0 && um <= filmUmMax)) return null;
  const meanUm = readingsUm.reduce((sum, um) => sum + um, 0) / count;
  const squares = readingsUm.reduce((sum, um) => sum + (um - meanUm) ** 2, 0);
  return { meanUm, uUm: Math.sqrt(squares / (count - 1) / count), count };
}

/** Correction where no base reading was taken, by ISO 8503 profile grade, µm (ISO 19840, from memory). */
export const profileCorrectionUm = { fine: 10, medium: 25, coarse: 40 } as const;
export type ProfileGrade = keyof typeof profileCorrectionUm;

export type Base =
  /** Read on the same surface before coating. */
  | { readonly kind: 'read'; readonly readings: Readings }
  /** Only the profile is known. */
  | { readonly kind: 'profile'; readonly grade: ProfileGrade };

export interface GaugeFilm {
  /** Negative where the base is read higher than the coat: then one of the two is wrong. */
  readonly dryUm: number;
  readonly uUm: number;
  /** No base reading, or the uncertainty is over a third of the film. */
  readonly uncertain: boolean;
}

/**
 * DFT = mean of readings - base. u adds in quadrature with the gauge's own, over which no averaging
 * helps; for a correction by profile half of it stands as limits of a rectangle. Gauge u 0 to 1000 µm;
 * null outside.
 */
export function filmFromGaugeUm(coat: Readings, base: Base, gaugeUUm: number): GaugeFilm | null {
  if (!(gaugeUUm >= 0 && gaugeUUm <= 1_000)) return null;
  const read = base.kind === 'read';
  const baseUm = read ? base.readings.meanUm : profileCorrectionUm[base.grade];
  const baseUUm = read ? base.readings.uUm : baseUm / 2 / Math.sqrt(3);
  const dryUm = coat.meanUm - baseUm;
  const uUm = Math.hypot(coat.uUm, baseUUm, gaugeUUm);
  if (!Number.isFinite(dryUm) || !Number.isFinite(uUm)) return null;
  return { dryUm, uUm, uncertain: !read || uUm > Math.max(0, dryUm) / 3 };
}

/** This coat = total - the coats below, each with its u. Null where the figures are not finite. */
export function coatFromTotalUm(total: GaugeFilm, below: GaugeFilm): GaugeFilm | null {
  const dryUm = total.dryUm - below.dryUm;
  const uUm = Math.hypot(total.uUm, below.uUm);
  if (!Number.isFinite(dryUm) || !Number.isFinite(uUm)) return null;
  const uncertain = total.uncertain || below.uncertain || uUm > Math.max(0, dryUm) / 3;
  return { dryUm, uUm, uncertain };
}

/**
 * What one spot may read: 80 % of the least to 120 % of the most specified, though the area's mean
 * stays within both (SSPC-PA 2). µm; null unless 0 <= least < most.
 */
export function spotLimitsUm(
  leastUm: number,
  mostUm: number,
): { readonly leastUm: number; readonly mostUm: number } | null {
  if (!(leastUm >= 0 && leastUm < mostUm && mostUm <= filmUmMax)) return null;
  return { leastUm: 0.8 * leastUm, mostUm: 1.2 * mostUm };
}

export type Acceptance =
  | 'accepted'
  | 'reading-too-low'
  | 'mean-too-low'
  | 'too-many-low'
  | 'too-thick';

/**
 * ISO 19840 against a nominal film (from memory): no reading under 80 % of it, the mean not under it,
 * at most a fifth of the readings between 80 and 100 %, none over three times it. Readings and
 * nominal over 0 to 10 000 µm, at least one reading; null outside.
 */
export function acceptAgainstNominal(
  readingsUm: readonly number[],
  nominalUm: number,
): Acceptance | null {
  if (!(nominalUm > 0 && nominalUm <= filmUmMax) || readingsUm.length === 0) return null;
  if (!readingsUm.every((um) => um >= 0 && um <= filmUmMax)) return null;
  if (readingsUm.some((um) => um < 0.8 * nominalUm)) return 'reading-too-low';
  if (readingsUm.some((um) => um > 3 * nominalUm)) return 'too-thick';
  const mean = readingsUm.reduce((sum, um) => sum + um, 0) / readingsUm.length;
  if (mean < nominalUm) return 'mean-too-low';
  const low = readingsUm.filter((um) => um < nominalUm).length;
  return low > 0.2 * readingsUm.length ? 'too-many-low' : 'accepted';
}

export const subject: Subject = {
  title: 'Film from a gauge',
  about:
    'Dry film from gauge readings with the reading of the bare surface subtracted, per coat and in total. Prefer flat smooth panels beside the part, or weight gain over area, where the part is blasted or small.',
  symbols: {
    DFT: 'dry film thickness, µm',
    B: 'reading of the bare surface, µm',
    s: 'standard deviation of the readings, µm',
    n: 'how many readings',
    u: 'standard uncertainty, µm',
    N: 'nominal film, µm',
  },
  source:
    'Zero on the same uncoated surface: ISO 2178, ASTM D7091. Corrections by profile 10, 25, 40 µm and acceptance: ISO 19840, from memory. Spots: SSPC-PA 2, as taught in two public courses.',
  uncertainty: 'Told with each answer; marked uncertain without a base reading.',
  functions: {
    meanOfReadings: {
      formula: 'mean, and s/sqrt(n)',
      range: '3 or more readings of 0 to 10 000 µm; nothing outside.',
    },
    filmFromGaugeUm: {
      formula: 'DFT = mean - B; u = root of u_coat^2 + u_base^2 + u_gauge^2',
      range:
        'u of the gauge 0 to 1000 µm; uncertain without a base reading and where u is over DFT/3.',
    },
    coatFromTotalUm: {
      formula: 'coat = total - coats below; u in quadrature',
      range: 'Any finite; uncertain where either is, and where u is over a third of the coat.',
    },
    spotLimitsUm: {
      formula: '0.8 of the least to 1.2 of the most',
      range: '0 <= least < most; nothing outside.',
    },
    acceptAgainstNominal: {
      formula: 'no reading < 0.8 N, mean >= N, at most 20 % of readings < N, none > 3 N',
      range: 'N over 0 to 10 000 µm, at least one reading; nothing outside.',
      source: 'ISO 19840 and ISO 12944, from memory.',
    },
  },
};
