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

/** A site as its files say, all of it sound. */
export interface SiteSource {
  readonly site: SiteWritten;
  readonly materials: Readonly<Record<string, SheetWritten>>;
}

/** Canonical JSON (RFC 8785) of everything the plan depends on. */
export function siteText(source: SiteSource, instances: Instances): string {
  const sorted = Object.fromEntries(
    Object.entries(instances)
      .filter(([, values]) => values.length > 0)
      .map(([id, values]) => [id, [...new Set(values)].sort()]),
  );
  const text = canonicalize({ site: source.site, materials: source.materials, instances: sorted });
  if (text === undefined) throw new TypeError('a site is always plain data');
  return text;
}

/** SHA-256 of the text in UTF-8, hexadecimal. */
export const revisionOf = (text: string): string =>
  createHash('sha256').update(text, 'utf8').digest('hex');

/** The site, compiled, under the revision its text has. */
export function compileSource(
  source: SiteSource,
  instances: Instances,
): CompiledSite & { readonly text: string } {
  const text = siteText(source, instances);
  const compiled = compileSite(source.site, sheetsOf(source), instances, revisionOf(text));
  return { ...compiled, text };
}

/** The text of a revision back to what it was made of. Throws on a text this did not make. */
export function sourceOfText(text: string): { source: SiteSource; instances: Instances } {
  const parsed: unknown = JSON.parse(text);
  const read = parsed as {
    site: unknown;
    materials: Record<string, unknown>;
    instances: Instances;
  };
  return {
    source: {
      site: siteWritten.parse(read.site),
      materials: Object.fromEntries(
        Object.entries(read.materials).map(([name, sheet]) => [name, sheetWritten.parse(sheet)]),
      ),
    },
    instances: read.instances,
  };
}

export const sheetsOf = (source: SiteSource): Readonly<Record<string, Sheet>> =>
  Object.fromEntries(
    Object.entries(source.materials).map(([name, written]) => [name, readSheet(written).sheet]),
  );
