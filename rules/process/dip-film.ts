/**
 * The wet film that a part drags out of a dip tank, and how it drains.
 *
 * Landau, Levich and Derjaguin: h = 0.944 l_c Ca^(2/3) with l_c = sqrt(gamma/(rho g)) and
 * Ca = mu U/gamma. It holds for slow withdrawal (Ca far below 1), a Newtonian liquid that wets. The
 * trade sits on its edge (1 m/min, 20 mPa s: Ca 0.0095) with a liquid that thins under shear, so the
 * answer is marked uncertain there, not refused, and the line is fitted to panels instead
 * (dip-fit.ts). Outside its range a function answers null, never NaN.
 */
import type { Subject } from './subject.ts';

const gravityMPerS2 = 9.80665;

/** Above it the formula is uncertain, above the second refused (1e-3 and 1e-2 are quoted for it, from memory). */
export const capillaryCertainMax = 1e-3;
export const capillaryMax = 0.1;

export interface DipLiquid {
  /** 0.1 to 10 000 mPa s, at the shear of the withdrawal. */
  readonly viscosityMPaS: number;
  /** 5 to 100 mN/m. */
  readonly surfaceTensionMNPerM: number;
  /** 0.6 to 2 g/mL. */
  readonly densityGPerMl: number;
}

export interface DipFilm {
  readonly wetUm: number;
  readonly capillaryNumber: number;
  readonly uncertain: boolean;
}

const sound = ({ viscosityMPaS, surfaceTensionMNPerM, densityGPerMl }: DipLiquid): boolean =>
  viscosityMPaS >= 0.1 &&
  viscosityMPaS <= 10_000 &&
  surfaceTensionMNPerM >= 5 &&
  surfaceTensionMNPerM <= 100 &&
  densityGPerMl >= 0.6 &&
  densityGPerMl <= 2;

/** Ca = mu U/gamma, no unit. U over 0 to 100 m/min, liquid within its ranges; null outside. */
export function capillaryNumber(liquid: DipLiquid, withdrawalMPerMin: number): number | null {
  if (!sound(liquid) || !(withdrawalMPerMin > 0 && withdrawalMPerMin <= 100)) return null;
  return (liquid.viscosityMPaS * (withdrawalMPerMin / 60)) / liquid.surfaceTensionMNPerM;
}

/**
 * h = 0.944 l_c Ca^(2/3), µm, on a flat plate drawn up straight. Uncertain above Ca 1e-3 and where the
 * film is so fast and thick that inertia counts (rho U h/mu over 1); null above Ca 0.1 and outside
 * the ranges.
 */
export function dipFilm(liquid: DipLiquid, withdrawalMPerMin: number): DipFilm | null {
  const ca = capillaryNumber(liquid, withdrawalMPerMin);
  if (ca === null || ca > capillaryMax) return null;
  const densityKgPerM3 = liquid.densityGPerMl * 1_000;
  const gammaNPerM = liquid.surfaceTensionMNPerM / 1_000;
  const lengthM = Math.sqrt(gammaNPerM / (densityKgPerM3 * gravityMPerS2));
  const filmM = 0.944 * lengthM * ca ** (2 / 3);
  const reynolds =
    (densityKgPerM3 * (withdrawalMPerMin / 60) * filmM) / (liquid.viscosityMPaS / 1_000);
  const uncertain = ca > capillaryCertainMax || reynolds > 1;
  return { wetUm: filmM * 1e6, capillaryNumber: ca, uncertain };
}

/** l_c = sqrt(gamma/(rho g)), mm. Liquid within its ranges; null outside. */
export function capillaryLengthMm(liquid: DipLiquid): number | null {
  if (!sound(liquid)) return null;
  const { surfaceTensionMNPerM, densityGPerMl } = liquid;
  return 1_000 * Math.sqrt(surfaceTensionMNPerM / 1_000 / (densityGPerMl * 1_000 * gravityMPerS2));
}

/**
 * Film that has drained for a while, µm, a distance below the upper edge: h = sqrt(mu z/(rho g t)).
 * Newtonian, no drying meanwhile: so an upper figure for what is left. z over 0 to 10 m, t over 0 to
 * 1e5 s; null outside.
 */
export function drainedFilmUm(
  liquid: DipLiquid,
  belowEdgeM: number,
  drainS: number,
): number | null {
  if (!sound(liquid) || !(belowEdgeM > 0 && belowEdgeM <= 10)) return null;
  if (!(drainS > 0 && drainS <= 1e5)) return null;
  const { viscosityMPaS, densityGPerMl } = liquid;
  const squareM2 =
    ((viscosityMPaS / 1_000) * belowEdgeM) / (densityGPerMl * 1_000 * gravityMPerS2 * drainS);
  const um = Math.sqrt(squareM2) * 1e6;
  return Number.isFinite(um) ? um : null;
}

/** Mean of the same from the edge down to there: two thirds of it. Ranges as `drainedFilmUm`. */
export function meanDrainedFilmUm(
  liquid: DipLiquid,
  belowEdgeM: number,
  drainS: number,
): number | null {
  const um = drainedFilmUm(liquid, belowEdgeM, drainS);
  return um === null ? null : (2 / 3) * um;
}

export const subject: Subject = {
  title: 'Dip film',
  about:
    'Wet film from withdrawal speed, and drainage: why speed, viscosity and temperature move the film. The trade works on the edge of the formula with a liquid that thins under shear, so the figure is a guide; a line is set by panels (dip film fitted to panels).',
  symbols: {
    h: 'wet film, µm (m in the formulas)',
    U: 'withdrawal speed, m/min (m/s in the formulas)',
    mu: 'viscosity, mPa s (Pa s)',
    gamma: 'surface tension, mN/m (N/m)',
    rho: 'density, g/mL (kg/m3)',
    g: '9.80665 m/s2',
    l_c: 'capillary length, mm (m)',
    Ca: 'capillary number, no unit',
    z: 'distance below the upper edge, m',
    t: 'draining time, s',
  },
  source:
    'L. Landau, B. Levich 1942; B. Derjaguin 1943: form with 0.94 and Ca far below 1 read in a public text; 0.944 and the limits of Ca from memory. Drainage: H. Jeffreys 1930, from memory.',
  uncertainty:
    'A few percent for Newtonian liquids below Ca 1e-3; above it tens of percent, marked uncertain.',
  functions: {
    capillaryNumber: {
      formula: 'Ca = mu U/gamma',
      range:
        'U over 0 to 100 m/min, 0.1 to 10 000 mPa s, 5 to 100 mN/m, 0.6 to 2 g/mL; nothing outside.',
    },
    capillaryLengthMm: {
      formula: 'l_c = sqrt(gamma/(rho g))',
      range: 'As above; nothing outside.',
    },
    dipFilm: {
      formula: 'h = 0.944 l_c Ca^(2/3)',
      range: 'Uncertain above Ca 1e-3 or rho U h/mu over 1; nothing above Ca 0.1.',
    },
    drainedFilmUm: {
      formula: 'h = sqrt(mu z/(rho g t))',
      range: 'z over 0 to 10 m, t over 0 to 1e5 s; nothing outside. Without drying.',
    },
    meanDrainedFilmUm: { formula: '2/3 of h at z', range: 'As above; nothing outside.' },
  },
};
