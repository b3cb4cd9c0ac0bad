/**
 * The devices a running door knows: the list on disk, followed as it changes.
 *
 * Always true:
 *   - `refresh` that meets a broken list, or none where there was one, keeps the last good one and
 *     says so: taking the file away lets nobody in;
 *   - a device whose row or secret changed is named to the listener, so its connections can end.
 */
import { stat } from 'node:fs/promises';
import { type Device, readDevices } from './credentials.ts';
import { DoorError, type DoorFault } from './door-error.ts';
import { SecretChecker, type SecretLimits, type SecretVerdict } from './secrets.ts';

export interface DeviceSource {
  /** How many devices there are. */
  count(): number;
  find(user: string): Device | null;
  check(user: string, secret: Uint8Array): Promise<SecretVerdict>;
  /** Why the list on disk is not the one followed; null while it is. */
  problem(): DoorFault | null;
  /** Looks again: the users added, changed or removed since, or what is wrong. Null if unchanged. */
  refresh(): Promise<{ readonly changed: readonly string[] } | { readonly problem: string } | null>;
}

const noFile = 'none';

/** What tells one state of a file from another, or that there is none. */
async function stateOf(path: string): Promise<string> {
  try {
    const { ino, size, mtimeNs, ctimeNs } = await stat(path, { bigint: true });
    return `${ino} ${size} ${mtimeNs} ${ctimeNs}`;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return noFile;
    return `unreadable ${error}`;
  }
}

const same = (a: Device, b: Device | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Opens the list at `path`; a missing file is a list of none. Throws DoorError. */
export async function openDevices(path: string, limits: SecretLimits): Promise<DeviceSource> {
  let state = await stateOf(path);
  let devices = new Map((await readDevices(path)).map((device) => [device.user, device]));
  let fault: DoorFault | null = null;
  const secrets = await SecretChecker.create(limits);

  function refused(error: DoorError, now: string) {
    fault = error.fault;
    // A list that reads but is wrong stays wrong until it changes; one that does not read may yet.
    if (fault.kind !== 'devices-failed') state = now;
    return { problem: error.message };
  }

  async function refresh() {
    const now = await stateOf(path);
    if (now === state) return null;
    if (now === noFile && devices.size > 0)
      return refused(new DoorError({ kind: 'devices-gone', path }), now);
    let fresh: Map<string, Device>;
    try {
      fresh = new Map((await readDevices(path)).map((device) => [device.user, device]));
    } catch (error) {
      if (!(error instanceof DoorError)) throw error;
      return refused(error, now);
    }
    state = now;
    fault = null;
    const changed = [...new Set([...devices.keys(), ...fresh.keys()])].filter((user) => {
      const device = fresh.get(user);
      return device === undefined || !same(device, devices.get(user));
    });
    devices = fresh;
    secrets.keepOnly((user) => devices.has(user));
    return { changed };
  }

  return {
    count: () => devices.size,
    find: (user) => devices.get(user) ?? null,
    check: (user, secret) => secrets.check(user, secret, devices.get(user)?.hash ?? null),
    problem: () => fault,
    refresh,
  };
}
