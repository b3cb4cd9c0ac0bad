/** Small sites for tests, written as people write them. */
import { parse } from 'yaml';
import { readSheet, type Sheet } from '#rules/material/read-sheet.ts';
import type { SheetWritten } from '#rules/material/sheet.ts';
import { type CompiledSite, compileSite, type Instances } from '#rules/plan/compile.ts';
import { type SiteWritten, siteWritten } from '#rules/site/schema.ts';

export const siteOf = (lines: string): SiteWritten =>
  siteWritten.parse({
    site: 'works',
    timezone: 'Europe/Dublin',
    materials: { 'adhesive-a': 'a.yaml' },
    lines: parse(lines),
  });

export const sheetOf = (written: Partial<SheetWritten>): Sheet =>
  readSheet({ name: 'A', source: 'made for this test', ...written }).sheet;

export const compiled = (
  lines: string,
  instances: Instances = {},
  sheet: Partial<SheetWritten> = {},
): CompiledSite => compileSite(siteOf(lines), { 'adhesive-a': sheetOf(sheet) }, instances, 'r');

export const signalLine = (topic: string, unit: string): string =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: "${unit}" }`;
