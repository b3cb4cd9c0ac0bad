/**
 * What a damaged write-ahead log still shows of the commits behind the damage.
 *
 * SQLite takes a log up to the first frame whose checksum does not hold, and says nothing of those
 * behind it. The high water names what is lost, except after a power cut, which may take its last
 * second. The frames behind still carry this log's salts, and so their commits can be counted.
 *
 * Source: sqlite.org/fileformat.html, sections 4.1 to 4.3.
 */
import { readFileSync } from 'node:fs';
import { fileBytes } from './data-folder.ts';

const [headerBytes, frameHeaderBytes] = [32, 24];

class Checksum {
  first = 0;
  second = 0;
  private readonly big: boolean;

  constructor(big: boolean) {
    this.big = big;
  }

  add(bytes: Buffer, from: number, to: number): void {
    for (let at = from; at < to; at += 8) {
      const a = this.big ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at);
      const b = this.big ? bytes.readUInt32BE(at + 4) : bytes.readUInt32LE(at + 4);
      this.first = (this.first + a + this.second) >>> 0;
      this.second = (this.second + b + this.first) >>> 0;
    }
  }

  /** Goes on from one that was written. */
  from(bytes: Buffer, at: number): void {
    this.first = bytes.readUInt32BE(at);
    this.second = bytes.readUInt32BE(at + 4);
  }

  is(bytes: Buffer, at: number): boolean {
    return bytes.readUInt32BE(at) === this.first && bytes.readUInt32BE(at + 4) === this.second;
  }
}

/**
 * Commits of the log of `database` behind the first frame that does not hold; 0 where all holds, there
 * is no log, or all they wrote stands in the main file already: a log is begun anew over one that was
 * taken in, and the end may come over that. The last of them may be one that the end came over, and
 * nobody was told of; any before it was whole once. No connection may be open.
 *
 * Each frame's checksum goes on from that of the one before, so frames that were in force together
 * form a chain. What a refusing disk leaves of commits that failed, each written over the one before,
 * is no chain with another: only the longest is counted, and of it what holds.
 */
export function commitsBehindDamage(database: string): number {
  const path = `${database}-wal`;
  if (fileBytes(path) < headerBytes) return 0;
  const log = readFileSync(path);
  const pageBytes = log.readUInt32BE(8);
  const frameBytes = frameHeaderBytes + pageBytes;
  const salt = log.subarray(16, 24);
  const sum = new Checksum((log.readUInt32BE(0) & 1) === 1);
  sum.add(log, 0, 24);
  let holds = sum.is(log, 24);
  let [inChain, most] = [0, 0];
  /** Where the last of each page stands behind the damage, by page number. */
  const pages = new Map<number, number>();
  for (let at = headerBytes; at + frameBytes <= log.length; at += frameBytes) {
    if (!log.subarray(at + 8, at + 16).equals(salt)) {
      holds = false;
      inChain = 0;
      continue;
    }
    if (!holds && at > headerBytes) sum.from(log, at - frameBytes + 16);
    sum.add(log, at, at + 8);
    sum.add(log, at + frameHeaderBytes, at + frameBytes);
    const follows = sum.is(log, at + 16);
    holds &&= follows;
    if (holds) continue;
    if (!follows) {
      inChain = 0;
      continue;
    }
    pages.set(log.readUInt32BE(at), at + frameHeaderBytes);
    if (log.readUInt32BE(at + 4) > 0) inChain += 1;
    most = Math.max(most, inChain);
  }
  if (most === 0) return 0;
  const main = readFileSync(database);
  const isTaken = ([page, from]: [number, number]): boolean =>
    main
      .subarray((page - 1) * pageBytes, page * pageBytes)
      .equals(log.subarray(from, from + pageBytes));
  return [...pages].every(isTaken) ? 0 : most;
}
