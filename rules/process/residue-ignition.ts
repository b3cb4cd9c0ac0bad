/**
 * Frank-Kamenetskii: how the temperature at which a layer lights itself falls with its thickness.
 *
 * At the edge of ignition ln(delta_c T^2 / r^2) = M - E/(R T), with T in K, r the half-thickness or
 * radius, E the activation energy; so between two sizes of one shape
 * ln[(r2/r1)^2 (T1/T2)^2] = E/R (1/T2 - 1/T1), and delta_c drops out.
 *
 * The law is for residue warmed from all sides that reacts with nothing missing. A layer on a hot
 * plate is neither, and what a given residue does is known only from a test of it. So it is used
 * one way alone: thicker than the layer behind a limit lowers the limit, thinner never raises it.
 * Outside its range a function answers null, never NaN.
 *
 * Sources: D. A. Frank-Kamenetskii, Diffusion and Heat Transfer in Chemical Kinetics;
 * P. C. Bowes, Self-heating: Evaluating and Controlling the Hazards (1984).
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Ignition of residue by its own heat',
  about:
    'How much cooler a thicker layer of dried residue lights itself. It only ever lowers a limit: a thinner layer keeps the limit it has, and only a basket test of this very residue may raise one. It says nothing of sparks, friction or impact, which light cold residue, and nothing of residue that decomposes instead of oxidising.',
  symbols: {
    T: 'temperature at the edge of ignition, K',
    r: 'half the thickness, the radius, or half the side, m',
    E: 'activation energy, J/mol; 70 to 150 kJ/mol where no test gave it (engineering judgement)',
    R: 'gas constant, 8.314462618 J/(mol K)',
    P: 'heat released, rho Q A, W/m3',
    lambda: 'heat conductivity, W/(m K)',
    delta_c:
      'critical value: slab 0.878, cylinder 2, sphere 3.322, cube 2.52 (also printed as 2.57, computed as 2.475), cylinder as high as wide 2.76',
  },
  source:
    'Frank-Kamenetskii; critical values from P. C. Bowes, Self-heating (1984); scaling as in published shipping tests of coals and carbons',
  uncertainty:
    'With E unknown from 70 to 150 kJ/mol, a limit of 112 °C for 10 mm becomes 59 to 86 °C for 50 mm. The value chosen for the cube moves a temperature by 0.3 to 0.6 K. A layer on a hot plate is not the case the law is made for: uncertain, and used to lower alone.',
  functions: {
    scaledIgnitionC: {
      formula: 'ln[(r2/r1)^2 (T1/T2)^2] = E/R (1/T2 - 1/T1), solved for T2',
      range:
        'T1 -20 to 400 °C, sizes over 0, E 20 to 400 kJ/mol; nothing outside, nor where T2 is outside -150 to 600 °C',
    },
    loweredLimitC: {
      formula:
        'the smaller of the limit and its scaling by E = 70 kJ/mol; the limit itself where the layer is no thicker',
      range: 'limit -20 to 400 °C, thicknesses over 0 to 2 m; nothing outside',
    },
    frankKamenetskiiDelta: {
      formula: 'delta = E/(R T^2) r^2 P/lambda exp(-E/RT)',
      range:
        'E 20 to 400 kJ/mol, P and r over 0, lambda 0.001 to 100 W/(m K), T over 0 K; nothing outside',
    },
    ignitionC: {
      formula: 'delta(T) = delta_c, solved for T',
      range: 'as delta; nothing where T is outside -150 to 600 °C',
    },
    ignitionHalfSizeM: {
      formula: 'r = sqrt(delta_c / delta(r = 1 m))',
      range: 'as delta; nothing outside',
    },
  },
};

const gasConstantJPerMolK = 8.314462618;
const zeroCelsiusK = 273.15;

/**
 * Activation energies that a film residue is taken to have, J/mol: 70 to 150 kJ/mol, engineering
 * judgement. Never the literature's figures for coal, carbon or wood.
 */
export const residueActivationJPerMol = { least: 70_000, most: 150_000 } as const;

/**
 * delta_c by shape; r is half the thickness, the radius or half the side. Three values of the cube
 * are in print: 2.52 (Bowes), 2.57 (Boddington) and 2.475, which solving the equation gives; here
 * it is 2.52, the one the test standards' evaluations use. Of a cylinder as high as wide 2.76 is
 * printed and 2.766 computed. The choice moves a temperature by some 0.3 to 0.6 K.
 */
export const criticalDelta = {
  slab: 0.878,
  cylinder: 2,
  sphere: 3.322,
  cube: 2.52,
  equicylinder: 2.76,
} as const;

export type ResidueShape = keyof typeof criticalDelta;

/** The layer that a limit without a thickness is taken to hold for (engineering judgement). */
export const provenThicknessMm = 10;

const thicknessMmMax = 2_000;
/** Where the law and the material both make sense, °C. */
const temperatureCMin = -20;
const temperatureCMax = 400;

const inRange = (value: number, least: number, most: number): boolean =>
  value >= least && value <= most;

/**
 * Ignition temperature, °C, of a size whose like of another size lights itself at `knownC`: -20 to
 * 400 °C. Sizes are of one shape, in one unit, over 0; E 20 to 400 kJ/mol in J/mol. Null outside,
 * and where the answer lies outside -150 to 600 °C.
 */
