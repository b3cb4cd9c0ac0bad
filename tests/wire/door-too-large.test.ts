/** A payload over the limit, by a real client: nothing else of its sender stops. */
import { connectAsync, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, expect, it } from 'vitest';
import {
  lampSecret,
  openTestDoor,
  ovenSecret,
  type TestDoor,
  testLimits,
  until,
} from './door-fixture.ts';

let door: TestDoor;
beforeEach(async () => {
  door = await openTestDoor();
});
afterEach(() => door.close());

/** One that reads what the oven says. */
async function listening(): Promise<MqttClient> {
  const lamp = await connectAsync({
    ...{ host: door.host, port: door.port, protocolVersion: 4 },
    ...{ username: 'lamp', password: lampSecret },
  });
  await lamp.subscribeAsync('works/oven/#', { qos: 1 });
  return lamp;
}

it.each([
  ['one byte over the limit', 65_537],
  ['a megabyte', 1_000_000],
])(
  'a payload too large (%s) is taken as too large, read by nobody, and the connection goes on',
  async (_, bytes) => {
    const lamp = await listening();
    const read: string[] = [];
    lamp.on('message', (__, payload) => read.push(payload.toString()));
    const oven = await connectAsync({
      ...{ host: door.host, port: door.port, protocolVersion: 4, reconnectPeriod: 0 },
      ...{ username: 'oven', password: ovenSecret },
    });
    const say = (payload: Buffer | string, qos: 1 | 2) =>
      oven.publishAsync('works/oven/air', payload, { qos, retain: true });
    await say('1', 1);
    await say(Buffer.alloc(bytes, 'x'), 1);
    await say(Buffer.alloc(bytes, 'x'), 2);
    await say('2', 1);
    await until('what came behind is read', () => read.includes('2'));
    expect(read).toEqual(['1', '2']);
    expect(door.counters.denied['payload-too-large']).toBe(2);
    const most = Math.min(bytes, testLimits.payloadBytesMax + testLimits.topicBytesMax + 4_096);
    const taken = door.messages.map(({ payload }) => payload.length);
    expect(taken).toEqual([1, expect.any(Number), expect.any(Number), 1]);
    for (const long of taken.slice(1, 3)) {
      expect(long).toBeGreaterThan(testLimits.payloadBytesMax);
      expect(long).toBeLessThanOrEqual(most);
    }
    await Promise.all([oven.endAsync(), lamp.endAsync()]);
  },
);
