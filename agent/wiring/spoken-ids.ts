/** A message as people say it: `mounts-1/oven-1/zone-3-floor` is "Oven 1 zone 3 floor". */
import type { Said } from '../notify/teller-parts.ts';
import type { Compiled } from './plan-book.ts';

/** Ids of stations, signals and rules, as far as they look like ones. */
const idLike = /(?<![\w/.-])[a-z0-9-]+(?:\/[a-z0-9-]+){1,2}(?![\w/-])/g;

/** The line is said where there are several: a phone shows no page around it. */
const spoken = (id: string, ofLine: boolean): string => {
  const [line = '', ...rest] = id.replaceAll('-', ' ').split('/');
  const words = `${ofLine ? `${line}, ` : ''}${rest.join(' ')}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** What each id of the site is called. */
type Names = ReadonlyMap<string, string>;
const known = new WeakMap<Compiled, Names>();

function namesOf(compiled: Compiled): Names {
  const before = known.get(compiled);
  if (before !== undefined) return before;
  const { plan, rules } = compiled;
  const long = [...plan.signals.map(({ id }) => id), ...rules.map(({ id }) => id)];
  const stations = long.map((id) => id.split('/').slice(0, 2).join('/'));
  const several = new Set(stations.map((id) => id.split('/')[0])).size > 1;
  const names = new Map([...long, ...stations].map((id) => [id, spoken(id, several)]));
  known.set(compiled, names);
  return names;
}

/** Its texts with ids of this site as names; where it is about and its page stay as they are. */
export function withSpokenIds(said: Said, compiled: Compiled): Said {
  const names = namesOf(compiled);
  const named = (text: string): string => text.replaceAll(idLike, (id) => names.get(id) ?? id);
  return {
    ...said,
    title: named(said.title),
    sentence: named(said.sentence),
    consequence: named(said.consequence),
    steps: said.steps.map(named),
    doNot: said.doNot.map(named),
    caution: named(said.caution),
  };
}
