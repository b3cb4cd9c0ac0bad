/**
 * The devices a running door knows: the list on disk, followed as it changes.
 *
 * Always true:
 *   - `refresh` that meets a broken list, or none where there was one, keeps the last good one and
 *     says so: taking the file away lets nobody in;
 *   - a list that was taken away while no door was open lets nobody in either: the last good one is
 *     kept beside it, and counts until there is a list again;
 *   - a device whose row or secret changed is named to the listener, so its connections can end.
 */
import { stat } from 'node:fs/promises';
import { type Device, keptListOf, readDevices, writeDevices } from './credentials.ts';
import { DoorError, type DoorFault } from './door-error.ts';
import { SecretChecker, type SecretLimits, type SecretVerdict } from './secrets.ts';

export interface DeviceSource {
  /** How many devices there are. */
  count(): number;
  find(user: string): Device | null;
  check(user: string, secret: Uint8Array): Promise<SecretVerdict>;
  /** Why the list on disk is not the one followed, or could not be kept; null while all is well. */
  problem(): DoorFault | null;
  /** Keeps the list as it is, for a start that finds none. What the disk refuses is a problem, and tried again. */
  keep(): Promise<void>;
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

type Devices = ReadonlyMap<string, Device>;

const byUser = (list: readonly Device[]): Devices =>
  new Map(list.map((device) => [device.user, device]));

/** The copy of the list, written when it is not what the list says. */
class KeptList {
  problem: DoorFault | null = null;
  private readonly path: string;
  private written: string | null = null;

  constructor(path: string) {
    this.path = path;
  }

  async keep(devices: Devices): Promise<void> {
    const list = [...devices.values()];
    const text = JSON.stringify(list);
    try {
      this.written ??= await this.read();
      if (this.written !== text) await writeDevices(this.path, list);
      this.written = text;
      this.problem = null;
    } catch (error) {
      if (!(error instanceof DoorError) || error.fault.kind !== 'devices-failed') throw error;
      this.problem = { ...error.fault, kind: 'devices-not-kept' };
    }
  }

  private async read(): Promise<string> {
    try {
      return JSON.stringify(await readDevices(this.path));
    } catch (error) {
      // A copy that is broken is written anew.
      if (error instanceof DoorError && error.fault.kind === 'devices-broken') return '';
      throw error;
    }
  }
}

/** Opens the list at `path`; none, and none ever kept, is a list of none. Throws DoorError. */
export async function openDevices(path: string, limits: SecretLimits): Promise<DeviceSource> {
  let state = await stateOf(path);
  const keptPath = keptListOf(path);
  const kept = new KeptList(keptPath);
  let devices = byUser(await readDevices(state === noFile ? keptPath : path));
  let fault: DoorFault | null =
    state === noFile && devices.size > 0 ? { kind: 'devices-gone', path } : null;
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
    let fresh: Devices;
    try {
      fresh = byUser(await readDevices(path));
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
    problem: () => fault ?? kept.problem,
    keep: async () => {
      if (fault === null) await kept.keep(devices);
    },
    refresh,
  };
}
