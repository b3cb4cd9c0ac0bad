/**
 * Mass solids of a water-carried dispersion from its density and temperature, anchored per lot.
 *
 * Density alone knows nothing: the density of the solids comes from one oven test of the same lot
 * (ISO 3251 or ASTM D2369) with a density taken of the same sample. The answer carries its standard
 * uncertainty from the density reading, the temperature and the anchor.
 *
 * Two cautions. One percent by volume of entrained air makes 35 % solids at 1.10 g/mL read 3.4 %
 * too low, and a foamy tank would then be given adhesive. And a denser tank has not therefore lost
 * water: the level must agree (water-loss.ts).
 *
 * A denied answer says why; nothing is ever NaN.
 */
import { massShareOfSolids, mixedDensityAsGiven, tellApart } from './ideal-mixing.ts';
import type { Subject } from './subject.ts';
import { waterDensityKgPerM3 } from './water-density.ts';

/** One lot's oven test and the density of the same sample. Uncertainties are standard ones (1 sigma). */
export interface SolidsAnchor {
  /** Mass solids by oven, %, over 1 and below 80. */
  readonly ovenSolidsPct: number;
  readonly ovenSolidsUPct: number;
  /** Density of the same sample at `temperatureC`, g/mL. */
  readonly densityGPerMl: number;
  readonly densityUGPerMl: number;
  /** 5 to 45 °C. */
  readonly temperatureC: number;
}

export interface DensityReading {
  /** True density at the reading's temperature, 0.9 to 1.6 g/mL: a hydrometer's is corrected first. */
  readonly densityGPerMl: number;
  readonly densityUGPerMl: number;
  /** 5 to 45 °C. */
  readonly temperatureC: number;
  readonly temperatureUK: number;
}

export type SolidsRefusal =
  | 'anchor-out-of-range'
  | 'reading-out-of-range'
  /** Solids and water weigh nearly the same: density tells nothing. */
  | 'density-cannot-tell'
  /** Lighter than water or heavier than the solids. */
  | 'not-of-this-lot';

export type SolidsAnswer =
  | {
      readonly kind: 'solids';
      readonly solidsPct: number;
      /** Standard uncertainty, % of mass as the solids; twice it covers 95 %. */
      readonly uPct: number;
      readonly uFromDensityPct: number;
      /** Of the thermometer, and of the solids' expansion since the anchor's temperature. */
      readonly uFromTemperaturePct: number;
      readonly uFromAnchorPct: number;
    }
  | { readonly kind: 'refused'; readonly why: SolidsRefusal };

/**
 * Expansion of the solids by volume, per K: 1e-4 for filled and glassy films to 7e-4 for rubbers
 * (from memory), so 4e-4 with a standard uncertainty of 1.7e-4. Read five kelvin off the anchor's
 * temperature it is 0.2 % solids: anchor at the tank's temperature.
 */
export const solidsExpansionPerK = 4e-4;
export const solidsExpansionUPerK = 1.7e-4;

const coldestC = 5;
const warmestC = 45;

const waterGPerMl = (temperatureC: number): number | null => {
  if (!(temperatureC >= coldestC && temperatureC <= warmestC)) return null;
  return waterDensityKgPerM3(temperatureC)! / 1_000;
};

/**
 * rho_s = w0 / (1/rho_0 - (1 - w0)/rho_w(T0)), g/mL, from the anchor. Null outside the anchor's
 * ranges and where the result is not a solid of 0.7 to 6 g/mL.
 */
export function solidsDensityGPerMl(
  anchor: Pick<SolidsAnchor, 'ovenSolidsPct' | 'densityGPerMl' | 'temperatureC'>,
): number | null {
  const water = waterGPerMl(anchor.temperatureC);
  const share = anchor.ovenSolidsPct / 100;
  if (water === null || !(share > 0.01 && share < 0.8)) return null;
  if (!(anchor.densityGPerMl >= 0.9 && anchor.densityGPerMl <= 1.6)) return null;
  const density = share / (1 / anchor.densityGPerMl - (1 - share) / water);
  return density >= 0.7 && density <= 6 ? density : null;
}

/** rho_s(T) = rho_s(T0) / (1 + beta (T - T0)), g/mL. Both 5 to 45 °C, beta 0 to 2e-3 per K; null outside. */
export function solidsDensityAtGPerMl(
  solidsDensityGPerMl: number,
  fromC: number,
  toC: number,
  expansionPerK = solidsExpansionPerK,
): number | null {
  if (!(solidsDensityGPerMl >= 0.7 && solidsDensityGPerMl <= 6)) return null;
  if (!(expansionPerK >= 0 && expansionPerK <= 2e-3)) return null;
  if (waterGPerMl(fromC) === null || waterGPerMl(toC) === null) return null;
  return solidsDensityGPerMl / (1 + expansionPerK * (toC - fromC));
}

