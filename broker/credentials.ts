/**
 * The list of devices on disk: each with its user, the hash of its secret and its filters.
 *
 * Always true:
 *   - a secret is never written; only its argon2id hash is;
 *   - the file is replaced whole or not at all, and readable by its owner alone;
 *   - a list that reads back has passed every check of the access table.
 */
import { type FileHandle, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { parseOptions } from '@node-rs/argon2';
import { z } from 'zod/mini';
import { type AccessRow, publishFilterFault, readFilterFault } from './access.ts';
import { DoorError } from './door-error.ts';
import { faultText } from './topic.ts';

/** The list's name in the data folder. */
export const devicesFileName = 'devices.json';

/** Where the list is kept as it was last seen whole, for a start that finds none at `path`. */
export const keptListOf = (path: string): string => join(dirname(path), 'devices-last.json');

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
  error instanceof Error && 'errno' in error && 'code' in error ? String(error.code) : undefined;

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

/** How long another change is waited for, and after which one is taken for dead. */
const waitMsMax = 5_000;
const deadMs = 30_000;

/** As readDevices; throws DoorError `devices-gone` where the list was taken away and the door goes by its copy. */
export async function listedDevices(path: string): Promise<readonly Device[]> {
  const devices = await readDevices(path);
  const isGone = devices.length === 0 && (await stat(path).catch(() => null)) === null;
  if (isGone && (await readDevices(keptListOf(path))).length > 0)
    throw new DoorError({ kind: 'devices-gone', path });
  return devices;
}

/** The file a change is written to. Only one process at a time can create it, so it is the lock too. */
async function openFresh(path: string): Promise<FileHandle> {
  for (let waitedMs = 0; ; waitedMs += 50) {
    try {
      return await open(path, 'wx', 0o600);
    } catch (error) {
      if (errnoOf(error) !== 'EEXIST' || waitedMs >= waitMsMax) throw error;
    }
    const held = await stat(path).catch(() => null);
    if (held !== null && Date.now() - held.mtimeMs > deadMs) await rm(path, { force: true });
    else await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** A rename is on disk once its folder is. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(dirname(path), 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

async function replace(path: string, make: () => Promise<readonly Device[]>): Promise<void> {
  const fresh = `${path}.new`;
  const file = await openFresh(fresh).catch((error) => {
    throw failed(path, error);
  });
  try {
    const devices = await make();
    const sorted = devices.toSorted((a, b) => (a.user < b.user ? -1 : 1));
    await file.writeFile(`${JSON.stringify({ format: 1, devices: sorted }, null, 2)}\n`);
    await file.sync();
    await rename(fresh, path);
    await syncFolder(path);
  } catch (error) {
    await rm(fresh, { force: true });
    throw errnoOf(error) === undefined ? error : failed(path, error);
  } finally {
    await file.close();
  }
}

/**
 * Changes the list, durably, one change at a time. Whatever `change` throws, and DoorError
 * `devices-broken` or `devices-failed`, leave the old list untouched.
 */
export function changeDevices(
  path: string,
  change: (devices: readonly Device[]) => readonly Device[],
): Promise<void> {
  return replace(path, async () => change(await readDevices(path)));
}

/** Replaces the list whatever it held, even if that was broken. Throws DoorError `devices-failed`. */
export function writeDevices(path: string, devices: readonly Device[]): Promise<void> {
  return replace(path, async () => devices);
}
