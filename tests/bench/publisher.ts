/**
 * A publisher process: so many messages over so many connections, as fast as they are taken.
 *
 * Packets are made before the clock runs. Started by bench files with `fork`; the parent sends a
 * `Job`, it answers `ready`, and on `go` publishes and answers `done`.
 */
import { connect, type Socket } from 'node:net';
import { generate, parser } from 'mqtt-packet';

export interface Job {
  readonly port: number;
  readonly connections: number;
  readonly messages: number;
  readonly qos: 0 | 1;
  readonly topics: number;
  /** QoS 1: so many unacknowledged at once a connection. */
  readonly window: number;
}

const connected = (port: number, id: string): Promise<Socket> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    socket.setNoDelay(true);
    socket.once('error', reject);
    socket.write(
      generate({
        cmd: 'connect',
        clientId: id,
        keepalive: 0,
        clean: true,
        protocolId: 'MQTT',
        protocolVersion: 4,
      }),
    );
    socket.once('data', () => resolve(socket));
  });

/** Two values that alternate: nothing may be saved by their sameness. */
const payload = (i: number): string => `{"v":${(20 + (i % 97) / 10).toFixed(1)}}`;

function packet(job: Job, connection: number, i: number): Buffer {
  const topic = `line/station/t${(connection * 7 + i) % job.topics}`;
  return generate({
    cmd: 'publish',
    topic,
    payload: payload(i),
    qos: job.qos,
    dup: false,
    retain: false,
    ...(job.qos === 1 ? { messageId: (i % 65_535) + 1 } : {}),
  });
}

/** Chunks of some 16 kB; QoS 0 goes out as fast as the socket drains. */
async function blast(socket: Socket, packets: readonly Buffer[]): Promise<void> {
  let chunk: Buffer[] = [];
  let bytes = 0;
  for (const each of packets) {
    chunk.push(each);
    bytes += each.length;
    if (bytes < 16_384) continue;
    const room = socket.write(Buffer.concat(chunk));
    chunk = [];
    bytes = 0;
    if (!room) await new Promise((resolve) => socket.once('drain', resolve));
  }
  socket.write(Buffer.concat(chunk));
}

function windowed(socket: Socket, packets: readonly Buffer[], window: number): Promise<void> {
  return new Promise((resolve) => {
    let sent = 0;
    let acknowledged = 0;
    const fill = (): void => {
      const to = Math.min(packets.length, acknowledged + window);
      if (to === sent) return;
      socket.write(Buffer.concat(packets.slice(sent, to)));
      sent = to;
    };
    const parse = parser();
    parse.on('packet', () => {
      acknowledged += 1;
      if (acknowledged === packets.length) resolve();
    });
    socket.on('data', (data) => {
      parse.parse(data);
      fill();
    });
    fill();
  });
}

async function run(job: Job): Promise<void> {
  const each = Math.ceil(job.messages / job.connections);
  const lists = Array.from({ length: job.connections }, (_, c) =>
    Array.from({ length: each }, (_, i) => packet(job, c, i)),
  );
  const sockets = await Promise.all(
    lists.map((_, c) => connected(job.port, `bench-${process.pid}-${c}`)),
  );
  process.send?.('ready');
  await new Promise<void>((resolve) => process.once('message', () => resolve()));
  await Promise.all(
    sockets.map((socket, c) =>
      job.qos === 0 ? blast(socket, lists[c]!) : windowed(socket, lists[c]!, job.window),
    ),
  );
  process.send?.('done');
  await new Promise<void>((resolve) => process.once('message', () => resolve()));
  for (const socket of sockets) socket.destroy();
}

process.once('message', (job) => {
  void run(job as Job).then(() => process.disconnect());
});
