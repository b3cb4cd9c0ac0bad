/**
 * Mixing a new container, by its size: a drum is cranked by hand and then stirred for eight hours, a
 * pail takes half an hour of a low-shear mixer. Common practice, no published source; the data sheet
 * wins. A size between two of them takes the longer time; beyond a drum nobody knows.
 */
import type { Sheet } from '../material/read-sheet.ts';
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import { commonPractice, type Given, judgement, type TemplateNumber } from './station.ts';

/** Below this the shaft counts as standing: hand-cranking and a coasting blade are slower. */
export const standing = '5 /min';
export const standingBasis = judgement('slower than this the shaft stands');

export interface ContainerSize {
  readonly upToL: number;
  readonly mixFor: string;
  /** Field of the material sheet. */
  readonly field: string;
  readonly fromSheet: (sheet: Sheet) => number | null;
  /** As a step says it, before “for 8 h”. */
  readonly how: string;
}

const drum: ContainerSize = {
  upToL: 210,
  mixFor: '8 h',
  field: 'mix_drum',
  fromSheet: (sheet) => sheet.mixDrumMs,
  how: 'crank it by hand, its drive locked out, until its bottom is loose, then run its agitator',
};

/** Half a pint, a gallon, five gallons, a drum of 55 gallons; each with a little to spare. */
export const containerSizes: readonly ContainerSize[] = [
  {
    upToL: 0.25,
    mixFor: '5 min',
    field: 'mix_half_pint',
    fromSheet: (sheet) => sheet.mixHalfPintMs,
    how: 'stir it by hand, then mix it',
  },
  {
    upToL: 4,
    mixFor: '15 min',
    field: 'mix_gallon',
    fromSheet: (sheet) => sheet.mixGallonMs,
    how: 'mix it',
  },
  {
    upToL: 20,
    mixFor: '30 min',
    field: 'mix_five_gallon',
    fromSheet: (sheet) => sheet.mixFiveGallonMs,
    how: 'mix it with a low-shear air mixer',
  },
  drum,
];

/** A drum where nobody said; null beyond one. */
export function sizeOf({ containerSize }: Pick<Given, 'containerSize'>): ContainerSize | null {
  if (containerSize === null) return drum;
  const read = parseQuantity(containerSize);
  const litres = read.ok ? toCanonical(read.value.value, read.value.unit) : Number.NaN;
  return containerSizes.find(({ upToL }) => litres <= upToL) ?? null;
}

export const isDrum = (given: Given): boolean => sizeOf(given) === drum;

/** Minutes as they are written. */
export const minutes = (ms: number): string => `${Number((ms / 60_000).toFixed(3))} min`;

/** How long a new container is mixed; by the sheet, else by its size. */
export const mixTime: TemplateNumber = {
  setting: 'not_before',
  value: drum.mixFor,
  basis: commonPractice(
    'a drum 8 h, up to 5 gallons (20 L) 30 min, up to a gallon (4 L) 15 min, up to half a pint (0.25 L) 5 min',
  ),
  confirm: 'DS',
  needs:
    'how long a new container is mixed before it is drawn from (mix_drum, mix_five_gallon, mix_gallon or mix_half_pint of the material sheet)',
  fromSheet: (sheet, given) => {
    const ms = sizeOf(given)?.fromSheet(sheet) ?? null;
    return ms === null ? null : minutes(ms);
  },
  follows: (given) => {
    const size = sizeOf(given);
    return size === null ? null : { written: size.mixFor, confirmed: false };
  },
};

/** Slower than this nothing is mixed. */
export const mixingSpeed: TemplateNumber = {
  setting: 'counting_low',
  value: '20 /min',
  basis: commonPractice('the large built-in drum agitator, at the shaft'),
  follows: (given) =>
    isDrum(given)
      ? { written: given.number('agitator-slow', 'low') ?? '20 /min', confirmed: true }
      : { written: standing, confirmed: true },
};

/** How, as it follows “then”, and for how long: “crank it by hand …, then run its agitator”, “8 h”. */
export function mixingFacts(given: Given): { readonly mixing: string; readonly stir: string } {
  const size = sizeOf(given);
  return {
    mixing: size === null ? 'mix it' : size.how,
    stir: given.number('drawn-unmixed', 'not_before') ?? drum.mixFor,
  };
}

/** What holds for the built-in agitator of a drum says nothing of another mixer. */
export const onlyBuiltIn =
  (rule: string, setting: string) =>
  (given: Given): string | null =>
    isDrum(given) || given.own(rule, setting) !== null
      ? null
      : `20 to 30 turns a minute belong to the large agitator built into a drum; for this mixer give a speed of its own (rule ${rule}: ${setting}).`;

/** The table of mixing times ends at a drum. */
export const beyondADrum = (given: Given): string | null =>
  sizeOf(given) !== null || given.own('drawn-unmixed', 'not_before') !== null
    ? null
    : `No mixing time is known beyond a drum of ${drum.upToL} L; give it (rule drawn-unmixed: not_before).`;
