/** The door as Debian's mosquitto clients meet it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, beforeEach, expect, it } from 'vitest';
import {
  asOven,
  lampSecret,
  mosquittoPub,
  openTestDoor,
  type TestDoor,
  until,
} from './door-fixture.ts';

let door: TestDoor;
beforeEach(async () => {
  door = await openTestDoor();
});
afterEach(() => door.close());

it.each([0, 1, 2] as const)('a device publishes at QoS %i', async (qos) => {
  const sent = await mosquittoPub(door, [
    ...asOven,
    '-t',
    'works/oven/air',
    '-m',
    '181.5',
    '-q',
    `${qos}`,
  ]);
  expect(sent).toMatchObject({ code: 0, err: '' });
  await until('the message is taken', () => door.messages.length === 1);
  expect(door.messages[0]).toMatchObject({
    topic: 'works/oven/air',
    qos,
    retain: false,
    user: 'oven',
  });
  expect(door.messages[0]?.payload.toString()).toBe('181.5');
  expect(door.counters.messages[qos]).toBe(1);
  expect(door.counters.payloadBytes).toBe(5);
  await until('nothing is in flight', () => door.counters.inflight === 0);
});

it.each([
  ['a wrong secret', ['-u', 'oven', '-P', 'guess'], 'bad user name or password', 'secret'],
  ['an unknown user', ['-u', 'stove', '-P', 'guess'], 'bad user name or password', 'secret'],
  [
    "another device's secret",
    ['-u', 'oven', '-P', lampSecret],
    'bad user name or password',
    'secret',
  ],
  ['no secret', [], 'bad user name or password', 'secret'],
  ['MQTT 3.1', [...asOven, '-V', '31'], 'unacceptable protocol version', 'not-mqtt-3-1-1'],
] as const)('%s is refused', async (_, login, says, cause) => {
  const sent = await mosquittoPub(door, [...login, '-t', 'works/oven/air', '-m', '1', '-q', '1']);
  expect(sent.code).not.toBe(0);
  expect(sent.err.toLowerCase()).toContain(says);
  expect(door.counters.refused[cause]).toBe(1);
  expect(door.messages).toEqual([]);
});

it.each([
  ['works/other/air', 'not-listed'],
  ['forebond/works/heartbeat', 'own'],
  ['$SYS/broker/uptime', 'server'],
] as const)('publishing to %s is acknowledged, goes nowhere, and is told', async (topic, why) => {
  const sent = await mosquittoPub(door, [...asOven, '-t', topic, '-m', '1', '-q', '1', '-r']);
  expect(sent.code).toBe(0);
  expect(door.counters.denied[why]).toBe(1);
  expect(door.turnedAway).toEqual([[topic, why]]);
  expect(door.messages).toEqual([]);
  expect(door.counters.retained).toBe(0);
});

it('1,000 lines at QoS 1 arrive once each and in order', async () => {
  const lines = Array.from({ length: 1_000 }, (_, i) => `${i}`);
  const sent = await mosquittoPub(
    door,
    [...asOven, '-t', 'works/oven/air', '-l', '-q', '1'],
    `${lines.join('\n')}\n`,
  );
  expect(sent).toMatchObject({ code: 0, err: '' });
  expect(door.messages.map(({ payload }) => payload.toString())).toEqual(lines);
});

it('a lamp hears the agent, retained and live, and no more than its row', async () => {
  await door.publish('forebond/works/heartbeat', '{"alive":true}', { retain: true, qos: 1 });
  const login = ['-u', 'lamp', '-P', lampSecret, '-V', '311'];
  const lamp = spawn('mosquitto_sub', [
    ...['-h', door.host, '-p', `${door.port}`, ...login, '-F', '%t %r %q %p'],
    ...['-t', 'forebond/#', '-t', 'works/oven/#', '-t', 'works/#', '-q', '1', '-C', '3'],
  ]);
  let heard = '';
  lamp.stdout.on('data', (chunk) => (heard += chunk));
  const ended = once(lamp, 'close');
  await until('the retained message is heard', () => heard.includes('alive'));
  await door.publish('forebond/works/l/s/alarm/cold', 'ringing', { qos: 1 });
  await mosquittoPub(door, [...asOven, '-t', 'works/oven/air', '-m', '20', '-q', '1']);
  await ended;
  expect(heard.trim().split('\n')).toEqual([
    'forebond/works/heartbeat 1 1 {"alive":true}',
    'forebond/works/l/s/alarm/cold 0 1 ringing',
    'works/oven/air 0 1 20',
  ]);
  expect(door.counters.denied['not-listed']).toBe(1);
});
