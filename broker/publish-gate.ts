/**
 * What happens to a client's PUBLISH before the broker acknowledges it.
 * Order: rate, access, repeat, size, intake. The library acknowledges, and passes on to readers, only
 * after the answer; so the answer waits for the intake's `done`.
 *
 * MQTT 3.1.1 [MQTT-3.3.5-2] has a server that does not want a PUBLISH acknowledge it all the same, or
 * close the connection. What the rest of a gateway's sensors would pay for is acknowledged: a topic
 * that its device does not list, a payload too large. What breaks the protocol closes.
 *
 * Always true:
 *   - a denied message and a repeated one never reach the intake;
 *   - nobody reads a denied message or one too large, and what is not taken is told as turned away;
 *   - PUBACK and PUBREC are sent only after `done`, and only on the connection that brought the message;
 *   - while `done` is withheld for `withheldMax` messages the connection is not read further: the
 *     publisher waits, and what waits for it in memory is bounded.
 *
 * A QoS 2 message sent again on a new connection, its first PUBREC still owed, is handed on again:
 * across connections delivery to the intake is at least once.
 */
import type { PublishPacket } from 'aedes';
import { mayPublish, type Verdict } from './access.ts';
import { type Answer, type Connection, isWill, Refusal } from './connection.ts';
import type { DenialCause, DoorCounters } from './counters.ts';
import type { DoorLimits } from './limits.ts';
import type { RetainedBound } from './retained.ts';
import type { Sessions } from './sessions.ts';

export interface DoorMessage {
  readonly topic: string;
  readonly payload: Buffer;
  readonly qos: 0 | 1 | 2;
  /** The publisher asked the door to keep a copy for later readers. The message itself is live. */
  readonly retain: boolean;
  readonly clientId: string;
  /** Null on a door without devices. */
  readonly user: string | null;
}

/** Takes a message; calls `done` once when it may be acknowledged. Called in the order of arrival. */
export type Take = (message: DoorMessage, done: () => void) => void;

/** Why a message that is acknowledged is not taken. */
export type TurnedAway = 'not-listed' | 'own' | 'server';

const isTurnedAway = (why: DenialCause): why is TurnedAway =>
  why === 'not-listed' || why === 'own' || why === 'server';

/** Topics whose verdict a connection remembers. */
const verdictsMax = 1_000;

export interface GateParts {
  readonly limits: DoorLimits;
  readonly counters: DoorCounters;
  readonly sessions: Sessions;
  readonly retained: RetainedBound;
  readonly take: Take;
  /** A message that its sender may not publish; it is acknowledged and goes nowhere. */
  readonly turnedAway: (message: DoorMessage, why: TurnedAway) => void;
  readonly denied: (connection: Connection, why: DenialCause, topic: string) => void;
  readonly takeFailed: (connection: Connection, error: unknown) => void;
}

export class PublishGate {
  readonly #parts: GateParts;
  /** Packets that the library acknowledges and must not pass on to readers. */
  readonly #unread = new WeakSet<object>();
  /** Counts seconds; moved on by the door's timer, so that no message costs a look at a clock. */
  nowS = 0;

  constructor(parts: GateParts) {
    this.#parts = parts;
  }

  /** A PUBLISH as it arrives. */
  enter(connection: Connection, packet: PublishPacket, answer: Answer): void {
    if (connection.sentInS !== this.nowS) {
      connection.sentInS = this.nowS;
      connection.sentCount = 0;
    }
    const { limits, counters } = this.#parts;
    if (connection.sentCount >= limits.messagesPerSecondMax || connection.waiting.length > 0) {
      counters.slowed++;
      connection.waiting.push({ packet, answer });
      return;
    }
    connection.sentCount++;
    this.#judge(connection, packet, answer);
  }

