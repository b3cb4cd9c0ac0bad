/**
 * A site in which every line, station, signal, rule and mark has a name that can be read, so that
 * what stands below a bad one is checked too. Never used to run a site.
 */
import { badName } from './issue.ts';
import { isName } from './name.ts';
import type { SiteProblem } from './problem.ts';

type Block = Readonly<Record<string, unknown>>;

export interface MendedNames {
  readonly value: unknown;
  /** A path of `value` as it is in the file. */
  readonly written: (path: SiteProblem['path']) => SiteProblem['path'];
  /** Every name that needed it. */
  readonly problems: readonly SiteProblem[];
}

const groups = ['signals', 'derived', 'rules', 'marks'];

/** `value` itself where no name needs mending. */
export function mendNames(value: unknown): MendedNames {
  const asWritten = new Map<string, string>();
  const lines = isBlock(value) ? value.lines : undefined;
  const written: MendedNames['written'] = (path) =>
    path.map((key, i) => asWritten.get(keyOf(...path.slice(0, i + 1))) ?? key);
  if (!isBlock(value) || !isBlock(lines)) return { value, written, problems: [] };
  const mended = mendKeys(lines, 'lines', asWritten, (stations, line) =>
    mendKeys(stations, line, asWritten, (station, at) => mendGroups(station, at, asWritten)),
  );
  return {
    value: asWritten.size === 0 ? value : { ...value, lines: mended },
    written,
    problems: [...asWritten.keys()].map((key) => badName(written(key.split('\n')))),
  };
}

function mendGroups(station: unknown, at: string, asWritten: Map<string, string>): unknown {
  if (!isBlock(station)) return station;
  const mended = groups
    .filter((group) => isBlock(station[group]))
    .map((group) => [
      group,
      mendKeys(station[group], keyOf(at, group), asWritten, (entry) => entry),
    ]);
  return { ...station, ...Object.fromEntries(mended) };
}

/** The block with names for keys, in its order; a name that is taken gets a number. */
function mendKeys(
  block: unknown,
  at: string,
  asWritten: Map<string, string>,
  inside: (value: unknown, at: string) => unknown,
): unknown {
  if (!isBlock(block)) return block;
  const made: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(block)) {
    const name = isName(key) ? key : standIn(key, [...Object.keys(block), ...Object.keys(made)]);
    const here = keyOf(at, name);
    if (name !== key) asWritten.set(here, key);
    made[name] = inside(value, here);
  }
  return made;
}

function standIn(key: string, taken: readonly string[]): string {
  const plain = key
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
  const name = isName(plain) ? plain : 'unnamed';
  for (let n = 1; ; n += 1) {
    const free = n === 1 ? name : `${name}-${n}`;
    if (!taken.includes(free)) return free;
  }
}

const keyOf = (...keys: readonly (string | number)[]): string => keys.join('\n');

const isBlock = (value: unknown): value is Block =>
  value !== null && typeof value === 'object' && !Array.isArray(value);
