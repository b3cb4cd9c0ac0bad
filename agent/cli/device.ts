/**
 * `forebond device add|list|remove`: who may bring messages to the embedded broker, and read from it.
 *
 * Always true: a secret is shown once or not at all, and never comes on the command line, where
 * other users of the machine could see it. A running agent notices a change by itself.
 */
import { join } from 'node:path';
import type { Command } from 'commander';
import {
  changeDevices,
  type Device,
  devicesFileName,
  filterProblem,
  listedDevices,
  userPattern,
} from '#broker/credentials.ts';
import { hashSecret, makeSecret } from '#broker/secrets.ts';
import { counted } from '#rules/quantity/counted.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { makeFolder, refuseOthers, requireFolder, useOf } from '../store/folder-use.ts';
import { doorError } from '../wiring/door-words.ts';
import { dataOption } from './data-option.ts';

/** Fewer bytes could be guessed. */
const secretBytesMin = 16;

export interface DeviceAdded {
  readonly user: string;
  /** The secret if it was made here; null if it was given. */
  readonly secret: string | null;
}

/** A device as it is listed: without its hash. */
export type DeviceRow = Pick<Device, 'user' | 'publish' | 'read'>;

const inOurWords = (error: unknown): never => {
  throw doorError(error);
};

function checkFilters(verb: 'publish' | 'read', filters: readonly string[]): void {
  for (const filter of filters) {
    const reason = filterProblem(verb, filter);
    if (reason !== null) throw new AgentError('DEVICE_FILTER_INVALID', { filter, verb, reason });
  }
}

/** What is wrong with a secret that was given, or null. */
function secretProblem(secret: string): string | null {
  const bytes = Buffer.byteLength(secret);
  if (bytes < secretBytesMin) return `it has ${counted(bytes, 'byte')}`;
  if (bytes > limits.mqttSecretBytesMax) return 'it is too long';
  if (/[\r\n]/.test(secret)) return 'it has more than one line';
  if (secret.includes('\0') || secret.includes('\uFFFD')) return 'it is not text in UTF-8';
  return null;
}

/**
 * Adds a device to the data folder, which is made if need be. `secret` null has one made.
 * Throws AgentError DEVICE_USER_INVALID, DEVICE_FILTER_INVALID, DEVICE_SECRET_UNUSABLE,
 * DEVICE_EXISTS, DEVICE_FILE_BROKEN, DEVICE_FILE_FAILED or FOLDER_UNUSABLE.
 */
export async function deviceAdd(
  data: string,
  row: DeviceRow,
  secret: string | null = null,
): Promise<DeviceAdded> {
  const { user } = row;
  if (!userPattern.test(user)) throw new AgentError('DEVICE_USER_INVALID', { user });
  checkFilters('publish', row.publish);
  checkFilters('read', row.read);
  const reason = secret === null ? null : secretProblem(secret);
  if (reason !== null) throw new AgentError('DEVICE_SECRET_UNUSABLE', { reason });
  const shown = secret ?? makeSecret();
  const hash = await hashSecret(shown);
  const path = join(data, devicesFileName);
  makeFolder(data);
  await changeDevices(path, (devices) => {
    if (devices.some((device) => device.user === user)) {
      throw new AgentError('DEVICE_EXISTS', { user });
    }
    return [...devices, { user, hash, publish: [...row.publish], read: [...row.read] }];
  }).catch(inOurWords);
  return { user, secret: secret === null ? shown : null };
}

/**
 * The devices of a data folder, by name. Throws AgentError DEVICE_FILE_BROKEN, DEVICE_FILE_FAILED, or
 * DEVICE_FILE_GONE where the list was taken away.
 */
export async function deviceList(data: string): Promise<readonly DeviceRow[]> {
  const devices = await listedDevices(join(data, devicesFileName)).catch(inOurWords);
  return devices.map(({ user, publish, read }) => ({ user, publish, read }));
}

