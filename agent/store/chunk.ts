/**
 * One signal's sealed samples as bytes.
 *
 * Samples stand in the order of judgement: (judged, at, arrival). Streams, one after the other,
 * each of a length the one before tells, then deflated together:
 *
 *   head      count, mode (decimals 0 to 6, or 7 for doubles), first `at`, grid, common step
 *   at        difference to the one before on the grid, less the common step
 *   judged    judged - at, as runs (a signal's hold, as a rule)
 *   quality   quality and flags, as runs
 *   value     of samples that are not bad. Decimals: difference of k to the one before, then the
 *             few values that are no whole k, by place. Doubles: XOR with the one before, byte by byte
 *
 * Always true: decoding gives what was encoded, to the bit; the bytes say by themselves how they
 * are read. Deflate and not zstd, which gains under 5 % here, is slower at the same size, and is
 * experimental in Node 24 (tests/bench/record.ts).
 */
import { constants, crc32, deflateRawSync, inflateRawSync } from 'node:zlib';
import { isInDoubt } from '#rules/signal/doubt.ts';
import { firstBadCode } from '#rules/signal/quality.ts';
import { sampleFlag } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import type { Column } from './columns.ts';
import type { OpenColumn } from './contract.ts';
import { readsBack, scales } from './frame.ts';
import { encodeMinutes, summarise } from './minutes.ts';
import { type EncodedChunk, partOf, pieceSamplesMax } from './segment.ts';
import { readTimes, writeTimes } from './times.ts';
import { readValues, writeValues } from './values.ts';
import { ByteReader, ByteWriter } from './varint.ts';

/** For `body.codec`; a number is never given a new meaning. */
export const chunkCodec = 1;
const asDoubles = 7;
/** Where more than one value in so many is no whole k, all are kept as doubles. */
const oddShareMax = 16;

/** Encodes one signal's column of one epoch; `digits` as the signal's resolution has it. */
export function encodeColumn(
  signal: number,
  digits: number | null,
  epoch: number,
  column: OpenColumn,
): EncodedChunk[] {
  const sorted = inOrderOfJudgement(column);
  const chunks: EncodedChunk[] = [];
  for (let from = 0; from < sorted.count; from += pieceSamplesMax) {
    const to = Math.min(sorted.count, from + pieceSamplesMax);
    chunks.push(encodePiece(signal, digits, partOf(epoch, chunks.length), sorted, from, to));
  }
  return chunks;
}

function encodePiece(
  signal: number,
  digits: number | null,
  part: number,
  column: OpenColumn,
  from: number,
  to: number,
): EncodedChunk {
  const form = formOf(column, from, to, digits);
  const writer = new ByteWriter((to - from) * 24 + 256);
  writer.whole(to - from);
  writer.byte(form.mode);
  writeTimes(writer, column, from, to);
  writeValues(writer, column, from, to, form.mode);
  const deflated = deflateRawSync(writer.written(), { level: 6, strategy: constants.Z_FILTERED });
  // Memory of its own: it is handed to another thread, and what surrounds it would go along.
  const data = new Uint8Array(deflated);
  const exact = form.mode !== asDoubles && form.odd === 0;
  return {
    signal,
    part,
    ...figures(column, from, to),
    codec: chunkCodec,
    crc: crc32(data),
    minutes: encodeMinutes(summarise(column, from, to, exact ? form.mode : null)),
    data,
  };
}

/** How many values are no whole k, and whether that is few enough to keep the rest as k. */
function formOf(column: OpenColumn, from: number, to: number, digits: number | null) {
  if (digits === null || digits < 0 || digits > 6) return { mode: asDoubles, odd: 0 };
  const scale = scales[digits]!;
  let odd = 0;
  for (let i = from; i < to; i += 1) {
    if (column.quality[i]! >= firstBadCode) continue;
    const value = column.value[i]!;
    if (!readsBack(Math.round(value * scale), scale, value)) odd += 1;
  }
  return { mode: odd * oddShareMax > to - from ? asDoubles : digits, odd };
}

