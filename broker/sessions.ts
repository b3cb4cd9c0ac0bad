/**
 * What outlives a connection: who owns a client id, subscriptions and messages kept for clients
 * that are away, and the QoS 2 messages that await their PUBREL.
 *
 * Always true:
 *   - a client id belongs to the user who holds it, connected or kept: nobody takes over
 *     another user's session or throws them off by guessing their id;
 *   - kept sessions, and the messages kept for each, are bounded;
 *   - all of this is memory: after a restart sessions begin anew, which MQTT 3.1.1 clause 4.1 allows.
 */
import { createRequire } from 'node:module';
import type { Client, PublishPacket } from 'aedes';
import type { DoorCounters } from './counters.ts';

// The library types its default export, and exports the function itself.
const memory = createRequire(import.meta.url)('aedes-persistence') as () => MemoryStore;

type ById = Pick<Client, 'id'>;
type Sender = Pick<Client, 'id' | 'clean'>;
type Numbered = { messageId?: number | undefined };

/** The part of the library's memory store that is used or replaced here, in its promise form. */
interface MemoryStore {
  outgoingEnqueueCombi(to: readonly { clientId: string }[], packet: PublishPacket): Promise<void>;
  outgoingClearMessageId(client: ById, packet: Numbered): Promise<Numbered | undefined>;
  outgoingStream(client: ById): AsyncIterable<Numbered>;
  cleanSubscriptions(client: ById): Promise<void>;
  incomingStorePacket(client: Sender, packet: Numbered): Promise<void>;
  incomingGetPacket(client: Sender, packet: Numbered): Promise<Numbered>;
  incomingDelPacket(client: Sender, packet: Numbered): Promise<void>;
  cleanIncoming(client: Sender): Promise<void>;
}

interface Holding {
  readonly user: string | null;
  /** Connections with this id now; two for the moment of a takeover. */
  open: number;
  kept: boolean;
  /** Its user is gone or changed: to be forgotten when the last connection ends. */
  over: boolean;
}

export interface SessionLimits {
  readonly sessionsMax: number;
  readonly sessionMessagesMax: number;
}

export class Sessions {
  /** Handed to the broker library as its `persistence`. */
  readonly store: MemoryStore;
  readonly #limits: SessionLimits;
  readonly #counters: DoorCounters;
  /** In the order in which they were last let go. */
  readonly #holdings = new Map<string, Holding>();
  /** QoS 2 ids awaiting PUBREL: of a clean session with its connection, of a kept one by client id. */
  readonly #unreleasedClean = new WeakMap<Sender, Set<number>>();
  readonly #unreleasedKept = new Map<string, Set<number>>();
  readonly #keptMessages = new Map<string, number>();

  constructor(limits: SessionLimits, counters: DoorCounters) {
    this.#limits = limits;
    this.#counters = counters;
    this.store = memory();
    this.#boundOutgoing();
    this.#keepOnlyIds();
  }

  /** Takes a client id for a user, or answers false if another user holds it. */
  claim(clientId: string, user: string | null, keep: boolean): boolean {
    const holding = this.#holdings.get(clientId);
    if (holding !== undefined && holding.user !== user) return false;
    if (holding === undefined) {
      this.#holdings.set(clientId, { user, open: 1, kept: keep, over: false });
      return true;
    }
    holding.open++;
    holding.kept = keep;
    return true;
  }

  /** The connection that claimed this id has ended. */
  release(clientId: string): void {
    const holding = this.#holdings.get(clientId);
    if (holding === undefined) return;
    // [MQTT-3.1.2-6]: a clean session discards the one before it, and what a connection that it
    // took over may have left behind meanwhile.
    if (!holding.kept) this.#unreleasedKept.delete(clientId);
    if (--holding.open > 0) return;
    if (holding.over) {
      this.#forget(clientId);
      return;
    }
    this.#holdings.delete(clientId);
    if (!holding.kept) return;
    this.#holdings.set(clientId, holding);
    if (this.#holdings.size <= this.#limits.sessionsMax) return;
    for (const [id, { open }] of this.#holdings) {
      if (open > 0) continue;
      this.#forget(id);
      return;
    }
  }

  /** Forgets the kept sessions of users who are gone or changed. */
  forgetUsers(gone: (user: string | null) => boolean): void {
    for (const [id, holding] of this.#holdings) {
      if (!gone(holding.user)) continue;
      if (holding.open === 0) this.#forget(id);
      else holding.over = true;
    }
  }

  /** Whether a QoS 2 message with this id was accepted and not yet released. */
  awaitsRelease(client: Sender, messageId: number): boolean {
    return this.#unreleased(client)?.has(messageId) ?? false;
  }

  #unreleased(client: Sender): Set<number> | undefined {
    return client.clean ? this.#unreleasedClean.get(client) : this.#unreleasedKept.get(client.id);
  }

  #await(client: Sender, messageId: number): void {
    const ids = this.#unreleased(client);
    if (ids !== undefined) ids.add(messageId);
    else if (client.clean) this.#unreleasedClean.set(client, new Set([messageId]));
    else this.#unreleasedKept.set(client.id, new Set([messageId]));
  }

  #forget(id: string): void {
    this.#holdings.delete(id);
    this.#unreleasedKept.delete(id);
    void this.#discard({ id });
  }

  async #discard(client: ById): Promise<void> {
    await this.store.cleanSubscriptions(client);
    for await (const packet of this.store.outgoingStream(client)) {
      await this.store.outgoingClearMessageId(client, packet);
    }
  }

  /** The library keeps messages for a client without end; here up to a limit. */
  #boundOutgoing(): void {
    const enqueue = this.store.outgoingEnqueueCombi.bind(this.store);
    const clear = this.store.outgoingClearMessageId.bind(this.store);
    const kept = this.#keptMessages;
    this.store.outgoingEnqueueCombi = (to, packet) => {
      if (to.length === 0) return enqueue(to, packet);
      const room = to.filter(
        ({ clientId }) => (kept.get(clientId) ?? 0) < this.#limits.sessionMessagesMax,
      );
      this.#counters.dropped += to.length - room.length;
      for (const { clientId } of room) kept.set(clientId, (kept.get(clientId) ?? 0) + 1);
      return enqueue(room, packet);
    };
    this.store.outgoingClearMessageId = async (client, packet) => {
      const cleared = await clear(client, packet);
      const left = (kept.get(client.id) ?? 0) - 1;
      if (cleared !== undefined && left > 0) kept.set(client.id, left);
      else if (cleared !== undefined) kept.delete(client.id);
      return cleared;
    };
  }

  /** The library keeps whole QoS 2 messages until PUBREL; their ids are all it needs. */
  #keepOnlyIds(): void {
    this.store.incomingStorePacket = async (client, { messageId }) => {
      if (messageId === undefined) throw new Error('a QoS 2 message has an id');
      this.#await(client, messageId);
    };
    this.store.incomingGetPacket = async (client, packet) => {
      if (!this.awaitsRelease(client, packet.messageId ?? 0)) throw new Error('no such packet');
      return packet;
    };
    this.store.incomingDelPacket = async (client, { messageId }) => {
      if (!this.#unreleased(client)?.delete(messageId ?? 0)) throw new Error('no such packet');
    };
    // The library asks this for connections it refused too, whose id may be another client's:
    // `claim` and `release` see to it instead.
    this.store.cleanIncoming = async () => {};
  }
}
