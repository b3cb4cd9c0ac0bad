/** An HTTPS far side on loopback that plays one fault to whoever asks it. */
import { createServer as createPlain, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer } from 'node:https';
import {
  type AddressInfo,
  createServer as createSocketServer,
  type Server,
  type Socket,
} from 'node:net';
import { makeCertificate, type TestCertificate } from './certificate.ts';
import type { Fault } from './faults.ts';

export interface Taken {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

export interface FarSide {
  /** With a path; its host is what the certificate names, or what the fault is about. */
  readonly url: string;
  readonly authority: string;
  /** Requests answered with success. */
  readonly taken: Taken[];
  readonly close: () => Promise<void>;
}

const certificates: Promise<[TestCertificate, TestCertificate]> = Promise.all([
  makeCertificate(),
  makeCertificate(),
]);

export async function farSide(fault: Fault): Promise<FarSide> {
  const [own, stranger] = await certificates;
  const taken: Taken[] = [];
  const sockets = new Set<Socket>();
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      const { method = '', url = '', headers } = request;
      const done = () => taken.push({ method, path: url, headers, body: Buffer.concat(parts) });
      play(fault, response, done);
    });
  };
  const server =
    fault === 'no TLS there'
      ? createPlain(answer)
      : fault === 'half-open socket'
        ? createSocketServer((socket) => socket.pause())
        : createServer({ key: own.key, cert: own.certificate }, answer);
  (server as Server).on('connection', (socket: Socket) => {
    sockets.add(socket);
    socket.on('error', () => socket.destroy());
    socket.on('close', () => sockets.delete(socket));
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  const close = async (): Promise<void> => {
    for (const socket of sockets) socket.destroy();
    await new Promise((closed) => server.close(closed));
  };
  if (fault === 'nobody listens') await close();
  return {
    url: `https://${fault === 'no such host' ? 'nobody.invalid' : 'localhost'}:${port}/there`,
    authority: (fault === 'certificate of a stranger' ? stranger : own).authority,
    taken,
    close: fault === 'nobody listens' ? async () => {} : close,
  };
}

const statuses: Partial<Record<Fault, number>> = {
  '400': 400,
  '401': 401,
  '404': 404,
  '410': 410,
  '413': 413,
  '429, again in 7 s': 429,
  '500': 500,
  '503, again at a date': 503,
  'a redirect': 307,
};

function play(fault: Fault, response: ServerResponse, done: () => void): void {
  const status = statuses[fault];
  if (status !== undefined) {
    if (status === 429) response.setHeader('retry-after', '7');
    if (status === 503)
      response.setHeader('retry-after', new Date(Date.now() + 30_000).toUTCString());
    if (status === 307) response.setHeader('location', '/elsewhere');
    response.writeHead(status).end('x'.repeat(100));
    return;
  }
  if (fault === 'no answer') return;
  if (fault === 'half an answer') {
    response.socket?.write('HTTP/1.1 201 Crea');
    return;
  }
  if (fault === 'the connection cut') {
    response.destroy();
    return;
  }
  done();
  response.writeHead(201);
  if (fault === 'an answer without end') {
    const write = (): void => {
      while (!response.destroyed && response.write('y'.repeat(16_384)));
    };
    response.on('drain', write);
    write();
    return;
  }
  response.end();
}
