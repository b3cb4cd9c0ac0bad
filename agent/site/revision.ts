/**
 * What a site is compiled from, as one text, and the hash that names it.
 *
 * The store keeps the text with the hash, so that a replay compiles the very site that judged
 * then, whatever the files say now.
 */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { readSheet, type Sheet } from '#rules/material/read-sheet.ts';
import { type SheetWritten, sheetWritten } from '#rules/material/sheet.ts';
import { type CompiledSite, compileSite, type Instances } from '#rules/plan/compile.ts';
import { type SiteWritten, siteWritten } from '#rules/site/schema.ts';
import { ownKindsOf } from './extensions/own-kinds.ts';
import type { CallWatch } from './extensions/watch.ts';

/** A site as its files say, all of it sound. */
export interface SiteSource {
  readonly site: SiteWritten;
  readonly materials: Readonly<Record<string, SheetWritten>>;
  /** The texts of its own rule files, by the names the site file gives them. */
  readonly extensions?: Readonly<Record<string, string>>;
}

/** The topic that took each instance of a wildcard first: by the id of its signal, then by instance. */
export type Topics = Readonly<Record<string, Readonly<Record<string, string>>>>;

/**
 * Canonical JSON (RFC 8785) of everything the plan depends on, and whose the places of wildcards
 * are: a restart must not give the place of one sensor to another.
 */
export function siteText(source: SiteSource, instances: Instances, topics: Topics = {}): string {
  const sorted = Object.fromEntries(
    Object.entries(instances)
      .filter(([, values]) => values.length > 0)
      .map(([id, values]) => [id, [...new Set(values)].sort()]),
  );
  const { site, materials, extensions = {} } = source;
  const own = Object.keys(extensions).length === 0 ? {} : { extensions };
  const taken = Object.keys(topics).length === 0 ? {} : { topics };
  const text = canonicalize({ site, materials, instances: sorted, ...own, ...taken });
  if (text === undefined) throw new TypeError('a site is always plain data');
  return text;
}

/** SHA-256 of the text in UTF-8, hexadecimal. */
export const revisionOf = (text: string): string =>
  createHash('sha256').update(text, 'utf8').digest('hex');

/** The site, compiled, under the revision its text has; `watch` looks on wherever its own rules are called. */
export function compileSource(
  source: SiteSource,
  instances: Instances,
  watch?: CallWatch,
  topics: Topics = {},
): CompiledSite & { readonly text: string } {
  const text = siteText(source, instances, topics);
  const { kinds } = ownKindsOf(source.extensions ?? {}, watch);
  const revision = revisionOf(text);
  const compiled = compileSite(source.site, sheetsOf(source), instances, revision, [], kinds);
  return { ...compiled, text };
}

/** The text of a revision back to what it was made of. Throws on a text this did not make. */
export function sourceOfText(text: string): {
  source: SiteSource;
  instances: Instances;
  topics: Topics;
} {
  const parsed: unknown = JSON.parse(text);
  const read = parsed as {
    site: unknown;
    materials: Record<string, unknown>;
    instances: Instances;
    extensions?: Readonly<Record<string, string>>;
    /** Older texts do not say. */
    topics?: Topics;
  };
  return {
    source: {
      site: siteWritten.parse(read.site),
      materials: Object.fromEntries(
        Object.entries(read.materials).map(([name, sheet]) => [name, sheetWritten.parse(sheet)]),
      ),
      ...(read.extensions === undefined ? {} : { extensions: read.extensions }),
    },
    instances: read.instances,
    topics: read.topics ?? {},
  };
}

export const sheetsOf = (source: SiteSource): Readonly<Record<string, Sheet>> =>
  Object.fromEntries(
    Object.entries(source.materials).map(([name, written]) => [name, readSheet(written).sheet]),
  );
