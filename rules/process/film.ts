/**
 * Film thickness: wet to dry, solids by mass to solids by volume, coverage, dilution, weight gain.
 *
 * Wet and dry are joined by the *volume* solids; a data sheet that gives solids by mass gives a
 * smaller film than the same figure by volume would. Thickness per coat and in total are two
 * figures. Everything is linear; outside its range a function answers null, never NaN.
 */
import { volumeShareOfSolids } from './ideal-mixing.ts';
import type { Subject } from './subject.ts';

export const filmUmMax = 10_000;
const solid = (pct: number): boolean => pct > 0 && pct <= 100;
const film = (um: number): boolean => um >= 0 && um <= filmUmMax;

/** WFT = 100 DFT/VS, µm. DFT 0 to 10 000 µm, VS over 0 to 100 %; null outside. */
export function wetFromDryUm(dryUm: number, volumeSolidsPct: number): number | null {
  if (!film(dryUm) || !solid(volumeSolidsPct)) return null;
  const wetUm = (100 * dryUm) / volumeSolidsPct;
  return Number.isFinite(wetUm) ? wetUm : null;
}

/** DFT = WFT VS/100, µm. WFT 0 to 10 000 µm, VS over 0 to 100 %; null outside. */
export function dryFromWetUm(wetUm: number, volumeSolidsPct: number): number | null {
  if (!film(wetUm) || !solid(volumeSolidsPct)) return null;
  return (wetUm * volumeSolidsPct) / 100;
}

/**
 * Volume solids, %, of a dispersion in water: VS = 100 phi, phi = (w/rho_s) rho_m. Mass solids 0 to
 * 100 %, densities in g/mL; the density of the wet material follows from both. Null outside.
 */
export function volumeSolidsPct(
  massSolidsPct: number,
  solidsDensityGPerMl: number,
  liquidDensityGPerMl = 0.998,
): number | null {
  const share = volumeShareOfSolids(massSolidsPct / 100, solidsDensityGPerMl, liquidDensityGPerMl);
  return share === null ? null : share * 100;
}

/** VS' = VS/(1 + R) after R parts by volume of water to one part. VS over 0 to 100 %, R 0 to 100; null outside. */
export function dilutedVolumeSolidsPct(
  volumeSolidsPct: number,
  waterPartsPerPart: number,
): number | null {
  if (!solid(volumeSolidsPct)) return null;
  if (!(waterPartsPerPart >= 0 && waterPartsPerPart <= 100)) return null;
  return volumeSolidsPct / (1 + waterPartsPerPart);
}

/** m2 that one litre covers at a dry film, without loss: 10 VS/DFT. DFT over 0 to 10 000 µm, VS over 0 to 100 %; null outside. */
export function coverageM2PerL(dryUm: number, volumeSolidsPct: number): number | null {
  if (!film(dryUm) || !solid(volumeSolidsPct)) return null;
  const area = (10 * volumeSolidsPct) / dryUm;
  return Number.isFinite(area) ? area : null;
}

/**
 * Litres for an area, L: A DFT/(10 VS TE/100). TE is the share of what leaves the gun or tank that
 * ends on the part, %, from a mass balance of this line; there is no figure to take for it. Area 0
 * to 1e6 m2, TE over 0 to 100 %; null outside.
 */
export function litresForArea(
  areaM2: number,
  dryUm: number,
  volumeSolidsPct: number,
  transferPct: number,
): number | null {
  if (!(areaM2 >= 0 && areaM2 <= 1e6) || !film(dryUm)) return null;
  if (!solid(volumeSolidsPct) || !solid(transferPct)) return null;
  const litres = (areaM2 * dryUm) / (10 * volumeSolidsPct * (transferPct / 100));
  return Number.isFinite(litres) ? litres : null;
}

/**
 * Dry film on the parts over the solids that left the gun or tank, %: TE = 100 A DFT/(10 VS L). Over
 * 100 % one of the figures is wrong, and it is refused. L over 0 to 1e6; null outside.
 */
export function transferEfficiencyPct(
  areaM2: number,
  dryUm: number,
  volumeSolidsPct: number,
  usedL: number,
): number | null {
  if (!(areaM2 >= 0 && areaM2 <= 1e6) || !film(dryUm) || !solid(volumeSolidsPct)) return null;
  if (!(usedL > 0 && usedL <= 1e6)) return null;
  const pct = (100 * (areaM2 * dryUm)) / (10 * volumeSolidsPct * usedL);
  return pct <= 100 ? pct : null;
}

