/** Who may come in, and how a running door follows the list of devices. */
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { type Device, keptListOf, writeDevices } from '#broker/credentials.ts';
import { openDevices } from '#broker/devices.ts';
import { DoorError } from '#broker/door-error.ts';
import { isLoopback } from '#broker/parts.ts';
import {
  asOven,
  clientOf,
  connectPacket,
  lamp,
  lampLogin,
  mosquittoPub,
  openTestDoor,
  oven,
  ovenLogin,
  rawClient,
  rawOven,
  type TestDoor,
  until,
} from './door-fixture.ts';

let door: TestDoor;
afterEach(() => door.close());

describe('a door without devices, on loopback', () => {
  it('takes anything but the agent’s own, and lets read only that', async () => {
    door = await openTestDoor(null);
    await door.publish('forebond/works/heartbeat', 'on', { retain: true });
    const args = (topic: string) => ['-t', topic, '-m', '1', '-q', '1'];
    expect((await mosquittoPub(door, args('any/topic/at/all'))).code).toBe(0);
    expect((await mosquittoPub(door, args('forebond/works/heartbeat'))).code).toBe(0);
    expect(door.turnedAway).toEqual([['forebond/works/heartbeat', 'own']]);
    expect(door.messages.map(({ topic, user }) => [topic, user])).toEqual([
      ['any/topic/at/all', null],
    ]);
    const client = await rawClient(door);
    client.send(connectPacket({ username: undefined, password: undefined }));
    await client.next('connack');
    const wanted = ['forebond/#', '#', 'any/topic/at/all'];
    client.send({
      cmd: 'subscribe',
      messageId: 1,
      subscriptions: wanted.map((topic) => ({ topic, qos: 0 })),
    });
    expect(await client.next('suback')).toMatchObject({ granted: [0, 128, 128] });
    expect(await client.next('publish')).toMatchObject({
      topic: 'forebond/works/heartbeat',
      retain: true,
    });
  });

  it('asks everyone for a secret once one device exists', async () => {
    door = await openTestDoor(null);
    const anonymous = await clientOf(door);
    const left = new Promise((resolve) => anonymous.once('close', () => resolve('closed')));
    await writeDevices(door.path, [oven]);
    expect(await left).toBe('closed');
    expect(door.counters.closed['device-changed']).toBe(1);
    await expect(clientOf(door)).rejects.toThrow('Bad username or password');
    expect(
      (await mosquittoPub(door, [...asOven, '-t', 'works/oven/air', '-m', '1', '-q', '1'])).code,
    ).toBe(0);
  });
});

describe('a door that others can reach', () => {
  it('does not open without devices', async () => {
    door = await openTestDoor();
    const failed = openTestDoor(null, {}, '0.0.0.0');
    await expect(failed).rejects.toThrow(DoorError);
    await expect(failed).rejects.toMatchObject({
      fault: { kind: 'needs-devices', host: '0.0.0.0' },
    });
  });

  it('opens with one, and lets nobody in after the last is removed', async () => {
    door = await openTestDoor([oven], {}, '0.0.0.0');
    await writeDevices(door.path, []);
    await door.refreshDevices();
    const client = await rawClient(door);
    client.send(connectPacket());
    expect(await client.next('connack')).toMatchObject({ returnCode: 5 });
    expect(door.counters.refused['no-devices']).toBe(1);
  });

  it('knows loopback addresses', () => {
    for (const host of ['127.0.0.1', '127.1.2.3', '::1', 'localhost'])
      expect(isLoopback(host)).toBe(true);
    for (const host of ['0.0.0.0', '::', '10.0.0.1', '127.0.0.1.example', '', 'localhost.lan']) {
      expect(isLoopback(host)).toBe(false);
    }
  });
});

describe('a list that was taken away while no door was open', () => {
  /** A door on these devices, closed; its list taken away. */
  async function takenAway(devices: readonly Device[] | null): Promise<string> {
    const { path } = door;
    if (devices !== null) await writeDevices(path, devices);
    await door.refreshDevices();
    await door.close();
    rmSync(path, { force: true });
    return path;
  }

  it('lets in those it last named and nobody else, and says so', async () => {
    door = await openTestDoor();
    const path = await takenAway([oven]);
    door = await openTestDoor(null, {}, '127.0.0.1', path);
    expect(door.devicesProblem()).toEqual({ kind: 'devices-gone', path });
    await expect(clientOf(door)).rejects.toThrow('Bad username or password');
    await expect(clientOf(door, lampLogin)).rejects.toThrow('Bad username or password');
    await (await clientOf(door, ovenLogin)).endAsync();
    // There again, it counts.
    await writeDevices(path, [lamp]);
    await door.refreshDevices();
    expect(door.devicesProblem()).toBeNull();
    await (await clientOf(door, lampLogin)).endAsync();
    await expect(clientOf(door, ovenLogin)).rejects.toThrow();
  });

  it('that named nobody any more leaves the door as it was', async () => {
    door = await openTestDoor();
    const path = await takenAway([]);
    door = await openTestDoor(null, {}, '127.0.0.1', path);
    expect(door.devicesProblem()).toBeNull();
    await (await clientOf(door)).endAsync();
  });

  it('and whose copy is spoilt: the door does not open', async () => {
    door = await openTestDoor();
    const path = await takenAway(null);
    writeFileSync(keptListOf(path), '{ not json');
    const failed = openTestDoor(null, {}, '127.0.0.1', path);
    await expect(failed).rejects.toMatchObject({
      fault: { kind: 'devices-broken', path: keptListOf(path) },
    });
  });

  it('a copy that cannot be written is a problem until it can', async () => {
    door = await openTestDoor(null);
    mkdirSync(keptListOf(door.path));
    await writeDevices(door.path, [oven]);
    await until('it is a problem', () => door.devicesProblem() !== null);
    expect(door.devicesProblem()).toMatchObject({
      kind: 'devices-not-kept',
      path: keptListOf(door.path),
    });
    await (await clientOf(door, ovenLogin)).endAsync();
    rmSync(keptListOf(door.path), { recursive: true });
    await until('it is kept', () => door.devicesProblem() === null);
    expect(existsSync(keptListOf(door.path))).toBe(true);
  });
});