/** Removes a device. Throws AgentError DEVICE_UNKNOWN and as deviceList. */
export async function deviceRemove(data: string, user: string): Promise<void> {
  const path = join(data, devicesFileName);
  // Looked up first, so that a folder that is not there is an unknown device and nothing more.
  const known = await deviceList(data);
  if (!known.some((device) => device.user === user)) {
    throw new AgentError('DEVICE_UNKNOWN', { user });
  }
  await changeDevices(path, (devices) => devices.filter((device) => device.user !== user)).catch(
    inOurWords,
  );
}

/** What the command needs of the process around it. */
export interface DeviceParts {
  /** One line for people, without its end. */
  readonly print: (line: string) => void;
  /** One line of what went wrong. */
  readonly complain: (line: string) => void;
  readonly setExitCode: (code: number) => void;
  /** Standard input to its end, or to `bytesMax`. */
  readonly readInput: (bytesMax: number) => Promise<string>;
}

const words = (filters: readonly string[]): string =>
  filters.length === 0 ? 'nothing' : filters.join(', ');

interface AddFlags {
  readonly publish: readonly string[];
  readonly read: readonly string[];
  readonly data: string;
  readonly secretStdin?: boolean;
}

async function add(parts: DeviceParts, user: string, flags: AddFlags): Promise<void> {
  const given =
    flags.secretStdin === true
      ? (await parts.readInput(limits.mqttSecretBytesMax + 3)).replace(/\r?\n$/, '')
      : null;
  const use = useOf(flags.data);
  refuseOthers(flags.data, use);
  const { publish, read } = flags;
  const { secret } = await deviceAdd(flags.data, { user, publish, read }, given);
  // A misspelt folder would be a new one, which nobody looks into.
  if (use === 'missing') parts.complain(`made the data folder ${flags.data}, which was not there`);
  parts.print(`device ${user} may publish to ${words(publish)} and read ${words(read)}`);
  if (secret !== null) parts.print(`secret ${secret} (shown this once; only its hash is kept)`);
}

async function list(parts: DeviceParts, flags: { data: string; json?: boolean }): Promise<void> {
  requireFolder(flags.data);
  const rows = await deviceList(flags.data);
  if (flags.json === true) {
    parts.print(JSON.stringify(rows));
    return;
  }
  if (rows.length === 0) parts.print('no devices');
  const width = Math.max(0, ...rows.map(({ user }) => user.length));
  for (const { user, publish, read } of rows) {
    parts.print(`${user.padEnd(width)}  publishes ${words(publish)}  reads ${words(read)}`);
  }
}

/** Registers the command. Exit codes: 0 done, 1 the input is at fault; commander's own for usage. */
export function deviceCommand(program: Command, parts: DeviceParts): void {
  const device = program
    .command('device')
    .description('MQTT users of the embedded broker and the topics of each');
  const dataFlag = () => dataOption('data folder').makeOptionMandatory();
  const removeFrom = async (data: string, user: string): Promise<void> => {
    requireFolder(data);
    await deviceRemove(data, user);
    parts.print(`device ${user} is removed`);
  };
  const orComplain = async (act: Promise<void>): Promise<void> => {
    try {
      await act;
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      parts.complain(`${error.message} ${error.fix}`);
      parts.setExitCode(1);
    }
  };
  device
    .command('add')
    .description('add a device; its secret is made and shown once, or read from standard input')
    .argument('<user>', 'name of the device')
    .option('--publish <filter...>', 'topic filters it may publish to', [])
    .option('--read <filter...>', 'topic filters it may read', [])
    .option('--secret-stdin', 'read the secret, one line, from standard input')
    .addOption(dataFlag())
    .action((user: string, flags: AddFlags, command: Command) => {
      if (flags.publish.length + flags.read.length === 0) {
        command.error('error: a device needs --publish or --read, or it could do nothing');
      }
      return orComplain(add(parts, user, flags));
    });
  device
    .command('list')
    .description('list the devices')
    .option('--json', 'print one JSON array')
    .addOption(dataFlag())
    .action((flags: { data: string; json?: boolean }) => orComplain(list(parts, flags)));
  device
    .command('remove')
    .description('remove a device and end its connections')
    .argument('<user>', 'name of the device')
    .addOption(dataFlag())
    .action((user: string, flags: { data: string }) => orComplain(removeFrom(flags.data, user)));
}
