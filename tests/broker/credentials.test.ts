import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hash } from '@node-rs/argon2';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  type Device,
  filterProblem,
  parseDevices,
  readDevices,
  userPattern,
  writeDevices,
} from '#broker/credentials.ts';
import { DoorError } from '#broker/door-error.ts';
import { hashSecret } from '#broker/secrets.ts';

const oven: Device = {
  user: 'oven',
  hash: await hashSecret('a secret of the oven'),
  publish: ['works/oven/#'],
  read: ['works/set/+'],
};

const problemsOf = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    if (error instanceof DoorError && error.fault.kind === 'devices-broken')
      return error.fault.problems;
    throw error;
  }
  return 'none';
};

const list = (...devices: object[]) => JSON.stringify({ format: 1, devices });

describe('a list of devices', () => {
  let path: string;
  beforeEach(() => {
    path = join(mkdtempSync(join(tmpdir(), 'devices-')), 'devices.json');
  });

  it('that is not there has none', async () => {
    expect(await readDevices(path)).toEqual([]);
  });

  it('reads back as written, sorted, for the owner alone, and holds no secret', async () => {
    const lamp = { ...oven, user: 'lamp' };
    await writeDevices(path, [oven, lamp]);
    expect(await readDevices(path)).toEqual([lamp, oven]);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(readFileSync(path, 'utf8')).not.toContain('a secret of the oven');
    expect(readdirSync(join(path, '..'))).toEqual(['devices.json']);
  });

  it('that cannot be written leaves nothing behind', async () => {
    const nowhere = join(path, 'not', 'a', 'folder', 'devices.json');
    await expect(writeDevices(nowhere, [oven])).rejects.toThrow(DoorError);
    writeFileSync(path, '');
    await expect(writeDevices(join(path, 'devices.json'), [oven])).rejects.toThrow(DoorError);
    await expect(readDevices(join(path, '..'))).rejects.toMatchObject({
      fault: { kind: 'devices-failed', reason: 'EISDIR' },
    });
  });
});

describe('a broken list names every problem', () => {
  it.each([
    ['', 'JSON'],
    ['{', 'JSON'],
    ['[]', 'the list'],
    ['{"format":2,"devices":[]}', 'format'],
    ['{"format":1,"devices":[],"more":1}', 'more'],
    [list({ ...oven, user: 'a b' }), 'devices.0.user: not a device name'],
    [list({ ...oven, hash: 'plain' }), 'devices.0.hash: not an argon2id hash'],
    [list({ ...oven, secret: 'x' }), 'secret'],
    [list({ ...oven, publish: ['a+'] }), 'devices.0.publish.0: + must be a whole level'],
    [
      list({ ...oven, publish: ['forebond/#'] }),
      'devices.0.publish.0: forebond/# belongs to the agent',
    ],
    [list({ ...oven, read: ['$SYS/#'] }), 'devices.0.read.0: topics that begin with $'],
    [list(oven, oven), 'the device "oven" is listed twice'],
  ])('%s', (text, says) => {
    expect(problemsOf(() => parseDevices(text, 'devices.json'))).toContain(says);
  });

  it('all at once', () => {
    const problems = problemsOf(() =>
      parseDevices(list({ ...oven, publish: ['a+', '#/a'] }, { ...oven, user: '' }), 'x'),
    );
    expect(problems.split('; ').length).toBe(3);
  });

  it('a hash of lowered cost, or of another kind, is not one', async () => {
    const weak = await hash('x', { memoryCost: 1_024, timeCost: 1 });
    const argon2i = await hash('x', { algorithm: 1 });
    for (const text of [weak, argon2i]) {
      expect(problemsOf(() => parseDevices(list({ ...oven, hash: text }), 'x'))).toContain('hash');
    }
    expect(problemsOf(() => parseDevices(list(oven), 'x'))).toBe('none');
  });
});

it('names of devices', () => {
  for (const name of ['oven-1', 'A', '0.b_c', 'x'.repeat(64)]) expect(name).toMatch(userPattern);
  for (const name of ['', '-a', '.', 'a/b', 'a b', 'ä', 'x'.repeat(65), 'a\n', '__proto__']) {
    expect(name).not.toMatch(userPattern);
  }
});

it('filters are explained', () => {
  expect(filterProblem('publish', 'works/#')).toBeNull();
  expect(filterProblem('publish', 'forebond/x')).toBe('forebond/# belongs to the agent');
  expect(filterProblem('read', 'forebond/x')).toBeNull();
  expect(filterProblem('read', 'a/#/b')).toBe('# must be the last level');
});
