/** An acknowledgement follows `done`, never runs ahead of it. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import {
  clientOf,
  connectPacket,
  lampLogin,
  openTestDoor,
  ovenLogin,
  publishPacket,
  rawClient,
  rawOven,
  type TestDoor,
  until,
} from './door-fixture.ts';

let door: TestDoor;
beforeEach(async () => {
  door = await openTestDoor();
});
afterEach(() => door.close());

/** Long enough for an acknowledgement that was on its way to arrive. */
const settle = () => new Promise((resolve) => setTimeout(resolve, 100));

it.each([
  [1, 'puback'],
  [2, 'pubrec'],
] as const)('QoS %i: no %s before done, one after', async (qos, ack) => {
  door.hold = true;
  const client = await rawOven(door);
  client.send(publishPacket('works/oven/air', qos));
  await until('it is taken', () => door.held.length === 1);
  await settle();
  expect(client.received.map(({ cmd }) => cmd)).toEqual(['connack']);
  expect(door.counters.inflight).toBe(1);
  door.held[0]!();
  expect(await client.next(ack)).toMatchObject({ cmd: ack, messageId: 7 });
  expect(door.counters.inflight).toBe(0);
});

it('acknowledgements of one commit come together, in any order of done', async () => {
  door.hold = true;
  const client = await rawOven(door);
  // In one segment: what comes in a later one may wait unread for the first to be done.
  client.socket.cork();
  for (let id = 1; id <= 50; id++) {
    client.send(publishPacket('works/oven/air', 1, { messageId: id }));
  }
  client.socket.uncork();
  await until('all are taken', () => door.held.length === 50);
  for (const done of door.held.toReversed()) done();
  await until('all are acknowledged', () => client.received.length === 51);
  const ids = client.received.slice(1).map((packet) => packet.messageId);
  expect(new Set(ids).size).toBe(50);
});

it('done twice acknowledges once', async () => {
  door.hold = true;
  const client = await rawOven(door);
  client.send(publishPacket('works/oven/air', 1));
  await until('it is taken', () => door.held.length === 1);
  door.held[0]!();
  door.held[0]!();
  await client.next('puback');
  await settle();
  expect(client.received.filter(({ cmd }) => cmd === 'puback').length).toBe(1);
  expect(door.counters.inflight).toBe(0);
});

it('a publisher whose done is withheld waits past its keep-alive and is not closed', async () => {
  door.hold = true;
  const client = await rawOven(door, { keepalive: 1 });
  client.send(publishPacket('works/oven/air', 1));
  await until('it is taken', () => door.held.length === 1);
  await new Promise((resolve) => setTimeout(resolve, 4_500));
  expect(client.socket.destroyed).toBe(false);
  door.held[0]!();
  expect(await client.next('puback')).not.toBeNull();
  // Silent now, and no longer excused.
  await client.ended;
  expect(door.counters.closed.silent).toBe(1);
});

it('a late done on an ended connection acknowledges nothing, above all not on the next', async () => {
  door.hold = true;
  const first = await rawOven(door, { clean: false });
  first.send(publishPacket('works/oven/air', 1));
  await until('it is taken', () => door.held.length === 1);
  first.socket.destroy();
  await until('it is gone', () => door.counters.connectionsOpen === 0);
  const second = await rawOven(door, { clean: false });
  door.held[0]!();
  await settle();
  expect(second.received.map(({ cmd }) => cmd)).toEqual(['connack']);
  expect(door.counters.inflight).toBe(0);
});

it('a reader hears a message only after done', async () => {
  door.hold = true;
  const lamp = await clientOf(door, lampLogin);
  await lamp.subscribeAsync('works/oven/#');
  const heard: string[] = [];
  lamp.on('message', (topic) => heard.push(topic));
  const client = await rawOven(door);
  client.send(publishPacket('works/oven/air', 1));
  await until('it is taken', () => door.held.length === 1);
  await settle();
  expect(heard).toEqual([]);
  door.held[0]!();
  await until('it is heard', () => heard.length === 1);
  lamp.end(true);
});

it('an intake that throws closes that connection alone', async () => {
  const failing = await openTestDoor();
  Object.defineProperty(failing.messages, 'push', {
    value: () => {
      throw new Error('intake is broken');
    },
  });
  const client = await rawOven(failing);
  const other = await rawOven(failing, { clientId: 'other' });
  client.send(publishPacket('works/oven/air', 1));
  await client.ended;
  other.send({ cmd: 'pingreq' });
  expect(await other.next('pingresp')).not.toBeNull();
  expect(failing.counters.closed['intake-failed']).toBe(1);
  expect(failing.counters.inflight).toBe(0);
  await failing.close();
});

