/** Everything that could grow, at its bound: refused, slowed or dropped, and counted. */
import { afterEach, expect, it } from 'vitest';
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
afterEach(() => door.close());

const lampRaw = { username: 'lamp', password: Buffer.from(lampLogin.password) };

it('connections: those beyond are closed at once, and there is room again after', async () => {
  door = await openTestDoor(undefined, { clientsMax: 2 });
  const first = await rawOven(door, { clientId: 'a' });
  await rawOven(door, { clientId: 'b' });
  const third = await rawClient(door);
  await third.ended;
  expect(door.counters.refused.full).toBe(1);
  first.socket.destroy();
  await until('there is room', () => door.counters.connectionsOpen === 1);
  await rawOven(door, { clientId: 'c' });
});

it('messages a second: the rest waits its turn, in order, none lost', async () => {
  door = await openTestDoor(undefined, { messagesPerSecondMax: 100 });
  const client = await rawOven(door);
  for (let i = 0; i < 250; i++) {
    client.send(publishPacket('works/oven/air', 1, { messageId: i + 1, payload: `${i}` }));
  }
  await until('the first hundred', () => door.messages.length >= 100);
  expect(door.messages.length).toBeLessThanOrEqual(200);
  await until('all', () => client.received.length === 251, 8_000);
  expect(door.messages.map(({ payload }) => Number(payload))).toEqual(
    Array.from({ length: 250 }, (_, i) => i),
  );
  expect(door.counters.slowed).toBeGreaterThanOrEqual(50);
});

it('silence: a client that says nothing for 1.5 keep-alives is closed, one that pings is not', async () => {
  door = await openTestDoor(undefined, { keepAliveMaxS: 1 });
  const silent = await rawOven(door, { clientId: 'silent', keepalive: 0 });
  const alive = await rawOven(door, { clientId: 'alive', keepalive: 600 });
  const pings = setInterval(() => alive.send({ cmd: 'pingreq' }), 500);
  await silent.ended;
  clearInterval(pings);
  expect(door.counters.closed.silent).toBe(1);
  expect(alive.socket.destroyed).toBe(false);
});

it('packets before the connection is accepted', async () => {
  door = await openTestDoor(undefined, { earlyPacketsMax: 10 });
  const client = await rawClient(door);
  client.socket.cork();
  client.send(connectPacket());
  for (let i = 0; i < 11; i++) client.send(publishPacket('works/oven/air', 0));
  client.socket.uncork();
  await client.ended;
  expect(door.counters.closed['early-packets']).toBe(1);
  expect(door.messages).toEqual([]);
});

it('a reader that does not read: its messages are dropped, then it is closed; nobody waits for it', async () => {
  door = await openTestDoor(undefined, { unreadBytesMax: 200_000 });
  const lamp = await rawClient(door);
  lamp.send(connectPacket({ clientId: 'lamp', ...lampRaw }));
  await lamp.next('connack');
  lamp.send({ cmd: 'subscribe', messageId: 1, subscriptions: [{ topic: 'works/oven/#', qos: 0 }] });
  await lamp.next('suback');
  lamp.socket.pause();
  const client = await clientOf(door, ovenLogin);
  const payload = Buffer.alloc(60_000);
  for (let i = 0; i < 300; i++) await client.publishAsync('works/oven/air', payload, { qos: 1 });
  expect(door.messages.length).toBe(300);
  expect(door.counters.dropped).toBeGreaterThan(100);
  await client.endAsync();
});

it('publishers in full flow do not wait for a reader that stands still', async () => {
  door = await openTestDoor(undefined, { unreadBytesMax: 16_000_000 });
  const lamp = await rawClient(door);
  lamp.send(connectPacket({ clientId: 'lamp', ...lampRaw }));
  await lamp.next('connack');
  lamp.send({ cmd: 'subscribe', messageId: 1, subscriptions: [{ topic: 'works/oven/#', qos: 0 }] });
  await lamp.next('suback');
  lamp.socket.pause();
  const client = await rawOven(door);
  const payload = Buffer.alloc(5_000);
  for (let id = 1; id <= 3_000; id++) {
    client.send(publishPacket('works/oven/air', 1, { messageId: id, payload }));
  }
  await until('all are acknowledged', () => client.received.length === 3_001, 10_000);
  expect(door.counters.closed['slow-reader'] + door.counters.dropped).toBeGreaterThan(0);
});

