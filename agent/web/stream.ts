/**
 * The live stream: alarm, hold and health events at once, samples coalesced.
 *
 * Always true: an alarm event is written to every listener in the turn in which it is told; a
 * listener misses none or is told `reset`; a slow listener first goes without samples, then is
 * cut off and may come back; nothing a listener does reaches the teller.
 */
import type { ServerResponse } from 'node:http';
import '@fastify/sse';
import type { FastifyReply } from 'fastify';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { withCondition } from './condition.ts';
import type { StreamEvent } from './contract.ts';
import { KeptEvents } from './kept-events.ts';
import type { Figure, ToldEvent, WebPorts } from './ports.ts';

interface Listener {
  readonly raw: ServerResponse;
  /** Whoever listens is still signed in. */
  readonly isIn: () => boolean;
  /** The last id before samples were withheld; null while it keeps up. */
  behindSince: number | null;
}

/** How a listener's stream begins: everything after the id `after` follows the first message. */
interface Opening {
  readonly after: number;
  readonly first: { readonly event: string; readonly id?: string; readonly data: unknown };
  readonly next: string;
}

const bodyOf = (event: StreamEvent): string =>
  `event: ${event.event}\ndata: ${JSON.stringify(event.data)}\n\n`;

const resetData = {
  why: 'What came after your last event is not kept any more, or the agent has started anew.',
  fix: 'Read /api/alarms, /api/holds and /api/signals again; the stream goes on from here.',
} as const;

export class Stream {
  private readonly ports: WebPorts;
  private readonly onFault: (error: unknown) => void;
  private readonly kept: KeptEvents;
  private readonly listeners = new Set<Listener>();
  private readonly unsubscribe: () => void;
  private places = 0;
  private cursor = 0;
  private timer: NodeJS.Timeout | null = null;
  private lastHealth = '';
  private readonly counts = { told: 0, samples: 0, cutOff: 0, resets: 0, refused: 0 };

  constructor(ports: WebPorts, onFault: (error: unknown) => void, kept = new KeptEvents()) {
    this.ports = ports;
    this.onFault = onFault;
    this.kept = kept;
    this.unsubscribe = ports.subscribe((event) => this.guarded(() => this.tell(event)));
  }

  /** Takes a listener on; it is let go once `isIn` says no. Throws WEB_STREAM_FULL where there is no place. */
  async attach(reply: FastifyReply, isIn: () => boolean = () => true): Promise<void> {
    if (this.places >= limits.streamClientsMax) {
      this.counts.refused += 1;
      reply.header('retry-after', String(limits.streamHeartbeatMs / 1_000));
      throw new AgentError('WEB_STREAM_FULL', { max: limits.streamClientsMax });
    }
    const listener: Listener = { raw: reply.raw, isIn, behindSince: null };
    this.places += 1;
    reply.raw.once('close', () => {
      this.places -= 1;
      this.listeners.delete(listener);
    });
    reply.sse.keepAlive();
    const opening = this.opening(reply.sse.lastEventId);
    await reply.sse.send(opening.first);
    if (!reply.sse.isConnected) return;
    const missed = this.kept.since(opening.after);
    if (missed === null) {
      this.cutListener(listener); // it comes back, and is told `reset`
      return;
    }
    this.write(listener, opening.next + missed.join(''));
    this.listeners.add(listener);
    this.timer ??= setInterval(
      () => this.guarded(() => this.tick()),
      limits.streamSampleEveryMs,
    ).unref();
  }

  /** Ends every stream; listeners find out by reconnecting. */
  close(): void {
    this.unsubscribe();
    this.stopTicking();
    for (const listener of this.listeners) listener.raw.end();
    this.listeners.clear();
  }

