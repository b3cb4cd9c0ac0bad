/**
 * What MQTT 3.1.1 forbids, sent byte by byte because real clients refuse to send it.
 * Clause numbers beside the rows are from memory of the OASIS text of 2014.
 */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  connectPacket,
  openTestDoor,
  publishPacket,
  rawClient,
  rawOven,
  type TestDoor,
  until,
} from './door-fixture.ts';

let door: TestDoor;
beforeEach(async () => {
  door = await openTestDoor(undefined, { connectTimeoutMs: 300 });
});
afterEach(() => door.close());

const utf8 = (text: string) => {
  const bytes = Buffer.from(text);
  return Buffer.concat([Buffer.from([bytes.length >> 8, bytes.length & 255]), bytes]);
};
const packet = (type: number, ...parts: Buffer[]) => {
  const body = Buffer.concat(parts);
  return Buffer.concat([Buffer.from([type, body.length]), body]);
};

describe('CONNECT', () => {
  it('is answered with the golden bytes of CONNACK, clause 3.2', async () => {
    const client = await rawClient(door);
    const bytes: Buffer[] = [];
    client.socket.on('data', (chunk) => bytes.push(chunk));
    client.send(connectPacket());
    await client.next('connack');
    expect(Buffer.concat(bytes)).toEqual(Buffer.from([0x20, 0x02, 0x00, 0x00]));
  });

  it.each([
    ['a client id over the limit', { clientId: 'x'.repeat(65) }, 2, 'client-id'],
    ['a wrong secret', { password: Buffer.from('guess') }, 4, 'secret'],
    ['MQTT 5', { protocolVersion: 5 }, 1, 'not-mqtt-3-1-1'],
    ['MQTT 3.1', { protocolId: 'MQIsdp', protocolVersion: 3 }, 1, 'not-mqtt-3-1-1'],
    ['a will the device may not send', { will: will('forebond/works/heartbeat') }, 5, 'will'],
    ['a will for a topic of another', { will: will('works/other') }, 5, 'will'],
    ['a will with a wildcard', { will: will('works/oven/+') }, 5, 'will'],
  ] as const)('%s is refused', async (_, more, returnCode, cause) => {
    const client = await rawClient(door);
    client.send(connectPacket(more));
    const connack = await client.next('connack');
    expect(connack).toMatchObject({ returnCode, sessionPresent: false });
    await client.ended;
    expect(door.counters.refused[cause]).toBe(1);
  });

  it('no client id with a session to keep is refused with code 2 [MQTT-3.1.3-8]', async () => {
    const client = await rawClient(door);
    client.send(connectBytes('MQTT', 4, 0xc0, '', 'oven', 'oven-secret-0123456789'));
    expect(await client.next('connack')).toMatchObject({ returnCode: 2 });
    await client.ended;
    expect(door.counters.refused['client-id']).toBe(1);
  });

  it('an empty client id with a clean session is let in, clause 3.1.3.1', async () => {
    await rawOven(door, { clientId: '' });
  });

  /** Variable header of CONNECT: name, level, flags, keep-alive. */
  const connectBytes = (name: string, level: number, flags: number, ...payload: string[]) =>
    packet(0x10, utf8(name), Buffer.from([level, flags, 0, 60]), ...payload.map(utf8));
  it.each([
    ['the reserved flag set [MQTT-3.1.2-3]', connectBytes('MQTT', 4, 0x03, 'id')],
    ['a will of QoS 3 [MQTT-3.1.2-14]', connectBytes('MQTT', 4, 0x1e, 'id', 'works/oven/x', 'm')],
    ['a secret without a user [MQTT-3.1.2-22]', connectBytes('MQTT', 4, 0x42, 'id', 'secret')],
    ['another protocol name', connectBytes('MQTX', 4, 0x02, 'id')],
    ['a name longer than the packet', packet(0x10, Buffer.from([0, 200]), Buffer.from('MQTT'))],
    [
      'the header flags set [MQTT-2.2.2-1]',
      Buffer.concat([Buffer.from([0x11]), connectBytes('MQTT', 4, 2, 'id').subarray(1)]),
    ],
    ['a PUBLISH first [MQTT-3.1.0-1]', packet(0x30, utf8('works/oven/air'))],
    ['a web browser', Buffer.from('POST / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n')],
    ['a length of five bytes, clause 2.2.3', Buffer.from([0x10, 0xff, 0xff, 0xff, 0xff, 0x01])],
    ['a length over the limit', Buffer.from([0x10, 0xff, 0xff, 0xff, 0x7f])],
  ])('%s ends the connection', async (_, bytes) => {
    const client = await rawClient(door);
    client.send(bytes);
    await client.ended;
    expect(client.received).toEqual([]);
    expect(door.messages).toEqual([]);
  });

  it('a bridge that adds 128 to the level is told it is unacceptable', async () => {
    const client = await rawClient(door);
    client.send(connectBytes('MQTT', 0x84, 0x02, 'id'));
    expect(await client.next('connack')).toMatchObject({ returnCode: 1 });
  });

  it('twice ends the connection [MQTT-3.1.0-2]', async () => {
    const client = await rawOven(door);
    client.send(connectPacket());
    await client.ended;
  });

  it('that never comes ends the connection', async () => {
    const client = await rawClient(door);
    await client.ended;
    expect(door.counters.closed['connect-timeout']).toBe(1);
  });
});

