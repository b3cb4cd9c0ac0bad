/**
 * A sentence as its numbers ask for it: what is left is not "−26.5 °C left", and a rack called
 * rack-22 is no "Rack rack-22". It stays a template: readers fill it in with units of their own.
 */
import type { Evidence } from '../kinds/kind.ts';

/** Said of a margin; and of one below nothing, where `{$past}` is how far below. */
const leftAndPast: readonly (readonly [left: string, past: string])[] = [
  ['{$value} left to ', '{$past} past '],
  ['room to the limit {$value}', '{$past} past the limit'],
  ['noch {$value} bis dorthin', '{$past} jenseits davon'],
  ['Abstand zum Grenzwert {$value}', '{$past} jenseits des Grenzwerts'],
];

/** Said of a rise beside what it makes true: left out where nobody knows how fast, as after other terms. */
const risesToo: readonly string[] = [
  ' and rising {$minuteslope} a minute',
  ' und erwärmt sich um {$minuteslope} je Minute',
  ' and rising {$slope} an hour',
  ', steigt um {$slope} je Stunde',
];

/** What things are called in a sentence, and how their names may begin. */
const called: Readonly<Record<string, readonly string[]>> = {
  rack: ['rack'],
  container: ['container'],
  lot: ['lot'],
  shot: ['shot'],
  gestell: ['gestell', 'rack'],
  gebinde: ['gebinde', 'container'],
  los: ['los', 'lot'],
  schuss: ['schuss', 'shot'],
};
const named = new RegExp(`\\b(${Object.keys(called).join('|')}) \\{\\$item\\}`, 'gi');
export const ownItemName = (item: string, what: string): string | null =>
  new RegExp(`^${what}[- ]+(?=.)`, 'i').test(item)
    ? item.slice(what.length).replace(/^[- ]+/, '')
    : null;
const bareOf = (item: string, whats: readonly string[]): string | null =>
  whats.map((what) => ownItemName(item, what)).find((name) => name !== null) ?? null;

/** The template to be filled in, with `{$past}` and `{$itemname}` where they are needed. */
export function sentenceFor(template: string, { value, item, slopePerH }: Evidence): string {
  let text = template;
  if (slopePerH === undefined) for (const rise of risesToo) text = text.replace(rise, '');
  if (value !== undefined && value < 0)
    for (const [left, past] of leftAndPast) text = text.replaceAll(left, past);
  return item === undefined
    ? text
    : text.replaceAll(named, (whole, what: string) =>
        bareOf(item, called[what.toLowerCase()]!) === null ? whole : `${what} {$itemname}`,
      );
}

/** "22" of "rack-22"; null of what does not begin with what it is. */
export const bareItem = (item: string): string | null => bareOf(item, Object.keys(called));