  /** A new second has begun: what waited may go on, in order. */
  release(connection: Connection): void {
    if (connection.waiting.length === 0) return;
    connection.sentInS = this.nowS;
    const going = connection.waiting.splice(0, this.#parts.limits.messagesPerSecondMax);
    connection.sentCount = going.length;
    for (const { packet, answer } of going) this.#judge(connection, packet, answer);
  }

  /** A will, whose connection has ended. */
  enterWill(connection: Connection, will: PublishPacket, answer: Answer): void {
    const denial = this.#denial(connection, will);
    if (denial === null) this.#hand(connection, will, answer);
    else this.#deny(connection, will, denial, answer);
  }

  #judge(connection: Connection, packet: PublishPacket, answer: Answer): void {
    if (connection.client.closed) return;
    const denial = this.#denial(connection, packet);
    if (denial !== null) {
      this.#deny(connection, packet, denial, answer);
    } else if (packet.qos === 2) {
      this.#handOnce(connection, packet, answer);
    } else {
      this.#hand(connection, packet, (error) => {
        if (!connection.client.closed) answer(error);
      });
    }
  }

  #verdict(connection: Connection, topic: string): Verdict {
    const known = connection.verdicts.get(topic);
    if (known !== undefined) return known;
    if (connection.row === null) return { allow: false, why: 'not-listed' };
    const verdict = mayPublish(connection.row, topic, this.#parts.limits.topicBytesMax);
    if (connection.verdicts.size >= verdictsMax) connection.verdicts.clear();
    connection.verdicts.set(topic, verdict);
    return verdict;
  }

  #denial(connection: Connection, packet: PublishPacket): DenialCause | null {
    const verdict = this.#verdict(connection, packet.topic);
    if (!verdict.allow) return verdict.why;
    // [MQTT-2.3.1-1]; a will has no id.
    if (packet.qos > 0 && !isWill(connection, packet) && !(Number(packet.messageId) > 0)) {
      return 'message-id';
    }
    return null;
  }

  #deny(connection: Connection, packet: PublishPacket, why: DenialCause, answer: Answer): void {
    this.#count(connection, packet, why);
    if (!isTurnedAway(why) || connection.row === null || isWill(connection, packet)) {
      answer(new Refusal(why));
      return;
    }
    this.#parts.turnedAway(messageOf(connection, packet), why);
    packet.payload = Buffer.alloc(0);
    this.#unread.add(packet);
    answer();
  }

  #count(connection: Connection, packet: PublishPacket, why: DenialCause): void {
    this.#parts.counters.denied[why]++;
    this.#parts.denied(connection, why, packet.topic);
  }

  /** Whether readers may have a message that was answered. */
  mayBeRead(packet: object): boolean {
    return !this.#unread.has(packet);
  }

  #handOnce(connection: Connection, packet: PublishPacket, answer: Answer): void {
    const id = Number(packet.messageId);
    const repeats = connection.exactlyOnce.get(id);
    if (repeats !== undefined) {
      this.#parts.counters.duplicates++;
      repeats.push(answer);
      connection.repeats++;
      return;
    }
    if (this.#parts.sessions.awaitsRelease(connection.client, id)) {
      this.#parts.counters.duplicates++;
      answer();
      return;
    }
    const waiting: Answer[] = [];
    connection.exactlyOnce.set(id, waiting);
    this.#hand(connection, packet, (error) => {
      if (connection.client.closed) return;
      answer(error);
      // The library notes the id a few microtasks later; only then is a repeat known as one.
      setImmediate(() => {
        connection.exactlyOnce.delete(id);
        connection.repeats -= waiting.length;
        if (connection.client.closed) return;
        for (const repeat of waiting) repeat(error);
      });
    });
  }

  #hand(connection: Connection, packet: PublishPacket, answer: Answer): void {
    const { counters } = this.#parts;
    const message = messageOf(connection, packet);
    const { topic, qos, retain, payload } = message;
    if (payload.length > this.#parts.limits.payloadBytesMax) {
      this.#count(connection, packet, 'payload-too-large');
      this.#unread.add(packet);
    }
    counters.messages[qos]++;
    counters.payloadBytes += payload.length;
    counters.inflight++;
    connection.withheld++;
    let finished = false;
    const finish = (error?: Error) => {
      if (finished) return;
      finished = true;
      counters.inflight--;
      connection.withheld--;
      if (retain && error === undefined && this.mayBeRead(packet)) {
        packet.retain = this.#parts.retained.admit(topic, payload.length, false);
      }
      answer(error);
    };
    try {
      this.#parts.take(message, () => finish());
    } catch (error) {
      counters.closed['intake-failed']++;
      this.#parts.takeFailed(connection, error);
      finish(new Refusal('intake-failed'));
    }
  }
}

function messageOf({ client, row }: Connection, packet: PublishPacket): DoorMessage {
  const { topic, qos, retain, payload } = packet;
  const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
  return { topic, payload: bytes, qos, retain, clientId: client.id, user: row?.user ?? null };
}
