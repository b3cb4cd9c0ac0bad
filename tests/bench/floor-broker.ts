/**
 * The floor: the broker library alone, each payload through JSON.parse and away; and whatever comes
 * on `line/station/probe` written at once to whoever holds an HTTP answer open.
 */
import { createServer as createHttp, type ServerResponse } from 'node:http';
import { type AddressInfo, createServer } from 'node:net';
import { Aedes } from 'aedes';

const broker = await Aedes.createBroker();
const listeners: ServerResponse[] = [];
let count = 0;
let sum = 0;
broker.authorizePublish = (_client, packet, callback) => {
  const parsed = JSON.parse(packet.payload.toString()) as { v: number };
  sum += parsed.v;
  count += 1;
  if (packet.topic === 'line/station/probe')
    for (const each of listeners) each.write(`event: alarm\ndata: ${parsed.v}\n\n`);
  callback(null);
};
const listen = (server: ReturnType<typeof createServer>): Promise<number> =>
  new Promise((resolve) =>
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port)),
  );
const port = await listen(createServer(broker.handle));
const http = await listen(
  createHttp((_, answer) => {
    answer.writeHead(200, { 'content-type': 'text/event-stream' });
    answer.write(':\n\n');
    listeners.push(answer);
  }),
);
process.send?.({ port, page: `http://127.0.0.1:${http}` });
process.on('message', () => process.send?.({ count, sum }));
process.on('disconnect', () => process.exit(0));
