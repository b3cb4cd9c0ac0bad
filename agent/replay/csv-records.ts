/**
 * Lines to cells. A record is one line: a quote that goes wrong costs its own line and no other.
 */
import { parse } from 'csv-parse/sync';
import type { Separator } from './csv-layout.ts';

const options = (separator: Separator) =>
  ({
    delimiter: separator,
    relax_column_count: true,
    record_delimiter: '\n',
    max_record_size: 0,
  }) as const;

function recordOf(line: string, separator: Separator): string[] | null {
  try {
    const [record, ...more] = parse(line, options(separator));
    return record === undefined || more.length > 0 ? null : record;
  } catch {
    return null;
  }
}

/** Cells of each line, none of them empty; null where its quotes do not match. */
export function recordsOf(lines: readonly string[], separator: Separator): (string[] | null)[] {
  try {
    const records = parse(lines.join('\n'), options(separator));
    if (records.length === lines.length) return records;
  } catch {
    // One line's quotes are wrong; which one is found below.
  }
  return lines.map((line) => recordOf(line, separator));
}
