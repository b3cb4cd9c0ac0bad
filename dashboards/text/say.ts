/**
 * The catalogue's sentences, filled in. Texts are Unicode MessageFormat 2, of which the page uses
 * two things: `{$name}`, and `.match` on one number with a branch for one and for the rest.
 * Source: Unicode Technical Standard 35, part 9.
 */
import type { en } from './en.ts';
import { catalogueNow, languageNow } from './language.ts';
import type { NamesIn, Translation } from './translation.ts';

type Catalogue = typeof en;
export type TextId = keyof Catalogue;

type Facts<Text> = Text extends string
  ? [NamesIn<Text>] extends [never]
    ? []
    : [facts: { readonly [N in NamesIn<Text>]: string | number }]
  : [];

const fill = (text: string, facts: Readonly<Record<string, string | number>>): string =>
  chosen(text, facts).replace(/\{\$([^}]*)\}/g, (_, name: string) => String(facts[name] ?? ''));

/** `.match $n one {{…}} * {{…}}` */
function chosen(text: string, facts: Readonly<Record<string, string | number>>): string {
  const match = /^\.match \$(\S+) one \{\{(.*?)\}\} \* \{\{(.*)\}\}$/.exec(text);
  if (match === null) return text;
  const [, name = '', one = '', rest = ''] = match;
  const category = new Intl.PluralRules(languageNow()).select(Number(facts[name]));
  return category === 'one' ? one : rest;
}

/** The sentence of an id; a table of words for an id that holds one. */
export function say<Id extends TextId>(
  id: Id,
  ...facts: Facts<Catalogue[Id]>
): Catalogue[Id] extends string ? string : Translation[Id];
export function say(id: TextId, facts: Readonly<Record<string, string | number>> = {}): unknown {
  const text = catalogueNow()[id];
  return typeof text === 'string' ? fill(text, facts) : text;
}
