/**
 * What a value is, as far as the evidence tells: what the payload says, what the name says, and the
 * range in which the value was seen; always with its reason, so that a person can agree or not.
 *
 * Always true: nothing is made of the number alone; a unit is named only where the evidence leaves
 * one. Where it leaves several there is a question with all of them, and no guess.
 */
import { unitOf } from '#rules/quantity/unit.ts';
import { suggestedCodes } from '#rules/quantity/unit-fix.ts';
import {
  type Quantity,
  quantities,
  temperature,
  temperaturesAt,
  type UnitRange,
  unitWords,
} from './quantities.ts';

export interface Seen {
  readonly topic: string;
  readonly pointer: string;
  readonly least: number;
  readonly most: number;
  readonly isBoolean: boolean;
  /** Every value was 0 or 1. */
  readonly isBinary: boolean;
  /** As the payload names it; null where it names none. */
  readonly saidUnit: string | null;
}

export interface Guess {
  readonly quantity: string;
  /** UCUM; null where the evidence leaves several. */
  readonly unit: string | null;
  /** What it leaves: the unit alone, or all that would fit. */
  readonly candidates: readonly string[];
  readonly why: string;
  readonly sure: 'said' | 'likely' | 'open';
}

/** Words of a topic and of a place in the payload, lower case, last ones last. */
export function wordsOf(text: string): string[] {
  return text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9%]+/)
    .filter((word) => word !== '');
}

/** null where nothing but the number would be left to go by. */
export function guessOf(seen: Seen): Guess | null {
  const said = guessSaid(seen);
  if (said !== null) return said;
  const own = wordsOf(`${seen.topic.slice(seen.topic.lastIndexOf('/') + 1)} ${seen.pointer}`);
  return guessUnitWord(seen, own) ?? guessScale(seen, own) ?? guessNamed(seen, own);
}

const likely = (quantity: string, unit: string, why: string): Guess => ({
  quantity,
  unit,
  candidates: [unit],
  why,
  sure: 'likely',
});

function guessSaid({ saidUnit }: Seen): Guess | null {
  if (saidUnit === null) return null;
  const codes = differing(unitOf(saidUnit) === null ? suggestedCodes(saidUnit) : [saidUnit]);
  const [first] = codes;
  const found = first === undefined ? null : unitOf(first);
  if (first === undefined || found === null) return null;
  const quantity = wordsOfDimension(found.dimension);
  const why = `the payload names the unit "${saidUnit}"`;
  return codes.length === 1
    ? { quantity, unit: first, candidates: codes, why, sure: 'said' }
    : { quantity, unit: null, candidates: codes, why, sure: 'open' };
}

/** Of codes that say the same by another name, the first. */
function differing(codes: readonly string[]): string[] {
  const meaning = (code: string): string => {
    const { dimension, times, over, zero } = unitOf(code)!;
    return `${dimension} ${times / over} ${zero}`;
  };
  return codes.filter(
    (code, i) => codes.findIndex((each) => meaning(each) === meaning(code)) === i,
  );
}

const wordsOfDimension = (dimension: string): string =>
  dimension.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

const fits = ({ least, most }: UnitRange, seen: Seen): boolean =>
  seen.least >= least && seen.most <= most;

function guessUnitWord(seen: Seen, own: readonly string[]): Guess | null {
  const last = own.at(-1) ?? '';
  const found = Object.hasOwn(unitWords, last) ? unitWords[last] : undefined;
  if (found === undefined || !fits(found[1], seen)) return null;
  return likely(found[0], found[1].unit, `the name ends in "${last}"`);
}

/** Single letters are a scale only behind a word that says temperature: `temperature_F`. */
const scales: Readonly<Record<string, string>> = { c: 'degc', f: 'degf' };
const scaled = ['temp', 'temps', 'temperature', 'deg', 'dewpoint', 'dew'];

function guessScale(seen: Seen, own: readonly string[]): Guess | null {
  const last = own.at(-1) ?? '';
  const scale = Object.hasOwn(scales, last) ? unitWords[scales[last]!] : undefined;
  const word = own.slice(0, -1).findLast((each) => scaled.includes(each));
  if (scale === undefined || word === undefined || !fits(scale[1], seen)) return null;
  return likely(temperature, scale[1].unit, `the name says "${word}" and ends in "${last}"`);
}

/** Both states must have been seen: a value that stands at 0 may be anything. */
function guessContact({ isBoolean, isBinary, least, most }: Seen): Guess | null {
  if (isBoolean) return likely('contact', '1', 'the payload says true or false');
  if (!isBinary || least === most) return null;
  return { ...likely('contact', '1', 'only 0 and 1 were seen'), sure: 'open' };
}

interface Named {
  readonly quantity: Quantity;
  readonly word: string;
}

/** Whose word stands last among these: the end of a name says the quantity, its beginning the place. */
function lastNamed(
  words: readonly string[],
  of: (quantity: Quantity) => readonly string[],
): Named | null {
  for (const word of words.toReversed())
    for (const quantity of quantities) if (of(quantity).includes(word)) return { quantity, word };
  return null;
}

/** The one quantity that the levels above name; null where they name several. */
function namedAbove(words: readonly string[]): Named | null {
  const named = words.flatMap((word) =>
    quantities.flatMap((quantity) => (quantity.words.includes(word) ? [{ quantity, word }] : [])),
  );
  const [first] = named;
  return first !== undefined && named.every(({ quantity }) => quantity === first.quantity)
    ? first
    : null;
}

/** `own`: the words of the last level and of the place in the payload. */
function guessNamed(seen: Seen, own: readonly string[]): Guess | null {
  const above = wordsOf(seen.topic.slice(0, Math.max(0, seen.topic.lastIndexOf('/'))));
  const named = lastNamed(own, ({ words }) => words) ?? namedAbove(above);
  if (named !== null) return asked(named, seen, [...above, ...own], false);
  const contact = guessContact(seen);
  if (contact !== null) return contact;
  const placed = lastNamed(own, ({ places }) => places);
  return placed === null ? null : asked(placed, seen, [...above, ...own], true);
}

/** The unit, where one is left and the name says the quantity; else the question. */
function asked(
  { quantity, word }: Named,
  seen: Seen,
  words: readonly string[],
  onlyPlace: boolean,
): Guess | null {
  const candidates = unitsOf(quantity, seen, words);
  const [first] = candidates;
  if (first === undefined) return null;
  const { least, most } = seen;
  const range = least === most ? `${most}` : `${least} to ${most}`;
  if (onlyPlace) {
    const why = `"${word}" in its name says where it stands, not what it is; if so, ${range} would fit`;
    return { quantity: `perhaps ${quantity.name}`, unit: null, candidates, why, sure: 'open' };
  }
  const why = `"${word}" in its name; ${range} would fit`;
  return candidates.length === 1
    ? likely(quantity.name, first, why)
    : { quantity: quantity.name, unit: null, candidates, why, sure: 'open' };
}

function unitsOf({ name, units }: Quantity, seen: Seen, words: readonly string[]): string[] {
  const among = (ranges: readonly UnitRange[]): string[] =>
    ranges.filter((range) => fits(range, seen)).map(({ unit }) => unit);
  if (name !== temperature) return among(units);
  const place = words.findLast((word) =>
    temperaturesAt.some(({ places }) => places.includes(word)),
  );
  const narrowed = temperaturesAt.find(
    ({ places }) => place !== undefined && places.includes(place),
  );
  const here = narrowed === undefined ? [] : among(narrowed.units);
  return here.length > 0 ? here : among(units);
}
