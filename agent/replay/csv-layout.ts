/** What the first line of recorded data says: the separator, and which column is what. */
export type Separator = ',' | ';' | '\t';

export type CsvLayout =
  | {
      readonly kind: 'long';
      readonly columns: number;
      readonly unit: number;
      readonly quality: number;
    }
  /** Column i + 1 is signal i. */
  | { readonly kind: 'wide'; readonly columns: number; readonly signals: readonly string[] };

const separators: readonly Separator[] = [',', ';', '\t'];

/** The separator a header uses most; null where it has none. */
export function separatorOf(header: string): Separator | null {
  const count = (separator: Separator): number => header.split(separator).length - 1;
  const [most] = separators.toSorted((one, other) => count(other) - count(one));
  return most !== undefined && count(most) > 0 ? most : null;
}

const longBegins = ['time', 'signal', 'value'] as const;

/** The layout of a header's cells, or what is wrong with them in words. */
export function layoutOf(cells: readonly string[]): CsvLayout | string {
  const names = cells.map((cell) => cell.trim());
  const lower = names.map((name) => name.toLowerCase());
  if (lower[0] !== 'time') return `its first column is "${names[0] ?? ''}" and not "time"`;
  const empty = names.indexOf('');
  if (empty >= 0) return `column ${empty + 1} has no name`;
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined) return `the column "${twice}" is there twice`;
  if (!longBegins.every((name, i) => lower[i] === name)) {
    return { kind: 'wide', columns: names.length, signals: names.slice(1) };
  }
  // `cause` is for people: what it says is in the quality.
  const odd = lower.slice(3).find((name) => !['unit', 'quality', 'cause'].includes(name));
  if (odd !== undefined)
    return `after "time,signal,value" it may have "unit", "quality" and "cause", not "${odd}"`;
  return {
    kind: 'long',
    columns: names.length,
    unit: lower.indexOf('unit'),
    quality: lower.indexOf('quality'),
  };
}