it('a port that is taken is said so', async () => {
  door = await openTestDoor();
  const { openDoor } = await import('#broker/door.ts');
  const { testLimits } = await import('./door-fixture.ts');
  const devices = await openDevices(door.path, {
    verificationsMax: 1,
    verificationsWaitingMax: 1,
    secretBytesMax: 64,
  });
  const log = { info: () => {}, warn: () => {} };
  const second = openDoor({
    host: door.host,
    port: door.port,
    devices,
    devicesReloadMs: 1_000,
    limits: testLimits,
    take: () => {},
    turnedAway: () => {},
    log,
  });
  await expect(second).rejects.toMatchObject({
    fault: { kind: 'cannot-listen', reason: 'EADDRINUSE' },
  });
});

describe('a list that changes', () => {
  it('lets a new device in without a restart and leaves the others alone', async () => {
    door = await openTestDoor([oven]);
    const standing = await rawOven(door);
    await expect(clientOf(door, lampLogin)).rejects.toThrow();
    await writeDevices(door.path, [oven, lamp]);
    await until('the list is read again', () => door.logged.includes('devices reloaded'));
    const fresh = await clientOf(door, lampLogin);
    await fresh.endAsync();
    standing.send({ cmd: 'pingreq' });
    expect(await standing.next('pingresp')).not.toBeNull();
  });

  it('ends the connection of a device removed, its will unsent', async () => {
    door = await openTestDoor();
    const will = { topic: 'works/oven/state', payload: Buffer.from('gone'), qos: 0, retain: false };
    const client = await rawOven(door, { will });
    await writeDevices(door.path, [lamp]);
    await client.ended;
    await expect(clientOf(door, ovenLogin)).rejects.toThrow();
    expect(door.messages).toEqual([]);
  });

  it('ends the connection of a device whose filters changed; the next has the new ones', async () => {
    door = await openTestDoor();
    const client = await rawOven(door);
    await writeDevices(door.path, [{ ...oven, publish: ['works/kiln/#'] }, lamp]);
    await client.ended;
    expect(
      (await mosquittoPub(door, [...asOven, '-t', 'works/kiln/air', '-m', '1', '-q', '1'])).code,
    ).toBe(0);
    await mosquittoPub(door, [...asOven, '-t', 'works/oven/air', '-m', '1', '-q', '1']);
    expect(door.turnedAway).toEqual([['works/oven/air', 'not-listed']]);
  });

  it('that breaks is reported and the last good one stays', async () => {
    door = await openTestDoor();
    const client = await rawOven(door);
    writeFileSync(door.path, '{ not json');
    await until('it is reported', () => door.logged.includes('devices not reloaded'));
    client.send({ cmd: 'pingreq' });
    expect(await client.next('pingresp')).not.toBeNull();
    expect(
      (await mosquittoPub(door, [...asOven, '-t', 'works/oven/air', '-m', '1', '-q', '1'])).code,
    ).toBe(0);
    await writeDevices(door.path, [lamp]);
    await client.ended;
  });

  it('that vanishes or breaks opens nothing: those it last named stay, and the door says so', async () => {
    door = await openTestDoor();
    const client = await rawOven(door);
    expect(door.devicesProblem()).toBeNull();
    for (const spoil of [rmSync, (path: string) => writeFileSync(path, ''), breakList]) {
      spoil(door.path);
      await until('it is noticed', () => door.devicesProblem() !== null);
      client.send({ cmd: 'pingreq' });
      expect(await client.next('pingresp')).not.toBeNull();
      await expect(clientOf(door)).rejects.toThrow('Bad username or password');
      await (await clientOf(door, ovenLogin)).endAsync();
      await writeDevices(door.path, [oven, lamp]);
      await until('it is well again', () => door.devicesProblem() === null);
    }
    await writeDevices(door.path, [lamp]);
    await client.ended;
  });

  it('that is moved away and back, the same file, is well again', async () => {
    door = await openTestDoor();
    renameSync(door.path, `${door.path}.away`);
    await until('it is noticed', () => door.devicesProblem() !== null);
    expect(door.devicesProblem()).toMatchObject({ kind: 'devices-gone', path: door.path });
    renameSync(`${door.path}.away`, door.path);
    await until('it is well again', () => door.devicesProblem() === null);
  });
});

const breakList = (path: string): void => writeFileSync(path, '{ not json');
