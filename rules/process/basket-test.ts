/**
 * Basket test: the temperature at which a residue lights itself in baskets of several sizes, and
 * what follows for a thickness nobody tested.
 *
 * At the edge of ignition ln(delta_c T^2 / r^2) = M - (E/R) 1/T: a straight line over 1/T, fitted by
 * least squares. Only such a test of this very residue may raise a limit, and then by the low side
 * of its interval. It answers oxidation alone: a residue that decomposes by itself is judged by
 * calorimetry. Three sizes are the least, and with three the interval is wide; that is its worth.
 *
 * Source: EN 15188, Determination of the spontaneous ignition behaviour of dust accumulations.
 */
import { criticalDelta, type ResidueShape } from './residue-ignition.ts';
import { studentTQuantile } from './student-t.ts';
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Basket test of residue',
  about:
    'Reads a report of hot storage in wire baskets of at least three sizes and tells at what temperature another size lights itself, with an interval. The one way to a higher limit than the default, by the low side of that interval and signed by EHS. Not for self-reactive residue, and not for layers on a hot plate.',
  symbols: {
    T: 'ignition temperature of a basket, K',
    r: 'half the side of a cube, radius of a cylinder or sphere, m',
    M: 'intercept of the line',
    E: 'activation energy, from the slope -E/R, J/mol',
    delta_c: 'critical value of the shape, as for ignition of residue; cube 2.52',
    n: 'baskets',
  },
  source: 'EN 15188; the line as in P. C. Bowes, Self-heating (1984)',
  uncertainty:
    '95 % interval of the fitted line by Student’s t with n - 2 degrees of freedom; outside the sizes tested it is an extrapolation and marked uncertain',
  functions: {
    fitBaskets: {
      formula: 'least squares of ln(delta_c T^2/r^2) over 1/T',
      range:
        'at least 3 baskets of 3 sizes, each volume at least twice the one before, 20 to 400 °C, half-sizes 1 mm to 2 m; refused outside, and where the line does not fall or E is outside 20 to 400 kJ/mol',
    },
    basketIgnitionC: {
      formula:
        'ln(delta_c T^2/r^2) = M - E/(R T), solved for T; the bounds by the bounds of the line',
      range: 'half-size 1 mm to 5 m; nothing where T is outside -150 to 600 °C',
    },
  },
};

const gasConstantJPerMolK = 8.314462618;
const zeroCelsiusK = 273.15;
const sizesLeast = 3;
/** Between neighbouring sizes; a rounding of drawings is let pass. */
const volumeStep = 2 * 0.98;

export interface Basket {
  readonly shape: Exclude<ResidueShape, 'slab' | 'cylinder'>;
  /** Half the side of a cube, else the radius. */
  readonly halfSizeM: number;
  /** The lowest temperature at which it lit, or the middle between that and the highest at which it did not. */
  readonly ignitionC: number;
}

export interface BasketRefusal {
  readonly refused: 'too-few-sizes' | 'sizes-too-close' | 'out-of-range' | 'no-line';
}

export interface BasketFit {
  readonly slopeK: number;
  readonly intercept: number;
  readonly activationJPerMol: number;
  /** 95 %. */
  readonly activationLowJPerMol: number;
  readonly activationHighJPerMol: number;
  /** Share of the scatter that the line explains, 0 to 1. */
  readonly rSquared: number;
  readonly basketsCount: number;
  readonly smallestM: number;
  readonly largestM: number;
  /** For the interval of the line: mean of 1/T, sum of squares about it, scatter, t. */
  readonly meanPerK: number;
  readonly squaresPerK2: number;
  readonly scatter: number;
  readonly t: number;
}

export interface BasketIgnition {
  readonly ignitionC: number;
  /** 95 %: the low one is the only one a limit may come from. */
  readonly lowC: number;
  readonly highC: number;
  /** Outside the sizes tested. */
  readonly uncertain: boolean;
}

