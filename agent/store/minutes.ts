/**
 * Per-minute summaries of one chunk: what is left of it when the raw samples have had to go, and
 * what a chart over weeks is drawn from.
 *
 * The blob: CRC-32 of the rest (4 bytes, little endian), the mode (decimals 0 to 6: figures are
 * whole k, read as k / 10^decimals; 7: doubles), the number of minutes, the first minute; then run
 * lengths of the steps between minutes, of the counts (those in doubt only where 8 is added to the
 * mode: there were none, or the summary is from before they were counted); then the figures of minutes that have any.
 *
 * Always true: every sample of the chunk is counted in the minute of its `at`; lo, hi and sum are
 * over usable samples, those neither bad nor in conflict with an earlier one.
 */
import { crc32 } from 'node:zlib';
import { isInDoubt } from '#rules/signal/doubt.ts';
import { firstBadCode } from '#rules/signal/quality.ts';
import { sampleFlag } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import type { OpenColumn } from './contract.ts';
import { scales } from './frame.ts';
import { ByteReader, ByteWriter, wholeMax } from './varint.ts';

export const minuteMs = 60_000;
const asDoubles = 7;
/** Added to the mode where samples in doubt are counted. */
const withDoubt = 8;

/** Column by column; `lo`, `hi`, `sum` are to be divided by `scale`. */
export class Minutes {
  /** Whole minutes since 1970, ascending. */
  minute: number[] = [];
  n: number[] = [];
  bad: number[] = [];
  /** In conflict and not bad. */
  conflict: number[] = [];
  /** Uncertain, late or in conflict, and not bad. */
  doubtful: number[] = [];
  lo: number[] = [];
  hi: number[] = [];
  sum: number[] = [];
  /** Decimals, or 7 for doubles. */
  readonly mode: number;

  constructor(mode: number) {
    this.mode = mode;
  }

  get scale(): number {
    return this.mode === asDoubles ? 1 : scales[this.mode]!;
  }

  add(minute: number, n: number, bad: number, conflict: number): number {
    this.minute.push(minute);
    this.n.push(n);
    this.bad.push(bad);
    this.conflict.push(conflict);
    this.doubtful.push(0);
    this.lo.push(Number.POSITIVE_INFINITY);
    this.hi.push(Number.NEGATIVE_INFINITY);
    return this.sum.push(0) - 1;
  }

  usable(i: number): number {
    return this.n[i]! - this.bad[i]! - this.conflict[i]!;
  }
}

/**
 * Sums up samples `from` up to, not including, `to`. `digits` 0 to 6 where every value is a whole
 * k / 10^digits, null otherwise.
 */
export function summarise(column: OpenColumn, from: number, to: number, digits: number | null) {
  const minutes = new Minutes(digits ?? asDoubles);
  const scale = digits === null ? 0 : scales[digits]!;
  const places = new Map<number, number>();
  let place = -1;
  let current = Number.NaN;
  for (let i = from; i < to; i += 1) {
    const minute = Math.floor(column.at[i]! / minuteMs);
    if (minute !== current) {
      current = minute;
      place = places.get(minute) ?? minutes.add(minute, 0, 0, 0);
      places.set(minute, place);
    }
    minutes.n[place]! += 1;
    if (isInDoubt(column.quality[i]!, column.flags[i]!)) minutes.doubtful[place]! += 1;
    if (column.quality[i]! >= firstBadCode) minutes.bad[place]! += 1;
    else if ((column.flags[i]! & sampleFlag.conflict) !== 0) minutes.conflict[place]! += 1;
    else {
      const value = column.value[i]!;
      const figure = scale === 0 ? value : Math.round(value * scale);
      if (figure < minutes.lo[place]!) minutes.lo[place] = figure;
      if (figure > minutes.hi[place]!) minutes.hi[place] = figure;
      minutes.sum[place]! += figure;
    }
  }
  return ascending(minutes);
}

function ascending(minutes: Minutes): Minutes {
  const inOrder = minutes.minute.every((minute, i) => i === 0 || minute > minutes.minute[i - 1]!);
  if (inOrder) return minutes;
  const order = minutes.minute.map((_, i) => i);
  order.sort((a, b) => minutes.minute[a]! - minutes.minute[b]!);
  const sorted = new Minutes(minutes.mode);
  for (const name of ['minute', 'n', 'bad', 'conflict', 'doubtful', 'lo', 'hi', 'sum'] as const) {
    sorted[name] = order.map((i) => minutes[name][i]!);
  }
  return sorted;
}

