/**
 * Solids in a liquid, mixed without a change of volume: density of the whole, and the share back.
 *
 * 1/rho_m = w/rho_s + (1 - w)/rho_l. Densities in one unit, whichever; shares from 0 to 1. The way
 * back fails where solids and liquid weigh nearly the same: with 1150 in 998 kg/m3 one kg/m3 is
 * 0.7 % solids, so it is refused within 5 %. Outside its range a function answers null, never NaN.
 */
import type { Subject } from './subject.ts';

/** Solids and liquid must differ by more than this share of the liquid for density to tell them apart. */
export const tellApartShareMin = 0.05;

const dense = (asGiven: number): boolean => asGiven > 0 && asGiven < 1e5;

/** rho_m = 1 / (w/rho_s + (1 - w)/rho_l), in the unit given. Shares 0 to 1, densities over 0; null outside. */
export function mixedDensityAsGiven(
  massShare: number,
  solidsDensityAsGiven: number,
  liquidDensityAsGiven: number,
): number | null {
  if (!(massShare >= 0 && massShare <= 1)) return null;
  if (!dense(solidsDensityAsGiven) || !dense(liquidDensityAsGiven)) return null;
  return 1 / (massShare / solidsDensityAsGiven + (1 - massShare) / liquidDensityAsGiven);
}

/**
 * w = (1/rho_m - 1/rho_l) / (1/rho_s - 1/rho_l), share by mass. Null where the mixture is not
 * between solids and liquid, and where these lie within 5 % of each other.
 */
export function massShareOfSolids(
  mixtureDensityAsGiven: number,
  solidsDensityAsGiven: number,
  liquidDensityAsGiven: number,
): number | null {
  if (![mixtureDensityAsGiven, solidsDensityAsGiven, liquidDensityAsGiven].every(dense))
    return null;
  if (!tellApart(solidsDensityAsGiven, liquidDensityAsGiven)) return null;
  const share =
    (1 / mixtureDensityAsGiven - 1 / liquidDensityAsGiven) /
    (1 / solidsDensityAsGiven - 1 / liquidDensityAsGiven);
  // The rounding of a mixture of nothing but one of the two is no reason to refuse.
  if (!(share >= -1e-12 && share <= 1 + 1e-12)) return null;
  return Math.min(1, Math.max(0, share));
}

/** phi = w rho_m / rho_s, share by volume, of a share by mass 0 to 1; null outside. */
export function volumeShareOfSolids(
  massShare: number,
  solidsDensityAsGiven: number,
  liquidDensityAsGiven: number,
): number | null {
  const mixed = mixedDensityAsGiven(massShare, solidsDensityAsGiven, liquidDensityAsGiven);
  return mixed === null ? null : (massShare * mixed) / solidsDensityAsGiven;
}

/** Whether density can tell solids from liquid at all. */
export const tellApart = (solidsDensityAsGiven: number, liquidDensityAsGiven: number): boolean =>
  Math.abs(solidsDensityAsGiven / liquidDensityAsGiven - 1) > tellApartShareMin;

export const subject: Subject = {
  title: 'Ideal mixing of solids and liquid',
  about:
    'Density of a dispersion from its solids, and back. It knows nothing of air: one percent of air by volume reads as several percent of solids.',
  symbols: {
    w: 'solids by mass, share',
    phi: 'solids by volume, share',
    rho_m: 'density of the mixture, any one unit',
    rho_s: 'density of the solids, same unit',
    rho_l: 'density of the liquid, same unit',
  },
  source: 'Follows from volumes adding up; the usual slurry formula.',
  uncertainty:
    'Exact for volumes that add up. dw = -1/rho_m^2 / (1/rho_s - 1/rho_l) times an error of rho_m.',
  functions: {
    mixedDensityAsGiven: {
      formula: 'rho_m = 1 / (w/rho_s + (1 - w)/rho_l)',
      range: 'w 0 to 1, densities over 0; nothing outside.',
    },
    massShareOfSolids: {
      formula: 'w = (1/rho_m - 1/rho_l) / (1/rho_s - 1/rho_l)',
      range: 'rho_m between rho_s and rho_l, which differ by more than 5 %; nothing outside.',
    },
    volumeShareOfSolids: {
      formula: 'phi = w rho_m / rho_s',
      range: 'w 0 to 1, densities over 0; nothing outside.',
    },
    tellApart: {
      formula: 'abs(rho_s/rho_l - 1) > 0.05',
      range: 'densities over 0. The 5 % are engineering judgement.',
    },
  },
};
