/**
 * A disk of a few megabytes for tests of a full one: a tmpfs, which only root may mount.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const mount = (...words: string[]) => spawnSync('mount', words, { encoding: 'utf8' });
const unmount = (folder: string): void => {
  spawnSync('umount', [folder]);
  rmSync(folder, { recursive: true, force: true });
};

/** Why no disk can be mounted here; null if one can. */
export function noMountBecause(): string | null {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-mount-'));
  const tried = mount('-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder);
  unmount(folder);
  if (tried.status === 0) return null;
  return `mounting a tmpfs is not permitted here: ${tried.stderr ?? String(tried.error)}`;
}

/** A folder on a disk of its own; gone with the test. */
export function smallDisk(megabytes: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-disk-'));
  const tried = mount('-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', folder);
  onTestFinished(() => unmount(folder));
  if (tried.status !== 0) throw new Error(tried.stderr);
  return folder;
}
