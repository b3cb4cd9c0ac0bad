/**
 * An unstirred drum in air that changes: its wall and its mean from reading to reading.
 *
 * The terms of the cooling cylinder each fade towards the air by themselves, so that a drum is a
 * short list of temperatures, one a term, and a step with steady air is exact (Duhamel). Its ends
 * are not counted, nothing freezes in it, and no liquid turns over: the wall is colder here than in
 * a real drum. Outside its range a function answers null.
 */
import { sideCooling } from './cooling-cylinder.ts';
import type { Container } from './freezing.ts';
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'A drum in changing air',
  about:
    'Wall and mean of an unstirred drum in a store whose air changes, and how long until its wall is at a floor if the air stays as it is. Of freezing through it says nothing.',
  symbols: {
    T_n: 'temperature of term n, °C',
    T_a: 'air, °C',
    z_n: 'roots of z J1(z) = Bi J0(z), Bi = U r/k',
    w_n: 'part of term n in the wall, or in the mean',
    Fo: 'k t/(rho c r^2)',
  },
  source: 'Carslaw and Jaeger, Conduction of Heat in Solids, 1.14 (Duhamel) and 7.7',
  uncertainty:
    'conduction alone leaves the wall too cold, by a factor of up to three in time; U is known to a factor of two',
  functions: {
    drumTerms: {
      formula: 'w_n of wall and mean, and z_n^2 k/(rho c r^2) a second',
      range: 'Bi 0.01 to 100; nothing outside',
    },
    airCovered: { formula: '-60 <= T_a <= 60 °C', range: 'every number' },
    fadeTowards: {
      formula: "T_n' = T_a + (T_n - T_a) exp(-z_n^2 Fo)",
      range: 'air -60 to 60 °C, steps 0 to 1e8 s; false outside, and nothing changed',
    },
    wallOfC: { formula: 'sum w_n T_n, the rest of the sum at T_a', range: 'what fadeTowards left' },
    meanOfC: { formula: 'likewise for the mean', range: 'what fadeTowards left' },
    timeToFloorS: {
      formula: 'the first t at which the wall in steady air is at the floor',
      range: 'floor 0 to 60 °C; longestS where it is not reached by then',
    },
  },
};

export interface DrumTerm {
  readonly perS: number;
  readonly wall: number;
  readonly mean: number;
}

/** The terms of a drum, the slowest first, as many as matter beyond a minute; null out of range. */
export function drumTerms(
  container: Container,
  transferWPerM2K: number,
): readonly DrumTerm[] | null {
  const { radiusM, densityKgPerM3, heatJPerKgK, conductivityWPerMK: k } = container;
  const perFourierS = k / (densityKgPerM3 * heatJPerKgK * radiusM ** 2);
  const cooling = sideCooling((transferWPerM2K * radiusM) / k);
  if (cooling === null || !(perFourierS > 0) || !Number.isFinite(perFourierS)) return null;
  return cooling.terms.map(({ perFourier, wall, mean }) => ({
    perS: perFourier * perFourierS,
    wall,
    mean,
  }));
}

/** Whether air of `c` °C is within what is computed. */
export const airCovered = (c: number): boolean => c >= -60 && c <= 60;

/** Moves the drum's temperatures on by `stepS` in steady air; false out of range. */
export function fadeTowards(
  terms: readonly DrumTerm[],
  temperaturesC: number[],
  air: number,
  stepS: number,
): boolean {
  if (!airCovered(air) || !(stepS >= 0 && stepS <= 1e8)) return false;
  for (let n = 0; n < terms.length; n += 1)
    temperaturesC[n] = air + (temperaturesC[n]! - air) * Math.exp(-terms[n]!.perS * stepS);
  return true;
}

/** The wall's temperature, °C, in air of `air`. */
export const wallOfC = (
  terms: readonly DrumTerm[],
  temperaturesC: readonly number[],
  air: number,
): number => {
  let celsius = air;
  for (let n = 0; n < terms.length; n += 1) celsius += terms[n]!.wall * (temperaturesC[n]! - air);
  return celsius;
};

/** The mean's temperature, °C, in air of `air`. */
export const meanOfC = (
  terms: readonly DrumTerm[],
  temperaturesC: readonly number[],
  air: number,
): number => {
  let celsius = air;
  for (let n = 0; n < terms.length; n += 1) celsius += terms[n]!.mean * (temperaturesC[n]! - air);
  return celsius;
};

/** The wall is never colder in steady air: each term that cools it now cools it less and less. */
function coldestWallC(
  terms: readonly DrumTerm[],
  temperaturesC: readonly number[],
  air: number,
): number {
  let celsius = air;
  for (let n = 0; n < terms.length; n += 1)
    celsius += Math.min(0, terms[n]!.wall * (temperaturesC[n]! - air));
  return celsius;
}

/** Until the wall is at `floorC` if the air stays, s; `longestS` where it is not by then. Null out of range. */
export function timeToFloorS(
  terms: readonly DrumTerm[],
  temperaturesC: readonly number[],
  air: number,
  floorC: number,
  longestS: number,
): number | null {
  if (!airCovered(air) || !(floorC >= 0 && floorC <= 60)) return null;
  if (coldestWallC(terms, temperaturesC, air) > floorC) return longestS;
  const wallAfter = (seconds: number): number => {
    let celsius = air;
    for (let n = 0; n < terms.length; n += 1) {
      const { perS, wall } = terms[n]!;
      celsius += wall * (temperaturesC[n]! - air) * Math.exp(-perS * seconds);
    }
    return celsius;
  };
  if (wallAfter(0) <= floorC) return 0;
  // Warmth from inside may raise the wall first: look further and further ahead.
  let low = 0;
  let high = 300;
  while (high < longestS && wallAfter(high) > floorC) {
    low = high;
    high *= 1.25;
  }
  if (wallAfter(Math.min(high, longestS)) > floorC) return longestS;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (wallAfter(middle) > floorC) low = middle;
    else high = middle;
  }
  return Math.min(high, longestS);
}
