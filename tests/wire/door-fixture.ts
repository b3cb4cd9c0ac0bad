/** An open door with devices of known secrets, and the clients that knock on it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { connect as connectTcp, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt, { type IClientOptions, type MqttClient } from 'mqtt';
import { generate, type Packet, parser } from 'mqtt-packet';
import { type Device, writeDevices } from '#broker/credentials.ts';
import { openDevices } from '#broker/devices.ts';
import { type Door, openDoor } from '#broker/door.ts';
import type { DoorLimits } from '#broker/limits.ts';
import type { DoorMessage } from '#broker/publish-gate.ts';
import { hashSecret } from '#broker/secrets.ts';

export const testLimits: DoorLimits = {
  payloadBytesMax: 65_536,
  topicBytesMax: 1_024,
  clientsMax: 50,
  clientIdBytesMax: 64,
  connectTimeoutMs: 2_000,
  keepAliveMaxS: 600,
  earlyPacketsMax: 100,
  subscriptionsMax: 5,
  messagesPerSecondMax: 100_000,
  withheldMax: 100,
  unreadBytesMax: 1_048_576,
  retainedMax: 20,
  retainedBytesMax: 100_000,
  sessionsMax: 20,
  sessionMessagesMax: 10,
  exactlyOnceMax: 100,
};

export const ovenSecret = 'oven-secret-0123456789';
export const lampSecret = 'lamp-secret-0123456789';
const ovenHash = await hashSecret(ovenSecret);
const lampHash = await hashSecret(lampSecret);

/** One that measures, and one that only listens. */
export const oven: Device = {
  user: 'oven',
  hash: ovenHash,
  publish: ['works/oven/#'],
  read: ['works/set/#'],
};
export const lamp: Device = {
  user: 'lamp',
  hash: lampHash,
  publish: ['works/lamp/state'],
  read: ['forebond/#', 'works/oven/#'],
};

export interface TestDoor extends Door {
  readonly path: string;
  readonly messages: DoorMessage[];
  readonly turnedAway: (readonly [topic: string, why: string])[];
  readonly logged: string[];
  /** Set to hold back every `done`; call each to let it go. */
  hold: boolean;
  readonly held: (() => void)[];
}

export async function openTestDoor(
  devices: readonly Device[] | null = [oven, lamp],
  limits: Partial<DoorLimits> = {},
  host = '127.0.0.1',
  path = join(mkdtempSync(join(tmpdir(), 'door-')), 'devices.json'),
): Promise<TestDoor> {
  if (devices !== null) await writeDevices(path, devices);
  const secretLimits = { verificationsMax: 2, verificationsWaitingMax: 50, secretBytesMax: 1_024 };
  const messages: DoorMessage[] = [];
  const turnedAway: [string, string][] = [];
  const logged: string[] = [];
  const held: (() => void)[] = [];
  const log = (_: object, text: string) => logged.push(text);
  const door = await openDoor({
    host,
    port: 0,
    devices: await openDevices(path, secretLimits),
    devicesReloadMs: 50,
    limits: { ...testLimits, ...limits },
    log: { info: log, warn: log },
    turnedAway: ({ topic }, why) => turnedAway.push([topic, why]),
    take: (message, done) => {
      messages.push(message);
      if (test.hold) held.push(done);
      else done();
    },
  });
  const test: TestDoor = Object.assign(door, {
    ...{ path, messages, turnedAway, logged, held },
    hold: false,
  });
  return test;
}

/** Runs a command to its end: its exit code and what it wrote. */
export async function run(
  command: string,
  args: readonly string[],
  input = '',
): Promise<{ code: number | null; out: string; err: string }> {
  const child = spawn(command, args);
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => (out += chunk));
  child.stderr.on('data', (chunk) => (err += chunk));
  child.stdin.on('error', () => {});
  child.stdin.end(input);
  const [code] = await once(child, 'close');
  return { code, out, err };
}

/** Debian's mosquitto_pub, one message. */
export const mosquittoPub = (door: Door, args: readonly string[], input?: string) =>
  run('mosquitto_pub', ['-h', door.host, '-p', `${door.port}`, '-V', '311', ...args], input);

export const asOven = ['-u', 'oven', '-P', ovenSecret];

/** mqtt.js, without its own reconnecting. */
export const clientOf = (door: Door, options: IClientOptions = {}): Promise<MqttClient> =>
  mqtt.connectAsync(`mqtt://${door.host}:${door.port}`, { reconnectPeriod: 0, ...options }, false);

export const ovenLogin = { username: 'oven', password: ovenSecret };
export const lampLogin = { username: 'lamp', password: lampSecret };

/** A bare socket that speaks packets, or any bytes at all. */
export interface RawClient {
  readonly socket: Socket;
  readonly received: Packet[];
  send(packet: Packet | Buffer): void;
  /** The next packet of a kind, or null when the connection ends first. */
  next(cmd: Packet['cmd']): Promise<Packet | null>;
  /** Resolves when the connection has ended. */
  readonly ended: Promise<void>;
}

export async function rawClient(door: Door): Promise<RawClient> {
  const socket = connectTcp(door.port, door.host);
  const ended = new Promise<void>((resolve) => socket.once('close', () => resolve()));
  socket.on('error', () => {});
  await once(socket, 'connect');
  const received: Packet[] = [];
  const parse = parser();
  let arrived = () => {};
  parse.on('packet', (packet) => {
    received.push(packet);
    arrived();
  });
  socket.on('data', (chunk) => parse.parse(chunk));
  let read = 0;
  return {
    socket,
    received,
    ended,
    send: (packet) => socket.write(Buffer.isBuffer(packet) ? packet : generate(packet)),
    next: async (cmd) => {
      for (;;) {
        for (; read < received.length; read++) {
          const packet = received[read]!;
          if (packet.cmd !== cmd) continue;
          read++;
          return packet;
        }
        const more = new Promise<boolean>((resolve) => {
          arrived = () => resolve(true);
        });
        const over = await Promise.race([more, ended.then(() => false)]);
        if (!over && read >= received.length) return null;
      }
    },
  };
}

export const connectPacket = (more: object = {}): Packet => ({
  cmd: 'connect',
  protocolId: 'MQTT',
  protocolVersion: 4,
  clean: true,
  clientId: 'raw',
  keepalive: 60,
  username: 'oven',
  password: Buffer.from(ovenSecret),
  ...more,
});

/** A raw client that has been let in. */
export async function rawOven(door: Door, more: object = {}): Promise<RawClient> {
  const client = await rawClient(door);
  client.send(connectPacket(more));
  const connack = await client.next('connack');
  if (connack?.cmd !== 'connack' || connack.returnCode !== 0) throw new Error('not let in');
  return client;
}

export const publishPacket = (topic: string, qos: 0 | 1 | 2, more: object = {}): Packet => ({
  cmd: 'publish',
  topic,
  qos,
  payload: 'x',
  retain: false,
  dup: false,
  ...(qos > 0 ? { messageId: 7 } : {}),
  ...more,
});

/** Waits until something holds, or fails naming what it waited for. */
export async function until(what: string, holds: () => boolean, waitMs = 5_000): Promise<void> {
  const end = performance.now() + waitMs;
  while (!holds()) {
    if (performance.now() > end) throw new Error(`never came true: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
