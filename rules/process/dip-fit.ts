/**
 * Dip film by panels: h = k U^n fitted to films measured at several withdrawal speeds, with a 95 %
 * interval for the next panel.
 *
 * Least squares of ln h on ln U. A Newtonian liquid gives n 2/3; one that thins under shear gives
 * less, down to about half. Good for the tank as it was: its solids, temperature and viscosity. A
 * speed outside those that were tried is answered, and marked uncertain.
 */
import { studentTQuantile } from './student-t.ts';
import type { Subject } from './subject.ts';

export interface Panel {
  /** Over 0 to 100 m/min. */
  readonly withdrawalMPerMin: number;
  /** Dry or wet, as long as all are the same: over 0 to 10 000 µm. */
  readonly filmUm: number;
}

export interface DipFit {
  /** Film at 1 m/min, µm. */
  readonly kUm: number;
  readonly n: number;
  /** Standard uncertainty of n. */
  readonly nU: number;
  /** Scatter of the panels about the line, as a share of the film. */
  readonly scatterShare: number;
  readonly panelCount: number;
  readonly slowestMPerMin: number;
  readonly fastestMPerMin: number;
  readonly meanLnU: number;
  /** Sum of squares of ln U about its mean. */
  readonly spread: number;
}

export type DipFitAnswer =
  | { readonly kind: 'fitted'; readonly fit: DipFit }
  | {
      readonly kind: 'refused';
      readonly why: 'too-few-panels' | 'out-of-range' | 'speeds-too-alike' | 'not-a-dip-film';
    };

export interface DipPrediction {
  readonly filmUm: number;
  /** The next panel lies between these in 95 of 100 cases. */
  readonly leastUm: number;
  readonly mostUm: number;
  /** Slower or faster than any panel. */
  readonly uncertain: boolean;
}

const speed = (u: number): boolean => u > 0 && u <= 100;

/**
 * At least 4 panels whose speeds span a factor of 1.5. Refused, saying why: also where n is outside 0
 * to 1.5, which no film drawn from a tank does.
 */
export function fitDipFilm(panels: readonly Panel[]): DipFitAnswer {
  if (panels.length < 4 || panels.length > 1_000) return { kind: 'refused', why: 'too-few-panels' };
  const believable = panels.every(
    ({ withdrawalMPerMin, filmUm }) => speed(withdrawalMPerMin) && filmUm > 0 && filmUm <= 10_000,
  );
  if (!believable) return { kind: 'refused', why: 'out-of-range' };
  const speeds = panels.map(({ withdrawalMPerMin }) => withdrawalMPerMin);
  const slowestMPerMin = Math.min(...speeds);
  const fastestMPerMin = Math.max(...speeds);
  if (fastestMPerMin < 1.5 * slowestMPerMin) return { kind: 'refused', why: 'speeds-too-alike' };

  const count = panels.length;
  const x = speeds.map(Math.log);
  const y = panels.map(({ filmUm }) => Math.log(filmUm));
  const meanLnU = mean(x);
  const meanLnH = mean(y);
  const spread = x.reduce((sum, each) => sum + (each - meanLnU) ** 2, 0);
  const n = x.reduce((sum, each, i) => sum + (each - meanLnU) * (y[i]! - meanLnH), 0) / spread;
  if (!(n > 0 && n < 1.5)) return { kind: 'refused', why: 'not-a-dip-film' };
  const lnK = meanLnH - n * meanLnU;
  const squares = x.reduce((sum, each, i) => sum + (y[i]! - lnK - n * each) ** 2, 0);
  const scatterShare = Math.sqrt(squares / (count - 2));
  return {
    kind: 'fitted',
    fit: {
      kUm: Math.exp(lnK),
      n,
      nU: scatterShare / Math.sqrt(spread),
      scatterShare,
      panelCount: count,
      slowestMPerMin,
      fastestMPerMin,
      meanLnU,
      spread,
    },
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;

/** Film at a withdrawal speed with the interval of the next panel. U over 0 to 100 m/min; null outside. */
export function filmAtSpeed(fit: DipFit, withdrawalMPerMin: number): DipPrediction | null {
  if (!speed(withdrawalMPerMin)) return null;
  const t = studentTQuantile(fit.panelCount - 2, 0.975);
  if (t === null) return null;
  const offset = Math.log(withdrawalMPerMin) - fit.meanLnU;
  const half = t * fit.scatterShare * Math.sqrt(1 + 1 / fit.panelCount + offset ** 2 / fit.spread);
  const filmUm = fit.kUm * withdrawalMPerMin ** fit.n;
  const leastUm = filmUm * Math.exp(-half);
  const mostUm = filmUm * Math.exp(half);
  if (!Number.isFinite(mostUm)) return null;
  const uncertain =
    withdrawalMPerMin < fit.slowestMPerMin || withdrawalMPerMin > fit.fastestMPerMin;
  return { filmUm, leastUm, mostUm, uncertain };
}

/**
 * Withdrawal speed for a film, m/min: (h/k)^(1/n). Only within the speeds that were tried: to find a
 * setting by extrapolation is to spoil a rack. Film over 0 to 10 000 µm; null outside.
 */
export function speedForFilmMPerMin(fit: DipFit, filmUm: number): number | null {
  if (!(filmUm > 0 && filmUm <= 10_000)) return null;
  const found = (filmUm / fit.kUm) ** (1 / fit.n);
  const tried =
    found >= fit.slowestMPerMin * (1 - 1e-9) && found <= fit.fastestMPerMin * (1 + 1e-9);
  return tried ? found : null;
}

export const subject: Subject = {
  title: 'Dip film fitted to panels',
  about:
    "This tank's own law of film by withdrawal speed, from panels, with the interval in which the next panel lies. For the tank as it was that day: other solids or another temperature need other panels.",
  symbols: {
    h: 'film, µm',
    U: 'withdrawal speed, m/min',
    k: 'film at 1 m/min, µm',
    n: 'exponent, no unit: 2/3 for a Newtonian liquid',
    s: 'scatter of ln h about the line',
    N: 'panels',
    S: 'sum of squares of ln U about its mean',
    t: 'Student’s t, N - 2 degrees, 97.5 %',
  },
  source: 'Least squares in logarithms with its prediction interval, as in any text on regression.',
  uncertainty: 'Told with each answer as a 95 % interval for the next panel.',
  functions: {
    fitDipFilm: {
      formula: 'ln h = ln k + n ln U by least squares',
      range:
        'At least 4 panels whose speeds span a factor of 1.5, n between 0 and 1.5; refused outside, saying why.',
    },
    filmAtSpeed: {
      formula: 'h = k U^n, times and over exp(t s sqrt(1 + 1/N + (ln U - mean)^2/S))',
      range: 'U over 0 to 100 m/min; uncertain outside the speeds tried.',
    },
    speedForFilmMPerMin: {
      formula: 'U = (h/k)^(1/n)',
      range: 'Only within the speeds tried; nothing outside.',
    },
  },
};