export function encodeMinutes(minutes: Minutes): Uint8Array {
  const count = minutes.minute.length;
  const whole = minutes.mode !== asDoubles && minutes.sum.every((sum) => Math.abs(sum) < wholeMax);
  if (!whole && minutes.mode !== asDoubles) return encodeMinutes(inDoubles(minutes));
  const writer = new ByteWriter(64 + count * 40);
  writer.at = 4;
  const anyDoubt = minutes.doubtful.some((n) => n > 0);
  writer.byte(minutes.mode + (anyDoubt ? withDoubt : 0));
  writer.whole(count);
  const first = minutes.minute[0] ?? 0;
  writer.signed(first);
  writeRuns(writer, minutes.minute, (minute, i) => (i === 0 ? 0 : minute - minutes.minute[i - 1]!));
  writeRuns(writer, minutes.n, (n) => n);
  writeRuns(writer, minutes.bad, (bad) => bad);
  writeRuns(writer, minutes.conflict, (conflict) => conflict);
  if (anyDoubt) writeRuns(writer, minutes.doubtful, (doubtful) => doubtful);
  let before = 0;
  for (let i = 0; i < count; i += 1) {
    const usable = minutes.usable(i);
    if (usable === 0) continue;
    const lo = minutes.lo[i]!;
    const hi = minutes.hi[i]!;
    const sum = minutes.sum[i]!;
    if (whole) {
      writer.signed(lo - before);
      writer.whole(hi - lo);
      writer.whole(sum - usable * lo);
      before = lo;
    } else {
      writer.double(lo);
      writer.double(hi);
      writer.double(sum);
    }
  }
  const bytes = writer.written().slice();
  new DataView(bytes.buffer).setUint32(0, crc32(bytes.subarray(4)), true);
  return bytes;
}

function inDoubles(minutes: Minutes): Minutes {
  const doubles = new Minutes(asDoubles);
  Object.assign(doubles, { minute: minutes.minute, n: minutes.n, bad: minutes.bad });
  doubles.conflict = minutes.conflict;
  doubles.doubtful = minutes.doubtful;
  doubles.lo = minutes.lo.map((k) => k / minutes.scale);
  doubles.hi = minutes.hi.map((k) => k / minutes.scale);
  doubles.sum = minutes.sum.map((k) => k / minutes.scale);
  return doubles;
}

/** Pairs of value and how often it comes in a row, over all of `list`. */
function writeRuns(
  writer: ByteWriter,
  list: readonly number[],
  figureOf: (item: number, i: number) => number,
): void {
  let i = 0;
  writer.room(list.length * 16);
  while (i < list.length) {
    const value = figureOf(list[i]!, i);
    let run = 1;
    while (i + run < list.length && figureOf(list[i + run]!, i + run) === value) run += 1;
    writer.whole(value);
    writer.whole(run);
    i += run;
  }
}

function readRuns(reader: ByteReader, count: number): number[] {
  const list: number[] = [];
  while (list.length < count) {
    const value = reader.whole();
    const run = reader.whole();
    if (run === 0 || list.length + run > count)
      throw new RangeError('a run is longer than the list');
    for (let i = 0; i < run; i += 1) list.push(value);
  }
  return list;
}

/** Throws AgentError STORE_FRAME_UNREADABLE where the bytes are not what was written. */
export function decodeMinutes(bytes: Uint8Array): Minutes {
  try {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    if (view.getUint32(0, true) !== crc32(bytes.subarray(4))) {
      throw new RangeError('the checksum of a minute summary does not hold');
    }
    return readMinutes(new ByteReader(bytes, 4));
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new AgentError('STORE_FRAME_UNREADABLE', { reason: error.message }, error);
  }
}

function readMinutes(reader: ByteReader): Minutes {
  const written = reader.byte();
  const anyDoubt = written >= withDoubt;
  const mode = anyDoubt ? written - withDoubt : written;
  if (mode > asDoubles) throw new RangeError(`a minute summary of mode ${mode}`);
  const minutes = new Minutes(mode);
  const count = reader.whole();
  let at = reader.signed();
  minutes.minute = readRuns(reader, count).map((step) => {
    at += step;
    return at;
  });
  minutes.n = readRuns(reader, count);
  minutes.bad = readRuns(reader, count);
  minutes.conflict = readRuns(reader, count);
  minutes.doubtful = anyDoubt ? readRuns(reader, count) : new Array<number>(count).fill(0);
  let before = 0;
  for (let i = 0; i < count; i += 1) {
    const usable = minutes.usable(i);
    if (usable === 0) {
      minutes.lo.push(Number.POSITIVE_INFINITY);
      minutes.hi.push(Number.NEGATIVE_INFINITY);
      minutes.sum.push(0);
      continue;
    }
    const lo = mode === asDoubles ? reader.double() : before + reader.signed();
    const hi = mode === asDoubles ? reader.double() : lo + reader.whole();
    minutes.lo.push(lo);
    minutes.hi.push(hi);
    minutes.sum.push(mode === asDoubles ? reader.double() : reader.whole() + usable * lo);
    before = lo;
  }
  return minutes;
}