  figures(): Figure[] {
    const counter = (name: string, help: string, value: number): Figure => ({
      name: `forebond_stream_${name}_total`,
      kind: 'counter',
      help,
      rows: [{ value }],
    });
    return [
      {
        name: 'forebond_stream_listeners',
        kind: 'gauge',
        help: 'Listeners on the live stream now.',
        rows: [{ value: this.listeners.size }],
      },
      counter('events', 'Alarm, hold and health events told.', this.counts.told),
      counter('samples', 'Sample events told, coalesced.', this.counts.samples),
      counter('listeners_cut_off', 'Listeners cut off for being slow.', this.counts.cutOff),
      counter('listeners_refused', 'Listeners for whom there was no place.', this.counts.refused),
      counter('resets', 'Listeners that could not resume.', this.counts.resets),
    ];
  }

  private opening(lastEventId: string | null): Opening {
    const health: StreamEvent = { event: 'health', data: withCondition(this.ports.health()) };
    const newest = this.kept.lastId;
    if (lastEventId === null)
      return { after: newest, first: { ...health, id: String(newest) }, next: '' };
    const after = /^\d{1,16}$/.test(lastEventId) ? Number(lastEventId) : Number.NaN;
    // Without an id of its own the first message leaves the listener's place where it was.
    if (this.kept.since(after) !== null) return { after, first: health, next: '' };
    this.counts.resets += 1;
    const first = { event: 'reset', id: String(newest), data: resetData };
    return { after: newest, first, next: bodyOf(health) };
  }

  private tell(event: ToldEvent): void {
    const whole: StreamEvent =
      event.event === 'health' ? { event: 'health', data: withCondition(event.data) } : event;
    if (whole.event === 'health') {
      const { parts, notes } = whole.data;
      const said = JSON.stringify([parts, notes]);
      if (said === this.lastHealth) return;
      this.lastHealth = said;
    }
    this.counts.told += 1;
    const text = this.kept.keep(bodyOf(whole));
    for (const listener of this.listeners) this.write(listener, text);
    this.boundTotal();
  }

  private tick(): void {
    if (this.listeners.size === 0) {
      this.stopTicking();
      return;
    }
    for (const listener of this.listeners) if (!listener.isIn()) this.letGo(listener);
    const before = this.kept.lastId;
    const { cursor, samples } = this.ports.samplesSince(this.cursor);
    this.cursor = cursor;
    this.counts.samples += samples.length;
    const text = samples
      .map((data) => this.kept.keepSample(data.signal, bodyOf({ event: 'sample', data })))
      .join('');
    for (const listener of this.listeners) this.writeSamples(listener, text, before);
    this.boundTotal();
  }

  private writeSamples(listener: Listener, text: string, before: number): void {
    if (listener.raw.writableLength > limits.streamSampleBacklogBytes) {
      listener.behindSince ??= before;
    } else if (listener.behindSince !== null) {
      const since = listener.behindSince;
      listener.behindSince = null;
      this.write(listener, this.kept.samplesSince(since).join(''));
    } else {
      this.write(listener, text);
    }
  }

  private write(listener: Listener, text: string): void {
    if (text === '') return;
    listener.raw.write(text);
    if (listener.raw.writableLength > limits.streamBacklogBytesMax) this.cutListener(listener);
  }

  /** All that waits for listeners stays within a bound; the slowest goes first. */
  private boundTotal(): void {
    const slowestFirst = [...this.listeners].sort(
      (a, b) => b.raw.writableLength - a.raw.writableLength,
    );
    let total = slowestFirst.reduce((sum, one) => sum + one.raw.writableLength, 0);
    for (const listener of slowestFirst) {
      if (total <= limits.streamBacklogTotalBytesMax) return;
      total -= listener.raw.writableLength;
      this.cutListener(listener);
    }
  }

  private letGo(listener: Listener): void {
    this.listeners.delete(listener);
    listener.raw.end();
  }

  private cutListener(listener: Listener): void {
    this.counts.cutOff += 1;
    this.listeners.delete(listener);
    listener.raw.destroy();
  }

  private stopTicking(): void {
    if (this.timer !== null) clearInterval(this.timer);
    this.timer = null;
  }

  private guarded(run: () => void): void {
    try {
      run();
    } catch (error) {
      this.onFault(error);
    }
  }
}
