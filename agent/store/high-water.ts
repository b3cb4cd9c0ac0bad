/**
 * The high-water file: 32 bytes outside the database that say how far it had come.
 *
 * SQLite drops what follows a damaged byte of its write-ahead log and says nothing. This file says
 * it: at start a database that has less than was noted here has lost it.
 *
 * Layout, little endian: u48 last seq, u48 last ledger id, 16 bytes of that record's hash, u32
 * CRC-32 of the 28 before. It is rewritten in place by one write, after each commit, and never leads
 * the database; once a second it is made durable.
 */
import { closeSync, constants, fdatasync, fsyncSync, openSync, writeSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { fileBytes, firstBytes } from './data-folder.ts';

export interface HighWater {
  readonly seq: number;
  readonly ledgerId: number;
  /** The first 16 bytes of the ledger's hash at that id. */
  readonly hash16: Uint8Array;
}

const recordBytes = 32;

export function encodeHighWater(mark: HighWater): Buffer {
  const bytes = Buffer.alloc(recordBytes);
  bytes.writeUIntLE(mark.seq, 0, 6);
  bytes.writeUIntLE(mark.ledgerId, 6, 6);
  bytes.set(mark.hash16.subarray(0, 16), 12);
  bytes.writeUInt32LE(crc32(bytes.subarray(0, 28)), 28);
  return bytes;
}

/** Null if the file is not there; 'unreadable' if its checksum does not hold. */
export function readHighWater(path: string): HighWater | 'unreadable' | null {
  if (fileBytes(path) === 0) return null;
  const bytes = firstBytes(path, recordBytes);
  if (bytes.length < recordBytes) return 'unreadable';
  if (crc32(bytes.subarray(0, 28)) !== bytes.readUInt32LE(28)) return 'unreadable';
  return {
    seq: bytes.readUIntLE(0, 6),
    ledgerId: bytes.readUIntLE(6, 6),
    hash16: Uint8Array.from(bytes.subarray(12, 28)),
  };
}

/** Keeps the file open for rewriting. */
export class HighWaterFile {
  private readonly fd: number;
  private syncing = false;
  private closing = false;
  private syncFailure: Error | null = null;

  constructor(path: string) {
    this.fd = openSync(path, constants.O_RDWR | constants.O_CREAT, 0o600);
  }

  /**
   * One write now, made durable in the background, where it cannot delay a beat.
   * Throws what kept this write, or the last one's durability, from happening.
   */
  note(mark: HighWater): void {
    this.write(mark);
    const failure = this.syncFailure;
    this.syncFailure = null;
    if (!this.syncing) this.sync();
    if (failure !== null) throw failure;
  }

  /**
   * One write now, and no more: it outlives this process though not a power cut. What keeps it from
   * happening keeps the next note from happening too, which tells.
   */
  jot(mark: HighWater): void {
    try {
      this.write(mark);
    } catch {
      // What it was for is on disk already; the next note meets the same disk and throws.
    }
  }

  /** The last note, durable before this returns; null leaves the file as it is. */
  close(mark: HighWater | null): void {
    try {
      if (mark !== null) {
        this.write(mark);
        fsyncSync(this.fd);
      }
    } finally {
      this.closing = true;
      if (!this.syncing) closeSync(this.fd);
    }
  }

  private sync(): void {
    this.syncing = true;
    fdatasync(this.fd, (error) => {
      this.syncing = false;
      this.syncFailure = error;
      if (this.closing) closeSync(this.fd);
    });
  }

  private write(mark: HighWater): void {
    const written = writeSync(this.fd, encodeHighWater(mark), 0, recordBytes, 0);
    if (written !== recordBytes) throw new Error(`the high-water file took ${written} bytes`);
  }
}
