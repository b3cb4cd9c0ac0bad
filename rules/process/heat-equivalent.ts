/**
 * Minutes at a reference temperature that a heat is worth: by activation energy, or by z-value.
 *
 * A rate that follows Arrhenius runs exp((Ea/R)(1/T_ref - 1/T)) times as fast at T as at T_ref, in
 * kelvin. The z-value is the older form, ten times as fast for every z kelvin; the two agree near one
 * temperature only, where z = ln(10) R T^2/Ea. Ea or z come from the data sheet or a trial, never
 * from here. Each stretch between two readings is a straight line of temperature and is summed
 * exactly for z, and to better than 1e-6 for Arrhenius. Outside its range a function answers null.
 */
import { type Profile, soundProfile } from './heat-dose.ts';
import type { Subject } from './subject.ts';

/** Molar gas constant, J/(mol K), exact since 2019 to these digits (CODATA 2018). */
export const gasConstantJPerMolK = 8.314462618;

const zeroCelsiusK = 273.15;
const degrees = (c: number): boolean => c >= -100 && c <= 500;
const energy = (kJPerMol: number): boolean => kJPerMol >= 1 && kJPerMol <= 500;
const steep = (k: number): boolean => k >= 1 && k <= 500;

/** exp((Ea/R)(1/T_ref - 1/T)), no unit. -100 to 500 °C, Ea 1 to 500 kJ/mol; null outside. */
export function arrheniusFactor(
  temperatureC: number,
  referenceC: number,
  activationKJPerMol: number,
): number | null {
  if (!degrees(temperatureC) || !degrees(referenceC) || !energy(activationKJPerMol)) return null;
  return Math.exp(lnArrhenius(temperatureC, referenceC, activationKJPerMol));
}

const lnArrhenius = (t: number, reference: number, kJPerMol: number): number =>
  ((kJPerMol * 1_000) / gasConstantJPerMolK) *
  (1 / (reference + zeroCelsiusK) - 1 / (t + zeroCelsiusK));

/** 10^((T - T_ref)/z), no unit. -100 to 500 °C, z 1 to 500 K; null outside. */
export function zFactor(temperatureC: number, referenceC: number, zK: number): number | null {
  if (!degrees(temperatureC) || !degrees(referenceC) || !steep(zK)) return null;
  const factor = 10 ** ((temperatureC - referenceC) / zK);
  return Number.isFinite(factor) ? factor : null;
}

/** Ea = ln(10) R T^2/z, kJ/mol, at the temperature where the two are to agree. Ranges as `zFactor`. */
export function activationFromZKJPerMol(zK: number, atC: number): number | null {
  if (!degrees(atC) || !steep(zK)) return null;
  return (Math.LN10 * gasConstantJPerMolK * (atC + zeroCelsiusK) ** 2) / zK / 1_000;
}

/** z = ln(10) R T^2/Ea, K. Ranges as `arrheniusFactor`; null outside. */
export function zFromActivationK(activationKJPerMol: number, atC: number): number | null {
  if (!degrees(atC) || !energy(activationKJPerMol)) return null;
  return (Math.LN10 * gasConstantJPerMolK * (atC + zeroCelsiusK) ** 2) / activationKJPerMol / 1_000;
}

/** How a rate grows with temperature. */
export type Kinetics =
  | { readonly by: 'arrhenius'; readonly activationKJPerMol: number }
  | { readonly by: 'z'; readonly zK: number };

/**
 * Equivalent time at `referenceC` of one stretch of `spanMs` from one reading to the next, in ms: what
 * a signal adds from reading to reading. Span 0 to 1e11 ms; else ranges as the factors; null outside.
 */
export function equivalentMs(
  fromC: number,
  toC: number,
  spanMs: number,
  referenceC: number,
  kinetics: Kinetics,
): number | null {
  if (!degrees(fromC) || !degrees(toC) || !degrees(referenceC)) return null;
  if (!(spanMs >= 0 && spanMs <= 1e11)) return null;
  let mean: number;
  if (kinetics.by === 'z') {
    if (!steep(kinetics.zK)) return null;
    const ln = (t: number): number => (Math.LN10 * (t - referenceC)) / kinetics.zK;
    mean = meanOfExponential(ln(fromC), ln(toC));
  } else {
    if (!energy(kinetics.activationKJPerMol)) return null;
    mean = meanArrhenius(fromC, toC, referenceC, kinetics.activationKJPerMol);
  }
  const worthMs = mean * spanMs;
  return Number.isFinite(worthMs) ? worthMs : null;
}