/** The figures of the row `chunk`. */
function figures(column: OpenColumn, from: number, to: number) {
  let t0 = Number.POSITIVE_INFINITY;
  let t1 = Number.NEGATIVE_INFINITY;
  let lo = Number.POSITIVE_INFINITY;
  let hi = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let bad = 0;
  let late = 0;
  let conflict = 0;
  for (let i = from; i < to; i += 1) {
    const at = column.at[i]!;
    const flags = column.flags[i]!;
    if (at < t0) t0 = at;
    if (at > t1) t1 = at;
    if (isInDoubt(column.quality[i]!, flags)) late += 1;
    if (column.quality[i]! >= firstBadCode) bad += 1;
    else if ((flags & sampleFlag.conflict) !== 0) conflict += 1;
    else {
      const value = column.value[i]!;
      if (value < lo) lo = value;
      if (value > hi) hi = value;
      sum += value;
    }
  }
  const n = to - from;
  const usable = n - bad - conflict;
  const figure = (value: number): number | null => (usable > 0 ? value : null);
  const sumOrNull = conflict > 0 ? null : figure(sum);
  return { t0, t1, n, bad, late, lo: figure(lo), hi: figure(hi), sum: sumOrNull };
}

/** The column itself where it is in the order of judgement already. */
export const inOrderOfJudgement = (column: OpenColumn): OpenColumn =>
  ordered(column, column.judged, column.at);

/** Ascending by `first`, then `second`, then place; the column itself where it is so already. */
function ordered(column: OpenColumn, first: Float64Array, second: Float64Array): OpenColumn {
  const { count } = column;
  let i = 1;
  while (
    i < count &&
    (first[i - 1]! < first[i]! || (first[i - 1] === first[i] && second[i - 1]! <= second[i]!))
  ) {
    i += 1;
  }
  if (i >= count) return column;
  const order = Uint32Array.from({ length: count }, (_, place) => place);
  order.sort((a, b) => first[a]! - first[b]! || second[a]! - second[b]! || a - b);
  const sorted: OpenColumn = {
    count,
    at: new Float64Array(count),
    judged: new Float64Array(count),
    value: new Float64Array(count),
    quality: new Uint8Array(count),
    flags: new Uint8Array(count),
  };
  for (const name of ['at', 'judged', 'value', 'quality', 'flags'] as const) {
    for (let place = 0; place < count; place += 1)
      sorted[name][place] = column[name][order[place]!]!;
  }
  return sorted;
}

/** Puts a column's samples in the order of judgement, or of their own time, where they are not. */
export function orderBy(time: 'judged' | 'at', column: Column): void {
  const sorted = ordered(column, column[time], column.at);
  if (sorted === column) return;
  column.count = 0;
  column.append(sorted);
}

/**
 * Adds a chunk's samples to `column`, in their order. `crc` as stored with the data.
 * Throws AgentError STORE_FRAME_UNREADABLE where the bytes are not what was written.
 */
export function decodeChunk(codec: number, crc: number, data: Uint8Array, column: Column): void {
  const count = column.count;
  try {
    if (codec !== chunkCodec) throw new RangeError(`their codec is ${codec}, not ${chunkCodec}`);
    if (crc32(data) !== crc) throw new RangeError('the checksum does not hold');
    readSamples(new ByteReader(inflateRawSync(data)), column);
  } catch (error) {
    column.count = count;
    if (!(error instanceof RangeError) && !isZlibError(error)) throw error;
    throw new AgentError('STORE_FRAME_UNREADABLE', { reason: error.message }, error);
  }
}

const isZlibError = (error: unknown): error is Error =>
  error instanceof Error && 'code' in error && String(error.code).startsWith('Z_');

function readSamples(reader: ByteReader, column: Column): void {
  const n = reader.whole();
  const mode = reader.byte();
  if (n > pieceSamplesMax || mode > asDoubles) throw new RangeError('an impossible head');
  column.reserve(column.count + n);
  readTimes(reader, column, n);
  readValues(reader, column, n, mode);
  if (!reader.ended) throw new RangeError('bytes follow the last sample');
  column.count += n;
}