/** The line through a report's baskets, or why there is none. */
export function fitBaskets(baskets: readonly Basket[]): BasketFit | BasketRefusal {
  const refused = unfit(baskets);
  if (refused !== null) return { refused };
  const x = baskets.map((each) => 1 / (each.ignitionC + zeroCelsiusK));
  const y = baskets.map((each, i) => lineHeight(each.shape, each.halfSizeM, 1 / x[i]!));
  const n = baskets.length;
  const meanX = x.reduce((sum, each) => sum + each, 0) / n;
  const meanY = y.reduce((sum, each) => sum + each, 0) / n;
  const sxx = x.reduce((sum, each) => sum + (each - meanX) ** 2, 0);
  const sxy = x.reduce((sum, each, i) => sum + (each - meanX) * (y[i]! - meanY), 0);
  const syy = y.reduce((sum, each) => sum + (each - meanY) ** 2, 0);
  const slopeK = sxy / sxx;
  const activationJPerMol = -slopeK * gasConstantJPerMolK;
  if (!(activationJPerMol >= 20_000 && activationJPerMol <= 400_000)) return { refused: 'no-line' };
  const left = Math.max(0, syy - slopeK * sxy);
  const scatter = Math.sqrt(left / (n - 2));
  const t = studentTQuantile(n - 2, 0.975);
  if (t === null) return { refused: 'out-of-range' };
  const half = t * (scatter / Math.sqrt(sxx)) * gasConstantJPerMolK;
  const sizes = baskets.map((each) => each.halfSizeM);
  return {
    slopeK,
    intercept: meanY - slopeK * meanX,
    activationJPerMol,
    activationLowJPerMol: activationJPerMol - half,
    activationHighJPerMol: activationJPerMol + half,
    rSquared: 1 - left / syy,
    basketsCount: n,
    smallestM: Math.min(...sizes),
    largestM: Math.max(...sizes),
    meanPerK: meanX,
    squaresPerK2: sxx,
    scatter,
    t,
  };
}

/** Where a residue of this fit lights itself in another shape and size. */
export function basketIgnitionC(
  fit: BasketFit,
  shape: ResidueShape,
  halfSizeM: number,
): BasketIgnition | null {
  if (!(halfSizeM >= 0.001 && halfSizeM <= 5)) return null;
  const at = (side: -1 | 0 | 1): number | null => crossing(fit, shape, halfSizeM, side);
  const ignitionC = at(0);
  // A line drawn too high lights too cool.
  const lowC = at(1);
  const highC = at(-1);
  if (ignitionC === null || lowC === null || highC === null) return null;
  const uncertain = halfSizeM < fit.smallestM || halfSizeM > fit.largestM;
  return { ignitionC, lowC, highC, uncertain };
}

const lineHeight = (shape: ResidueShape, halfSizeM: number, kelvin: number): number =>
  Math.log((criticalDelta[shape] * kelvin ** 2) / halfSizeM ** 2);

/** The line, or `side` times its half-width above it. */
function line(fit: BasketFit, perK: number, side: -1 | 0 | 1): number {
  const spread = 1 / fit.basketsCount + (perK - fit.meanPerK) ** 2 / fit.squaresPerK2;
  return fit.intercept + fit.slopeK * perK + side * fit.t * fit.scatter * Math.sqrt(spread);
}

/** The temperature nearest the tested ones at which the size meets the line; null outside -150 to 600 °C. */
function crossing(
  fit: BasketFit,
  shape: ResidueShape,
  halfSizeM: number,
  side: -1 | 0 | 1,
): number | null {
  const gap = (kelvin: number): number =>
    line(fit, 1 / kelvin, side) - lineHeight(shape, halfSizeM, kelvin);
  const start = 1 / fit.meanPerK;
  // Away from the tested temperatures the bounds bend, so look for the first change of sign.
  const step = gap(start) > 0 ? -0.25 : 0.25;
  const sign = Math.sign(gap(start));
  for (let near = start; ; near += step) {
    const far = near + step;
    if (far < -150 + zeroCelsiusK || far > 600 + zeroCelsiusK) return null;
    if (Math.sign(gap(far)) !== sign) return halved(gap, near, far) - zeroCelsiusK;
  }
}

function halved(gap: (at: number) => number, near: number, far: number): number {
  let same = near;
  let other = far;
  const sign = Math.sign(gap(near));
  while (Math.abs(other - same) > 1e-10) {
    const middle = (same + other) / 2;
    if (middle === same || middle === other) break;
    if (Math.sign(gap(middle)) === sign) same = middle;
    else other = middle;
  }
  return (same + other) / 2;
}

const volumeM3 = ({ shape, halfSizeM }: Basket): number =>
  ({ cube: 8, sphere: (4 / 3) * Math.PI, equicylinder: 2 * Math.PI })[shape] * halfSizeM ** 3;

function unfit(baskets: readonly Basket[]): BasketRefusal['refused'] | null {
  const sizes = new Set(baskets.map((each) => each.halfSizeM));
  if (sizes.size < sizesLeast) return 'too-few-sizes';
  const sound = baskets.every(
    ({ halfSizeM, ignitionC }) =>
      halfSizeM >= 0.001 && halfSizeM <= 2 && ignitionC >= 20 && ignitionC <= 400,
  );
  if (!sound) return 'out-of-range';
  if (new Set(baskets.map((each) => each.ignitionC)).size < 2) return 'no-line';
  const volumes = [...new Set(baskets.map(volumeM3))].sort((a, b) => a - b);
  const close = volumes.some((each, i) => i > 0 && each < volumes[i - 1]! * volumeStep);
  return close ? 'sizes-too-close' : null;
}
