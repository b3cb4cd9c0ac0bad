/** Numbers that only the data sheet, the plant's own trial or the plant's drawing can give. */
import type { Sheet } from '../material/read-sheet.ts';
import type { Basis, TemplateNumber } from './station.ts';

const exact = (value: number): number => Number(value.toPrecision(9));

/** As a site would write it; null where the sheet is silent. */
export const written = (value: number | null, unit: string): string | null =>
  value === null ? null : `${exact(value)} ${unit}`;
export const minutes = (ms: number | null): string | null =>
  written(ms === null ? null : ms / 60_000, 'min');
export const celsius = (value: number | null): string | null => written(value, 'Cel');

const dataSheet = (note: string): Basis => ({ mark: 'DS', note, source: null });
const drawing = (note: string): Basis => ({ mark: 'SITE', note, source: null });

/** Not known until the material sheet's field `key` says it. */
export const fromDataSheet = (
  setting: string,
  note: string,
  key: string,
  fromSheet: (sheet: Sheet) => string | null,
): TemplateNumber => ({
  setting,
  value: null,
  basis: dataSheet(note),
  confirm: 'DS',
  needs: `${note} (${key} of the material sheet)`,
  fromSheet,
});

/** Not known until the site writes it: `what`, then where, as "rule zone-1-high: target". */
export const fromSite = (setting: string, note: string, where: string): TemplateNumber => ({
  setting,
  value: null,
  basis: drawing(note),
  confirm: 'SITE',
  needs: `${note} (${where})`,
});
