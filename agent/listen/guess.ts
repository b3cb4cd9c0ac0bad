/**
 * A guess at what a value is, from what the payload says, from names, and from the range it was
 * seen in; always with its reason, so that a person can agree or not.
 *
 * Always true: a guess is never made from the number alone, and where names leave two units open
 * that differ, the other one is named.
 */

import { unitOf } from '#rules/quantity/unit.ts';
import { suggestedCodes } from '#rules/quantity/unit-fix.ts';

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
  /** UCUM. */
  readonly unit: string;
  readonly why: string;
  /** Another unit the same numbers would fit; null where there is none. */
  readonly or: string | null;
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

/** Units as the last word of a name, safe ones only: `c` or `f` alone may be anything. */
const unitWords: Readonly<Record<string, readonly [unit: string, quantity: string]>> = {
  degc: ['Cel', 'temperature'],
  celsius: ['Cel', 'temperature'],
  degf: ['[degF]', 'temperature'],
  fahrenheit: ['[degF]', 'temperature'],
  bar: ['bar', 'pressure'],
  mbar: ['mbar', 'pressure'],
  psi: ['[psi]', 'pressure'],
  kpa: ['kPa', 'pressure'],
  pa: ['Pa', 'pressure'],
  rpm: ['/min', 'speed of rotation'],
  percent: ['%', 'ratio'],
  pct: ['%', 'ratio'],
  mm: ['mm', 'length'],
  lpm: ['L/min', 'flow'],
  mps: ['m/s', 'speed'],
  ph: ['[pH]', 'pH'],
};

interface Rule {
  readonly words: readonly string[];
  readonly quantity: string;
  readonly unit: string;
  /** Seen outside of this, the guess is not made. */
  readonly within: readonly [least: number, most: number];
  readonly or: string | null;
}

const rooms = ['room', 'store', 'hall', 'ambient', 'outside', 'booth', 'wall', 'climate', 'racks'];
const moulds = ['mould', 'mold', 'platen', 'cavity'];
const hotPlaces = ['oven', 'zone', 'zones', 'metal', 'surface', 'residue', 'duct', 'shroud'];
const coolPlaces = ['bath', 'tank', 'drum', 'pipe', 'bin'];
/** These say temperature and leave the place, and so the scale, to the other words. */
const temperatures = ['temp', 'temperature', 'air'];
const pressures = ['pressure', 'header', 'pot', 'atomising', 'atomizing', 'blast'];
const drops = ['dp', 'differential', 'separator'];
const airSpeeds = ['velocity', 'airflow'];

const rule = (
  words: readonly string[],
  quantity: string,
  unit: string,
  within: readonly [number, number],
  or: string | null = null,
): Rule => ({ words, quantity, unit, within, or });

/** Of those whose word stands nearest the end of the name, the first whose range fits is taken. */
const rules: readonly Rule[] = [
  rule(['dewpoint', 'pdp', 'dew'], 'dew point', 'Cel', [-100, 40], '[degF]'),
  rule(['humidity', 'rh'], 'relative humidity', '%', [1.01, 105]),
  rule(['humidity', 'rh'], 'relative humidity', 'Pa/Pa', [0, 1.01]),
  rule(['agitator', 'shaft', 'stirrer'], 'speed of rotation', '/min', [0, 500]),
  rule(['conductivity', 'rinse', 'di'], 'conductivity', 'uS/cm', [0, 5_000], 'mS/cm'),
  rule(drops, 'pressure drop', 'bar', [-0.1, 1], '[psi]'),
  rule(drops, 'pressure drop', '[psi]', [1, 30], 'Pa'),
  rule(drops, 'pressure drop', 'Pa', [10, 5_000], 'mbar'),
  rule(pressures, 'pressure', 'bar', [-1, 16], '[psi]'),
  rule(pressures, 'pressure', '[psi]', [16, 250], 'kPa'),
  rule(airSpeeds, 'air speed', 'm/s', [0, 10]),
  rule(airSpeeds, 'air speed', '[ft_i]/min', [10, 2_000]),
  rule(['withdrawal', 'hoist'], 'speed', 'm/min', [0, 20], '[ft_i]/min'),
  rule(['flow'], 'flow', 'L/min', [0, 2_000], 'm3/h'),
  rule(['level', 'weir', 'thickness'], 'length', 'mm', [0, 5_000], '%'),
  rule(['solids'], 'solids by mass', '%', [0, 100]),
  rule(['density'], 'density', 'g/mL', [0.7, 2]),
  // Nobody works in a room at 46 Cel, and no mould stands at 240 Cel: there the scale shows.
  rule(rooms, 'temperature', '[degF]', [45.01, 110]),
  rule(rooms, 'temperature', 'Cel', [-40, 45], '[degF]'),
  rule(moulds, 'temperature', '[degF]', [240.01, 450]),
  rule(moulds, 'temperature', 'Cel', [10, 240], '[degF]'),
  rule(hotPlaces, 'temperature', 'Cel', [-20, 400], '[degF]'),
  rule(coolPlaces, 'temperature', 'Cel', [-40, 120], '[degF]'),
  rule(temperatures, 'temperature', 'Cel', [-40, 120], '[degF]'),
];

