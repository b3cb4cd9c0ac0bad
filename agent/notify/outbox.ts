/**
 * The outbox: what is to be told, kept until it is delivered or there is no use in it any more.
 *
 * Always true: nothing is sent before the turn that holds it is on disk, unless the disk refuses;
 * every sending of a message carries the same key; to one target one message is on its way at a
 * time, highly managed ones first, then in the order they were written; a target that asks for
 * time gets it; targets that fail hold up no other, neither in being sent to nor in finding room.
 * Time is handed in; the outbox sets no timer.
 */
import { priorities } from '#rules/alarm/priority.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import type { OutboxRow } from '../store/contract.ts';
import type { Channel, ChannelName, Delivery, Message, Target } from './contract.ts';

export interface Parcel {
  readonly message: Message;
  readonly target: Target;
  /** Of a flood, all it speaks of. */
  readonly members?: readonly string[];
}

export interface Waiting {
  readonly row: OutboxRow;
  readonly parcel: Parcel;
  /** It may be sent. */
  readonly released: boolean;
  readonly sending: boolean;
  /** When it was written. */
  readonly sinceMs: EpochMs;
}

export interface OutboxParts {
  readonly channels: ReadonlyMap<ChannelName, Channel>;
  /** For the next turn. */
  readonly write: (row: OutboxRow) => void;
  /** It is done with: delivered, gone, refused or given up. */
  readonly settled: (row: OutboxRow, parcel: Parcel) => void;
  readonly now: () => EpochMs;
  /** False while the page is not there yet whose address a message names: nothing is sent. */
  readonly ready: () => boolean;
  /** A fault of the agent's own. */
  readonly fault: (error: unknown) => void;
}

interface Slot {
  row: OutboxRow;
  readonly parcel: Parcel;
  readonly sinceMs: EpochMs;
  released: boolean;
  sending: boolean;
  /** There was no more use in it while it was on its way. */
  useless: string | null;
}

export const rowKey = ({ occurrence, step, channel }: OutboxRow): string =>
  `${occurrence}/${step}/${channel}`;

const laneOf = ({ channel, address }: Target): string => `${channel}/${address}`;

export class Outbox {
  private readonly parts: OutboxParts;
  private readonly slots = new Map<string, Slot>();
  /** A target that asked for time, or failed: nothing is sent there before. */
  private readonly notBefore = new Map<string, EpochMs>();
  private readonly onWay = new Set<Promise<void>>();
  private readonly stopping = new AbortController();

  constructor(parts: OutboxParts) {
    this.parts = parts;
  }

  /** What was on disk, oldest first; it may be sent. */
  load(rows: readonly OutboxRow[]): void {
    for (const row of rows)
      this.slots.set(rowKey(row), {
        row,
        parcel: JSON.parse(row.detail) as Parcel,
        sinceMs: row.due,
        released: true,
        sending: false,
        useless: null,
      });
  }

  /** Written with this turn; sent once it is released. */
  add(row: OutboxRow, parcel: Parcel): void {
    if (this.slots.size >= limits.outboxWaitingMessagesMax && !this.makeRoom(parcel)) {
      this.giveUp({ row, parcel }, 'full', 'Too many messages wait already.');
      return;
    }
    const fresh = { released: false, sending: false, useless: null };
    this.slots.set(rowKey(row), { row, parcel, sinceMs: row.due, ...fresh });
    this.parts.write(row);
  }

  /** What was added is on disk, or the disk refuses and people come first. */
  release(): void {
    for (const slot of this.slots.values()) slot.released = true;
  }

  /** There is no more use in what waits of it; what is on its way is not tried again. */
  withdraw(occurrence: string, cause: string): void {
    for (const slot of [...this.slots.values()])
      if (slot.row.occurrence === occurrence && !slot.parcel.message.silent) {
        if (slot.sending) slot.useless = cause;
        else this.giveUp(slot, 'withdrawn', cause);
      }
  }

  waiting(): Waiting[] {
    return [...this.slots.values()];
  }

  /** Sends what is due. */
  look(): void {
    if (this.stopping.signal.aborted || !this.parts.ready()) return;
    const now = this.parts.now();
    const busy = new Set<string>();
    for (const slot of this.slots.values()) if (slot.sending) busy.add(laneOf(slot.parcel.target));
    let failing = [...busy].filter((lane) => this.notBefore.has(lane)).length;
    for (const slot of this.inOrder()) {
      if (this.onWay.size >= limits.outboxSendingMessagesMax) return;
      const lane = laneOf(slot.parcel.target);
      if (!slot.released || slot.sending || busy.has(lane)) continue;
      busy.add(lane);
      if (slot.row.due > now || (this.notBefore.get(lane) ?? 0) > now) continue;
      if (this.notBefore.has(lane)) {
        if (failing >= limits.outboxSendingMessagesMax / 2) continue;
        failing += 1;
      }
      this.send(slot, lane);
    }
  }

  /** Nothing is sent any more; settles when nothing is on its way. */
  async stop(): Promise<void> {
    this.stopping.abort();
    while (this.onWay.size > 0) await Promise.all(this.onWay);
  }

  private inOrder(): Slot[] {
    const all = [...this.slots.values()];
    const urgent = ({ parcel }: Slot): boolean => parcel.message.highlyManaged;
    return [...all.filter(urgent), ...all.filter((slot) => !urgent(slot))];
  }

