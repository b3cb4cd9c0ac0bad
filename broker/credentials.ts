/**
 * The list of devices on disk: each with its user, the hash of its secret and its filters.
 *
 * Always true:
 *   - a secret is never written; only its argon2id hash is;
 *   - the file is replaced whole or not at all, and readable by its owner alone;
 *   - a list that reads back has passed every check of the access table.
 */
import { open, readFile, rename, rm } from 'node:fs/promises';
import { parseOptions } from '@node-rs/argon2';
import { z } from 'zod/mini';
import { type AccessRow, publishFilterFault, readFilterFault } from './access.ts';
import { DoorError } from './door-error.ts';
import { faultText } from './topic.ts';

export interface Device extends AccessRow {
  readonly user: string;
  /** argon2id in the PHC text form. */
  readonly hash: string;
}

/** 1 to 64 characters that need no quoting anywhere. */
export const userPattern = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;

/** A sentence on what is wrong with a filter, or null. */
export function filterProblem(verb: 'publish' | 'read', filter: string): string | null {
  const fault = verb === 'publish' ? publishFilterFault(filter) : readFilterFault(filter);
  if (fault === null) return null;
  if (fault === 'own') return 'forebond/# belongs to the agent';
  if (fault === 'server') return 'topics that begin with $ belong to the server';
  return faultText[fault];
}

/** An argon2id hash, of parameters that no one lowered. */
function isStrongHash(text: string): boolean {
  if (!text.startsWith('$argon2id$')) return false;
  try {
    const { memoryCost, timeCost, outputLen } = parseOptions(text);
    return memoryCost >= 8_192 && timeCost >= 1 && outputLen >= 16;
  } catch {
    return false;
  }
}

// zod/mini brings no messages of its own.
const inEnglish = z.locales.en().localeError;

const filters = (verb: 'publish' | 'read') =>
  z.array(
    z.string().check((context) => {
      const problem = filterProblem(verb, context.value);
      if (problem !== null) {
        context.issues.push({ code: 'custom', input: context.value, message: problem });
      }
    }),
  );

const listSchema = z.strictObject({
  format: z.literal(1),
  devices: z.array(
    z.strictObject({
      user: z.string().check(z.regex(userPattern, 'not a device name')),
      hash: z.string().check(z.refine(isStrongHash, 'not an argon2id hash of enough strength')),
      publish: filters('publish'),
      read: filters('read'),
    }),
  ),
});

const broken = (path: string, problems: string, cause?: unknown): DoorError =>
  new DoorError({ kind: 'devices-broken', path, problems }, cause);

/** The devices in the text of a list. Throws DoorError `devices-broken` with every problem. */
export function parseDevices(text: string, path: string): readonly Device[] {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw broken(path, error instanceof Error ? error.message : 'not JSON', error);
  }
  const parsed = listSchema.safeParse(value, { error: inEnglish });
  if (!parsed.success) {
    const problems = parsed.error.issues.map(
      (issue) => `${issue.path.map(String).join('.') || 'the list'}: ${issue.message}`,
    );
    throw broken(path, problems.join('; '));
  }
  const seen = new Set<string>();
  for (const { user } of parsed.data.devices) {
    if (seen.has(user)) throw broken(path, `the device "${user}" is listed twice`);
    seen.add(user);
  }
  return parsed.data.devices;
}

const errnoOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error ? String(error.code) : undefined;

function failed(path: string, error: unknown): DoorError {
  const reason = errnoOf(error) ?? String(error);
  return new DoorError({ kind: 'devices-failed', path, reason }, error);
}

/** The devices on disk; none if there is no file. Throws DoorError. */
export async function readDevices(path: string): Promise<readonly Device[]> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    if (errnoOf(error) === 'ENOENT') return [];
    throw failed(path, error);
  }
  return parseDevices(text, path);
}

/** Replaces the list, durably. Throws DoorError `devices-failed`, the old list untouched. */
export async function writeDevices(path: string, devices: readonly Device[]): Promise<void> {
  const sorted = devices.toSorted((a, b) => (a.user < b.user ? -1 : 1));
  const text = `${JSON.stringify({ format: 1, devices: sorted }, null, 2)}\n`;
  const fresh = `${path}.${process.pid}.new`;
  try {
    const file = await open(fresh, 'wx', 0o600);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(fresh, path);
  } catch (error) {
    // Best effort: where the file could not even be opened there is nothing to remove.
    await rm(fresh, { force: true }).catch(() => undefined);
    throw failed(path, error);
  }
}