it.each([0, 1] as const)(
  'messages with the intake, QoS %i: beyond the bound a connection is not read, and nothing is lost',
  async (qos) => {
    door = await openTestDoor(undefined, { withheldMax: 20 });
    door.hold = true;
    const client = await rawOven(door);
    for (let i = 1; i <= 400; i++) {
      const payload = `${i}`.padStart(1_000);
      client.send(publishPacket('works/oven/air', qos, { messageId: i, payload }));
      if (i % 5 === 0) await new Promise((resolve) => setTimeout(resolve, 2));
    }
    client.send({ cmd: 'pingreq' });
    await new Promise((resolve) => setTimeout(resolve, 100));
    // At most the bound, and what the last read of 64 KiB brought beyond it.
    expect(door.held.length).toBeGreaterThan(0);
    expect(door.held.length).toBeLessThan(20 + 66);
    door.hold = false;
    for (const done of door.held.splice(0)) done();
    expect(await client.next('pingresp')).not.toBeNull();
    expect(door.messages.map((message) => Number(message.payload))).toEqual(
      Array.from({ length: 400 }, (_, i) => i + 1),
    );
  },
);

it('a QoS 2 message sent again and again while it is withheld', async () => {
  door = await openTestDoor(undefined, { withheldMax: 20 });
  door.hold = true;
  const client = await rawOven(door);
  for (let i = 1; i <= 200; i++) {
    client.send(publishPacket('works/oven/air', 2, { dup: i > 1 }));
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  expect(door.counters.duplicates).toBeLessThan(60);
  door.hold = false;
  door.held[0]!();
  await until('each is answered', () => client.received.length === 201);
  expect(door.messages.length).toBe(1);
});

it('a client that never reads its acknowledgements is closed', async () => {
  door = await openTestDoor(undefined, { unreadBytesMax: 10_000 });
  const client = await rawOven(door);
  client.socket.pause();
  let id = 0;
  const flood = setInterval(() => {
    for (let i = 0; i < 5_000; i++) {
      id = (id % 65_535) + 1;
      client.send(publishPacket('works/oven/air', 1, { messageId: id }));
    }
  }, 1);
  await until('it is closed', () => door.counters.closed['slow-reader'] === 1, 20_000);
  clearInterval(flood);
  client.socket.destroy();
});

it('retained: beyond the bound passed on but not kept; an empty one makes room', async () => {
  door = await openTestDoor(undefined, { retainedMax: 3 });
  const client = await clientOf(door, ovenLogin);
  const retain = { retain: true, qos: 1 as const };
  for (let i = 0; i < 5; i++) await client.publishAsync(`works/oven/${i}`, 'x', retain);
  expect(door.counters).toMatchObject({ retained: 3, retainedRefused: 2 });
  expect(door.messages.length).toBe(5);
  await client.publishAsync('works/oven/0', 'y', retain);
  await client.publishAsync('works/oven/1', '', retain);
  await client.publishAsync('works/oven/4', 'z', retain);
  expect(door.counters).toMatchObject({ retained: 3, retainedRefused: 2 });
  await door.publish('forebond/works/heartbeat', 'on', { retain: true });
  const lamp = await clientOf(door, lampLogin);
  const kept: string[] = [];
  lamp.on('message', (topic, payload) => kept.push(`${topic} ${payload}`));
  await lamp.subscribeAsync(['works/oven/#', 'forebond/#']);
  await until('what was kept', () => kept.length === 4);
  expect(kept.toSorted()).toEqual([
    'forebond/works/heartbeat on',
    'works/oven/0 y',
    'works/oven/2 x',
    'works/oven/4 z',
  ]);
  await Promise.all([client.endAsync(), lamp.endAsync()]);
});

it('retained bytes are bounded too', async () => {
  door = await openTestDoor(undefined, { retainedBytesMax: 1_000 });
  const client = await clientOf(door, ovenLogin);
  await client.publishAsync('works/oven/1', 'x'.repeat(900), { retain: true, qos: 1 });
  await client.publishAsync('works/oven/2', 'x'.repeat(900), { retain: true, qos: 1 });
  expect(door.counters).toMatchObject({ retained: 1, retainedRefused: 1 });
  await client.endAsync();
});

it('messages kept for a client that is away', async () => {
  door = await openTestDoor(undefined, { sessionMessagesMax: 10 });
  const away = { ...lampLogin, clientId: 'lamp', clean: false };
  const first = await clientOf(door, away);
  await first.subscribeAsync('forebond/#', { qos: 1 });
  await first.endAsync();
  for (let i = 0; i < 25; i++) await door.publish('forebond/x', `${i}`, { qos: 1 });
  expect(door.counters.dropped).toBe(15);
  const second = await rawClient(door);
  second.send(connectPacket({ clientId: 'lamp', clean: false, ...lampRaw }));
  expect(await second.next('connack')).toMatchObject({ sessionPresent: true });
  for (let i = 0; i < 10; i++) {
    const packet = await second.next('publish');
    expect(`${packet?.cmd === 'publish' && packet.payload}`).toBe(`${i}`);
    second.send({ cmd: 'puback', messageId: packet?.messageId ?? 0 });
  }
  // Once taken they make room.
  second.socket.destroy();
  await until('it is away', () => door.counters.connectionsOpen === 0);
  for (let i = 0; i < 10; i++) await door.publish('forebond/x', `${i}`, { qos: 1 });
  expect(door.counters.dropped).toBe(15);
});

it('sessions kept: the one longest away is forgotten', async () => {
  door = await openTestDoor(undefined, { sessionsMax: 2 });
  const visit = async (clientId: string) => {
    const client = await rawClient(door);
    client.send(connectPacket({ clientId, clean: false, ...lampRaw }));
    const connack = await client.next('connack');
    const subscriptions = [{ topic: 'forebond/#', qos: 1 as const }];
    client.send({ cmd: 'subscribe', messageId: 1, subscriptions });
    await client.next('suback');
    client.socket.destroy();
    await until('it is away', () => door.counters.connectionsOpen === 0);
    return connack?.cmd === 'connack' && connack.sessionPresent;
  };
  for (const id of ['a', 'b', 'c']) expect(await visit(id)).toBe(false);
  expect(await visit('c')).toBe(true);
  expect(await visit('b')).toBe(true);
  expect(await visit('a')).toBe(false);
  expect(await visit('c')).toBe(false);
});

it('QoS 2 messages without PUBREL', async () => {
  door = await openTestDoor(undefined, { exactlyOnceMax: 5 });
  const client = await rawOven(door);
  for (let id = 1; id <= 6; id++)
    client.send(publishPacket('works/oven/air', 2, { messageId: id }));
  await client.ended;
  expect(client.received.filter(({ cmd }) => cmd === 'pubrec').length).toBeLessThanOrEqual(5);
});

it('closes with clients connected, withholding, half-way in, and twice', async () => {
  door = await openTestDoor();
  door.hold = true;
  const waiting = await rawOven(door);
  waiting.send(publishPacket('works/oven/air', 1));
  const mute = await rawClient(door);
  const idle = await clientOf(door, { ...lampLogin, clientId: 'idle', clean: false });
  idle.on('error', () => {});
  await until('one is with the intake', () => door.held.length === 1);
  await Promise.all([door.close(), door.close()]);
  await Promise.all([waiting.ended, mute.ended]);
  for (const done of door.held) done();
  expect(waiting.received.map(({ cmd }) => cmd)).toEqual(['connack']);
  expect(door.counters).toMatchObject({ connectionsOpen: 0, inflight: 0 });
  await expect(rawClient(door)).rejects.toThrow('ECONNREFUSED');
  await idle.endAsync(true);
});
