/**
 * Thermocouples K, J and T on ITS-90: voltage from temperature, temperature from voltage, the cold
 * junction, and the tolerance of the wire.
 *
 * The cold junction is added as a voltage and never as a temperature: the curve bends, and adding
 * degrees is wrong by tenths. Outside its range a function answers null, never NaN.
 */
import type { Subject } from './subject.ts';
import { references, type Stretch, type ThermocoupleType } from './thermocouple-coefficients.ts';

export type ThermocoupleClass = 1 | 2;

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) sum = sum * x + coefficients[i]!;
  return sum;
}

const stretchOf = (stretches: readonly Stretch[], x: number): Stretch | null =>
  x >= stretches[0]!.from ? (stretches.find(({ to }) => x <= to) ?? null) : null;

/**
 * Voltage E, mV, against a junction at 0 °C, of a thermocouple at `temperatureC`. K: -270 to
 * 1372 °C, J: -210 to 1200, T: -270 to 400; null outside. Source: NIST SRD 60.
 */
export function thermocoupleMv(type: ThermocoupleType, temperatureC: number): number | null {
  const { voltage, hump } = references[type];
  const stretch = stretchOf(voltage, temperatureC);
  if (stretch === null) return null;
  const mv = polynomial(stretch.coefficients, temperatureC);
  if (hump === null || stretch.from < 0) return mv;
  return mv + hump.a0 * Math.exp(hump.a1 * (temperatureC - hump.a2) ** 2);
}

/**
 * Temperature, °C, from E in mV, by the published approximate inverse: up to 0.06 °C from the
 * reference function. K: -5.891 to 54.886 mV, J: -8.095 to 69.553, T: -5.603 to 20.872; null outside.
 */
export function thermocoupleApproximateC(type: ThermocoupleType, mv: number): number | null {
  const stretch = stretchOf(references[type].inverse, mv);
  return stretch === null ? null : polynomial(stretch.coefficients, mv);
}

/** Half a unit of the last digit that the published limits are printed to, mV. */
const printedMv = 0.0005;
const slopeStepC = 0.01;
const roundsMax = 8;

/**
 * Temperature, °C, from E in mV, by the reference function itself, to 1e-6 °C. K: -200 to 1372 °C,
 * J: -210 to 1200, T: -200 to 400; null outside.
 */
export function thermocoupleC(type: ThermocoupleType, mv: number): number | null {
  const { voltage, inverse } = references[type];
  const least = inverse[0]!.from - printedMv;
  const most = inverse.at(-1)!.to + printedMv;
  if (!(mv >= least && mv <= most)) return null;
  const coldestC = Math.max(voltage[0]!.from, -210);
  const hottestC = voltage.at(-1)!.to;
  const within = (c: number): number => Math.min(hottestC - slopeStepC, Math.max(coldestC, c));
  const start = Math.min(inverse.at(-1)!.to, Math.max(inverse[0]!.from, mv));
  let c = within(thermocoupleApproximateC(type, start)!);
  for (let round = 0; round < roundsMax; round += 1) {
    const here = thermocoupleMv(type, c)!;
    const slope = (thermocoupleMv(type, c + slopeStepC)! - here) / slopeStepC;
    const next = within(c - (here - mv) / slope);
    const step = Math.abs(next - c);
    c = next;
    if (step < 1e-9) break;
  }
  // The last hundredth of a degree lies beyond where the slope can be taken.
  const left = mv - thermocoupleMv(type, c)!;
  if (left <= 1e-9) return c;
  const topMv = thermocoupleMv(type, hottestC)!;
  const share = left / (topMv - thermocoupleMv(type, hottestC - slopeStepC)!);
  return Math.min(hottestC, c + share * slopeStepC);
}

/**
 * Temperature of the measuring junction, °C, from the voltage at the terminals in mV and the
 * temperature of those terminals (the cold junction), -40 to 150 °C: t = t(E + E(cold)). null outside.
 */
export function thermocoupleFromTerminalsC(
  type: ThermocoupleType,
  mv: number,
  coldJunctionC: number,
): number | null {
  if (!(coldJunctionC >= coldJunctionMinC && coldJunctionC <= coldJunctionMaxC)) return null;
  return thermocoupleC(type, mv + thermocoupleMv(type, coldJunctionC)!);
}

