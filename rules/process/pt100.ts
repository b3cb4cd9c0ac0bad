/**
 * Platinum resistance thermometers of 100 Ω at 0 °C (Pt100), IEC 60751: resistance from
 * temperature, temperature from resistance, tolerance classes.
 *
 * Outside its range a function answers null, never NaN. A table in circulation prints 35.34 Ω at
 * -160 °C; the formula gives 35.54, and the formula is right.
 */
import type { Subject } from './subject.ts';

/** IEC 60751 for platinum of alpha 0.00385: R0 in Ω, A in 1/°C, B in 1/°C², C in 1/°C⁴. */
const r0Ohm = 100;
const a = 3.9083e-3;
const b = -5.775e-7;
const c = -4.183e-12;

export const pt100MinC = -200;
export const pt100MaxC = 850;

/** Resistance, Ω, at `temperatureC`, -200 to 850 °C; null outside. */
export function pt100Ohm(temperatureC: number): number | null {
  const t = temperatureC;
  if (!(t >= pt100MinC && t <= pt100MaxC)) return null;
  const warm = 1 + t * (a + b * t);
  return r0Ohm * (t >= 0 ? warm : warm + c * (t - 100) * t ** 3);
}

const roundsMax = 20;

/** Temperature, °C, from a resistance of 18.52 to 390.48 Ω (-200 to 850 °C), to 1e-9 °C; null outside. */
export function pt100C(ohm: number): number | null {
  if (!(ohm >= pt100MinOhm && ohm <= pt100MaxOhm)) return null;
  const ratio = ohm / r0Ohm;
  const warm = (-a + Math.sqrt(a * a - 4 * b * (1 - ratio))) / (2 * b);
  if (ratio >= 1) return Math.min(warm, pt100MaxC);
  let t = warm;
  for (let round = 0; round < roundsMax; round += 1) {
    const here = 1 + t * (a + b * t) + c * (t - 100) * t ** 3 - ratio;
    const slope = a + 2 * b * t + c * (4 * t - 300) * t * t;
    const step = here / slope;
    t -= step;
    if (Math.abs(step) < 1e-10) break;
  }
  return Math.max(t, pt100MinC);
}

/** The resistances at both ends of the range, Ω. */
export const pt100MinOhm = pt100Ohm(pt100MinC)!;
export const pt100MaxOhm = pt100Ohm(pt100MaxC)!;

export const pt100Classes = ['AA', 'A', 'B'] as const;
export type Pt100Class = (typeof pt100Classes)[number];

const tolerances: Readonly<
  Record<Pt100Class, { readonly floorK: number; readonly share: number }>
> = {
  AA: { floorK: 0.1, share: 0.0017 },
  A: { floorK: 0.15, share: 0.002 },
  B: { floorK: 0.3, share: 0.005 },
};

/**
 * Tolerance, ± K, of a sensor of this class at `temperatureC`, -200 to 850 °C; null outside. A maker
 * promises a class over a narrower range of its own.
 */
export function pt100ToleranceK(grade: Pt100Class, temperatureC: number): number | null {
  if (!(temperatureC >= pt100MinC && temperatureC <= pt100MaxC)) return null;
  const { floorK, share } = tolerances[grade];
  return floorK + share * Math.abs(temperatureC);
}

export const subject: Subject = {
  title: 'Pt100',
  about:
    'Temperature from the resistance of a platinum thermometer of 100 Ω at 0 °C. What two leads add must be taken off first: each ohm reads as some 2.6 °C.',
  symbols: {
    R: 'resistance, Ω',
    R_0: 'resistance at 0 °C, 100 Ω',
    t: 'temperature, °C',
    A: '3.9083e-3 1/°C',
    B: '-5.775e-7 1/°C²',
    C: '-4.183e-12 1/°C⁴, under 0 °C alone',
  },
  source: 'IEC 60751, as quoted by several makers of sensors.',
  uncertainty:
    'The formula defines the standard. A sensor of class B is within 0.3 °C at 0 °C and 1.1 °C at 155 °C, one of class A within 0.15 and 0.46 °C.',
  functions: {
    pt100Ohm: {
      formula: 'R = R_0 (1 + A t + B t^2), under 0 °C + R_0 C (t - 100) t^3',
      range: '-200 to 850 °C; nothing outside.',
    },
    pt100C: {
      formula: 'R(t) = R solved for t: by the root from 0 °C on, step by step under it',
      range: '18.52 to 390.48 Ω; nothing outside.',
    },
    pt100ToleranceK: {
      formula: 'AA: 0.1 + 0.0017 |t|; A: 0.15 + 0.002 |t|; B: 0.3 + 0.005 |t|',
      range: '-200 to 850 °C; nothing outside. Makers promise less.',
      source: 'IEC 60751, as tabled; class AA from memory.',
    },
  },
};
