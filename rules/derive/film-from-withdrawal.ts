/**
 * The film a dip leaves, from how fast the part is drawn out of the tank.
 *
 * By a law fitted to panels of this tank, where somebody drew them; else by that of a Newtonian
 * liquid, at whose edge the trade works, and uncertain there.
 */
import { z } from 'zod/mini';
import { quantitySetting, quantityText } from '../kinds/settings.ts';
import { type DipLiquid, dipFilm } from '../process/dip-film.ts';
import { type DipFit, type DipFitAnswer, filmAtSpeed, fitDipFilm } from '../process/dip-fit.ts';
import { quality } from '../signal/quality.ts';
import type { SettledKind } from './derived-kind.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

type FilmSettings =
  | { readonly by: 'panels'; readonly fit: DipFit }
  | { readonly by: 'liquid'; readonly liquid: DipLiquid };

const umPerMm = 1_000;
const sPerMin = 60;
const mNPerMOfNPerMm = 1e6;
const kgPerM3PerGPerMl = 1_000;
const liquidSettings = ['viscosity', 'surface_tension', 'density'] as const;

const whyNot: Readonly<Record<(DipFitAnswer & { kind: 'refused' })['why'], string>> = {
  'too-few-panels': 'fewer than four panels say nothing of how the film grows with speed',
  'out-of-range': 'a speed or a film is none a panel can have',
  'speeds-too-alike': 'the panels were drawn at speeds too much alike',
  'not-a-dip-film': 'the films do not grow with speed as a dipped film does',
};

function compile(read: DerivedSettingsReader): FilmSettings {
  if (!read.has('panels')) return { by: 'liquid', liquid: liquidOf(read) };
  const panels = read.pairs('panels', 'm/s', 'mm') ?? [];
  const answer = fitDipFilm(
    panels.map(([mPerS, mm]) => ({
      withdrawalMPerMin: mPerS * sPerMin,
      filmUm: mm * umPerMm,
    })),
  );
  if (answer.kind === 'fitted') return { by: 'panels', fit: answer.fit };
  read.report({
    path: ['panels'],
    problem: whyNot[answer.why],
    fix: 'draw four panels or more, the fastest at least half as fast again as the slowest, each as ["1 m/min", "22 um"]',
  });
  return { by: 'liquid', liquid: { viscosityMPaS: 1, surfaceTensionMNPerM: 30, densityGPerMl: 1 } };
}

function liquidOf(read: DerivedSettingsReader): DipLiquid {
  const missing = liquidSettings.filter((key) => !read.has(key));
  if (missing.length > 0)
    read.report({
      path: [],
      problem: 'nothing says how the film grows with speed',
      fix: `give panels, or all of ${liquidSettings.join(', ')}`,
    });
  const liquid = {
    viscosityMPaS: read.has('viscosity') ? read.positive('viscosity', 'mPa.s') : 1,
    surfaceTensionMNPerM: read.has('surface_tension')
      ? read.positive('surface_tension', 'N/mm') * mNPerMOfNPerMm
      : 30,
    densityGPerMl: read.has('density') ? read.positive('density', 'kg/m3') / kgPerM3PerGPerMl : 1,
  };
  return liquid;
}

export const filmFromWithdrawal: SettledKind<FilmSettings> = {
  name: 'film-from-withdrawal',
  summary:
    'Film that the withdrawal speed leaves: by a law h = k U^n fitted to panels of this tank, uncertain beyond their speeds; else the wet film of Landau, Levich and Derjaguin, uncertain where the trade works.',
  inputs: [
    { name: 'withdrawal', unit: 'm/s', meaning: 'speed at which parts are drawn from the tank' },
  ],
  unit: 'mm',
  saidIn: 'um',
  digits: 4,
  source: 'Landau and Levich 1942, Derjaguin 1943; least squares in logarithms',
  range: 'over 0 to 100 m/min; without panels a capillary number up to 0.1',
  written: z.strictObject({
    panels: z.optional(
      z.array(z.tuple([quantityText, quantityText])).check(
        z.minLength(1),
        z.maxLength(100),
        z.meta({
          description:
            'Panels drawn from this tank, each [withdrawal speed, film], all dry or all wet.',
        }),
      ),
    ),
    viscosity: z.optional(
      quantitySetting('Viscosity at the shear of the withdrawal, where there are no panels.'),
    ),
    surface_tension: z.optional(quantitySetting('Surface tension, as "30 mN/m".')),
    density: z.optional(quantitySetting('Density of the wet material.')),
  }),
  compile,
  settled(settings, now) {
    const mPerMin = now.inputs[0]! * sPerMin;
    if (settings.by === 'panels') {
      const found = filmAtSpeed(settings.fit, mPerMin);
      if (found?.uncertain === true) now.doubt = quality.estimated;
      return found === null ? null : found.filmUm / umPerMm;
    }
    const found = dipFilm(settings.liquid, mPerMin);
    if (found?.uncertain === true) now.doubt = quality.estimated;
    return found === null ? null : found.wetUm / umPerMm;
  },
};