function will(topic: string) {
  return { topic, payload: Buffer.from('gone'), qos: 0, retain: false };
}

describe('PUBLISH', () => {
  it.each([
    ['a wildcard + [MQTT-3.3.2-2]', packet(0x30, utf8('works/oven/+'))],
    ['a wildcard # [MQTT-3.3.2-2]', packet(0x30, utf8('works/oven/#'))],
    ['an empty topic [MQTT-4.7.3-1]', packet(0x30, utf8(''))],
    ['U+0000 in the topic [MQTT-4.7.3-2]', packet(0x30, utf8('works/oven/\u0000'))],
    [
      'a topic that is not UTF-8 [MQTT-1.5.3-1]',
      packet(0x30, Buffer.from([0, 13]), Buffer.from('works/oven/'), Buffer.from([0xc3, 0x28])),
    ],
    [
      'a surrogate in UTF-8 [MQTT-1.5.3-1]',
      packet(
        0x30,
        Buffer.from([0, 14]),
        Buffer.from('works/oven/'),
        Buffer.from([0xed, 0xa0, 0x80]),
      ),
    ],
    ['QoS 3 [MQTT-3.3.1-4]', packet(0x36, utf8('works/oven/air'), Buffer.from([0, 1]))],
    ['packet id 0 [MQTT-2.3.1-1]', packet(0x32, utf8('works/oven/air'), Buffer.from([0, 0]))],
    ['no packet id', packet(0x32, utf8('works/oven/air'))],
    ['a topic longer than the packet', packet(0x30, Buffer.from([0x0f, 0xff]))],
  ])('with %s ends the connection and takes nothing', async (_, bytes) => {
    const client = await rawOven(door);
    client.send(bytes);
    await client.ended;
    expect(door.messages).toEqual([]);
  });

  it('of QoS 1 is answered with the golden bytes of PUBACK, clause 3.4', async () => {
    const client = await rawOven(door);
    const bytes: Buffer[] = [];
    client.socket.on('data', (chunk) => bytes.push(chunk));
    client.send(packet(0x32, utf8('works/oven/air'), Buffer.from([0x01, 0x02]), Buffer.from('1')));
    await client.next('puback');
    expect(Buffer.concat(bytes)).toEqual(Buffer.from([0x40, 0x02, 0x01, 0x02]));
  });

  it('denied is told, and what came behind it is taken', async () => {
    const client = await rawOven(door);
    client.socket.cork();
    client.send(publishPacket('works/oven/air', 0));
    client.send(publishPacket('works/other/air', 0));
    client.send(publishPacket('works/oven/air', 0));
    client.socket.uncork();
    await until('both are taken', () => door.messages.length === 2);
    expect(door.turnedAway).toEqual([['works/other/air', 'not-listed']]);
  });
});

