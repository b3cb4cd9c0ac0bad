/** Seeded nonsense at the bare socket: nothing gets through, nothing falls over. */
import fc from 'fast-check';
import { generate } from 'mqtt-packet';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  asOven,
  connectPacket,
  mosquittoPub,
  openTestDoor,
  publishPacket,
  type RawClient,
  rawClient,
  rawOven,
  type TestDoor,
} from './door-fixture.ts';

let door: TestDoor;
const faults: unknown[] = [];
const caught = (error: unknown) => faults.push(error);

beforeAll(async () => {
  door = await openTestDoor(undefined, { connectTimeoutMs: 60_000 });
  process.on('uncaughtException', caught);
  process.on('unhandledRejection', caught);
});
afterAll(async () => {
  process.off('uncaughtException', caught);
  process.off('unhandledRejection', caught);
  await door.close();
});

async function stillServes(): Promise<void> {
  expect(faults).toEqual([]);
  const before = door.messages.length;
  const sent = await mosquittoPub(door, [...asOven, '-t', 'works/oven/air', '-m', '1', '-q', '1']);
  expect(sent).toMatchObject({ code: 0, err: '' });
  expect(door.messages.length).toBe(before + 1);
}

const bytes = fc.uint8Array({ minLength: 1, maxLength: 60 });
/** A true type and length around nonsense, so that every parser of a body is reached. */
const framed = fc
  .tuple(fc.integer({ min: 0, max: 255 }), bytes)
  .map(([type, body]) => Uint8Array.of(type, body.length, ...body));
/** A true packet with a few bytes changed. */
const templates = [
  generate(connectPacket()),
  generate(
    connectPacket({
      will: { topic: 'works/oven/x', payload: Buffer.from('x'), qos: 1, retain: true },
    }),
  ),
  generate(publishPacket('works/oven/air', 0)),
  generate(publishPacket('works/oven/air', 1)),
  generate(publishPacket('works/oven/air', 2)),
  generate({ cmd: 'pubrel', messageId: 7 }),
  generate({ cmd: 'puback', messageId: 7 }),
  generate({ cmd: 'subscribe', messageId: 8, subscriptions: [{ topic: 'works/set/+', qos: 1 }] }),
  generate({ cmd: 'unsubscribe', messageId: 9, unsubscriptions: ['works/set/+'] }),
  generate({ cmd: 'pingreq' }),
  generate({ cmd: 'disconnect' }),
];
const bent = fc
  .tuple(
    fc.constantFrom(...templates),
    fc.array(fc.tuple(fc.nat({ max: 200 }), fc.integer({ min: 0, max: 255 })), { maxLength: 2 }),
  )
  .map(([template, changes]) => {
    const packet = Uint8Array.from(template);
    for (const [at, value] of changes) packet[at % packet.length] = value;
    return packet;
  });

const anything = fc.oneof(
  { weight: 1, arbitrary: bytes },
  { weight: 2, arbitrary: framed },
  { weight: 7, arbitrary: bent },
);

/** Sends the packets, a few to a connection, each heard to its end before the next begins. */
async function throwAt(open: () => Promise<RawClient>, packets: readonly Uint8Array[]) {
  let connections = 0;
  for (let at = 0; at < packets.length; ) {
    const client = await open();
    const few = packets.slice(at, at + 1 + (connections % 9));
    for (const packet of few) client.socket.write(packet);
    // Time for an answer, where there is one.
    await new Promise((resolve) => setTimeout(resolve, 1));
    client.socket.end();
    await client.ended;
    at += few.length;
    connections++;
  }
  return connections;
}

const seed = 20_261_125;
const samples = (count: number, offset: number) =>
  fc.sample(anything, { numRuns: count, seed: seed + offset });

it(`10,000 packets of nonsense from strangers (seed ${seed})`, async () => {
  const connections = await throwAt(() => rawClient(door), samples(10_000, 0));
  expect(connections).toBeGreaterThan(1_500);
  await stillServes();
}, 120_000);

it(`10,000 packets of nonsense from a device that was let in (seed ${seed + 1})`, async () => {
  let n = 0;
  const open = () => rawOven(door, { clientId: `fuzz-${n++ % 7}`, clean: n % 2 === 0 });
  const connections = await throwAt(open, samples(10_000, 1));
  expect(connections).toBeGreaterThan(1_500);
  // Some of the nonsense is sense, so what lies behind the first check is reached too.
  expect(door.messages.length).toBeGreaterThan(100);
  expect(door.counters.messages.every((count) => count > 10)).toBe(true);
  expect(door.counters.denied['not-listed']).toBeGreaterThan(10);
  for (const { topic, user } of door.messages) {
    expect(user).toBe('oven');
    expect(topic.startsWith('works/oven/') || topic === 'works/oven').toBe(true);
  }
  await stillServes();
}, 120_000);
