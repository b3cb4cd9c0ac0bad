/**
 * Units of measurement: a UCUM code to its dimension, and values to the dimension's one canonical code.
 *
 * Inside the product every value is in a canonical unit; other units live at the border only.
 * A temperature has two kinds of number: a reading (7 Cel is 44.6 [degF]) and a difference
 * (1 Cel is 1.8 [degF]). Readings go through `toCanonical`, differences through
 * `differenceToCanonical`; a signal whose canonical unit is `K` carries differences.
 */
import { type Dimension, dimensions, type UnitRow, unitTable } from './unit-table.ts';

export interface Unit {
  /** As it was written, annotations included. */
  readonly code: string;
  readonly dimension: Dimension;
  /** The canonical code of the dimension. */
  readonly canonical: string;
  /** canonical = (value - zero) * times / over */
  readonly times: number;
  readonly over: number;
  readonly zero: number;
}

const unitByCode: ReadonlyMap<string, Unit> = new Map(
  (Object.keys(unitTable) as Dimension[]).flatMap((dimension) =>
    unitTable[dimension].map((row) => [row[0], unitFromRow(row, dimension)] as const),
  ),
);

const canonicalByCode: ReadonlyMap<string, Unit> = new Map(
  (Object.keys(dimensions) as Dimension[]).map((dimension) => {
    const canonical = dimensions[dimension].canonical;
    return [canonical, { code: canonical, dimension, canonical, times: 1, over: 1, zero: 0 }];
  }),
);

/** Every code of the table, canonical ones first within their dimension. */
export const unitCodes: readonly string[] = [...unitByCode.keys()];

/**
 * The unit a person or a device wrote; null for a code we do not take. Case matters, as in UCUM.
 * Annotations in braces add nothing: `%{RH}` is `%`, `{rev}/min` is `/min`, `{strokes}` is `1`.
 * `K` here is a temperature on the kelvin scale, canonical `Cel`.
 */
export function unitOf(code: string): Unit | null {
  const known = unitByCode.get(code);
  if (known !== undefined) return known;
  const bare = code.replace(/\{[!-z|~]+\}/g, '');
  if (bare === code) return null;
  const plain = unitByCode.get(bare === '' ? '1' : bare);
  return plain === undefined ? null : { ...plain, code };
}

/** The canonical code for a written one: `[degF]` gives `Cel`; null for a code we do not take. */
export const canonicalOf = (code: string): string | null => unitOf(code)?.canonical ?? null;

/**
 * The unit of a signal inside the product, from its canonical code; there `K` is a temperature
 * difference. Throws on a code that is not canonical: a signal never has another.
 */
export function canonicalUnit(code: string): Unit {
  const unit = canonicalByCode.get(code);
  if (unit === undefined) throw new RangeError(`${JSON.stringify(code)} is no canonical unit`);
  return unit;
}

/** Is it the code of a canonical unit? */
export const isCanonical = (code: string): boolean => canonicalByCode.has(code);

/** A reading in `unit` to the canonical unit. Finite in, finite out, short of overflow. */
export const toCanonical = (value: number, unit: Unit): number =>
  ((value - unit.zero) * unit.times) / unit.over;

/** A reading in the canonical unit to `unit`. */
export const fromCanonical = (value: number, unit: Unit): number =>
  (value * unit.over) / unit.times + unit.zero;

/** A difference in `unit` to the canonical unit: 3 [degF] is 1.67 K. */
export const differenceToCanonical = (difference: number, unit: Unit): number =>
  (difference * unit.times) / unit.over;

/** A difference in the canonical unit to `unit`. */
export const differenceFromCanonical = (difference: number, unit: Unit): number =>
  (difference * unit.over) / unit.times;

export const sameDimension = (one: Unit, other: Unit): boolean => one.dimension === other.dimension;

/** What the unit measures, in words with their article: "a temperature". */
export const dimensionWords = (unit: Unit): string => dimensions[unit.dimension].words;

function unitFromRow([code, times, over = 1, zero = 0]: UnitRow, dimension: Dimension): Unit {
  return { code, dimension, canonical: dimensions[dimension].canonical, times, over, zero };
}