/** The guess, or null where nothing but the number would be left to guess from. */
export function guessOf(seen: Seen): Guess | null {
  const said = guessSaid(seen);
  if (said !== null) return said;
  const words = [...wordsOf(seen.topic), ...wordsOf(seen.pointer)];
  const own = wordsOf(`${seen.topic.slice(seen.topic.lastIndexOf('/') + 1)} ${seen.pointer}`);
  const named = guessNamed(words) ?? guessScale(own);
  if (named !== null) return named;
  if (seen.isBoolean || seen.isBinary)
    return {
      quantity: 'contact',
      unit: '1',
      why: seen.isBoolean ? 'the payload says true or false' : 'only 0 and 1 were seen',
      or: null,
      sure: seen.isBoolean ? 'likely' : 'open',
    };
  return guessRanged(seen, words, own);
}

function guessSaid({ saidUnit }: Seen): Guess | null {
  if (saidUnit === null) return null;
  const known = unitOf(saidUnit);
  const unit = known === null ? suggestedCodes(saidUnit)[0] : saidUnit;
  const found = unit === undefined ? null : unitOf(unit);
  if (unit === undefined || found === null) return null;
  const why = `the payload names the unit "${saidUnit}"`;
  return { quantity: wordsOfDimension(found.dimension), unit, why, or: null, sure: 'said' };
}

const wordsOfDimension = (dimension: string): string =>
  dimension.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

function guessNamed(words: readonly string[]): Guess | null {
  const last = words.at(-1) ?? '';
  const found = Object.hasOwn(unitWords, last) ? unitWords[last] : undefined;
  if (found === undefined) return null;
  const [unit, quantity] = found;
  return { quantity, unit, why: `the name ends in "${last}"`, or: null, sure: 'likely' };
}

/** Single letters are a scale only behind a word that says temperature: `temperature_F`. */
const scales: Readonly<Record<string, string>> = { c: 'Cel', f: '[degF]', k: 'K' };
const scaled = ['temp', 'temps', 'temperature', 'deg', 'dewpoint', 'dew'];

function guessScale(own: readonly string[]): Guess | null {
  const last = own.at(-1) ?? '';
  const unit = Object.hasOwn(scales, last) ? scales[last] : undefined;
  const word = own.slice(0, -1).findLast((each) => scaled.includes(each));
  if (unit === undefined || word === undefined) return null;
  const why = `the name says "${word}" and ends in "${last}"`;
  return { quantity: 'temperature', unit, why, or: null, sure: 'likely' };
}

/** Where a rule's word stands last: the end of a name says the quantity, its beginning the place. */
const nearness = ({ words: known }: Rule, words: readonly string[]): number =>
  Math.max(...known.map((word) => words.lastIndexOf(word)));

/** `own`: the words of the last level and of the place in the payload. */
function guessRanged(seen: Seen, words: readonly string[], own: readonly string[]): Guess | null {
  const saysTemperature = own.some((word) => temperatures.includes(word));
  const said = rules.filter(
    (each) =>
      each.quantity !== 'temperature' ||
      (isPlace(each) && saysTemperature) ||
      own.some((word) => names(each, word)),
  );
  const named = nearest(said, seen, words);
  if (named === null) return null;
  const placed =
    named.rule.words === temperatures ? nearest(rules.filter(isPlace), seen, words) : null;
  const { rule: best, at } = placed ?? named;
  const { quantity, unit, or } = best;
  const { least, most } = seen;
  const range = least === most ? `${most}` : `${least} to ${most}`;
  const why = `"${words[at]}" in its name; ${range} would fit`;
  return { quantity, unit, why, or, sure: or === null ? 'likely' : 'open' };
}

/** A rule by the place alone: in the levels above, it says where a sensor stands and not what it is. */
const isPlace = ({ words, quantity }: Rule): boolean =>
  words !== temperatures && quantity === 'temperature';

/** A store is where things are kept; by itself it says nothing of their temperature. */
const names = ({ words }: Rule, word: string): boolean => word !== 'store' && words.includes(word);

function nearest(
  among: readonly Rule[],
  { least, most }: Seen,
  words: readonly string[],
): { readonly rule: Rule; readonly at: number } | null {
  let best: { rule: Rule; at: number } | null = null;
  for (const each of among) {
    const at = nearness(each, words);
    if (at <= (best?.at ?? -1) || least < each.within[0] || most > each.within[1]) continue;
    best = { rule: each, at };
  }
  return best;
}