const repeat = { dup: true };

it('QoS 2 sent again is taken once: while withheld, after PUBREC, and in one breath', async () => {
  door.hold = true;
  const client = await rawOven(door);
  client.send(publishPacket('works/oven/air', 2));
  await until('it is taken', () => door.held.length === 1);
  client.socket.cork();
  client.send(publishPacket('works/oven/air', 2, repeat));
  client.socket.uncork();
  await settle();
  door.held[0]!();
  await until('both are answered', () => client.received.length === 3);
  client.send(publishPacket('works/oven/air', 2, repeat));
  await until('again', () => client.received.length === 4);
  expect(client.received.slice(1).map(({ cmd, messageId }) => [cmd, messageId])).toEqual(
    Array.from({ length: 3 }, () => ['pubrec', 7]),
  );
  expect(door.messages.length).toBe(1);
  expect(door.counters.duplicates).toBe(2);

  // After PUBREL the id is free: the same id is a new message.
  client.send({ cmd: 'pubrel', messageId: 7 });
  expect(await client.next('pubcomp')).toMatchObject({ messageId: 7 });
  door.hold = false;
  client.send(publishPacket('works/oven/air', 2));
  await until('a new message', () => door.messages.length === 2);
});

it('three copies of one QoS 2 message in one segment are one message, read once', async () => {
  const lamp = await clientOf(door, lampLogin);
  await lamp.subscribeAsync('works/oven/#', { qos: 2 });
  let heard = 0;
  lamp.on('message', () => heard++);
  const client = await rawOven(door);
  client.socket.cork();
  client.send(publishPacket('works/oven/air', 2));
  client.send(publishPacket('works/oven/air', 2, repeat));
  client.send(publishPacket('works/oven/air', 2, repeat));
  client.socket.uncork();
  await until('all are answered', () => client.received.length === 4);
  await settle();
  expect(door.messages.length).toBe(1);
  expect(heard).toBe(1);
  lamp.end(true);
});

it('a kept session still knows its QoS 2 ids; a clean one begins anew', async () => {
  const first = await rawOven(door, { clean: false });
  first.send(publishPacket('works/oven/air', 2));
  await first.next('pubrec');
  first.socket.destroy();
  await until('it is gone', () => door.counters.connectionsOpen === 0);

  const second = await rawOven(door, { clean: false });
  second.send(publishPacket('works/oven/air', 2, repeat));
  await second.next('pubrec');
  expect(door.messages.length).toBe(1);
  second.socket.destroy();
  await until('it is gone', () => door.counters.connectionsOpen === 0);

  const third = await rawOven(door, { clean: true });
  third.send(publishPacket('works/oven/air', 2));
  await third.next('pubrec');
  expect(door.messages.length).toBe(2);
  third.socket.destroy();
  await until('it is gone', () => door.counters.connectionsOpen === 0);

  const fourth = await rawOven(door, { clean: false });
  fourth.send(publishPacket('works/oven/air', 2));
  await fourth.next('pubrec');
  expect(door.messages.length).toBe(3);
});

it('a refused connection with the client id of another disturbs nothing of it', async () => {
  const first = await rawOven(door);
  first.send(publishPacket('works/oven/air', 2));
  await first.next('pubrec');
  const stranger = await rawClient(door);
  stranger.send(connectPacket({ password: Buffer.from('guess') }));
  expect(await stranger.next('connack')).toMatchObject({ returnCode: 4 });
  await stranger.ended;
  first.send(publishPacket('works/oven/air', 2, repeat));
  await first.next('pubrec');
  expect(door.messages.length).toBe(1);
});

it('many publishers of mqtt.js at QoS 1 and 2, done a turn later, lose and double nothing', async () => {
  const slow = await openTestDoor();
  slow.hold = true;
  const pump = setInterval(() => {
    for (const done of slow.held.splice(0)) done();
  }, 5);
  const clients = await Promise.all(Array.from({ length: 5 }, () => clientOf(slow, ovenLogin)));
  await Promise.all(
    clients.flatMap((client, c) =>
      Array.from({ length: 100 }, (_, i) =>
        client.publishAsync(`works/oven/${c}`, `${i}`, { qos: i % 2 === 0 ? 1 : 2 }),
      ),
    ),
  );
  clearInterval(pump);
  expect(slow.messages.length).toBe(500);
  expect(new Set(slow.messages.map(({ topic, payload }) => `${topic} ${payload}`)).size).toBe(500);
  await Promise.all(clients.map((client) => client.endAsync(true)));
  await slow.close();
});
