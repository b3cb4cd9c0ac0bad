/**
 * The ballast: a file of 16 MB that is given up when the disk is full.
 *
 * On a full disk SQLite cannot even delete (seen: DELETE and checkpoint fail alike), so space must
 * come from outside the database. It is re-made a slice at a time once there is room for it twice.
 */
import { randomBytes } from 'node:crypto';
import { appendFileSync, chmodSync, rmSync } from 'node:fs';
import { fileBytes } from './data-folder.ts';
import { freeSpace } from './disk-space.ts';
import type { Finding } from './store-types.ts';

const sliceBytes = 1_048_576;

export class Ballast {
  private readonly path: string;
  private readonly folder: string;
  private readonly wantedBytes: number;

  constructor(path: string, folder: string, wantedBytes: number) {
    this.path = path;
    this.folder = folder;
    this.wantedBytes = wantedBytes;
  }

  bytes(): number {
    return fileBytes(this.path);
  }

  /** True if there was something to give up. */
  release(): boolean {
    const had = this.bytes() > 0;
    rmSync(this.path, { force: true });
    return had;
  }

  /**
   * Writes the next slice if the disk has room for the whole ballast twice; true once it stands.
   * Random bytes, because a file system that compresses would keep a file of zeros in nothing.
   */
  tend(): boolean {
    const missing = this.wantedBytes - this.bytes();
    if (missing <= 0) return true;
    if (freeSpace(this.folder).freeBytes < missing + this.wantedBytes) return false;
    appendFileSync(this.path, randomBytes(Math.min(sliceBytes, missing)), { mode: 0o600 });
    chmodSync(this.path, 0o600);
    return missing <= sliceBytes;
  }

  /** Makes all of it, if there is room. */
  make(): boolean {
    while (!this.tend()) {
      if (freeSpace(this.folder).freeBytes < 2 * this.wantedBytes) return false;
    }
    return true;
  }
}

/** A store without a reserve runs; people are told that a full disk will find it unprepared. */
export function ballastFindings(ballast: Ballast): Finding[] {
  try {
    return ballast.make() ? [] : [{ kind: 'no-ballast', why: 'the disk has no room for it twice' }];
  } catch (error) {
    return [{ kind: 'no-ballast', why: error instanceof Error ? error.message : 'unknown' }];
  }
}
