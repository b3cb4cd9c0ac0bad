import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import type { AlarmView } from '#agent/web/contract.ts';
import type { ToldEvent } from '#agent/web/ports.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { EventReader } from './event-source.ts';
import { alarm, FakePorts, now } from './fake-ports.ts';
import { send } from './wire.ts';

let ports: FakePorts;
let web: Web;
const faults: unknown[] = [];
const readers: EventReader[] = [];

beforeEach(async () => {
  ports = new FakePorts();
  faults.length = 0;
  web = await start();
});
afterEach(async () => {
  for (const reader of readers.splice(0)) reader.close();
  await web.close();
  expect(faults).toEqual([]);
});
const start = (streamHeartbeatMs = 10_000): Promise<Web> =>
  startWeb({
    host: '127.0.0.1',
    port: 0,
    version: '0',
    ports,
    onFault: (error) => faults.push(error),
    waits: { streamHeartbeatMs },
  });

async function listen(lastEventId?: string): Promise<EventReader> {
  const reader = await EventReader.open(web.port, lastEventId);
  readers.push(reader);
  expect(reader.incoming.statusCode).toBe(200);
  await reader.until(() => reader.heard.length > 0);
  return reader;
}
/** The listeners the server knows of; a reader that has heard something may not be among them yet. */
const settled = async (count: number): Promise<void> => {
  await expect
    .poll(async () => {
      const { text } = await send(web.port, { path: '/metrics' });
      return Number(/^forebond_stream_listeners (\d+)$/m.exec(text)?.[1]);
    })
    .toBe(count);
};
const raised = (n: number, over: Partial<AlarmView> = {}): ToldEvent => ({
  event: 'alarm',
  data: {
    at: now + n,
    change: 'raised',
    alarm: alarm({ occurrence: `a/b/c@${now + n}`, ...over }),
  },
});
const numbers = (reader: EventReader): number[] =>
  reader.of('alarm').map((one) => (one.data as { at: number }).at - now);
const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, i) => from + i);

describe('coming back', () => {
  test('gives what was missed, once and in order', async () => {
    const first = await listen();
    await settled(1);
    ports.tell(raised(1));
    await first.until(() => first.of('alarm').length === 1);
    const place = first.lastEventId;
    first.close();
    await settled(0);
    for (const n of range(2, 50)) ports.tell(raised(n));
    const second = await listen(place);
    await settled(1);
    ports.tell(raised(50));
    await second.until(() => second.of('alarm').length === 49);
    expect(second.events[0]).toBe('health');
    expect(numbers(second)).toEqual(range(2, 51));
  });

  test('from a stream on which nothing had happened', async () => {
    const first = await listen();
    const place = first.lastEventId;
    first.close();
    ports.tell(raised(1));
    const second = await listen(place);
    await second.until(() => second.of('alarm').length === 1);
    expect(numbers(second)).toEqual([1]);
  });

  test('a listener that is cut off again before anything follows keeps its place', async () => {
    const first = await listen();
    const place = first.lastEventId;
    for (const n of range(1, 4)) ports.tell(raised(n));
    const second = await listen(place);
    // The first message of a resumed stream has no id: dying right after it loses nothing.
    expect(second.heard[0]).toMatchObject({ event: 'health', id: '' });
  });

  test('gives of each signal the latest sample missed', async () => {
    const first = await listen();
    await settled(1);
    ports.sample('wall', 1);
    ports.sample('air', 1);
    await first.until(() => first.of('sample').length === 2);
    const place = first.lastEventId;
    const other = await listen();
    first.close();
    await settled(1);
    for (const value of [2, 3]) {
      const before = other.of('sample').length;
      ports.sample('wall', value);
      await other.until(() => other.of('sample').length > before);
    }
    const second = await listen(place);
    await second.until(() => second.of('sample').length > 0);
    expect(second.of('sample').map((one) => one.data)).toMatchObject([
      { signal: 'mounts-2/store-1/wall', value: 3 },
    ]);
  });

  test.each([
    '0',
    '1',
    'abc',
    '-5',
    '1e3',
    '99999999999999999999',
    '9007199254740992',
    ' ',
    '12 34',
  ])('with the id "%s", which is none of ours, is told to read everything again', async (id) => {
    ports.tell(raised(1));
    const reader = await listen(id === ' ' ? 'x' : id);
    await reader.until(() => reader.heard.length === 2);
    expect(reader.events).toEqual(['reset', 'health']);
    const place = reader.lastEventId;
    ports.tell(raised(2));
    await reader.until(() => reader.of('alarm').length === 1);
    const next = await listen(place);
    await next.until(() => next.of('alarm').length === 1);
    expect(numbers(next)).toEqual([2]);
  });

  test('after a restart is told to read everything again', async () => {
    const first = await listen();
    await settled(1);
    for (const n of range(1, 20)) ports.tell(raised(n));
    await first.until(() => first.of('alarm').length === 19);
    const place = first.lastEventId;
    await web.close();
    web = await start();
    for (const n of range(1, 20)) ports.tell(raised(n));
    expect((await listen(place)).events[0]).toBe('reset');
  });

  test('after more than is kept is told to read everything again', async () => {
    const first = await listen();
    const place = first.lastEventId;
    first.close();
    for (const n of range(0, limits.streamKeptEventsMax + 1)) ports.tell(raised(n));
    expect((await listen(place)).events[0]).toBe('reset');
  });

  test('samples never push an alarm out', async () => {
    const first = await listen();
    const place = first.lastEventId;
    ports.tell(raised(7));
    for (const n of range(0, 3)) {
      const before = first.of('sample').length;
      for (const k of range(0, 3_000)) ports.sample(`s-${k}`, n);
      await first.until(() => first.of('sample').length >= before + 3_000);
    }
    const second = await listen(place);
    await second.until(() => second.of('alarm').length === 1);
    expect(second.events[0]).toBe('health');
    expect(numbers(second)).toEqual([7]);
  });
});
