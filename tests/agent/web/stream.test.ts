import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { streamEventSchema } from '#agent/web/contract.ts';
import type { ToldEvent } from '#agent/web/ports.ts';
import { EventReader } from './event-source.ts';
import { alarm, hold } from './fake-ports.ts';
import { numbers, raised, range, StreamRoom } from './stream-room.ts';
import { send } from './wire.ts';

const room = new StreamRoom();

describe('what is told', () => {
  test('begins with health and is an event stream that nobody stores', async () => {
    const reader = await room.listen();
    expect(reader.incoming.headers['content-type']).toMatch(/^text\/event-stream/);
    expect(reader.incoming.headers['cache-control']).toBe('no-store');
    expect(reader.incoming.headers['x-content-type-options']).toBe('nosniff');
    expect(reader.heard[0]).toMatchObject({
      event: 'health',
      data: { condition: 'good', parts: { store: 'good' } },
    });
    expect(reader.heard[0]!.id).toMatch(/^\d+$/);
  });

  test('alarms, holds and health at once and in order, ids ascending, to everybody', async () => {
    const both = [await room.listen(), await room.listen()];
    await room.settled(2);
    room.ports.tell(raised(1));
    room.ports.tell({ event: 'hold', data: { change: 'set', hold: hold() } });
    const parts = { store: 'failure' } as const;
    room.ports.tell({
      event: 'health',
      data: { ...room.ports.parts, parts, notes: { store: 'full' } },
    });
    room.ports.tell(raised(2));
    for (const reader of both) {
      await reader.until(() => reader.of('alarm').length === 2);
      expect(reader.events).toEqual(['health', 'alarm', 'hold', 'health', 'alarm']);
      const ids = reader.heard.map((one) => Number(one.id));
      expect(ids).toEqual(ids.toSorted((a, b) => a - b));
      expect(new Set(ids).size).toBe(5);
      expect(reader.heard[3]!.data).toMatchObject({
        condition: 'failure',
        notes: { store: 'full' },
      });
    }
    expect(both[0]!.heard).toEqual(both[1]!.heard);
  });

  test('each event is as described', async () => {
    const reader = await room.listen();
    await room.settled(1);
    room.ports.sample('wall', 6.2);
    room.ports.tell(raised(1));
    room.ports.tell({ event: 'hold', data: { change: 'lifted', hold: hold() } });
    await reader.until(() => reader.events.includes('sample'));
    const stranger = await room.listen('1');
    expect(stranger.events[0]).toBe('reset');
    for (const { event, data } of [...reader.heard, ...stranger.heard]) {
      expect(streamEventSchema.parse({ event, data })).toEqual({ event, data });
    }
  });

  test('health that says the same again is not repeated', async () => {
    const reader = await room.listen();
    await room.settled(1);
    for (let uptime = 1; uptime < 5; uptime += 1) {
      room.ports.tell({ event: 'health', data: { ...room.ports.parts, uptime_s: uptime } });
    }
    room.ports.tell(raised(1));
    await reader.until(() => reader.of('alarm').length === 1);
    expect(reader.of('health').length).toBe(2);
  });

  test('text with line breaks and other letters arrives whole', async () => {
    const reader = await room.listen();
    await room.settled(1);
    const label = { ...alarm().label, sentence: 'a\nb\r\nc\u2028d: é 漢 🌡\n\nid: 9\ndata: x' };
    room.ports.tell(raised(1, { label }));
    await reader.until(() => reader.of('alarm').length === 1);
    expect(reader.of('alarm')[0]!.data).toMatchObject({ alarm: { label } });
  });

  test('of a signal the latest sample, at most one in 250 ms', async () => {
    const reader = await room.listen();
    await room.settled(1);
    const began = performance.now();
    while (performance.now() - began < 1_000) {
      room.ports.sample('wall', performance.now());
      room.ports.sample('air', performance.now());
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    room.ports.sample('wall', 1);
    await reader.until(() =>
      reader.of('sample').some((one) => (one.data as { value: number }).value === 1),
    );
    const walls = reader
      .of('sample')
      .filter((one) => (one.data as { signal: string }).signal.endsWith('wall'));
    expect(walls.length).toBeGreaterThanOrEqual(2);
    expect(walls.length).toBeLessThanOrEqual(6);
    const values = walls.slice(0, -1).map((one) => (one.data as { value: number }).value);
    expect(values).toEqual(values.toSorted((a, b) => a - b));
  });

  test('a comment shows that the line lives', async () => {
    await room.web.close();
    await room.start(50);
    const reader = await room.listen();
    await reader.until(() => reader.comments.length >= 3);
    expect(reader.comments[0]).toBe('heartbeat');
    expect(limits.streamHeartbeatMs).toBe(10_000);
  });
});

describe('bounds', () => {
  test('no place on the stream: 503 with a fix, until somebody leaves', async () => {
    for (const _ of range(0, limits.streamClientsMax)) {
      room.readers.push(await EventReader.open(room.web.port));
    }
    const answer = await send(room.web.port, { path: '/api/stream' });
    expect(answer.status).toBe(503);
    expect(answer.headers['retry-after']).toBe('10');
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(JSON.parse(answer.text)).toMatchObject({ code: 'WEB_STREAM_FULL' });
    expect((await send(room.web.port, { path: '/api/health' })).status).toBe(200);
    room.readers.shift()!.close();
    await room.settled(limits.streamClientsMax - 1);
    await room.listen();
  });

  test('a listener that does not read is cut off, alone, and can resume', async () => {
    const slow = await room.listen();
    const quick = await room.listen();
    await room.settled(2);
    const place = slow.lastEventId;
    slow.incoming.pause();
    const sentence = 'x'.repeat(20_000);
    let told = 0;
    const cutOff = async () => {
      const { text } = await send(room.web.port, { path: '/metrics' });
      return /^forebond_stream_listeners_cut_off_total (\d+)$/m.exec(text)?.[1];
    };
    while ((await cutOff()) === '0') {
      expect(told).toBeLessThan(5_000);
      for (const _ of range(0, 20)) {
        told += 1;
        room.ports.tell(raised(told, { label: { ...alarm().label, sentence } }));
      }
      await quick.until(() => quick.of('alarm').length === told);
    }
    expect(await cutOff()).toBe('1');
    slow.incoming.resume();
    await slow.until(() => slow.ended);
    expect(numbers(quick)).toEqual(range(1, told + 1));
    // What it had read in full when it was cut off, and what follows, leave no hole.
    const again = await room.listen(slow.lastEventId);
    await again.until(() => again.of('reset').length === 1 || numbers(again).at(-1) === told);
    if (again.of('reset').length === 0) {
      expect([...numbers(slow), ...numbers(again)]).toEqual(range(1, told + 1));
    }
    expect(place).not.toBe(slow.lastEventId);
  });

  test('nobody listening costs nobody a sample; a listener that leaves is forgotten', async () => {
    let asked = 0;
    const inner = room.ports.samplesSince;
    room.ports.samplesSince = (cursor) => {
      asked += 1;
      return inner(cursor);
    };
    const reader = await room.listen();
    await room.settled(1);
    await expect.poll(() => asked).toBeGreaterThan(0);
    reader.close();
    await room.settled(0);
    await new Promise((resolve) => setTimeout(resolve, 2 * limits.streamSampleEveryMs));
    const before = asked;
    await new Promise((resolve) => setTimeout(resolve, 3 * limits.streamSampleEveryMs));
    expect(asked).toBe(before);
  });
});

describe('what a listener accepts', () => {
  test.each(['text/event-stream', '*/*', 'text/*', 'text/html, */*;q=0.1'])(
    '%s',
    async (accept) => {
      const reader = await EventReader.open(room.web.port, undefined, { accept });
      room.readers.push(reader);
      expect(reader.incoming.statusCode).toBe(200);
    },
  );

  test('anything else: 406 in our words', async () => {
    const answer = await send(room.web.port, {
      path: '/api/stream',
      headers: { accept: 'application/json' },
    });
    expect(answer.status).toBe(406);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(JSON.parse(answer.text)).toMatchObject({ code: 'WEB_STREAM_ONLY_EVENTS' });
  });
});

test('stopping ends every stream, and nothing is asked of the ports any more', async () => {
  const both = [await room.listen(), await room.listen()];
  await room.settled(2);
  const began = performance.now();
  await room.web.close();
  expect(performance.now() - began).toBeLessThan(limits.webCloseMs);
  for (const reader of both) await reader.until(() => reader.ended);
  expect(room.ports.listening).toBe(0);
  await room.start();
});

test('a fault while telling is logged and does not reach the teller', async () => {
  await room.listen();
  await room.settled(1);
  const circular: Record<string, unknown> = {};
  circular.self = circular;
  const broken = { event: 'alarm', data: circular } as unknown as ToldEvent;
  expect(() => room.ports.tell(broken)).not.toThrow();
  expect(room.faults.splice(0)).toHaveLength(1);
  room.ports.samplesSince = () => {
    throw new Error('no samples');
  };
  await expect.poll(() => room.faults.length).toBeGreaterThan(0);
  room.ports.samplesSince = (cursor) => ({ cursor, samples: [] });
  room.faults.length = 0;
});
