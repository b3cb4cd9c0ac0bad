import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Command, CommanderError } from 'commander';
import { beforeEach, describe, expect, it } from 'vitest';
import { deviceAdd, deviceCommand, deviceList, deviceRemove } from '#agent/cli/device.ts';
import { AgentError } from '#agent/errors.ts';
import { doorError } from '#agent/wiring/door-words.ts';
import { DoorError } from '#broker/door-error.ts';
import { mosquittoPub, openTestDoor } from '../../wire/door-fixture.ts';

let data: string;
beforeEach(() => {
  data = join(mkdtempSync(join(tmpdir(), 'device-')), 'data');
});

const codeOf = async (act: Promise<unknown>): Promise<string> => {
  const error = await act.then(
    () => null,
    (reason: unknown) => reason,
  );
  return error instanceof AgentError ? error.code : `not an AgentError: ${error}`;
};

/** Runs one command line as the program would. */
async function forebond(args: readonly string[], input = '') {
  const out: string[] = [];
  const err: string[] = [];
  let code = 0;
  const program = new Command('forebond').exitOverride();
  deviceCommand(program, {
    print: (line) => out.push(line),
    complain: (line) => err.push(line),
    setExitCode: (to) => {
      code = to;
    },
    readInput: async (bytesMax) => input.slice(0, bytesMax),
  });
  // Subcommands made before these settings do not inherit them.
  const settle = (command: Command): void => {
    command.exitOverride().configureOutput({ writeErr: (text) => err.push(text.trim()) });
    command.commands.forEach(settle);
  };
  settle(program);
  try {
    await program.parseAsync(['device', ...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    code = 2;
  }
  return { out, err, code };
}

describe('devices of a data folder', () => {
  it('are added, listed without hashes, and removed', async () => {
    const lamp = { user: 'lamp', publish: [], read: ['forebond/#'] };
    const oven = { user: 'oven', publish: ['works/oven/#', 'works/x'], read: [] };
    const made = await deviceAdd(data, oven);
    await deviceAdd(data, lamp, 'a secret from elsewhere');
    expect(Buffer.from(made.secret ?? '', 'base64url').length).toBe(32);
    expect(await deviceList(data)).toEqual([lamp, oven]);
    const text = readFileSync(join(data, 'devices.json'), 'utf8');
    expect(text).not.toContain(made.secret);
    expect(text).not.toContain('a secret from elsewhere');
    expect(statSync(join(data, 'devices.json')).mode & 0o777).toBe(0o600);
    expect(statSync(data).mode & 0o777).toBe(0o700);
    await deviceRemove(data, 'oven');
    expect(await deviceList(data)).toEqual([lamp]);
  });

  it('added at the same time are all there', async () => {
    const users = Array.from({ length: 8 }, (_, i) => `d${i}`);
    await Promise.all(users.map((user) => deviceAdd(data, { user, publish: ['a'], read: [] })));
    expect((await deviceList(data)).map(({ user }) => user)).toEqual(users);
  });

  it('a list left half-written by a command that died is waited for, then passed over', async () => {
    await deviceAdd(data, { user: 'a', publish: ['a'], read: [] });
    const dead = join(data, 'devices.json.new');
    writeFileSync(dead, 'half');
    utimesSync(dead, 0, 0);
    await deviceAdd(data, { user: 'b', publish: ['a'], read: [] });
    expect((await deviceList(data)).length).toBe(2);
  });

  it('are refused by name', async () => {
    const row = { user: 'oven', publish: ['works/#'], read: [] };
    await deviceAdd(data, row);
    const before = readFileSync(join(data, 'devices.json'), 'utf8');
    expect(await codeOf(deviceAdd(data, row))).toBe('DEVICE_EXISTS');
    expect(await codeOf(deviceAdd(data, { ...row, user: 'a b' }))).toBe('DEVICE_USER_INVALID');
    expect(await codeOf(deviceAdd(data, { ...row, user: 'b', publish: ['a+'] }))).toBe(
      'DEVICE_FILTER_INVALID',
    );
    expect(await codeOf(deviceAdd(data, { ...row, user: 'b', publish: ['forebond/#'] }))).toBe(
      'DEVICE_FILTER_INVALID',
    );
    expect(await codeOf(deviceAdd(data, { ...row, user: 'b', read: ['$SYS/#'] }))).toBe(
      'DEVICE_FILTER_INVALID',
    );
    for (const secret of [
      'short',
      'x'.repeat(1_025),
      'two lines of it\nof text',
      'sixteen bytes and a \0',
    ]) {
      expect(await codeOf(deviceAdd(data, { ...row, user: 'b' }, secret))).toBe(
        'DEVICE_SECRET_UNUSABLE',
      );
    }
    expect(await codeOf(deviceRemove(data, 'b'))).toBe('DEVICE_UNKNOWN');
    expect(await codeOf(deviceRemove(join(data, 'nowhere'), 'b'))).toBe('DEVICE_UNKNOWN');
    expect(readFileSync(join(data, 'devices.json'), 'utf8')).toBe(before);
  });

  it('of a broken or unreachable list', async () => {
    await deviceAdd(data, { user: 'a', publish: ['a'], read: [] });
    const path = join(data, 'devices.json');
    writeFileSync(path, 'not json');
    const row = { user: 'b', publish: ['a'], read: [] };
    expect(await codeOf(deviceList(data))).toBe('DEVICE_FILE_BROKEN');
    expect(await codeOf(deviceAdd(data, row))).toBe('DEVICE_FILE_BROKEN');
    expect(await codeOf(deviceRemove(data, 'a'))).toBe('DEVICE_FILE_BROKEN');
    expect(readFileSync(path, 'utf8')).toBe('not json');
    expect(await codeOf(deviceAdd(join(path, 'under-a-file'), row))).toBe('FOLDER_UNUSABLE');
  });
});

it('the door’s faults have words for people', () => {
  const words = (error: unknown) => (error instanceof AgentError ? error.message : 'none');
  const open = doorError(new DoorError({ kind: 'needs-devices', host: '0.0.0.0' }));
  expect(words(open)).toContain('0.0.0.0');
  const fault = {
    kind: 'cannot-listen',
    host: '127.0.0.1',
    port: 1883,
    reason: 'EADDRINUSE',
  } as const;
  expect(words(doorError(new DoorError(fault)))).toContain('127.0.0.1:1883: EADDRINUSE');
  const other = new Error('other');
  expect(doorError(other)).toBe(other);
});

describe('the command', () => {
  beforeEach(() => mkdirSync(data));

  it('adds with a secret made and shown once, lists and removes', async () => {
    const added = await forebond([
      'add',
      'oven',
      '--publish',
      'works/oven/#',
      'works/x',
      '--data',
      data,
    ]);
    expect(added).toMatchObject({ code: 0, err: [] });
    expect(added.out[0]).toBe('device oven may publish to works/oven/#, works/x and read nothing');
    expect(added.out[1]).toMatch(/^secret [\w-]{43} /);
    const listed = await forebond(['list', '--data', data]);
    expect(listed).toEqual({
      code: 0,
      err: [],
      out: ['oven  publishes works/oven/#, works/x  reads nothing'],
    });
    const json = await forebond(['list', '--json', '--data', data]);
    expect(JSON.parse(json.out[0] ?? '')).toEqual([
      { user: 'oven', publish: ['works/oven/#', 'works/x'], read: [] },
    ]);
    expect((await forebond(['remove', 'oven', '--data', data])).code).toBe(0);
    expect((await forebond(['list', '--data', data])).out).toEqual(['no devices']);
  });

  it('takes the secret from standard input and does not show it', async () => {
    const args = ['add', 'lamp', '--read', 'forebond/#', '--secret-stdin', '--data', data];
    const added = await forebond(args, 'a secret from elsewhere\n');
    expect(added.code).toBe(0);
    expect(added.out.join()).not.toContain('elsewhere');
    expect(added.out.length).toBe(1);
    expect(await forebond(['add', 'b', ...args.slice(2)], 'short\n')).toMatchObject({
      code: 1,
      out: [],
    });
    expect(await forebond(['add', 'b', ...args.slice(2)], 'x'.repeat(5_000))).toMatchObject({
      code: 1,
    });
  });

  it('says what is at fault in one line and exits 1', async () => {
    const failed = await forebond(['add', 'oven', '--publish', 'forebond/#', '--data', data]);
    expect(failed).toMatchObject({ code: 1, out: [] });
    expect(failed.err).toEqual([
      'The topic filter "forebond/#" cannot be used to publish: forebond/# belongs to the agent. Write MQTT filters: + is a whole level, # the whole last level.',
    ]);
    expect((await forebond(['remove', 'x', '--data', data])).code).toBe(1);
  });

  it('makes the folder of a line that has not run yet, and says so', async () => {
    const fresh = join(dirname(data), 'fresh');
    const { code, err } = await forebond(['add', 'oven', '--publish', 'a', '--data', fresh]);
    expect([code, err]).toEqual([0, [`made the data folder ${fresh}, which was not there`]]);
    expect((await forebond(['list', '--data', fresh])).code).toBe(0);
  });

  it('makes no folder where one is only asked about, and none among other files', async () => {
    const parent = dirname(data);
    writeFileSync(join(parent, 'file'), 'a file');
    mkdirSync(join(parent, 'docs'));
    writeFileSync(join(parent, 'docs', 'letter.txt'), 'Dear');
    const typo = join(parent, 'typo');
    const folders = { [typo]: 'no data folder', [join(parent, 'file')]: 'it is a file' };
    const others = { [join(parent, 'docs')]: 'holds other files', '/proc/x/y': 'no data folder' };
    for (const [folder, words] of Object.entries({ ...folders, ...others })) {
      const asking = [
        ['list', '--data', folder],
        ['remove', 'oven', '--data', folder],
      ];
      const adding = ['add', 'oven', '--publish', 'a', '--data', folder];
      const lines = words === 'no data folder' ? asking : [adding, ...asking];
      for (const line of lines) {
        const { code, out, err } = await forebond(line);
        expect({ code, out, lines: err.length }, folder).toEqual({ code: 1, out: [], lines: 1 });
        expect(err[0]).toContain(words);
      }
    }
    expect(existsSync(typo)).toBe(false);
    expect(readdirSync(join(parent, 'docs'))).toEqual(['letter.txt']);
  });

  it.each([
    [['add', 'oven', '--data', 'x']],
    [['add', '--publish', 'a', '--data', 'x']],
    [['add', 'oven', '--publish', 'a']],
    [['add', 'oven', '--publish', 'a', '--secret', 'on the command line', '--data', 'x']],
    [['list']],
    [['remove', '--data', 'x']],
    [['rename', 'a']],
  ])('%j is a usage error', async (args) => {
    expect((await forebond(args)).code).toBe(2);
  });
});

it('a device added while the door is open comes in with the secret that was shown', async () => {
  const door = await openTestDoor();
  const folder = dirname(door.path);
  const { secret } = await deviceAdd(folder, { user: 'kiln', publish: ['works/kiln/#'], read: [] });
  await door.refreshDevices();
  const login = ['-u', 'kiln', '-P', secret ?? ''];
  const args = [...login, '-t', 'works/kiln/air', '-m', '1', '-q', '1'];
  expect((await mosquittoPub(door, args)).code).toBe(0);
  await deviceRemove(folder, 'kiln');
  await door.refreshDevices();
  expect((await mosquittoPub(door, args)).code).not.toBe(0);
  await door.close();
});
