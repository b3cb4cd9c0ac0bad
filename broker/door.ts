/**
 * The MQTT door: MQTT 3.1.1 over TCP, for devices that publish and clients that listen.
 *
 * Always true:
 *   - what a client may not publish never reaches `take`, nor any reader; what is too large reaches
 *     `take` alone, cut where it shows;
 *   - PUBACK and PUBREC follow `done`; while it is withheld the publisher waits, unclosed;
 *   - a door that others than this machine can reach has devices, each with a secret;
 *   - with no devices a loopback client may publish anything but `forebond/#` and read only that;
 *     once one device exists everyone needs a user and a secret;
 *   - everything that can grow is bounded by a limit that was handed in, and counted there.
 *
 * It knows nothing of what the messages mean.
 */
import type { EventEmitter } from 'node:events';
import { createServer, type Server, type Socket } from 'node:net';
import { Aedes, type Client, type PublishPacket } from 'aedes';
import { Connection, guardSocket, Refusal } from './connection.ts';
import type { DoorCounters } from './counters.ts';
import { DoorError, type DoorFault } from './door-error.ts';
import { makeHandlers } from './handlers.ts';
import { type DoorOptions, type DoorParts, makeParts } from './parts.ts';

export interface Door {
  readonly host: string;
  readonly port: number;
  readonly counters: DoorCounters;
  /** The agent's own message to whoever listens; settled once it is on its way to each of them. */
  publish(
    topic: string,
    payload: string | Buffer,
    how?: { readonly retain?: boolean; readonly qos?: 0 | 1 | 2 },
  ): Promise<void>;
  /** Looks at the list of devices now, as the timer does by itself. */
  refreshDevices(): Promise<void>;
  /** Why the list of devices on disk is not the one the door goes by; null while it is. */
  devicesProblem(): DoorFault | null;
  /** Ends every connection. Wills are not sent: the door goes, not the devices. */
  close(): Promise<void>;
}

function accept(parts: DoorParts, broker: Aedes, socket: Socket): void {
  const { counters, gate, options, sessions } = parts;
  counters.connections++;
  counters.connectionsOpen++;
  const client = broker.handle(socket);
  const connection = new Connection(socket, client);
  connection.heardAtS = gate.nowS;
  parts.connections.add(connection);
  parts.connectionOf.set(client, connection);
  guardSocket(
    connection,
    options.limits,
    () => {
      connection.heardAtS = gate.nowS;
    },
    (why) => connection.end(counters, why),
  );
  socket.once('close', () => {
    counters.connectionsOpen--;
    parts.connections.delete(connection);
    if (connection.clientId !== null) sessions.release(connection.clientId);
  });
}

/** Once a second: the rate's next second, the silent, and what was told too often to tell each time. */
function everySecond(parts: DoorParts): void {
  const { connections, counters, gate, teller } = parts;
  gate.nowS++;
  for (const connection of connections) {
    gate.release(connection);
    // Not read while the intake withholds or a secret is being verified, so not silent.
    if (connection.withheld > 0 || connection.row === null) connection.heardAtS = gate.nowS;
    const { silenceMaxS, heardAtS } = connection;
    if (silenceMaxS > 0 && gate.nowS - heardAtS > silenceMaxS) connection.end(counters, 'silent');
  }
  teller.second();
}

async function refreshDevices(parts: DoorParts): Promise<void> {
  const { options, connections, counters, sessions, teller } = parts;
  const news = await options.devices.refresh();
  if (news === null) return;
  if ('problem' in news) {
    teller.tell('devices not reloaded', null, { problem: news.problem });
    return;
  }
  const changed = new Set(news.changed);
  const over = (user: string | null) =>
    user === null ? options.devices.count() > 0 : changed.has(user);
  for (const connection of connections) {
    if (connection.row === null || !over(connection.row.user)) continue;
    connection.row = null;
    connection.verdicts.clear();
    connection.end(counters, 'device-changed');
  }
  sessions.forgetUsers(over);
  options.log.info({ devices: options.devices.count(), changed: news.changed }, 'devices reloaded');
}

function listen(server: Server, host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const reason = error.code ?? error.message;
      reject(new DoorError({ kind: 'cannot-listen', host, port, reason }, error));
    });
    server.listen(port, host, () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}

