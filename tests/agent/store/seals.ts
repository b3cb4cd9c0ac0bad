/**
 * Seals for the tests of the tables around them; what is inside a chunk is no matter here.
 */
import { crc32 } from 'node:zlib';
import type { EncodedChunk } from '#agent/store/segment.ts';
import type { Seal } from '#agent/store/store-types.ts';

function chunkOf(signal: number, lastSeq: number, dataBytes: number): EncodedChunk {
  const data = Buffer.alloc(dataBytes, `signal ${signal} to ${lastSeq} `);
  return {
    signal,
    part: 0,
    t0: lastSeq * 1_000 - 500,
    t1: lastSeq * 1_000,
    n: 3,
    bad: 1,
    late: 0,
    lo: 1.5,
    hi: 2.5,
    sum: 4,
    codec: 1,
    crc: crc32(data),
    minutes: Buffer.from(`minutes of ${signal}`),
    data,
  };
}

/** One segment of two signals with `dataBytes` of raw samples each. */
export function sealOf(firstSeq: number, lastSeq: number, dataBytes = 300): Seal {
  return {
    segment: {
      firstSeq,
      lastSeq,
      judgedFrom: 10_000 + firstSeq * 20,
      judgedTo: 10_000 + lastSeq * 20,
      chunks: [chunkOf(1, lastSeq, dataBytes), chunkOf(2, lastSeq, dataBytes)],
    },
    snapshot: {
      judged: 10_000 + lastSeq * 20,
      format: 1,
      revision: 'aa',
      state: Buffer.from(`state at ${lastSeq}`),
    },
    commands: [{ seq: lastSeq, judged: 10_000 + lastSeq * 20, body: `{"seq":${lastSeq}}` }],
  };
}
