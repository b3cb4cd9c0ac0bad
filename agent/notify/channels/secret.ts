/**
 * Secrets of the channels: from the environment, or from files of the data folder that the
 * agent's own account alone can read. None stands in the site file, a log or a cause.
 */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { AgentError } from '../../errors.ts';
import { limits } from '../../limits.ts';

export type Environment = Readonly<Record<string, string | undefined>>;

export const secretFile = (folder: string, name: string): string => join(folder, 'secrets', name);

/** `FOREBOND_WEBHOOK_SHIFT_BOARD` of the webhook `shift-board`. */
export const variableOf = (name: string): string =>
  `FOREBOND_${name.replaceAll('-', '_').toUpperCase()}`;

/** null where there is none. Throws CHANNEL_SECRET_UNUSABLE for a file that others can read too. */
export function readSecret(folder: string, name: string, env: Environment): string | null {
  const given = env[variableOf(name)];
  if (given !== undefined && given.trim() !== '') return given.trim();
  const text = readPrivate(secretFile(folder, name))?.trim();
  return text === undefined || text === '' ? null : text;
}

/** The text of a file that nobody else can read; null where there is none. */
export function readPrivate(
  path: string,
  bytesMax: number = limits.secretFileBytesMax,
): string | null {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return null;
  const unusable = (reason: string, cause?: unknown) =>
    new AgentError('CHANNEL_SECRET_UNUSABLE', { path, reason }, cause);
  if ((found.mode & 0o077) !== 0) throw unusable('other accounts of this machine can read it');
  if (found.size > bytesMax) throw unusable('it is too long for a secret');
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw unusable('it cannot be read', error);
  }
}

/** Replaces the file whole, on disk when it returns, readable by the agent's account alone. */
export function writePrivate(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const fresh = `${path}.${randomBytes(6).toString('hex')}.new`;
  const file = openSync(fresh, 'wx', 0o600);
  try {
    writeFileSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(fresh, path);
  const folder = openSync(dirname(path), 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
