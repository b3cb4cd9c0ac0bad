/**
 * Room on the disk that holds the data folder, and how much of it is never taken.
 */
import { statfsSync } from 'node:fs';
import { limits } from '../limits.ts';

export interface DiskSpace {
  /** Free to this process. */
  readonly freeBytes: number;
  readonly totalBytes: number;
}

export function freeSpace(folder: string): DiskSpace {
  const disk = statfsSync(folder);
  return { freeBytes: disk.bavail * disk.bsize, totalBytes: disk.blocks * disk.bsize };
}

/** Bytes that stay free: 5 % of the disk, or `limits.freeBytesMin` where that is less. */
export const reserveBytes = (space: DiskSpace): number =>
  Math.min(limits.freeBytesMin, Math.floor(space.totalBytes * limits.freeShareMin));

/** How far the disk is below its reserve; 0 if it is not. */
export const shortfallBytes = (space: DiskSpace): number =>
  Math.max(0, reserveBytes(space) - space.freeBytes);
