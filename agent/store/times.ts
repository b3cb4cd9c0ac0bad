/**
 * The times, qualities and flags of a chunk's samples as streams of bytes.
 *
 * Times of arrival lie on the beat's grid and sensors' own times on whole seconds as a rule: times
 * are counted on the coarsest grid that holds them all, and only what a step differs from the
 * common one is kept. What hardly ever changes is kept as runs.
 */
import type { Column } from './columns.ts';
import type { OpenColumn } from './contract.ts';
import type { ByteReader, ByteWriter } from './varint.ts';

/** Steps looked at to find the common one. */
const stepsSampled = 255;
/** Zigzag of a time and its run. */
const bytesPerRun = 16;

export function writeTimes(writer: ByteWriter, column: OpenColumn, from: number, to: number): void {
  const { at } = column;
  const gridMs = gridOf(at, from, to);
  const step = commonStep(at, from, to, gridMs);
  writer.room((to - from) * 8 + 64);
  writer.signed(at[from]!);
  writer.whole(gridMs);
  writer.signed(step);
  for (let i = from + 1; i < to; i += 1) writer.signed((at[i]! - at[i - 1]!) / gridMs - step);
  writeExcess(writer, column, from, to);
  writeQualities(writer, column, from, to);
}

/** Greatest common divisor of all steps; 1 where there is none. */
function gridOf(at: Float64Array, from: number, to: number): number {
  let grid = 0;
  for (let i = from + 1; i < to && grid !== 1; i += 1) {
    let a = Math.abs(at[i]! - at[i - 1]!);
    let b = grid;
    while (b !== 0) [a, b] = [b, a % b];
    grid = a;
  }
  return grid === 0 ? 1 : grid;
}

/** The median of some steps: exact where they are even, in the middle where they jitter. */
function commonStep(at: Float64Array, from: number, to: number, gridMs: number): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor((to - from) / stepsSampled));
  for (let i = from + 1; i < to; i += stride) steps.push((at[i]! - at[i - 1]!) / gridMs);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

function writeExcess(writer: ByteWriter, column: OpenColumn, from: number, to: number): void {
  const { at, judged } = column;
  let i = from;
  while (i < to) {
    const excessMs = judged[i]! - at[i]!;
    const start = i;
    do i += 1;
    while (i < to && judged[i]! - at[i]! === excessMs);
    writer.room(bytesPerRun);
    writer.signed(excessMs);
    writer.whole(i - start);
  }
}

function writeQualities(writer: ByteWriter, column: OpenColumn, from: number, to: number): void {
  const { quality, flags } = column;
  let i = from;
  while (i < to) {
    const start = i;
    do i += 1;
    while (i < to && quality[i] === quality[start] && flags[i] === flags[start]);
    writer.room(bytesPerRun);
    writer.byte(quality[start]!);
    writer.byte(flags[start]!);
    writer.whole(i - start);
  }
}

/** Fills `n` places of the column from its count on; there must be room. */
export function readTimes(reader: ByteReader, column: Column, n: number): void {
  const { at, judged, quality, flags } = column;
  const from = column.count;
  const to = from + n;
  let time = reader.signed();
  const gridMs = reader.whole();
  const stepMs = reader.signed() * gridMs;
  at[from] = time;
  for (let i = from + 1; i < to; i += 1) {
    time += stepMs + reader.signed() * gridMs;
    at[i] = time;
  }
  for (let i = from; i < to; ) {
    const excessMs = reader.signed();
    const end = i + runOf(reader, to - i);
    for (; i < end; i += 1) judged[i] = at[i]! + excessMs;
  }
  for (let i = from; i < to; ) {
    const code = reader.byte();
    const flag = reader.byte();
    const end = i + runOf(reader, to - i);
    quality.fill(code, i, end);
    flags.fill(flag, i, end);
    i = end;
  }
}

function runOf(reader: ByteReader, most: number): number {
  const run = reader.whole();
  if (run === 0 || run > most) throw new RangeError('a run is longer than the chunk');
  return run;
}
