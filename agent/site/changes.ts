/**
 * What a new site file changes, setting by setting, for the ledger: path, what stood there, what
 * stands there now.
 */
import { limits } from '../limits.ts';
import { extensionId } from './extensions/load.ts';
import { textHash } from './extensions/watch.ts';
import type { SiteSource } from './revision.ts';

/** null where there was nothing, or is nothing now. Texts, numbers and truth values as written. */
export type Setting = string | number | boolean | null;

export interface SiteChange {
  /** As `lines.mounts-1.store-1.rules.cold-adhesive.low` or `materials.adhesive-a.max_rest`. */
  readonly path: string;
  readonly before: Setting;
  readonly after: Setting;
}

export interface SiteChanges {
  /** In the order of their paths; at most `siteChangesKept`. */
  readonly changes: readonly SiteChange[];
  /** How many more there are. */
  readonly more: number;
}

export function siteChanges(before: SiteSource, after: SiteSource): SiteChanges {
  const was = leaves(before);
  const is = leaves(after);
  const all = [...new Set([...was.keys(), ...is.keys()])].sort().flatMap((path) => {
    const change = { path, before: was.get(path) ?? null, after: is.get(path) ?? null };
    return change.before === change.after ? [] : [change];
  });
  return {
    changes: all.slice(0, limits.siteChangesKept),
    more: Math.max(0, all.length - limits.siteChangesKept),
  };
}

/** Every setting by its path. A sheet's path in the site file counts as one, beside what it says. */
function leaves({ site, materials, extensions = {} }: SiteSource): Map<string, Setting> {
  const found = new Map<string, Setting>();
  const { materials: files, ...rest } = site;
  collect(found, '', rest);
  collect(found, 'material_files', files ?? {});
  collect(found, 'materials', materials);
  // A text is named by its hash: the revision keeps it whole.
  for (const [name, text] of Object.entries(extensions))
    found.set(`extension_texts.${name}`, textHash(extensionId(name, text)));
  return found;
}

function collect(into: Map<string, Setting>, path: string, value: unknown): void {
  if (value === undefined || value === null) return;
  if (typeof value !== 'object') {
    into.set(path, value as Setting);
    return;
  }
  const list = Object.entries(value);
  // An empty list takes away what stands there of itself.
  if (Array.isArray(value) && list.length === 0) into.set(path, '[]');
  for (const [key, each] of list) collect(into, path === '' ? key : `${path}.${key}`, each);
}
