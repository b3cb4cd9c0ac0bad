/** Ids as people say them: `mounts-1/mixer-3/agitator` is "Mixer 3 agitator". The line is said elsewhere. */
import { ownItemName } from '#rules/alarm/sentence.ts';
import { ownOf } from './lookup.ts';
import { say } from './say.ts';

/** Parts of a name that people say in full. */
const inFull = (part: string): string => ownOf<string>(say('nameParts'), part) ?? part;

const spoken = (part: string): string => {
  const whole = inFull(part);
  return whole === part ? part.split('-').map(inFull).join(' ') : whole;
};
/** What is written small at its head, as pH, stays so. */
const capital = (text: string): string =>
  /^[a-z][A-Z]/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);

/** A station, or a signal or rule with its station before it; other texts as they are. */
export function placeName(id: string): string {
  const parts = id.split('/');
  return capital((parts.length > 1 ? parts.slice(1) : parts).map(spoken).join(' '));
}

/** The last part alone: "Agitator". */
export const ownName = (id: string): string => capital(spoken(id.split('/').at(-1) ?? id));

/** A rule as people call it; where its name is short for something, that is said. */
export function ruleName(id: string): string {
  const name = id.split('/').at(-1) ?? id;
  for (const [short, said] of Object.entries(say('ruleName'))) {
    if (name === short) return said;
    if (name.startsWith(`${short}-`)) return `${said}: ${spoken(name.slice(short.length + 1))}`;
  }
  return ownName(id);
}

const id = /^[a-z0-9-]+(\/[a-z0-9-]+){1,2}$/;

export const isId = (text: string): boolean => id.test(text);

/** "Rack 22" of `rack-22`; what does not begin with what it is stays as it is. */
export function itemText(item: string): string {
  for (const [what, kind] of Object.entries(say('holdWhat'))) {
    const own = ownItemName(item, what);
    if (own !== null) return say('holdFor', { what: kind, item: own });
  }
  return item;
}

/** Ids of three parts inside a text: signals and rules; what is shorter may be a word of the site. */
const idsWithin = /(?<![\w/.-])[a-z0-9-]+(?:\/[a-z0-9-]+){2}(?![\w/-]|\.\w)/g;

/** A text with its ids as people say them. */
export const spokenId = (text: string): string =>
  isId(text) ? placeName(text) : text.replaceAll(idsWithin, placeName);

/** Rules by what they look for, the places after it: "Close to the limit: filter, floor". */
export function ruleNames(ids: readonly string[]): string[] {
  const byTitle = Map.groupBy(ids.map(ruleName), (name) => name.split(': ')[0]!);
  return [...byTitle].map(([title, names]) => {
    const places = names.flatMap((name) => name.split(': ')[1] ?? []);
    return places.length === 0 ? title : `${title}: ${places.join(', ')}`;
  });
}
