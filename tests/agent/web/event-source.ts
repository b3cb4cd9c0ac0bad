/**
 * A reader of server-sent events for tests, on node:http. Parsing after the HTML standard,
 * section 9.2.6 (interpreting an event stream), for streams that end lines with a line feed.
 */
import { type ClientRequest, type IncomingMessage, request } from 'node:http';

export interface Heard {
  readonly event: string;
  readonly id: string;
  readonly data: unknown;
}

export class EventReader {
  readonly heard: Heard[] = [];
  readonly comments: string[] = [];
  readonly incoming: IncomingMessage;
  ended = false;
  private readonly outgoing: ClientRequest;
  private buffer = '';
  private lastId = '';
  private readonly waiting = new Set<() => void>();

  private constructor(outgoing: ClientRequest, incoming: IncomingMessage) {
    this.outgoing = outgoing;
    this.incoming = incoming;
    incoming.setEncoding('utf8');
    incoming.on('data', (text: string) => this.take(text));
    const end = () => {
      this.ended = true;
      this.wake();
    };
    incoming.on('end', end);
    incoming.on('close', end);
    incoming.on('error', end);
  }

  static open(
    port: number,
    lastEventId?: string,
    headers: Record<string, string> = {},
  ): Promise<EventReader> {
    return new Promise((resolve, reject) => {
      const resume = lastEventId === undefined ? {} : { 'last-event-id': lastEventId };
      const outgoing = request(
        {
          host: '127.0.0.1',
          port,
          path: '/api/stream',
          agent: false,
          headers: { ...headers, ...resume },
        },
        (incoming) => resolve(new EventReader(outgoing, incoming)),
      );
      outgoing.on('error', reject);
      outgoing.end();
    });
  }

  get lastEventId(): string {
    return this.lastId;
  }
  get events(): string[] {
    return this.heard.map((one) => one.event);
  }
  of(event: string): Heard[] {
    return this.heard.filter((one) => one.event === event);
  }

  /** Resolves when `done` holds; rejects after `ms`. */
  until(done: () => boolean, ms = 5_000): Promise<void> {
    return new Promise((resolve, reject) => {
      const look = () => {
        if (!done()) return;
        clearTimeout(timer);
        this.waiting.delete(look);
        resolve();
      };
      const timer = setTimeout(() => {
        this.waiting.delete(look);
        reject(new Error(`waited ${ms} ms; heard ${JSON.stringify(this.events.slice(-20))}`));
      }, ms);
      this.waiting.add(look);
      look();
    });
  }

  close(): void {
    this.outgoing.destroy();
  }

  private take(text: string): void {
    this.buffer += text;
    let end = this.buffer.indexOf('\n\n');
    while (end >= 0) {
      this.block(this.buffer.slice(0, end));
      this.buffer = this.buffer.slice(end + 2);
      end = this.buffer.indexOf('\n\n');
    }
    this.wake();
  }

  private block(text: string): void {
    let event = 'message';
    const data: string[] = [];
    for (const line of text.split('\n')) {
      const colon = line.indexOf(':');
      const field = colon < 0 ? line : line.slice(0, colon);
      const value = colon < 0 ? '' : line.slice(colon + 1).replace(/^ /, '');
      if (colon === 0) this.comments.push(value);
      else if (field === 'event') event = value;
      else if (field === 'data') data.push(value);
      else if (field === 'id') this.lastId = value;
      else throw new Error(`not a line of an event stream: ${line}`);
    }
    if (data.length > 0)
      this.heard.push({ event, id: this.lastId, data: JSON.parse(data.join('\n')) });
  }

  private wake(): void {
    for (const look of [...this.waiting]) look();
  }
}
