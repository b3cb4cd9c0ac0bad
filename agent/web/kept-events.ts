/**
 * What a listener that comes back has missed: alarm, hold and health events in a bounded ring, and
 * of every signal the latest sample.
 *
 * Always true: ids ascend by one; an alarm never gives way to a sample; `since` answers with
 * everything missed or with null, never with a part. Ids begin at a random number, so that an
 * id from before a restart is not taken for one of ours (the clock of a small box may repeat itself).
 */
import { randomInt } from 'node:crypto';
import { limits } from '../limits.ts';

interface Kept {
  readonly id: number;
  /** `event: …\ndata: …\n\n`, without its id. */
  readonly body: string;
}

export const frame = (id: number, body: string): string => `id: ${id}\n${body}`;

/** What a text takes in memory at most. */
const bytesOf = (text: string): number => text.length * 2;

export class KeptEvents {
  private last: number;
  /** The newest id that was dropped, or the number before the first. */
  private floor: number;
  private readonly ring: Kept[] = [];
  private ringBytes = 0;
  /** Signal to its latest sample; in order of id. */
  private readonly samples = new Map<string, Kept>();

  constructor(before: number = randomInt(1, 2 ** 47)) {
    this.last = before;
    this.floor = before;
  }

  get lastId(): number {
    return this.last;
  }

  /** Keeps an event that must not be missed; gives its frame. */
  keep(body: string): string {
    const id = ++this.last;
    this.ring.push({ id, body });
    this.ringBytes += bytesOf(body);
    while (
      this.ring.length > limits.streamKeptEventsMax ||
      this.ringBytes > limits.streamKeptBytesMax
    ) {
      const dropped = this.ring.shift()!;
      this.ringBytes -= bytesOf(dropped.body);
      this.floor = dropped.id;
    }
    return frame(id, body);
  }

  /** Keeps a signal's latest sample; gives its frame. */
  keepSample(signal: string, body: string): string {
    const id = ++this.last;
    this.samples.delete(signal);
    this.samples.set(signal, { id, body });
    return frame(id, body);
  }

  /** Frames after `id`, in order; null where some of them are gone or the id is not ours. */
  since(id: number): string[] | null {
    if (!Number.isSafeInteger(id) || id < this.floor || id > this.last) return null;
    const missed = [
      ...this.ring.filter((one) => one.id > id),
      ...[...this.samples.values()].filter((one) => one.id > id),
    ];
    missed.sort((a, b) => a.id - b.id);
    return missed.map((one) => frame(one.id, one.body));
  }

  /** Bodies of the latest samples after `id`, without ids: for a listener that was too slow for them. */
  samplesSince(id: number): string[] {
    return [...this.samples.values()].filter((one) => one.id > id).map((one) => one.body);
  }
}
