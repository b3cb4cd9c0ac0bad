/**
 * The note about own rules that never came back, for the next start: which file, why, and what was
 * being judged.
 */
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { EpochMs } from '#rules/signal/sample.ts';

export interface Stopped {
  /** As `RuleKind.extension`. */
  readonly extension: string;
  readonly why: string;
  /** The moment that was being judged, and how many things of it were; null where nothing new was. */
  readonly at: EpochMs | null;
  readonly turn: number;
}

const pathIn = (folder: string): string => join(folder, 'stopped-rules.json');

export function writeStopped(folder: string, stopped: Stopped): void {
  const path = pathIn(folder);
  const fresh = `${path}.new`;
  writeFileSync(fresh, JSON.stringify(stopped), { mode: 0o600, flush: true });
  renameSync(fresh, path);
}

/** null where there is no such note, or none that can be read. */
export function readStopped(folder: string): Stopped | null {
  let text: string;
  try {
    text = readFileSync(pathIn(folder), 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
  try {
    const found: unknown = JSON.parse(text);
    return isStopped(found) ? found : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

export const forgetStopped = (folder: string): void => rmSync(pathIn(folder), { force: true });

const isStopped = (value: unknown): value is Stopped =>
  typeof value === 'object' &&
  value !== null &&
  'extension' in value &&
  typeof value.extension === 'string' &&
  'why' in value &&
  typeof value.why === 'string' &&
  'at' in value &&
  (value.at === null || Number.isSafeInteger(value.at)) &&
  'turn' in value &&
  Number.isSafeInteger(value.turn);
