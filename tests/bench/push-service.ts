/**
 * A push service for benchmarks, by https: takes everything, and tells its parent when each request
 * was whole. Times are of the machine's monotonic clock, which all processes share.
 *
 * Writes its authority into the file named first, for others to trust.
 */
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { makeCertificate } from '../agent/notify/certificate.ts';

export interface Arrival {
  readonly path: string;
  /** RFC 8030 section 5.3: `low` for what makes no sound; absent where nobody said. */
  readonly urgency: string | null;
  readonly atNs: string;
}

const { authority, certificate, key } = await makeCertificate('localhost');
writeFileSync(process.argv[2]!, authority);
const server = createServer({ cert: certificate, key }, (request, reply) => {
  request.resume();
  request.on('end', () => {
    const atNs = String(process.hrtime.bigint());
    const urgency = (request.headers.urgency as string | undefined) ?? null;
    process.send?.({ path: request.url ?? '', urgency, atNs } satisfies Arrival);
    reply.writeHead(201).end();
  });
});
server.listen(0, '127.0.0.1', () =>
  process.send?.({ url: `https://localhost:${(server.address() as AddressInfo).port}` }),
);
process.on('disconnect', () => process.exit(0));
