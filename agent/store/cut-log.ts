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

  is(bytes: Buffer, at: number): boolean {
    return bytes.readUInt32BE(at) === this.first && bytes.readUInt32BE(at + 4) === this.second;
  }
}

/**
 * Commits behind the first frame that does not hold; 0 where all holds or there is no log. The last of
 * them may be one that the end came over, and nobody was told of; any before it was whole once.
 * No connection may be open.
 */
export function commitsBehindDamage(path: string): number {
  if (fileBytes(path) < headerBytes) return 0;
  const log = readFileSync(path);
  const frameBytes = frameHeaderBytes + log.readUInt32BE(8);
  const salt = log.subarray(16, 24);
  const sum = new Checksum((log.readUInt32BE(0) & 1) === 1);
  sum.add(log, 0, 24);
  let holds = sum.is(log, 24);
  let behind = 0;
  for (let at = headerBytes; at + frameBytes <= log.length; at += frameBytes) {
    const ours = log.subarray(at + 8, at + 16).equals(salt);
    if (holds) {
      sum.add(log, at, at + 8);
      sum.add(log, at + frameHeaderBytes, at + frameBytes);
      holds = ours && sum.is(log, at + 16);
    }
    if (!holds && ours && log.readUInt32BE(at + 4) > 0) behind += 1;
  }
  return behind;
}