/**
 * Mean dry film from weight gain, µm: DFT = dm/(A rho_s), with dm in g, A in cm2 and the density of
 * the dry film in g/cm3 (1e4 µm a cm). Dried to the data sheet before weighing. Gain 0 to 1e5 g,
 * area over 0 to 1e6 cm2, density 0.7 to 6 g/cm3; null outside and over 10 000 µm.
 */
export function dryFromWeightGainUm(
  gainG: number,
  areaCm2: number,
  dryDensityGPerCm3: number,
): number | null {
  if (!(gainG >= 0 && gainG <= 1e5) || !(areaCm2 > 0 && areaCm2 <= 1e6)) return null;
  if (!(dryDensityGPerCm3 >= 0.7 && dryDensityGPerCm3 <= 6)) return null;
  const dryUm = (gainG / (areaCm2 * dryDensityGPerCm3)) * 1e4;
  return film(dryUm) ? dryUm : null;
}

export type FilmVerdict = 'thin' | 'within' | 'thick-ask' | 'too-thick';

/** From here on a single coat may split within itself (common practice, no published source). */
export const tooThickUm = 50;

/**
 * Where a dry film lies against the data sheet's least and most. Between most and 50 µm it is "thick:
 * ask", a question for the engineer and no verdict; over 50 µm too thick. A `most` above 50 µm moves
 * that end with it. Null unless 0 <= least < most and all finite.
 */
export function filmVerdict(dryUm: number, leastUm: number, mostUm: number): FilmVerdict | null {
  if (!film(dryUm) || !film(leastUm) || !film(mostUm) || leastUm >= mostUm) return null;
  if (dryUm < leastUm) return 'thin';
  if (dryUm <= mostUm) return 'within';
  return dryUm <= Math.max(tooThickUm, mostUm) ? 'thick-ask' : 'too-thick';
}

export const subject: Subject = {
  title: 'Film thickness',
  about:
    'Wet film to dry film and what a litre covers. By volume solids, never mass solids. It says nothing of edges and small radii, where no average holds.',
  symbols: {
    DFT: 'dry film thickness, µm',
    WFT: 'wet film thickness, µm',
    VS: 'solids by volume, %',
    w: 'solids by mass, share',
    rho_s: 'density of the dry film, g/mL',
    rho_m: 'density of the wet material, g/mL',
    R: 'water added, parts by volume to one part',
    A: 'area, m2 (cm2 for weight gain)',
    L: 'material used, L',
    TE: 'transfer efficiency, %',
    dm: 'weight gain, g',
  },
  source:
    'Usual coating arithmetic, printed alike by several makers of film gauges and paints. Limits of a film: the material data sheet.',
  uncertainty: 'Exact; as good as the volume solids and the reading put in.',
  functions: {
    wetFromDryUm: {
      formula: 'WFT = 100 DFT/VS',
      range: 'DFT 0 to 10 000 µm, VS over 0 to 100 %; nothing outside.',
    },
    dryFromWetUm: {
      formula: 'DFT = WFT VS/100',
      range: 'WFT 0 to 10 000 µm, VS over 0 to 100 %; nothing outside.',
    },
    volumeSolidsPct: {
      formula: 'VS = 100 (w/rho_s) rho_m',
      range: 'w 0 to 1, densities over 0; nothing outside.',
    },
    dilutedVolumeSolidsPct: {
      formula: "VS' = VS/(1 + R)",
      range: 'VS over 0 to 100 %, R 0 to 100; nothing outside.',
    },
    coverageM2PerL: {
      formula: 'm2/L = 10 VS/DFT',
      range: 'DFT over 0 to 10 000 µm, VS over 0 to 100 %; nothing outside.',
    },
    litresForArea: {
      formula: 'L = A DFT/(10 VS TE/100)',
      range: 'A 0 to 1e6 m2, VS and TE over 0 to 100 %; nothing outside.',
    },
    transferEfficiencyPct: {
      formula: 'TE = 100 A DFT/(10 VS L)',
      range: 'As above, L over 0 to 1e6; nothing outside and over 100 %.',
    },
    dryFromWeightGainUm: {
      formula: 'DFT = 1e4 dm/(A rho_s)',
      range: 'dm 0 to 1e5 g, A over 0 to 1e6 cm2, rho_s 0.7 to 6 g/cm3; nothing outside.',
    },
    filmVerdict: {
      formula: 'thin below least; within to most; "thick, ask" to 50 µm; too thick over it',
      range: '0 <= least < most; nothing outside.',
      source: '50 µm: common practice, no published source; least and most from the data sheet.',
    },
  },
};
