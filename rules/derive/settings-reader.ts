/**
 * Reads the written settings of a derived signal, each in the unit its kind asks for.
 *
 * Every problem is added to the caller's list and none thrown; what could not be read answers as
 * if it were absent.
 */
import type { SettingsProblem } from '../kinds/settings.ts';
import { settingsReader } from '../kinds/settings-reader.ts';

export interface DerivedSettingsReader {
  /** In the canonical unit `unit`; null when absent. */
  quantity(key: string, unit: string): number | null;
  /** As `quantity`, above 0 and finite; 1 where it is not, which is reported. */
  positive(key: string, unit: string): number;
  /** In the unit of the first input; null when absent. */
  limit(key: string): number | null;
  /** Milliseconds; the fallback when absent. */
  duration(key: string, fallbackMs: number): number;
  /** A bare number, as 0.67 or "0.67"; null when absent. */
  number(key: string): number | null;
  /** Pairs of quantities, each in its canonical unit; null when absent, or where one cannot be read. */
  pairs(key: string, first: string, second: string): readonly (readonly [number, number])[] | null;
  /** A yes or no; the fallback when absent. */
  flag(key: string, fallback: boolean): boolean;
  has(key: string): boolean;
  report(problem: SettingsProblem): void;
  /** Canonical unit of the first input. */
  readonly unit: string;
  /** A mark starts it anew. */
  readonly marked: boolean;
  /** Where among the given inputs this one stands, counted from 0; -1 where it is left out. */
  place(input: string): number;
}

export function derivedSettingsReader(
  written: Readonly<Record<string, unknown>>,
  unit: string,
  inputs: readonly string[],
  problems: SettingsProblem[],
  marked = false,
): DerivedSettingsReader {
  const inUnit = (code: string) =>
    settingsReader(written, { unit: code, digits: null, expectEveryMs: null }, problems);
  const own = inUnit(unit);
  const quantity = (key: string, code: string): number | null => inUnit(code).limit(key);
  return {
    unit,
    marked,
    quantity,
    positive(key, code) {
      const value = quantity(key, code);
      if (value !== null && value > 0) return value;
      if (value !== null)
        problems.push({
          path: [key],
          problem: 'it must be above zero',
          fix: 'look again at the number and its sign',
        });
      return 1;
    },
    limit: (key) => own.limit(key),
    duration: (key, fallbackMs) => own.duration(key, fallbackMs),
    number(key) {
      const value = Object.hasOwn(written, key) ? written[key] : undefined;
      if (typeof value !== 'string') return own.has(key) ? own.number(key, 0) : null;
      const read = Number(value);
      if (value.trim() !== '' && Number.isFinite(read)) return read;
      problems.push({
        path: [key],
        problem: `"${value}" is no number`,
        fix: 'write a bare number, as 0.67',
      });
      return null;
    },
    pairs: (key, first, second) => pairsOf(written, key, [first, second], problems),
    flag: (key, fallback) => own.flag(key, fallback),
    has: (key) => own.has(key),
    report: (problem) => problems.push(problem),
    place: (input) => inputs.indexOf(input),
  };
}

function pairsOf(
  written: Readonly<Record<string, unknown>>,
  key: string,
  units: readonly [string, string],
  problems: SettingsProblem[],
): readonly (readonly [number, number])[] | null {
  const listed = Object.hasOwn(written, key) ? written[key] : undefined;
  if (!Array.isArray(listed)) return null;
  const rows = listed.map((row: unknown, i): readonly (number | null)[] =>
    units.map((unit, place) => {
      const cell: unknown = Array.isArray(row) ? row[place] : undefined;
      const wrong: SettingsProblem[] = [];
      const own = { unit, digits: null, expectEveryMs: null };
      const value = settingsReader({ [key]: cell ?? '' }, own, wrong).limit(key);
      for (const { problem, fix } of wrong) problems.push({ path: [key, i, place], problem, fix });
      return value;
    }),
  );
  const read = rows.flatMap(([a, b]) => (a == null || b == null ? [] : [[a, b] as const]));
  return read.length === rows.length ? read : null;
}
