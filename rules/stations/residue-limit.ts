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
import {
  type Basis,
  type BasketReport,
  type Given,
  judgement,
  type TemplateNumber,
} from './station.ts';

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

/** Downward, to a tenth. */
const cutOff = (c: number): number => Math.floor(c * 10) / 10;

/** null where nobody gave one, or none that can be read. */
const thicknessOf = (given: Given): number | null =>
  canonicalOf(given.residueThickness ?? '', 'mm');

/** Lowered where the residue is thick, and to what a test of it found where that is lower still. */
function forThickness(limitC: number, given: Given): number {
  const thicknessMm = thicknessOf(given);
  const lowered =
    thicknessMm === null ? null : loweredLimitC(limitC, provenThicknessMm, thicknessMm);
  const thick = lowered?.lowered === true ? cutOff(lowered.limitC) : limitC;
  const tested = testedC(given);
  return tested === null ? thick : Math.min(thick, tested);
}

/** By the baskets of this residue; of a thickness nobody gave by the one the limit is taken for. */
function testedC(given: Given): number | null {
  const lowC = given.basket?.lowC(thicknessOf(given) ?? provenThicknessMm) ?? null;
  return lowC === null ? null : cutOff(lowC);
}

type Followed = NonNullable<ReturnType<NonNullable<TemplateNumber['follows']>>>;

const ofTest = ({ report, signedBy }: BasketReport, note: string): Basis => ({
  mark: 'SITE',
  note: `basket test ${report}, signed by ${signedBy}: ${note}`,
  source: 'EN 15188',
});

/** What follows of itself, with the test beside it where the test is what lowers it. */
function byDefault(given: Given): Followed {
  const limitC = defaultC(given);
  const written = celsius(limitC);
  const { basket } = given;
  if (basket === null || testedC(given) !== limitC || limitC >= ignitionC)
    return { written, confirmed: false };
  const basis = ofTest(basket, `lowers it to ${written}`);
  return { written, confirmed: thicknessOf(given) !== null, basis };
}

/** The limit as it stands, of whatever it comes from. */
function asItStands(given: Given): Followed {
  const written = given.number('at-limit', 'high') ?? celsius(ignitionC);
  const { basis, written: ofItself } = byDefault(given);
  return {
    written,
    confirmed: given.confirmed('at-limit', 'high'),
    ...(basis === undefined || ofItself !== written ? {} : { basis }),
  };
}

/** A layer of residue that decomposes by itself no basket speaks for. */
function provenBy(given: Given, marginK: number): { upTo: string } | { never: string } {
  if (given.sheet?.residueKind !== 'oxidising')
    return {
      never:
        'and a basket test answers oxidation alone: it raises nothing until the material sheet says residue_kind: oxidising',
    };
  const provenC = given.basket?.provenC(thicknessOf(given) ?? provenThicknessMm) ?? null;
  return provenC === null
    ? { never: 'and the basket test of this station gives no baskets that could prove it' }
    : { upTo: celsius(cutOff(provenC) - marginK) };
}

const raisedOn = (given: Given): Basis | null => {
  const proven = provenBy(given, 0);
  return given.basket === null || 'never' in proven
    ? null
    : ofTest(given.basket, `set in the site file; it proves ${proven.upTo} for this thickness`);
};

/** A number that only such a test raises. */
const raised = (marginK: number) =>
  ({
    raisedBy: 'basket-test',
    ceiling: (given: Given) => celsius(defaultC(given) - marginK),
    proven: (given: Given) => provenBy(given, marginK),
    ownBasis: raisedOn,
  }) as const;

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
  ...raised(0),
  fromSheet: (sheet, given) => {
    if (sheet.residueLimitC === null) return null;
    const limitC = forThickness(Math.min(ignitionC, sheet.residueLimitC), given);
    // The test says no more than the sheet where it says less; where it decides, it is named.
    return testedC(given) === limitC ? null : celsius(limitC);
  },
  follows: byDefault,
};

/** So many kelvin below the limit, wherever the limit is. */
export const below = (marginK: number): TemplateNumber => ({
  setting: 'high',
  value: celsius(ignitionC - marginK),
  basis: judgement(`${marginK} K below the limit`),
  confirm: 'SITE',
  needs: needsLimit,
  ...raised(marginK),
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
  ...raised(0),
  follows: asItStands,
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
