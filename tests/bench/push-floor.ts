/**
 * The bare path: the broker library alone, and what comes on `line/station/probe` posted at once by
 * https, each over a connection of its own as the agent's are; `push-floor.ts URL AUTHORITY`.
 */
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { request } from 'node:https';
import { type AddressInfo, createServer } from 'node:net';
import { Aedes } from 'aedes';

const [, , url = '', authority = ''] = process.argv;
const ca = readFileSync(authority);
/** About as long as the text of an alarm, encrypted. */
const body = randomBytes(900);
const broker = await Aedes.createBroker();
broker.authorizePublish = (_client, packet, callback) => {
  JSON.parse(packet.payload.toString());
  if (packet.topic === 'line/station/probe')
    request(`${url}/bare`, { method: 'POST', agent: false, ca }, (answer) => answer.resume()).end(
      body,
    );
  callback(null);
};
const server = createServer(broker.handle);
server.listen(0, '127.0.0.1', () =>
  process.send?.({ port: (server.address() as AddressInfo).port }),
);
process.on('disconnect', () => process.exit(0));