/** Where terminals can be: colder or hotter, and the number is no cold junction. Engineering judgement. */
export const coldJunctionMinC = -40;
export const coldJunctionMaxC = 150;

interface Tolerance {
  readonly floorK: number;
  readonly share: number;
}
const baseMetal = [
  { floorK: 1.5, share: 0.004 },
  { floorK: 2.5, share: 0.0075 },
] as const satisfies readonly Tolerance[];
const tolerances: Readonly<Record<ThermocoupleType, readonly [Tolerance, Tolerance]>> = {
  K: baseMetal,
  J: baseMetal,
  T: [
    { floorK: 0.5, share: 0.004 },
    { floorK: 1, share: 0.0075 },
  ],
};
/** Highest temperature of class 1 and 2, °C. From memory. */
const classTopC: Readonly<Record<ThermocoupleType, readonly [number, number]>> = {
  K: [1000, 1200],
  J: [750, 750],
  T: [350, 350],
};

/**
 * Tolerance, ± K, of new wire at `temperatureC`: the greater of a floor and a share of |t|, as in
 * IEC 60584. From -40 °C to the top of the class; null outside.
 */
export function thermocoupleToleranceK(
  type: ThermocoupleType,
  grade: ThermocoupleClass,
  temperatureC: number,
): number | null {
  if (!(temperatureC >= -40 && temperatureC <= classTopC[type][grade - 1]!)) return null;
  const { floorK, share } = tolerances[type][grade - 1]!;
  return Math.max(floorK, share * Math.abs(temperatureC));
}

export const subject: Subject = {
  title: 'Thermocouples',
  about:
    'Temperature from the voltage of a thermocouple of type K, J or T, with the temperature of its terminals (the cold junction) taken into account as a voltage. It cannot tell a thermocouple of another type, wrong extension cable, or two wires swapped.',
  symbols: {
    E: 'voltage, mV, against a junction at 0 °C',
    t: 'temperature, °C',
    E_m: 'voltage at the terminals, mV',
    t_c: 'temperature of the terminals, °C',
    c_i: 'coefficients of the reference function',
    d_i: 'coefficients of the approximate inverse',
  },
  source: 'NIST, ITS-90 thermocouple database (SRD 60; Monograph 175).',
  uncertainty:
    'The functions hold to the last printed digit of the tables, 0.0005 mV. New wire of class 1 is within 1.5 °C (K, J) or 0.5 °C (T) where the oven works; used wire drifts further.',
  functions: {
    thermocoupleMv: {
      formula: 'E = sum c_i t^i; type K from 0 °C on: + a_0 exp(a_1 (t - a_2)^2)',
      range: 'K -270 to 1372 °C, J -210 to 1200, T -270 to 400; nothing outside.',
    },
    thermocoupleApproximateC: {
      formula: 't = sum d_i E^i',
      range:
        'K -5.891 to 54.886 mV, J -8.095 to 69.553 mV, T -5.603 to 20.872 mV; nothing outside.',
      uncertainty: 'up to 0.06 °C from the reference function',
    },
    thermocoupleC: {
      formula: 'E(t) = E solved for t, from the approximate inverse on',
      range: 'K -200 to 1372 °C, J -210 to 1200, T -200 to 400; nothing outside.',
      uncertainty: '1e-6 °C from the reference function',
    },
    thermocoupleFromTerminalsC: {
      formula: 'E(t) = E_m + E(t_c) solved for t',
      range: 't_c -40 to 150 °C (engineering judgement), t as thermocoupleC; nothing outside.',
    },
    thermocoupleToleranceK: {
      formula:
        'K and J: class 1 the greater of 1.5 and 0.004 |t|, class 2 of 2.5 and 0.0075 |t|; T: class 1 of 0.5 and 0.004 |t|, class 2 of 1 and 0.0075 |t|',
      range: '-40 °C to the top of the class (K 1000 and 1200, J 750, T 350); nothing outside.',
      source: 'IEC 60584, as tabled by two suppliers of wire; the top of each class from memory.',
    },
  },
};
