/**
 * One client's connection: its socket, its row of the access table, and what it may still do.
 *
 * Always true: a connection without a row is not let in, and one whose row was taken away is over.
 */
import type { Socket } from 'node:net';
import type { Client, ConnectPacket, PublishPacket } from 'aedes';
import type { AccessRow, Verdict } from './access.ts';
import type { ClosingCause, DenialCause, DoorCounters, RefusalCause } from './counters.ts';
import { FrameGuard } from './frame-guard.ts';
import { type DoorLimits, packetBytesMax } from './limits.ts';

/** Our own reason to end a connection: counted where it was made, so not again where it surfaces. */
export class Refusal extends Error {
  readonly why: RefusalCause | ClosingCause | DenialCause;

  constructor(why: RefusalCause | ClosingCause | DenialCause) {
    super(why);
    this.name = 'Refusal';
    this.why = why;
  }
}

export type Answer = (error?: Error | null) => void;
export interface Waiting {
  readonly packet: PublishPacket;
  readonly answer: Answer;
}

export class Connection {
  readonly socket: Socket;
  readonly client: Client;
  row: AccessRow | null = null;
  /** Set by CONNECT when it is at fault, told in CONNACK. */
  refusal: { readonly returnCode: 2 | 3 | 4 | 5; readonly why: RefusalCause } | null = null;
  will: NonNullable<ConnectPacket['will']> | null = null;
  clientId: string | null = null;
  clean = true;
  /** Seconds of silence after which it is closed; 0 before CONNECT. */
  silenceMaxS = 0;
  heardAtS = 0;
  /** Messages the intake has not done with. */
  withheld = 0;
  /** What this client may publish, by topic, as far as it has asked. */
  readonly verdicts = new Map<string, Verdict>();
  readonly filters = new Set<string>();
  sentInS = -1;
  sentCount = 0;
  readonly waiting: Waiting[] = [];
  /** QoS 2 ids with the intake, and the repeats of each that await it. */
  readonly exactlyOnce = new Map<number, Answer[]>();
  repeats = 0;

  constructor(socket: Socket, client: Client) {
    this.socket = socket;
    this.client = client;
  }

  /** Packets read whose answer is owed. Each answer makes the library try to read on. */
  owed(): number {
    return this.withheld + this.waiting.length + this.repeats;
  }

  /** Ends it from our side, counted once. */
  end(counters: DoorCounters, why: ClosingCause): void {
    if (this.socket.destroyed) return;
    counters.closed[why]++;
    this.socket.destroy(new Refusal(why));
  }
}

/** The library publishes a will as the very object that came in the CONNECT. */
export function isWill(connection: Connection, packet: object): boolean {
  return packet === connection.will;
}

/**
 * Bounds what passes through a socket before the broker library has it: bytes in, by the length each
 * packet announces and by the answers still owed; bytes out, by what the client leaves unread.
 * The library waits for a reader whose buffer is full, and every publisher to it waits too; told that
 * there is always room it does not wait, and the bound below ends a reader that stays away.
 */
export function guardSocket(
  connection: Connection,
  limits: DoorLimits,
  heard: () => void,
  end: (why: 'packet-too-large' | 'malformed' | 'slow-reader') => void,
): void {
  const { socket } = connection;
  const guard = new FrameGuard(packetBytesMax(limits));
  const read = socket.read.bind(socket);
  socket.read = (size) => {
    while (connection.owed() < limits.withheldMax) {
      const chunk: Buffer | null = read(size);
      if (chunk === null) return null;
      heard();
      const passed = guard.pass(chunk);
      if (typeof passed === 'string') {
        end(passed);
        return null;
      }
      if (passed.length > 0) return passed;
    }
    return null;
  };
  const write = socket.write.bind(socket) as (...given: unknown[]) => boolean;
  socket.write = (...given: unknown[]) => {
    write(...given);
    if (socket.writableLength > limits.unreadBytesMax) end('slow-reader');
    return true;
  };
}
