/**
 * The time constant of a part in an oven, from a trial run with a thermocouple trailing on the part.
 *
 * Least squares: the tau whose computed part temperature, driven by the air that was logged, lies
 * nearest to what was logged on the part. The air runs straight between readings. Neighbouring
 * deviations resemble each other, so the uncertainty is widened by (1 + r)/(1 - r) of the variance,
 * r their correlation from one reading to the next. A run that the model does not describe (a wet
 * film, a part that does not warm as one) shows as a large deviation and is marked uncertain.
 */
import { partAfterStepC } from './heating.ts';
import type { Subject } from './subject.ts';

export interface TrialRun {
  /** Ascending strictly, s. */
  readonly timesS: readonly number[];
  /** Oven air beside the part and metal of the part, °C, at those times. */
  readonly airC: readonly number[];
  readonly partC: readonly number[];
}

export type FitDoubt =
  /** The part warmed by less than 10 K, or for less than one time constant: little to go by. */
  | 'short-run'
  /** It deviates by more than 3 K, or a twentieth of its rise. */
  | 'does-not-follow';

export interface TimeConstantFit {
  readonly timeConstantS: number;
  /** Standard uncertainty from the scatter; a wrongly placed probe is not in it. */
  readonly uS: number;
  /** Root mean square of measured less computed, K. */
  readonly deviationK: number;
  readonly doubts: readonly FitDoubt[];
}

export type FitAnswer =
  | ({ readonly kind: 'fitted' } & TimeConstantFit)
  | {
      readonly kind: 'refused';
      readonly why: 'too-few-readings' | 'readings-unusable' | 'no-time-constant-fits';
    };

const shortestS = 1;
const longestS = 1e6;
const readingsMin = 8;
const riseKMin = 10;
const deviationKMax = 3;

/**
 * Fits tau between 1 s and 1e6 s to 8 readings or more. A refusal says why: fewer readings, lists of
 * unequal length, times that do not ascend, values outside -100 to 1500 °C, or a run whose best tau
 * lies at an end of that range.
 */
export function fitTimeConstant(run: TrialRun): FitAnswer {
  const { timesS, airC, partC } = run;
  if (timesS.length < readingsMin) return { kind: 'refused', why: 'too-few-readings' };
  if (!usable(run)) return { kind: 'refused', why: 'readings-unusable' };
  const tau = nearest(run);
  if (tau === null) return { kind: 'refused', why: 'no-time-constant-fits' };

  const deviations = deviationsK(run, tau);
  const count = deviations.length;
  const squares = sumOfSquares(deviations);
  const deviationK = Math.sqrt(squares / count);
  // How the computed temperatures move when tau does, by the change over a thousandth of it.
  const wider = deviationsK(run, tau * 1.001);
  const narrower = deviationsK(run, tau * 0.999);
  const slopes = wider.map((wide, i) => (narrower[i]! - wide) / (0.002 * tau));
  const information = sumOfSquares(slopes);
  if (!(information > 0)) return { kind: 'refused', why: 'no-time-constant-fits' };
  const alike = likeness(deviations, squares);
  const uS = Math.sqrt(((squares / (count - 1)) * ((1 + alike) / (1 - alike))) / information);

  const riseK = Math.max(...partC) - partC[0]!;
  const spanS = timesS[count]! - timesS[0]!;
  const doubts: FitDoubt[] = [];
  const span = Math.max(...airC) - partC[0]!;
  if (riseK < riseKMin || span < riseKMin || spanS < tau) doubts.push('short-run');
  if (deviationK > Math.min(deviationKMax, Math.max(0.5, riseK / 20)))
    doubts.push('does-not-follow');
  return { kind: 'fitted', timeConstantS: tau, uS, deviationK, doubts };
}

function usable({ timesS, airC, partC }: TrialRun): boolean {
  const count = timesS.length;
  if (airC.length !== count || partC.length !== count) return false;
  if (![...airC, ...partC].every((c) => c >= -100 && c <= 1_500)) return false;
  return timesS.every((at, i) => Number.isFinite(at) && (i === 0 || at > timesS[i - 1]!));
}

/** Measured less computed, K, from the second reading on; the first is where both begin. */
function deviationsK({ timesS, airC, partC }: TrialRun, tau: number): number[] {
  let computed = partC[0]!;
  const found: number[] = [];
  for (let i = 1; i < timesS.length; i += 1) {
    const stepS = timesS[i]! - timesS[i - 1]!;
    computed = partAfterStepC(computed, airC[i - 1]!, airC[i]!, stepS, tau) ?? Number.NaN;
    found.push(partC[i]! - computed);
  }
  return found;
}

const sumOfSquares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0);

/** Correlation of neighbours, 0 to 0.95: never to the credit of the fit. */
function likeness(deviations: readonly number[], squares: number): number {
  if (!(squares > 0)) return 0;
  let products = 0;
  for (let i = 1; i < deviations.length; i += 1) products += deviations[i]! * deviations[i - 1]!;
  return Math.min(0.95, Math.max(0, products / squares));
}

/** Coarse search over the logarithm, then golden section; null where the best lies at an end. */
function nearest(run: TrialRun): number | null {
  const cost = (lnTau: number): number => sumOfSquares(deviationsK(run, Math.exp(lnTau)));
  const from = Math.log(shortestS);
  const steps = 80;
  const width = (Math.log(longestS) - from) / steps;
  let best = 0;
  let bestCost = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i += 1) {
    const found = cost(from + i * width);
    if (found < bestCost) {
      best = i;
      bestCost = found;
    }
  }
  if (best === 0 || best === steps || !Number.isFinite(bestCost)) return null;
  let low = from + (best - 1) * width;
  let high = from + (best + 1) * width;
  const golden = (Math.sqrt(5) - 1) / 2;
  while (high - low > 1e-7) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (cost(left) < cost(right)) high = right;
    else low = left;
  }
  return Math.exp((low + high) / 2);
}

export const subject: Subject = {
  title: 'Time constant from a trial run',
  about:
    'Fits the lag of a part behind the oven air from a run with a thermocouple welded or drilled into the heaviest section. A probe taped on reads air and gives too short a lag. Good for that part family, load density and oven setting only.',
  symbols: {
    tau: 'time constant, s',
    'u(tau)': 'its standard uncertainty, s',
    T_m: 'part temperature measured, °C',
    T_c: 'part temperature computed (heating of a part), °C',
    r: 'correlation of neighbouring deviations, no unit',
    n: 'how many deviations',
  },
  source:
    'Least squares on the lumped model; uncertainty from its curvature (Gauss-Newton) widened for serial correlation, as usual for time series.',
  uncertainty:
    'Told with each fit. With readings 0.5 K noisy a run over two time constants gives tau within a few percent.',
  functions: {
    fitTimeConstant: {
      formula:
        'tau least in sum (T_m - T_c)^2; u(tau)^2 = sum (T_m - T_c)^2/(n - 1) (1 + r)/(1 - r) / sum (dT_c/dtau)^2',
      range:
        'Tau 1 to 1e6 s, 8 readings or more, -100 to 1500 °C; refused outside, saying why. Doubted where the part rose by less than 10 K, or for less than one tau, or deviates by over 3 K.',
    },
  },
};
