/** A bare HTTP/1.1 client for tests: sends what a browser or a fetch library would refuse to send. */
import { request } from 'node:http';
import { connect } from 'node:net';

export interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly text: string;
}

export interface Sent {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Uint8Array;
}

/** Sends one request on a connection of its own; no header but Host is added. */
export const send = (port: number, sent: Sent): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const outgoing = request(
      {
        host: '127.0.0.1',
        port,
        method: sent.method ?? 'GET',
        path: sent.path,
        headers: { host: `127.0.0.1:${port}`, ...sent.headers },
        agent: false,
      },
      (incoming) => {
        const chunks: Buffer[] = [];
        incoming.on('data', (chunk: Buffer) => chunks.push(chunk));
        incoming.on('error', reject);
        incoming.on('end', () =>
          resolve({
            status: incoming.statusCode!,
            headers: incoming.headers,
            text: Buffer.concat(chunks).toString(),
          }),
        );
      },
    );
    outgoing.on('error', reject);
    outgoing.end(sent.body);
  });

/** POSTs a JSON body. */
export const post = (port: number, path: string, body?: unknown): Promise<Answer> =>
  send(port, {
    method: 'POST',
    path,
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });

/** Writes bytes to the socket and gives all that comes back until the other side closes. */
export const raw = (port: number, bytes: string | Uint8Array): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    let text = '';
    socket.on('data', (chunk: Buffer) => {
      text += chunk.toString('latin1');
    });
    socket.on('close', () => resolve(text));
    socket.on('error', reject);
  });
