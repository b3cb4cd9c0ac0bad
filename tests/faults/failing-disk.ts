/**
 * Runs a program on a disk that fails at its Nth operation (failing-disk.c, built on the fly).
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';

export interface Fault {
  /** The operation that fails, from 1; 0 for none. */
  readonly at: number;
  /** Files below it count; it need not exist yet, its parent must. */
  readonly folder: string;
  readonly error?: 'EIO' | 'ENOSPC';
  /** How many operations fail from there on; default 1, -1 for all. */
  readonly during?: number;
}

export interface FaultRun {
  readonly stdout: string;
  readonly stderr: string;
  /** Null where a signal ended it. */
  readonly exit: number | null;
  readonly signal: string | null;
  /** Operations counted below the folder; the fault happened if this reaches `at`. */
  readonly operations: number;
}

const source = join(import.meta.dirname, 'failing-disk.c');
const cache = join(import.meta.dirname, '..', '..', 'node_modules', '.cache', 'forebond');

/** Compiles the shim once a version of it; throws with the compiler's words where that fails. */
export function buildFailingDisk(): string {
  const version = createHash('sha256').update(readFileSync(source)).digest('hex').slice(0, 16);
  const library = join(cache, `failing-disk-${version}.so`);
  if (existsSync(library)) return library;
  mkdirSync(cache, { recursive: true });
  const part = `${library}.${process.pid}`;
  const words = ['-shared', '-fPIC', '-O1', '-Wall', '-Werror', '-o', part, source, '-ldl'];
  const compiler = spawnSync('cc', words, { encoding: 'utf8' });
  if (compiler.status !== 0) {
    throw new Error(`the failing disk needs a C compiler: ${compiler.error ?? compiler.stderr}`);
  }
  renameSync(part, library);
  return library;
}

/** In a process on the failing disk: counts from 0 again, and fails at another operation. */
export function armDisk(folder: string, at: number): void {
  try {
    closeSync(openSync(`${realFolder(folder)}.arm-${at}`, 'r'));
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return;
    throw error;
  }
}

/** The shim compares whole paths: links on the way are followed here. */
const realFolder = (folder: string): string =>
  join(realpathSync(dirname(folder)), basename(folder));

/** What a child process needs in its environment to run on the failing disk. */
export const faultEnvironment = (fault: Fault, countFile: string): Record<string, string> => ({
  LD_PRELOAD: buildFailingDisk(),
  FOREBOND_FAULT_DIR: realFolder(fault.folder),
  FOREBOND_FAULT_AT: String(fault.at),
  FOREBOND_FAULT_ERRNO: fault.error ?? 'EIO',
  FOREBOND_FAULT_FOR: String(fault.during ?? 1),
  FOREBOND_FAULT_COUNT: countFile,
});

/** Runs `node script ...words` from its sources under the fault and waits for its end. */
export function runWithFault(fault: Fault, script: string, words: readonly string[]): FaultRun {
  const scratch = mkdtempSync(join(tmpdir(), 'forebond-fault-'));
  const countFile = join(scratch, 'operations');
  try {
    const child = spawnSync(process.execPath, ['--conditions=forebond-source', script, ...words], {
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, ...faultEnvironment(fault, countFile) },
    });
    if (child.error !== undefined) throw child.error;
    const counted = statSync(countFile, { throwIfNoEntry: false })?.size ?? 0;
    return {
      stdout: child.stdout,
      stderr: child.stderr,
      exit: child.status,
      signal: child.signal,
      operations: counted === 0 ? 0 : Number(readFileSync(countFile, 'utf8')),
    };
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