async function closeDoor(parts: DoorParts, broker: Aedes, server: Server): Promise<void> {
  parts.closing = true;
  const closed = new Promise<void>((resolve) => server.close(() => resolve()));
  await new Promise<void>((resolve) => broker.close(() => resolve()));
  // Those that had not said CONNECT yet are unknown to the library's list.
  for (const { socket } of parts.connections) socket.destroy();
  await closed;
}

/** Opens the door. Throws DoorError `needs-devices` or `cannot-listen`. */
export async function openDoor(options: DoorOptions): Promise<Door> {
  const { host, limits, log } = options;
  const parts = makeParts(options);
  if (!parts.loopback && options.devices.count() === 0) {
    throw new DoorError({ kind: 'needs-devices', host });
  }
  const broker = await Aedes.createBroker({
    persistence: parts.sessions.store,
    connectTimeout: limits.connectTimeoutMs,
    queueLimit: limits.earlyPacketsMax,
    maxClientsIdLength: limits.clientIdBytesMax,
    maxInflightInbound: limits.exactlyOnceMax,
    ...makeHandlers(parts),
  });
  follow(parts, broker);
  keepUnread(parts, broker);

  const server = createServer({ noDelay: true }, (socket) => accept(parts, broker, socket));
  server.maxConnections = limits.clientsMax;
  server.on('drop', () => {
    parts.counters.refused.full++;
    parts.teller.tell('connection refused: full', null, { clientsMax: limits.clientsMax });
  });
  const port = await listen(server, host, options.port).catch(async (error) => {
    await new Promise<void>((resolve) => broker.close(() => resolve()));
    throw error;
  });
  await options.devices.keep();
  const seconds = setInterval(everySecond, 1_000, parts);
  const refresh = async (): Promise<void> => {
    await refreshDevices(parts);
    await options.devices.keep();
  };
  const reload = () => refresh().catch((error) => log.warn({ error }, 'devices not reloaded'));
  const reloads = setInterval(reload, options.devicesReloadMs);

  let closing: Promise<void> | null = null;
  return {
    host,
    port,
    counters: parts.counters,
    publish: (topic, payload, how = {}) => {
      const { retain = false, qos = 0 } = how;
      if (retain) parts.retained.admit(topic, Buffer.byteLength(payload), true);
      parts.counters.published++;
      return new Promise((resolve, reject) =>
        broker.publish({ cmd: 'publish', topic, payload, qos, retain, dup: false }, (error) =>
          error ? reject(error) : resolve(),
        ),
      );
    },
    refreshDevices: refresh,
    devicesProblem: () => options.devices.problem(),
    close: () => {
      clearInterval(seconds);
      clearInterval(reloads);
      closing ??= closeDoor(parts, broker, server);
      return closing;
    },
  };
}

/** The library publishes what it acknowledges; some of it nobody may read. */
function keepUnread(parts: DoorParts, broker: Aedes): void {
  const publish = broker.publish.bind(broker);
  broker.publish = (packet: PublishPacket, ...rest: unknown[]) => {
    if (parts.gate.mayBeRead(packet)) Reflect.apply(publish, broker, [packet, ...rest]);
    else for (const done of rest) if (typeof done === 'function') done();
  };
}

/** Listens to what the library says happened. */
function follow(parts: DoorParts, broker: Aedes): void {
  // Its types leave this event out; unheard, it would end the process.
  const events: EventEmitter = broker;
  events.on('error', (error: Error) =>
    parts.options.log.warn({ error }, 'the MQTT library reports a fault'),
  );
  const faulted = (client: Client, error: Error) => surface(parts, client, error);
  broker.on('clientError', faulted).on('connectionError', faulted);
  broker.on('unsubscribe', (filters, client) => {
    const connection = parts.connectionOf.get(client);
    for (const filter of filters) connection?.filters.delete(filter);
  });
}

/** Counts how a connection failed, unless we ended it and have counted that. */
function surface(parts: DoorParts, client: Client, error: Error): void {
  if (error instanceof Refusal || parts.closing) return;
  const { closed } = parts.counters;
  if ('code' in error) closed.network++;
  else if (error.message === 'connect did not arrive in time') closed['connect-timeout']++;
  else if (error.message === 'Client queue limit reached') closed['early-packets']++;
  else if (error.message !== 'connection closed') {
    closed.malformed++;
    parts.teller.tell('connection closed: malformed', client.id ?? null, { reason: error.message });
  }
}
