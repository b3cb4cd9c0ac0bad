/**
 * A beat's samples as the body of one row of the input log.
 *
 * A frame is a version byte, the count, then the samples. A sample is a head byte, the stored
 * signal's id, and what the head announces:
 *
 *   bits 0-2  decimals 0 to 6: the value follows as a zigzag varint k, to be read as k / 10^decimals;
 *             7: it follows as a double
 *   bit 3     its `at` differs from the row's judged: zigzag varint of the difference
 *   bit 4     its `judged` differs from the row's: zigzag varint of the difference
 *   bit 5     a quality byte follows          bit 6     a flags byte follows
 *   bit 7     there is no value
 *
 * Always true: what was packed is unpacked to the bit, whatever decimals were promised (a value
 * that is no whole k is kept as a double); a frame says by itself how it is read; bad carries no value.
 */
import { firstBadCode } from '#rules/signal/quality.ts';
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { ByteReader, ByteWriter, wholeMax } from './varint.ts';

const version = 1;
const asDouble = 7;
const hasAt = 8;
const hasJudged = 16;
const hasQuality = 32;
const hasFlags = 64;
const noValue = 128;
/** Head 1, id 5, at 8, judged 8, value 8, quality 1, flags 1. */
const sampleBytesMax = 32;

/** Powers of ten that a frame's decimals may name. */
export const scales = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000] as const;

/** For each signal index of a batch: the stored id, and the decimals of its resolution (-1: none). */
export interface StoredSignals {
  readonly ids: Int32Array;
  readonly digits: Int8Array;
}

export class FramePacker {
  private readonly writer = new ByteWriter(64 * 1_024);

  /**
   * The samples `from` up to, not including, `to`, judged at the row's `judged` unless they say
   * otherwise. The result is a view that holds until the next call.
   */
  pack(
    batch: SampleBatch,
    signals: StoredSignals,
    judged: EpochMs,
    from = 0,
    to = batch.count,
  ): Uint8Array {
    const { writer } = this;
    writer.at = 0;
    writer.room((to - from) * sampleBytesMax + 16);
    writer.byte(version);
    writer.whole(to - from);
    for (let i = from; i < to; i += 1) packSample(writer, batch, signals, judged, i);
    return writer.written();
  }
}

function packSample(
  writer: ByteWriter,
  batch: SampleBatch,
  signals: StoredSignals,
  judged: EpochMs,
  i: number,
): void {
  const signal = batch.signal[i]!;
  const quality = batch.quality[i]!;
  const flags = batch.flags[i]!;
  const value = batch.value[i]!;
  const atExcess = batch.at[i]! - judged;
  const judgedExcess = batch.judged[i]! - judged;
  const digits = signals.digits[signal]!;
  let k = 0;
  let head = noValue;
  if (quality < firstBadCode) {
    head = asDouble;
    if (digits >= 0 && digits <= 6) {
      const scale = scales[digits]!;
      k = Math.round(value * scale);
      if (readsBack(k, scale, value)) head = digits;
    }
  }
  const form = head;
  if (atExcess !== 0) head |= hasAt;
  if (judgedExcess !== 0) head |= hasJudged;
  if (quality !== 0) head |= hasQuality;
  if (flags !== 0) head |= hasFlags;
  writer.byte(head);
  writer.whole(signals.ids[signal]!);
  if (atExcess !== 0) writer.signed(atExcess);
  if (judgedExcess !== 0) writer.signed(judgedExcess);
  if (form < asDouble) writer.signed(k);
  else if (form === asDouble) writer.double(value);
  if (quality !== 0) writer.byte(quality);
  if (flags !== 0) writer.byte(flags);
}

/** Whether k / scale is the value to the bit: -0 and what has more decimals is not. */
export function readsBack(k: number, scale: number, value: number): boolean {
  if (k / scale !== value || k > wholeMax / 2 || k < -wholeMax / 2) return false;
  return k !== 0 || 1 / value > 0;
}

/**
 * Adds a frame's samples to `batch`. Their signal is the stored id, or what `indexOf` has for it;
 * samples of signals that are -1 there, or beyond it, are left out.
 * Throws AgentError STORE_FRAME_UNREADABLE.
 */
export function unpackFrame(
  body: Uint8Array,
  judged: EpochMs,
  batch: SampleBatch,
  indexOf: Int32Array | null = null,
): void {
  const reader = new ByteReader(body);
  try {
    const found = reader.byte();
    if (found !== version) throw new RangeError(`its version is ${found}, not ${version}`);
    const count = reader.whole();
    for (let i = 0; i < count; i += 1) unpackSample(reader, judged, batch, indexOf);
    if (!reader.ended) throw new RangeError('bytes follow the last sample');
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new AgentError('STORE_FRAME_UNREADABLE', { reason: error.message }, error);
  }
}

function unpackSample(
  reader: ByteReader,
  judged: EpochMs,
  batch: SampleBatch,
  indexOf: Int32Array | null,
): void {
  const head = reader.byte();
  const id = reader.whole();
  const at = (head & hasAt) === 0 ? judged : judged + reader.signed();
  const used = (head & hasJudged) === 0 ? judged : judged + reader.signed();
  let value = 0;
  if ((head & noValue) === 0) {
    const digits = head & 7;
    value = digits === asDouble ? reader.double() : reader.signed() / scales[digits]!;
  }
  const quality = (head & hasQuality) === 0 ? 0 : reader.byte();
  const flags = (head & hasFlags) === 0 ? 0 : reader.byte();
  const signal = indexOf === null ? id : (indexOf[id] ?? -1);
  if (signal >= 0) batch.push(signal, at, used, value, quality, flags);
}