/**
 * w = (1/rho - 1/rho_w(T)) / (1/rho_s - 1/rho_w(T)), in %. rho 0.9 to 1.6 g/mL, T 5 to 45 °C; null
 * outside, where the density is not between water and solids, and where these are within 5 %. The
 * density of the solids is that at T (`solidsDensityAtGPerMl`).
 */
export function massSolidsPct(
  densityGPerMl: number,
  temperatureC: number,
  solidsDensityGPerMl: number,
): number | null {
  const water = waterGPerMl(temperatureC);
  if (water === null || !(densityGPerMl >= 0.9 && densityGPerMl <= 1.6)) return null;
  const share = massShareOfSolids(densityGPerMl, solidsDensityGPerMl, water);
  return share === null ? null : share * 100;
}

/** Density of the dispersion at these solids, g/mL: the curve a person can draw. Ranges as `massSolidsPct`. */
export function densityAtSolidsGPerMl(
  solidsPct: number,
  temperatureC: number,
  solidsDensityGPerMl: number,
): number | null {
  const water = waterGPerMl(temperatureC);
  return water === null ? null : mixedDensityAsGiven(solidsPct / 100, solidsDensityGPerMl, water);
}

const unsure = (u: number): boolean => u >= 0 && u < 100;

/**
 * Solids with their uncertainty, or why not. Each part of the uncertainty is half the change of the
 * answer when that one input moves from one standard uncertainty below to one above (GUM 5.1.3,
 * note 2); the parts add in quadrature, as if independent. A hydrometer used for both the anchor and
 * the reading shares its scale error with itself, so the true figure is then smaller.
 */
export function solidsFromDensity(anchor: SolidsAnchor, reading: DensityReading): SolidsAnswer {
  if (!unsure(anchor.ovenSolidsUPct) || !unsure(anchor.densityUGPerMl))
    return { kind: 'refused', why: 'anchor-out-of-range' };
  if (!unsure(reading.densityUGPerMl) || !unsure(reading.temperatureUK))
    return { kind: 'refused', why: 'reading-out-of-range' };
  const anchored = solidsDensityGPerMl(anchor);
  if (anchored === null) return { kind: 'refused', why: 'anchor-out-of-range' };
  const { densityGPerMl: rho, temperatureC: t } = reading;
  const water = waterGPerMl(t);
  const stretched = (perK: number): number => anchored / (1 + perK * (t - anchor.temperatureC));
  const rhoS = stretched(solidsExpansionPerK);
  if (water === null || !(rho >= 0.9 && rho <= 1.6))
    return { kind: 'refused', why: 'reading-out-of-range' };
  if (!tellApart(rhoS, water)) return { kind: 'refused', why: 'density-cannot-tell' };
  const solidsPct = massSolidsPct(rho, t, rhoS);
  if (solidsPct === null) return { kind: 'refused', why: 'not-of-this-lot' };

  // Beside the point itself the range does not matter, so the bare formula serves.
  const at = (gPerMl: number, waterAtGPerMl: number, solidsAtGPerMl: number): number =>
    (100 * (1 / gPerMl - 1 / waterAtGPerMl)) / (1 / solidsAtGPerMl - 1 / waterAtGPerMl);
  const uRho = reading.densityUGPerMl;
  const uFromDensityPct = half(at(rho + uRho, water, rhoS), at(rho - uRho, water, rhoS));
  const warmer = waterNear(t + reading.temperatureUK);
  const colder = waterNear(t - reading.temperatureUK);
  const more = stretched(solidsExpansionPerK + solidsExpansionUPerK);
  const less = stretched(solidsExpansionPerK - solidsExpansionUPerK);
  const uFromTemperaturePct = Math.hypot(
    half(at(rho, warmer, rhoS), at(rho, colder, rhoS)),
    half(at(rho, water, more), at(rho, water, less)),
  );
  const uFromAnchorPct = anchorU(anchor, (density) => at(rho, water, (density * rhoS) / anchored));
  if (uFromAnchorPct === null) return { kind: 'refused', why: 'anchor-out-of-range' };
  const uPct = Math.hypot(uFromDensityPct, uFromTemperaturePct, uFromAnchorPct);
  if (!Number.isFinite(uPct)) return { kind: 'refused', why: 'reading-out-of-range' };
  return { kind: 'solids', solidsPct, uPct, uFromDensityPct, uFromTemperaturePct, uFromAnchorPct };
}

const half = (above: number, below: number): number => Math.abs(above - below) / 2;

const waterNear = (temperatureC: number): number =>
  waterDensityKgPerM3(Math.min(100, Math.max(0, temperatureC)))! / 1_000;

