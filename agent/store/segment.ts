/**
 * A sealed segment on its way to disk: what the encoder makes and one transaction writes.
 *
 * A segment covers the whole input log from `firstSeq` to `lastSeq`. Within it a signal has one
 * chunk a part; parts of one signal follow each other in the order of judgement. The table `chunk`
 * holds a chunk's figures, `body` its bytes; `chunk` needs an index on `segment`, because the
 * record is read segment by segment.
 */
import type { EpochMs } from '#rules/signal/sample.ts';

/** Rows `chunk` and `body` of one signal's part. */
export interface EncodedChunk {
  /** Id of the stored signal. */
  readonly signal: number;
  /** `partOf(epoch, piece)`. */
  readonly part: number;
  /** Least and greatest `at`. */
  readonly t0: EpochMs;
  readonly t1: EpochMs;
  /** Every sample stored, bad, late and conflicting ones included. */
  readonly n: number;
  readonly bad: number;
  /** In doubt and not bad: late, in conflict or uncertain. */
  readonly late: number;
  /** Over usable samples (neither bad nor in conflict); null where there is none. */
  readonly lo: number | null;
  readonly hi: number | null;
  /** Sum of the usable values; null where there is none, and where a conflict makes `n - bad` no count of them. */
  readonly sum: number | null;
  /** For `body.codec`. */
  readonly codec: number;
  /** For `body.crc`: CRC-32 of `data`. */
  readonly crc: number;
  /** For `body.minutes`: carries its own CRC, because it outlives `data`. */
  readonly minutes: Uint8Array;
  readonly data: Uint8Array;
}

export interface SegmentSpan {
  /** Row `segment`: the input rows it covers, and the judged times of the first and last of them. */
  readonly firstSeq: number;
  readonly lastSeq: number;
  readonly judgedFrom: EpochMs;
  readonly judgedTo: EpochMs;
}

export interface EncodedSegment extends SegmentSpan {
  readonly chunks: readonly EncodedChunk[];
}

/** Samples of one chunk at most, so that a reader's memory is bounded. */
export const pieceSamplesMax = 65_536;

/** A clock set back (`rebase`) begins a new epoch: judged times of two epochs cannot be compared. */
export const partOf = (epoch: number, piece: number): number => epoch * 65_536 + piece;
export const epochOf = (part: number): number => Math.floor(part / 65_536);