export function scaledIgnitionC(
  knownC: number,
  knownSizeMm: number,
  wantedSizeMm: number,
  activationJPerMol: number,
): number | null {
  if (!inRange(knownC, temperatureCMin, temperatureCMax)) return null;
  if (!inRange(activationJPerMol, 20_000, 400_000)) return null;
  if (!(knownSizeMm > 0 && wantedSizeMm > 0)) return null;
  const knownK = knownC + zeroCelsiusK;
  const sizes = 2 * Math.log(wantedSizeMm / knownSizeMm);
  const perK = activationJPerMol / gasConstantJPerMolK;
  // Rises with temperature wherever E/RT is over 2, and so over the whole range searched.
  const excess = (kelvin: number): number =>
    sizes + 2 * Math.log(knownK / kelvin) - perK * (1 / kelvin - 1 / knownK);
  const kelvin = whereRisingCrosses(excess, -150 + zeroCelsiusK, 600 + zeroCelsiusK);
  return kelvin === null ? null : kelvin - zeroCelsiusK;
}

export interface LoweredLimit {
  /** Never above the limit it came from. */
  readonly limitC: number;
  /** What the mildest activation energy would have given, for the width of not knowing. */
  readonly mildestC: number;
  readonly lowered: boolean;
}

/**
 * A limit that holds for a layer of `provenMm`, lowered for one of `thicknessMm`: by the least
 * favourable activation energy of `residueActivationJPerMol`. A thinner layer keeps the limit.
 * Limit -20 to 400 °C; thicknesses over 0 and up to 2 m; null outside.
 */
export function loweredLimitC(
  limitC: number,
  provenMm: number,
  thicknessMm: number,
): LoweredLimit | null {
  if (!inRange(limitC, temperatureCMin, temperatureCMax)) return null;
  if (!(provenMm > 0 && provenMm <= thicknessMmMax)) return null;
  if (!(thicknessMm > 0 && thicknessMm <= thicknessMmMax)) return null;
  if (thicknessMm <= provenMm) return { limitC, mildestC: limitC, lowered: false };
  const { least, most } = residueActivationJPerMol;
  const worst = scaledIgnitionC(limitC, provenMm, thicknessMm, least);
  const mildest = scaledIgnitionC(limitC, provenMm, thicknessMm, most);
  if (worst === null || mildest === null) return null;
  return { limitC: Math.min(limitC, worst), mildestC: Math.min(limitC, mildest), lowered: true };
}

/** A residue whose kinetics a test has given. */
export interface Kinetics {
  /** E, J/mol. */
  readonly activationJPerMol: number;
  /** rho Q A, W/m3. */
  readonly heatReleaseWPerM3: number;
  /** lambda, W/(m K). */
  readonly conductivityWPerMK: number;
}

/** delta = E/(R T^2) r^2 P/lambda exp(-E/RT), no unit; all over 0, null outside. */
export function frankKamenetskiiDelta(
  kinetics: Kinetics,
  halfSizeM: number,
  temperatureC: number,
): number | null {
  const kelvin = temperatureC + zeroCelsiusK;
  if (!sound(kinetics) || !(halfSizeM > 0) || !(kelvin > 0)) return null;
  const perK = kinetics.activationJPerMol / gasConstantJPerMolK;
  const delta =
    (perK / kelvin ** 2) *
    halfSizeM ** 2 *
    (kinetics.heatReleaseWPerM3 / kinetics.conductivityWPerMK) *
    Math.exp(-perK / kelvin);
  return Number.isFinite(delta) ? delta : null;
}

/** Where delta of this size reaches its critical value, °C; null outside -150 to 600 °C. */
export function ignitionC(
  kinetics: Kinetics,
  shape: ResidueShape,
  halfSizeM: number,
): number | null {
  if (frankKamenetskiiDelta(kinetics, halfSizeM, 20) === null) return null;
  return whereRisingCrosses(
    (celsius) => (frankKamenetskiiDelta(kinetics, halfSizeM, celsius) ?? 0) - criticalDelta[shape],
    -150,
    600,
  );
}

/** The half-size that lights itself at this temperature, m; null outside. */
export function ignitionHalfSizeM(
  kinetics: Kinetics,
  shape: ResidueShape,
  temperatureC: number,
): number | null {
  const unit = frankKamenetskiiDelta(kinetics, 1, temperatureC);
  if (unit === null || unit === 0) return null;
  const half = Math.sqrt(criticalDelta[shape] / unit);
  return Number.isFinite(half) ? half : null;
}

const sound = (kinetics: Kinetics): boolean =>
  inRange(kinetics.activationJPerMol, 20_000, 400_000) &&
  kinetics.heatReleaseWPerM3 > 0 &&
  kinetics.heatReleaseWPerM3 < Number.POSITIVE_INFINITY &&
  inRange(kinetics.conductivityWPerMK, 0.001, 100);

/** Where a rising function passes 0, to a millionth; null where it does not between the ends. */
function whereRisingCrosses(
  rising: (at: number) => number,
  from: number,
  to: number,
): number | null {
  let low = from;
  let high = to;
  if (!(rising(low) <= 0 && rising(high) >= 0)) return null;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
