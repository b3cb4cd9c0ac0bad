/**
 * Where dried residue may light itself, and the warnings before it: numbers of the rules of a hot
 * surface.
 *
 * 112 °C is a figure without a thickness, a time or a test behind it. It is taken to hold for a
 * layer of 10 mm; what lies thicker lowers it (process/residue-ignition.ts), by the least favourable
 * activation energy, and thinner residue never raises it. So it may be lowered by anybody and
 * raised only on a basket test of this very residue.
 */
import { loweredLimitC, provenThicknessMm } from '../process/residue-ignition.ts';
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import { type Basis, type Given, judgement, type TemplateNumber } from './station.ts';

const ignitionC = 112;
export const earlyK = 20;
export const actK = 10;

const celsius = (value: number): string => `${Number(value.toFixed(3))} Cel`;

function canonicalOf(written: string, canonical: string): number | null {
  const read = parseQuantity(written);
  if (!read.ok || read.value.unit.canonical !== canonical) return null;
  return toCanonical(read.value.value, read.value.unit);
}

export const degreesC = (written: string): number | null => canonicalOf(written, 'Cel');

/** Cut off downward to a tenth where the residue is thick; a thickness nobody can read lowers nothing. */
function forThickness(limitC: number, given: Given): number {
  const thicknessMm = canonicalOf(given.residueThickness ?? '', 'mm');
  const lowered =
    thicknessMm === null ? null : loweredLimitC(limitC, provenThicknessMm, thicknessMm);
  return lowered?.lowered === true ? Math.floor(lowered.limitC * 10) / 10 : limitC;
}

const limitBasis: Basis = {
  mark: 'CP',
  note: 'where dried residue may light itself; no thickness, no time and no test method stand behind it, so it is taken for 10 mm, and less for thicker residue (Frank-Kamenetskii, activation energy 70 kJ/mol)',
  source: null,
};

const needsLimit =
  'the ignition limit that the site’s hazard review sets for this residue and its thickness (rule at-limit: high)';

const defaultC = (given: Given): number => forThickness(ignitionC, given);

export const atLimitNumber: TemplateNumber = {
  setting: 'high',
  value: celsius(ignitionC),
  basis: limitBasis,
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  ceiling: (given) => celsius(defaultC(given)),
  fromSheet: (sheet, given) =>
    sheet.residueLimitC === null
      ? null
      : celsius(forThickness(Math.min(ignitionC, sheet.residueLimitC), given)),
  follows: (given) => ({ written: celsius(defaultC(given)), confirmed: false }),
};

/** So many kelvin below the limit, wherever the limit is. */
export const below = (marginK: number): TemplateNumber => ({
  setting: 'high',
  value: celsius(ignitionC - marginK),
  basis: judgement(`${marginK} K below the limit`),
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  ceiling: (given) => celsius(defaultC(given) - marginK),
  follows: (given) => {
    const limitC = degreesC(given.number('at-limit', 'high') ?? '');
    if (limitC === null) return null;
    return { written: celsius(limitC - marginK), confirmed: given.confirmed('at-limit', 'high') };
  },
});

/** The limit itself, in another rule. */
export const theLimit: TemplateNumber = {
  setting: 'high',
  value: celsius(ignitionC),
  basis: limitBasis,
  confirm: 'SITE',
  needs: needsLimit,
  raisedBy: 'basket-test',
  ceiling: (given) => celsius(defaultC(given)),
  follows: (given) => ({
    written: given.number('at-limit', 'high') ?? celsius(ignitionC),
    confirmed: given.confirmed('at-limit', 'high'),
  }),
};

const noMargin = 'No temperature margin here. Cleaning is the only barrier.';

/** Why a rule means nothing where the place itself runs past its limit. */
export const moot =
  (rule: string) =>
  (given: Given): string | null => {
    const placeC = degreesC(given.processTemperature ?? '');
    const limitC = degreesC(given.number('at-limit', 'high') ?? '');
    const ownC = degreesC(given.number(rule, 'high') ?? '');
    if (placeC === null || limitC === null || ownC === null) return null;
    if (placeC >= limitC) return noMargin;
    if (placeC < ownC) return null;
    return `The place itself runs at ${given.processTemperature}, past this warning; the ones nearer the limit stand.`;
  };

/** Nothing is foretold below this: an oven that heats up in the morning would be foretold to burn. */
export const foretoldFromC = 80;

export const approachingMoot = (given: Given): string | null => {
  const limitC = degreesC(given.number('approaching', 'high') ?? '');
  if (limitC !== null && limitC <= foretoldFromC)
    return `The limit lies at ${celsius(limitC)}, which a reading passes as an oven heats up; the warnings before it stand.`;
  return moot('approaching')(given);
};
