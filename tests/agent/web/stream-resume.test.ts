import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { numbers, raised, range, StreamRoom } from './stream-room.ts';

const room = new StreamRoom();

describe('coming back', () => {
  test('gives what was missed, once and in order', async () => {
    const first = await room.listen();
    await room.settled(1);
    room.ports.tell(raised(1));
    await first.until(() => first.of('alarm').length === 1);
    const place = first.lastEventId;
    first.close();
    await room.settled(0);
    for (const n of range(2, 50)) room.ports.tell(raised(n));
    const second = await room.listen(place);
    await room.settled(1);
    room.ports.tell(raised(50));
    await second.until(() => second.of('alarm').length === 49);
    expect(second.events[0]).toBe('health');
    expect(numbers(second)).toEqual(range(2, 51));
  });

  test('from a stream on which nothing had happened', async () => {
    const first = await room.listen();
    const place = first.lastEventId;
    first.close();
    room.ports.tell(raised(1));
    const second = await room.listen(place);
    await second.until(() => second.of('alarm').length === 1);
    expect(numbers(second)).toEqual([1]);
  });

  test('a listener that is cut off again before anything follows keeps its place', async () => {
    const first = await room.listen();
    const place = first.lastEventId;
    for (const n of range(1, 4)) room.ports.tell(raised(n));
    const second = await room.listen(place);
    // The first message of a resumed stream has no id: dying right after it loses nothing.
    expect(second.heard[0]).toMatchObject({ event: 'health', id: '' });
  });

  test('gives of each signal the latest sample missed', async () => {
    const first = await room.listen();
    await room.settled(1);
    room.ports.sample('wall', 1);
    room.ports.sample('air', 1);
    await first.until(() => first.of('sample').length === 2);
    const place = first.lastEventId;
    const other = await room.listen();
    first.close();
    await room.settled(1);
    for (const value of [2, 3]) {
      const before = other.of('sample').length;
      room.ports.sample('wall', value);
      await other.until(() => other.of('sample').length > before);
    }
    const second = await room.listen(place);
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
    room.ports.tell(raised(1));
    const reader = await room.listen(id === ' ' ? 'x' : id);
    await reader.until(() => reader.heard.length === 2);
    expect(reader.events).toEqual(['reset', 'health']);
    const place = reader.lastEventId;
    room.ports.tell(raised(2));
    await reader.until(() => reader.of('alarm').length === 1);
    const next = await room.listen(place);
    await next.until(() => next.of('alarm').length === 1);
    expect(numbers(next)).toEqual([2]);
  });

  test('after a restart is told to read everything again', async () => {
    const first = await room.listen();
    await room.settled(1);
    for (const n of range(1, 20)) room.ports.tell(raised(n));
    await first.until(() => first.of('alarm').length === 19);
    const place = first.lastEventId;
    await room.web.close();
    await room.start();
    for (const n of range(1, 20)) room.ports.tell(raised(n));
    expect((await room.listen(place)).events[0]).toBe('reset');
  });

  test('after more than is kept is told to read everything again', async () => {
    const first = await room.listen();
    const place = first.lastEventId;
    first.close();
    for (const n of range(0, limits.streamKeptEventsMax + 1)) room.ports.tell(raised(n));
    expect((await room.listen(place)).events[0]).toBe('reset');
  });

  test('samples never push an alarm out', async () => {
    const first = await room.listen();
    const place = first.lastEventId;
    room.ports.tell(raised(7));
    for (const n of range(0, 3)) {
      const before = first.of('sample').length;
      for (const k of range(0, 3_000)) room.ports.sample(`s-${k}`, n);
      await first.until(() => first.of('sample').length >= before + 3_000);
    }
    const second = await room.listen(place);
    await second.until(() => second.of('alarm').length === 1);
    expect(second.events[0]).toBe('health');
    expect(numbers(second)).toEqual([7]);
  });
});
