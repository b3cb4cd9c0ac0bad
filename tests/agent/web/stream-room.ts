/** A server with a stream to listen to: begun before each test, and no fault left after it. */
import { afterEach, beforeEach, expect } from 'vitest';
import type { AlarmView } from '#agent/web/contract.ts';
import type { ToldEvent } from '#agent/web/ports.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { EventReader } from './event-source.ts';
import { alarm, FakePorts, now } from './fake-ports.ts';
import { send } from './wire.ts';

export class StreamRoom {
  ports = new FakePorts();
  web!: Web;
  readonly faults: unknown[] = [];
  readonly readers: EventReader[] = [];

  constructor() {
    beforeEach(async () => {
      this.ports = new FakePorts();
      this.faults.length = 0;
      await this.start();
    });
    afterEach(async () => {
      for (const reader of this.readers.splice(0)) reader.close();
      await this.web.close();
      expect(this.faults).toEqual([]);
    });
  }

  async start(streamHeartbeatMs = 10_000): Promise<void> {
    this.web = await startWeb({
      host: '127.0.0.1',
      port: 0,
      version: '0',
      ports: this.ports,
      onFault: (error) => this.faults.push(error),
      waits: { streamHeartbeatMs },
    });
  }

  /** Takes a place on the stream, and hears its first event. */
  async listen(lastEventId?: string): Promise<EventReader> {
    const reader = await EventReader.open(this.web.port, lastEventId);
    this.readers.push(reader);
    expect(reader.incoming.statusCode).toBe(200);
    await reader.until(() => reader.heard.length > 0);
    return reader;
  }

  /** The listeners the server knows of; a reader that has heard something may not be among them yet. */
  async settled(count: number): Promise<void> {
    await expect
      .poll(async () => {
        const { text } = await send(this.web.port, { path: '/metrics' });
        return Number(/^forebond_stream_listeners (\d+)$/m.exec(text)?.[1]);
      })
      .toBe(count);
  }
}

export const raised = (n: number, over: Partial<AlarmView> = {}): ToldEvent => ({
  event: 'alarm',
  data: {
    at: now + n,
    change: 'raised',
    alarm: alarm({ occurrence: `a/b/c@${now + n}`, ...over }),
  },
});

/** Which of `raised` it heard. */
export const numbers = (reader: EventReader): number[] =>
  reader.of('alarm').map((one) => (one.data as { at: number }).at - now);

export const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, i) => from + i);
