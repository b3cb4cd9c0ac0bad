import { EventEmitter } from 'node:events';
import type { FastifyReply } from 'fastify';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { limits } from '#agent/limits.ts';
import { Stream } from '#agent/web/stream.ts';
import { alarm, FakePorts, now } from './fake-ports.ts';

// How the stream treats listeners of different speed, with sockets whose backlog the test sets.

class FakeSocket extends EventEmitter {
  writableLength = 0;
  destroyed = false;
  ended = false;
  readonly written: string[] = [];
  write(text: string): boolean {
    this.written.push(text);
    return this.writableLength === 0;
  }
  destroy(): void {
    this.destroyed = true;
    this.emit('close');
  }
  end(): void {
    this.ended = true;
  }
  get text(): string {
    return this.written.join('');
  }
}

let ports: FakePorts;
let stream: Stream;
const faults: unknown[] = [];
beforeEach(() => {
  vi.useFakeTimers();
  ports = new FakePorts();
  faults.length = 0;
  stream = new Stream(ports, (error) => faults.push(error));
});
afterEach(() => {
  stream.close();
  vi.useRealTimers();
  expect(faults).toEqual([]);
});

async function attach(): Promise<FakeSocket> {
  const socket = new FakeSocket();
  const sse = {
    lastEventId: null,
    isConnected: true,
    keepAlive: () => {},
    send: async () => {},
  };
  await stream.attach({ raw: socket, sse, header: () => {} } as unknown as FastifyReply);
  return socket;
}
const tick = () => vi.advanceTimersByTime(limits.streamSampleEveryMs);
const values = (socket: FakeSocket): number[] =>
  [...socket.text.matchAll(/^data: .*"value":([\d.]+),"unit"/gm)].map((match) => Number(match[1]));
const raise = (sentence = 'x') =>
  ports.tell({
    event: 'alarm',
    data: { at: now, change: 'raised', alarm: alarm({ label: { ...alarm().label, sentence } }) },
  });

test('an alarm is written in the turn in which it is told, to the fast and the slow', async () => {
  const both = [await attach(), await attach()];
  both[1]!.writableLength = limits.streamSampleBacklogBytes + 1;
  raise();
  for (const socket of both) expect(socket.text).toMatch(/^id: \d+\nevent: alarm\ndata: \{/);
});

test('a slow listener gets no samples until it has caught up, then the latest of each', async () => {
  const fast = await attach();
  const slow = await attach();
  ports.sample('wall', 1);
  tick();
  slow.writableLength = limits.streamSampleBacklogBytes + 1;
  // The air falls silent after the first withheld round; it must not be lost for that.
  ports.sample('wall', 2);
  ports.sample('air', 20);
  tick();
  ports.sample('wall', 3);
  tick();
  expect(values(fast)).toEqual([1, 2, 20, 3]);
  expect(values(slow)).toEqual([1]);
  raise();
  slow.writableLength = 0;
  tick();
  expect(values(slow)).toEqual([1, 20, 3]);
  // Ids it was sent still ascend: what it catches up on carries none.
  const ids = [...slow.text.matchAll(/^id: (\d+)$/gm)].map((match) => Number(match[1]));
  expect(ids).toEqual(ids.toSorted((a, b) => a - b));
  expect(ids).toHaveLength(2);
  ports.sample('wall', 4);
  tick();
  expect(values(slow)).toEqual([1, 20, 3, 4]);
});

test('beyond its bound a listener is cut off and the rest goes on', async () => {
  const slow = await attach();
  const fast = await attach();
  slow.writableLength = limits.streamBacklogBytesMax;
  raise();
  expect(slow.destroyed).toBe(false);
  slow.writableLength += 1;
  raise();
  expect(slow.destroyed).toBe(true);
  raise();
  expect(slow.written).toHaveLength(2);
  expect(fast.written).toHaveLength(3);
});

test('beyond the bound of all together the slowest goes, and no more than needed', async () => {
  const each = Math.floor(limits.streamBacklogTotalBytesMax / 10) - 10;
  const sockets: FakeSocket[] = [];
  for (let i = 0; i < 11; i += 1) {
    const socket = await attach();
    socket.writableLength = each + i;
    sockets.push(socket);
  }
  raise();
  expect(sockets.map((one) => one.destroyed)).toEqual(sockets.map((_, i) => i === 10));
});

test('when the last listener has left the clock stops, and starts again with the next', async () => {
  expect(vi.getTimerCount()).toBe(0);
  const socket = await attach();
  expect(vi.getTimerCount()).toBe(1);
  socket.destroy();
  tick();
  expect(vi.getTimerCount()).toBe(0);
  const next = await attach();
  ports.sample('wall', 5);
  tick();
  expect(values(next)).toEqual([5]);
});

test('figures count what was told and who was cut off', async () => {
  const slow = await attach();
  await attach();
  ports.sample('wall', 1);
  tick();
  slow.writableLength = limits.streamBacklogBytesMax + 1;
  raise();
  const figures = stream.figures().map((one) => [one.name, one.rows[0]!.value]);
  expect(Object.fromEntries(figures)).toEqual({
    forebond_stream_listeners: 1,
    forebond_stream_events_total: 1,
    forebond_stream_samples_total: 1,
    forebond_stream_listeners_cut_off_total: 1,
    forebond_stream_listeners_refused_total: 0,
    forebond_stream_resets_total: 0,
  });
});
