/**
 * The values of a chunk's samples as bytes; bad samples carry none and read as 0.
 *
 * Decimals: differences of k. The few values that are no whole k (a negative zero, more decimals
 * than promised) stand behind by place, as doubles. Doubles: XOR with the one before, all first
 * bytes together, then all second bytes …, because neighbours agree in the leading ones.
 */
import { firstBadCode } from '#rules/signal/quality.ts';
import type { Column } from './columns.ts';
import type { OpenColumn } from './contract.ts';
import { readsBack, scales } from './frame.ts';
import type { ByteReader, ByteWriter } from './varint.ts';

const asDoubles = 7;

export function writeValues(
  writer: ByteWriter,
  column: OpenColumn,
  from: number,
  to: number,
  mode: number,
): void {
  if (mode === asDoubles) writeDoubles(writer, column, from, to);
  else writeDecimals(writer, column, from, to, scales[mode]!);
}

function writeDecimals(
  writer: ByteWriter,
  column: OpenColumn,
  from: number,
  to: number,
  scale: number,
): void {
  const { value, quality } = column;
  const odd: number[] = [];
  writer.room((to - from) * 9 + 16);
  let before = 0;
  for (let i = from; i < to; i += 1) {
    if (quality[i]! >= firstBadCode) continue;
    let k = Math.round(value[i]! * scale);
    if (!readsBack(k, scale, value[i]!)) {
      odd.push(i);
      k = before;
    }
    writer.signed(k - before);
    before = k;
  }
  writer.whole(odd.length);
  writer.room(odd.length * 16);
  let last = from;
  for (const i of odd) {
    writer.whole(i - last);
    writer.double(value[i]!);
    last = i;
  }
}

function writeDoubles(writer: ByteWriter, column: OpenColumn, from: number, to: number): void {
  const { value, quality } = column;
  const kept = new Float64Array(to - from);
  let count = 0;
  for (let i = from; i < to; i += 1) {
    if (quality[i]! < firstBadCode) kept[count++] = value[i]!;
  }
  const bits = new BigUint64Array(kept.buffer, 0, count);
  for (let i = count - 1; i > 0; i -= 1) bits[i] = bits[i]! ^ bits[i - 1]!;
  const bytes = new Uint8Array(kept.buffer, 0, count * 8);
  writer.room(count * 8);
  for (let plane = 7; plane >= 0; plane -= 1) {
    for (let i = 0; i < count; i += 1) writer.byte(bytes[i * 8 + plane]!);
  }
}

/** Fills `n` places of the column from its count on, whose qualities are there already. */
export function readValues(reader: ByteReader, column: Column, n: number, mode: number): void {
  if (mode === asDoubles) readDoubles(reader, column, n);
  else readDecimals(reader, column, n, scales[mode]!);
}

function readDecimals(reader: ByteReader, column: Column, n: number, scale: number): void {
  const { value, quality } = column;
  const from = column.count;
  let k = 0;
  for (let i = from; i < from + n; i += 1) {
    if (quality[i]! >= firstBadCode) {
      value[i] = 0;
      continue;
    }
    k += reader.signed();
    value[i] = k / scale;
  }
  const odd = reader.whole();
  let place = from;
  for (let i = 0; i < odd; i += 1) {
    place += reader.whole();
    if (place >= from + n) throw new RangeError('a value beyond the last sample');
    value[place] = reader.double();
  }
}

function readDoubles(reader: ByteReader, column: Column, n: number): void {
  const { value, quality } = column;
  const from = column.count;
  let count = 0;
  for (let i = from; i < from + n; i += 1) if (quality[i]! < firstBadCode) count += 1;
  const kept = new Float64Array(count);
  const bytes = new Uint8Array(kept.buffer);
  for (let plane = 7; plane >= 0; plane -= 1) {
    for (let i = 0; i < count; i += 1) bytes[i * 8 + plane] = reader.byte();
  }
  const bits = new BigUint64Array(kept.buffer);
  for (let i = 1; i < count; i += 1) bits[i] = bits[i]! ^ bits[i - 1]!;
  let next = 0;
  for (let i = from; i < from + n; i += 1) {
    value[i] = quality[i]! >= firstBadCode ? 0 : kept[next++]!;
  }
}