/** Mean of e^y while y runs straight from a to b: (e^b - e^a)/(b - a). */
const meanOfExponential = (a: number, b: number): number =>
  Math.abs(b - a) < 1e-9 ? Math.exp((a + b) / 2) : (Math.exp(a) * Math.expm1(b - a)) / (b - a);

/** Pieces over which ln of the rate moves by at most a half, each by three-point Gauss-Legendre. */
function meanArrhenius(fromC: number, toC: number, referenceC: number, kJPerMol: number): number {
  const ln = (t: number): number => lnArrhenius(t, referenceC, kJPerMol);
  const pieces = Math.max(1, Math.ceil(Math.abs(ln(toC) - ln(fromC)) * 2));
  const off = Math.sqrt(0.6) / 2;
  let sum = 0;
  for (let i = 0; i < pieces; i += 1) {
    const at = (share: number): number =>
      Math.exp(ln(fromC + ((toC - fromC) * (i + share)) / pieces));
    sum += (5 * at(0.5 - off) + 8 * at(0.5) + 5 * at(0.5 + off)) / 18;
  }
  return sum / pieces;
}

/** Equivalent minutes at `referenceC` of a whole profile; null for one that is not sound and outside the ranges. */
export function equivalentMinutes(
  profile: Profile,
  referenceC: number,
  kinetics: Kinetics,
): number | null {
  if (!soundProfile(profile)) return null;
  const { timesMs, metalC } = profile;
  let sumMs = 0;
  for (let i = 1; i < timesMs.length; i += 1) {
    const spanMs = timesMs[i]! - timesMs[i - 1]!;
    const worthMs = equivalentMs(metalC[i - 1]!, metalC[i]!, spanMs, referenceC, kinetics);
    if (worthMs === null) return null;
    sumMs += worthMs;
  }
  return Number.isFinite(sumMs) ? sumMs / 60_000 : null;
}

export const subject: Subject = {
  title: 'Equivalent heat',
  about:
    'What a heat is worth in minutes at one temperature, so that preheat, primer bake, drying and waiting in the mould can be added. A figure to compare runs with; limits on it come from a trial of this material.',
  symbols: {
    T: 'metal temperature, K in the Arrhenius form, °C or K in that of z',
    T_ref: 'reference temperature, as T',
    Ea: 'activation energy, J/mol',
    R: 'molar gas constant, 8.314462618 J/(mol K)',
    z: 'kelvin for ten times the rate, K',
    F: 'equivalent time at T_ref, min',
  },
  source:
    'S. Arrhenius 1889; the z-value and F-value of thermal processing, as in public texts on F0. R: CODATA 2018.',
  uncertainty:
    'Ea or z decide: 20 K from the reference, a tenth of Ea moves the factor by 14 % (100 kJ/mol, 140 °C).',
  functions: {
    arrheniusFactor: {
      formula: 'exp((Ea/R)(1/T_ref - 1/T))',
      range: '-100 to 500 °C, Ea 1 to 500 kJ/mol; nothing outside.',
    },
    zFactor: {
      formula: '10^((T - T_ref)/z)',
      range: '-100 to 500 °C, z 1 to 500 K; nothing outside.',
    },
    activationFromZKJPerMol: {
      formula: 'Ea = ln(10) R T^2/z',
      range: 'As above; holds near T only.',
    },
    zFromActivationK: { formula: 'z = ln(10) R T^2/Ea', range: 'As above; holds near T only.' },
    equivalentMs: {
      formula: 'integral of the factor over a straight line of temperature',
      range: 'Span 0 to 1e11 ms, else as above; nothing outside.',
      uncertainty: 'Exact for z; 1e-6 for Arrhenius.',
    },
    equivalentMinutes: {
      formula: 'F = sum of the stretches',
      range: 'A sound profile, else as above; nothing outside.',
    },
  },
};