  private send(slot: Slot, lane: string): void {
    slot.sending = true;
    const { message, target } = slot.parcel;
    const channel = this.parts.channels.get(target.channel);
    const signal = AbortSignal.any([
      this.stopping.signal,
      AbortSignal.timeout(limits.outboxTryMsMax),
    ]);
    const sent: Promise<Delivery> =
      channel === undefined
        ? Promise.resolve({ outcome: 'refused', cause: `There is no ${target.channel} here.` })
        : withinTime(channel.send(message, target, signal), signal).catch((error: unknown) =>
            this.failed(error, signal),
          );
    const done = sent.then((delivery) => {
      slot.sending = false;
      this.onWay.delete(done);
      if (this.slots.get(rowKey(slot.row)) === slot) this.came(slot, lane, delivery);
    });
    this.onWay.add(done);
  }

  private failed(error: unknown, signal: AbortSignal): Delivery {
    if (!signal.aborted) this.parts.fault(error);
    const cause = signal.aborted ? 'No answer came in time.' : 'It failed inside the agent.';
    return { outcome: 'later', afterMs: null, cause };
  }

  private came(slot: Slot, lane: string, delivery: Delivery): void {
    const now = this.parts.now();
    const tries = slot.row.tries + 1;
    if (delivery.outcome === 'delivered') {
      this.notBefore.delete(lane);
      this.settle(slot, { ...slot.row, tries, done: now, outcome: 'delivered', cause: null });
      return;
    }
    const { outcome, cause } = delivery;
    if (outcome !== 'later') {
      this.settle(slot, { ...slot.row, tries, done: now, outcome, cause });
      return;
    }
    // Stopped on the way: it is sent again by the next run, as if it had not been tried.
    if (this.stopping.signal.aborted) return;
    if (slot.useless !== null) {
      this.giveUp(slot, 'withdrawn', slot.useless);
      return;
    }
    if (now - slot.sinceMs >= limits.outboxTryMs) {
      this.settle(slot, { ...slot.row, tries, done: now, outcome: 'given-up', cause });
      return;
    }
    const due = now + waitMs(tries, delivery.afterMs);
    this.notBefore.set(lane, due);
    slot.row = { ...slot.row, tries, due, cause };
    this.parts.write(slot.row);
  }

  private settle(slot: Slot, row: OutboxRow): void {
    this.slots.delete(rowKey(row));
    this.parts.write(row);
    this.parts.settled(row, slot.parcel);
  }

  private giveUp(
    { row, parcel }: Pick<Slot, 'row' | 'parcel'>,
    outcome: string,
    cause: string,
  ): void {
    this.slots.delete(rowKey(row));
    const done = { ...row, done: this.parts.now(), outcome, cause };
    this.parts.write(done);
    this.parts.settled(done, parcel);
  }

  /**
   * The least urgent that waits gives way to a more urgent one; of those as urgent, the newest of a
   * target that fails, else of the one for which most wait: a phone that never answers takes
   * nobody else's room.
   */
  private makeRoom(parcel: Parcel): boolean {
    const waiting = new Map<string, number>();
    for (const { parcel: one } of this.slots.values()) {
      const lane = laneOf(one.target);
      waiting.set(lane, (waiting.get(lane) ?? 0) + 1);
    }
    const count = ({ target }: Parcel): number => waiting.get(laneOf(target)) ?? 0;
    const failing = ({ target }: Parcel): number => Number(this.notBefore.has(laneOf(target)));
    /** Above 0: `one` gives way before `other`. */
    const before = (one: Parcel, other: Parcel): number =>
      rank(one) - rank(other) || failing(one) - failing(other) || count(one) - count(other);
    let least: Slot | null = null;
    for (const slot of this.slots.values())
      if (!slot.sending && (least === null || before(slot.parcel, least.parcel) >= 0)) least = slot;
    if (least === null) return false;
    const given = least.parcel;
    const isMoreUrgent = rank(given) > rank(parcel);
    const isFairer = count(given) > (failing(given) > failing(parcel) ? 1 : count(parcel) + 1);
    if (before(given, parcel) <= 0 || !(isMoreUrgent || isFairer)) return false;
    const why = isMoreUrgent ? 'a more urgent one' : 'one that can be sent sooner';
    this.giveUp(least, 'full', `It made room for ${why}.`);
    return true;
  }
}

/** The higher, the less urgent. */
const rank = ({ message }: Parcel): number =>
  message.highlyManaged ? -1 : priorities.indexOf(message.priority) + (message.silent ? 10 : 0);

/** Doubling from the least wait; what the far side asks for counts, within the longest. */
export const waitMs = (tries: number, afterMs: number | null): number =>
  Math.min(
    limits.outboxRetryMsMax,
    Math.max(afterMs ?? 0, limits.outboxRetryMsMin * 2 ** Math.min(20, tries - 1)),
  );

/** A channel that forgets its time limit does not hold up the rest. */
function withinTime<T>(promise: Promise<T>, signal: AbortSignal): Promise<T> {
  const { promise: late, reject } = Promise.withResolvers<T>();
  const over = (): void => reject(signal.reason);
  signal.addEventListener('abort', over, { once: true });
  if (signal.aborted) over();
  return Promise.race([promise, late]).finally(() => signal.removeEventListener('abort', over));
}
