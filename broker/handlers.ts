/**
 * The questions the broker library asks, answered from the access table:
 * may this client come in, may it publish this, may it read this, may this reach it.
 */
import type { AedesOptions, Client, ConnectPacket, PublishPacket } from 'aedes';
import { mayRead } from './access.ts';
import {
  clientIdFault,
  protocolFault,
  type Refused,
  returnCodeOf,
  rowOf,
  willAllowed,
} from './admit.ts';
import { type Answer, type Connection, isWill, Refusal } from './connection.ts';
import type { DoorParts } from './parts.ts';

type Handlers = Required<
  Pick<
    AedesOptions,
    'preConnect' | 'authenticate' | 'authorizePublish' | 'authorizeSubscribe' | 'authorizeForward'
  >
>;

function connectionOf(parts: DoorParts, client: Client): Connection {
  const connection = parts.connectionOf.get(client);
  if (connection === undefined) throw new Error('a client without a connection');
  return connection;
}

function preConnect(
  parts: DoorParts,
  connection: Connection,
  packet: ConnectPacket,
): Refusal | null {
  const { counters, options } = parts;
  const fault = protocolFault(packet);
  if (fault !== null) {
    counters.refused[fault]++;
    parts.teller.tell(`connection refused: ${fault}`, null, {});
    if (fault === 'protocol') return new Refusal(fault);
    // The library answers this level with CONNACK return code 1, as clause 3.1.2.2 asks.
    packet.protocolVersion = 5;
    return null;
  }
  const { clientIdBytesMax, keepAliveMaxS } = options.limits;
  const idFault = clientIdFault(packet, clientIdBytesMax);
  if (idFault !== null) connection.refusal = { returnCode: returnCodeOf(idFault), why: idFault };
  connection.will = packet.will ?? null;
  connection.clean = packet.clean !== false;
  // Silence is ours to judge, for the library would close a publisher whose `done` is withheld.
  const keepAliveS = Math.min(packet.keepalive || keepAliveMaxS, keepAliveMaxS);
  connection.silenceMaxS = Math.ceil(keepAliveS * 1.5);
  packet.keepalive = 0;
  return null;
}

/** Lets the client in, or says why not. */
async function admit(
  parts: DoorParts,
  connection: Connection,
  user: string | undefined,
  secret: Uint8Array | undefined,
): Promise<Refused | null> {
  const { options, loopback, sessions } = parts;
  if (connection.refusal?.why === 'client-id') return 'client-id';
  const row = await rowOf(options.devices, loopback, user, secret);
  if (typeof row === 'string') return row;
  const { will } = connection;
  if (will !== null && !willAllowed(row, will, options.limits)) return 'will';
  if (connection.socket.destroyed) return null;
  const { id } = connection.client;
  if (!sessions.claim(id, row.user, !connection.clean)) return 'client-id-taken';
  connection.clientId = id;
  connection.row = row;
  return null;
}

function refuse(parts: DoorParts, connection: Connection, user: string | undefined, why: Refused) {
  parts.counters.refused[why]++;
  const address = connection.socket.remoteAddress;
  parts.teller.tell(`connection refused: ${why}`, user ?? null, { address });
  return Object.assign(new Refusal(why), { returnCode: returnCodeOf(why) });
}

function authorizeSubscribe(
  parts: DoorParts,
  connection: Connection,
  filter: string,
): 'refuse' | 'close' | 'grant' {
  const { counters, options, teller } = parts;
  const { row, filters } = connection;
  if (row === null) return 'close';
  const verdict = mayRead(row, filter, options.limits.topicBytesMax);
  if (!verdict.allow) {
    counters.denied[verdict.why]++;
    teller.tell(`subscription denied: ${verdict.why}`, row.user, { filter });
    // What the row does not list is refused in SUBACK; what MQTT forbids ends the connection
    // [MQTT-4.8.0-1].
    return verdict.why === 'not-listed' || verdict.why === 'server' ? 'refuse' : 'close';
  }
  if (!filters.has(filter) && filters.size >= options.limits.subscriptionsMax) {
    counters.denied['too-many-filters']++;
    teller.tell('subscription denied: too many filters', row.user, { filter });
    return 'refuse';
  }
  filters.add(filter);
  return 'grant';
}

function authorizePublish(
  parts: DoorParts,
  client: Client | null,
  packet: PublishPacket,
  answer: Answer,
): void {
  const connection = client === null ? undefined : parts.connectionOf.get(client);
  if (connection === undefined) {
    answer(new Refusal('not-listed'));
  } else if (!isWill(connection, packet)) {
    parts.gate.enter(connection, packet, answer);
  } else if (parts.closing || !connection.client.closed) {
    // The library sweeps up wills it takes for orphans, after a jump of the clock also of clients
    // that are here.
    answer(new Refusal('will'));
  } else {
    parts.gate.enterWill(connection, packet, answer);
  }
}

export function makeHandlers(parts: DoorParts): Handlers {
  const { counters } = parts;
  const fullBytes = parts.options.limits.unreadBytesMax / 2;
  return {
    preConnect: (client, packet, callback) => {
      const refusal = preConnect(parts, connectionOf(parts, client), packet);
      callback(refusal, refusal === null);
    },
    authenticate: (client, user, secret, done) => {
      const connection = connectionOf(parts, client);
      admit(parts, connection, user, secret).then(
        (why) => {
          if (why === null) done(null, true);
          else done(refuse(parts, connection, user, why), false);
        },
        (error) => {
          parts.teller.tell('a secret could not be verified', user ?? null, { error });
          done(refuse(parts, connection, user, 'busy'), false);
        },
      );
    },
    authorizePublish: (client, packet, callback) =>
      authorizePublish(parts, client, packet, callback),
    authorizeSubscribe: (client, subscription, callback) => {
      const connection = connectionOf(parts, client);
      const answer = authorizeSubscribe(parts, connection, subscription.topic);
      if (answer === 'close') callback(new Refusal('not-listed'));
      else callback(null, answer === 'grant' ? subscription : null);
    },
    authorizeForward: (client, packet) => {
      const socket = parts.connectionOf.get(client)?.socket;
      if (socket !== undefined && socket.writableLength < fullBytes) return packet;
      counters.dropped++;
      return null;
    },
  };
}