/** Null where the anchor is so unsure that a solid within its uncertainty could not exist. */
function anchorU(anchor: SolidsAnchor, solidsPct: (rhoS: number) => number): number | null {
  const by = (change: Partial<SolidsAnchor>): number | null => {
    const rhoS = solidsDensityGPerMl({ ...anchor, ...change });
    return rhoS === null ? null : solidsPct(rhoS);
  };
  const { ovenSolidsPct: w, ovenSolidsUPct: uW, densityGPerMl: rho, densityUGPerMl: uRho } = anchor;
  const richer = by({ ovenSolidsPct: w + uW });
  const leaner = by({ ovenSolidsPct: w - uW });
  const denser = by({ densityGPerMl: rho + uRho });
  const lighter = by({ densityGPerMl: rho - uRho });
  if (richer === null || leaner === null || denser === null || lighter === null) return null;
  return Math.hypot(half(richer, leaner), half(denser, lighter));
}

/**
 * How far entrained air moves the solids that are read, % solids, never above 0 where the solids are
 * heavier than water. Air 0 to 30 % by volume, weightless; null outside and where the density that
 * would be read is below that of water, so that no solids would be read at all.
 */
export function solidsErrorFromAirPct(
  densityGPerMl: number,
  temperatureC: number,
  solidsDensityGPerMl: number,
  airVolumePct: number,
): number | null {
  if (!(airVolumePct >= 0 && airVolumePct <= 30)) return null;
  const free = massSolidsPct(densityGPerMl, temperatureC, solidsDensityGPerMl);
  const foamy = densityGPerMl * (1 - airVolumePct / 100);
  const read = massSolidsPct(foamy, temperatureC, solidsDensityGPerMl);
  return free === null || read === null ? null : read - free;
}

export const subject: Subject = {
  title: 'Solids from density',
  about:
    'Mass solids of the adhesive in a tank from a density reading, anchored to an oven test of the same lot. Only for a sample free of foam, stirred, and read at its temperature: 1 % of air by volume reads 3.4 % too low at 35 % solids and 1.10 g/mL. A higher density alone does not say that water was lost; the level must agree.',
  symbols: {
    w: 'solids by mass, %',
    w0: 'solids of the anchor by oven, %',
    rho: 'density read, g/mL',
    rho_0: 'density of the anchor, g/mL',
    rho_w: 'density of water at the temperature, g/mL',
    rho_s: 'density of the solids, g/mL',
    T: 'temperature, °C; T0 that of the anchor',
    beta: 'expansion of the solids by volume, 1/K',
    u: 'standard uncertainty, % solids',
    a: 'air by volume, %',
  },
  source:
    'Ideal mixing; anchor by ISO 3251 or ASTM D2369; uncertainty by JCGM 100 (GUM), 5.1.3 note 2.',
  uncertainty:
    'Told with each answer. At 35 % solids and 1.10 g/mL one 0.001 g/mL is 0.31 % solids, and 5 K not allowed for are 0.4 %.',
  functions: {
    solidsDensityGPerMl: {
      formula: 'rho_s = w0 / (1/rho_0 - (1 - w0)/rho_w(T0)), w0 as a share',
      range:
        'Solids over 1 and below 80 %, density 0.9 to 1.6 g/mL, 5 to 45 °C, result 0.7 to 6 g/mL; nothing outside.',
    },
    solidsDensityAtGPerMl: {
      formula: 'rho_s(T) = rho_s(T0) / (1 + beta (T - T0))',
      range: '0.7 to 6 g/mL, 5 to 45 °C, beta 0 to 2e-3 per K; nothing outside.',
      source: 'beta 4e-4 per K with u 1.7e-4, from memory, where nobody measured it.',
    },
    massSolidsPct: {
      formula: 'w = 100 (1/rho - 1/rho_w(T)) / (1/rho_s - 1/rho_w(T))',
      range:
        'rho 0.9 to 1.6 g/mL and between water and solids, 5 to 45 °C, solids more than 5 % from water in density; nothing outside.',
    },
    densityAtSolidsGPerMl: {
      formula: 'rho = 1 / (w/rho_s + (1 - w)/rho_w(T)), w as a share',
      range: 'w 0 to 100 %, 5 to 45 °C; nothing outside.',
    },
    solidsFromDensity: {
      formula:
        'w as above; u = root of the sum of squares of the parts of density, temperature and anchor',
      range: 'As above; a refusal says which input was out of range or that density cannot tell.',
    },
    solidsErrorFromAirPct: {
      formula: 'w(rho (1 - a/100)) - w(rho)',
      range: 'Air 0 to 30 % by volume; nothing outside and where no solids would be read.',
    },
  },
};