describe('SUBSCRIBE', () => {
  const subscribe = (...filters: string[]) => ({
    cmd: 'subscribe' as const,
    messageId: 3,
    subscriptions: filters.map((topic) => ({ topic, qos: 1 as const })),
  });

  it('grants what the row covers and refuses the rest with 0x80, clause 3.9.3', async () => {
    const client = await rawOven(door);
    client.send(
      subscribe('works/set/air', 'works/set/#', '#', 'works/+/air', '$SYS/#', 'forebond/#'),
    );
    expect(await client.next('suback')).toMatchObject({ granted: [1, 1, 128, 128, 128, 128] });
    expect(door.counters.denied).toMatchObject({ 'not-listed': 3, server: 1 });
  });

  it.each([
    'works/set/a+',
    'works/set/+a',
    'works/set/a#',
    'works/set/#/a',
    '',
    'works/set/\u0000',
  ])('with the filter %j ends the connection [MQTT-4.7.1-2] [MQTT-4.7.1-3]', async (filter) => {
    const client = await rawOven(door);
    client.send(packet(0x82, Buffer.from([0, 3]), utf8(filter), Buffer.from([1])));
    await client.ended;
  });

  it('beyond the limit is refused, until one is given up', async () => {
    const client = await rawOven(door);
    const six = Array.from({ length: 6 }, (_, i) => `works/set/${i}`);
    client.send(subscribe(...six));
    expect(await client.next('suback')).toMatchObject({ granted: [1, 1, 1, 1, 1, 128] });
    client.send({ cmd: 'unsubscribe', messageId: 4, unsubscriptions: ['works/set/0'] });
    await client.next('unsuback');
    client.send(subscribe('works/set/5'));
    expect(await client.next('suback')).toMatchObject({ granted: [1] });
    expect(door.counters.denied['too-many-filters']).toBe(1);
  });
});

describe('wills', () => {
  it('of a device that vanishes is taken, with its retain', async () => {
    const client = await rawOven(door, {
      will: { ...will('works/oven/state'), retain: true, qos: 1 },
    });
    client.socket.destroy();
    await until('the will is taken', () => door.messages.length === 1);
    expect(door.messages[0]).toMatchObject({
      topic: 'works/oven/state',
      user: 'oven',
      retain: true,
    });
    expect(door.counters.retained).toBe(1);
  });

  it('of a device with a subscription too, whose end takes a turn longer', async () => {
    const client = await rawOven(door, { will: will('works/oven/state') });
    client.send({
      cmd: 'subscribe',
      messageId: 3,
      subscriptions: [{ topic: 'works/set/#', qos: 0 }],
    });
    await client.next('suback');
    client.socket.destroy();
    await until('the will is taken', () => door.messages.length === 1);
  });

  it('is not sent after DISCONNECT, nor when the door closes', async () => {
    const first = await rawOven(door, { will: will('works/oven/state') });
    first.send({ cmd: 'disconnect' });
    await first.ended;
    await rawOven(door, { will: will('works/oven/state') });
    await door.close();
    expect(door.messages).toEqual([]);
  });
});

it('a device cannot take over, or learn from, a client id of another', async () => {
  const oven = await rawOven(door, { clientId: 'shared', clean: false });
  const lamp = await rawClient(door);
  const login = { username: 'lamp', password: Buffer.from('lamp-secret-0123456789') };
  lamp.send(connectPacket({ clientId: 'shared', clean: false, ...login }));
  expect(await lamp.next('connack')).toMatchObject({ returnCode: 2 });
  expect(door.counters.refused['client-id-taken']).toBe(1);
  oven.send({ cmd: 'pingreq' });
  expect(await oven.next('pingresp')).not.toBeNull();
  // Its own user may: the older connection ends, [MQTT-3.1.4-2].
  await rawOven(door, { clientId: 'shared', clean: false });
  await oven.ended;
});
