/** Fields of a station that carry a quantity: what they say must be one of the right kind. */
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import type { StationWritten } from '../site/schema.ts';
import type { Path, Report } from './draft.ts';

interface Field {
  readonly name: 'process_temperature' | 'residue_thickness' | 'container_size';
  readonly what: string;
  readonly canonical: string;
  readonly over: number;
  readonly most: number;
  readonly example: string;
}

const fields: readonly Field[] = [
  {
    name: 'process_temperature',
    what: 'temperature of a place',
    canonical: 'Cel',
    over: -50,
    most: 400,
    example: '155 Cel',
  },
  {
    name: 'residue_thickness',
    what: 'thickness of residue',
    canonical: 'mm',
    over: 0,
    most: 2_000,
    example: '50 mm',
  },
  {
    name: 'container_size',
    what: 'size of a container',
    canonical: 'L',
    over: 0,
    most: 2_000,
    example: '208 L',
  },
];

export function reportFields(written: StationWritten, path: Path, report: Report): void {
  for (const { name, what, canonical, over, most, example } of fields) {
    const text = written[name];
    if (text === undefined) continue;
    const read = parseQuantity(text, example);
    const value =
      read.ok && read.value.unit.canonical === canonical
        ? toCanonical(read.value.value, read.value.unit)
        : Number.NaN;
    if (value > over && value <= most) continue;
    report({
      path: [...path, name],
      problem: `${text} is no ${what}`,
      fix: `Write more than ${over} and at most ${most} ${canonical}, as "${example}".`,
    });
  }
}
