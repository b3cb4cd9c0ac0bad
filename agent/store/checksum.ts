/**
 * Checksums of what SQLite does not check: a byte flipped in a blob passes `quick_check`.
 *
 * CRC-32 as of zlib (ISO 3309). A row of the input log is summed over its place and time too, so
 * that a sample cannot move to another moment unseen.
 */
import { crc32 } from 'node:zlib';
import type { InputRow } from './contract.ts';

const head = Buffer.alloc(20);

/** For `input.crc`: over seq and judged (binary64, little endian), kind (u32, little endian), body. */
export function inputCrc(row: InputRow): number {
  head.writeDoubleLE(row.seq, 0);
  head.writeDoubleLE(row.judged, 8);
  head.writeUInt32LE(row.kind, 16);
  return crc32(row.body, crc32(head));
}

/** For `snapshot.crc`. */
export const stateCrc = (state: Uint8Array): number => crc32(state);
