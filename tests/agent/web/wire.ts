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
    // Without it node:http would send the body of a GET as the beginning of another request.
    const length: Record<string, string> =
      sent.body === undefined || 'transfer-encoding' in (sent.headers ?? {})
        ? {}
        : { 'content-length': String(Buffer.byteLength(sent.body)) };
    const outgoing = request(
      {
        host: '127.0.0.1',
        port,
        method: sent.method ?? 'GET',
        path: sent.path,
        headers: { host: `127.0.0.1:${port}`, ...length, ...sent.headers },
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

/**
 * Writes bytes to the socket and gives all that comes back until the other side closes. With `endAfterMs`
 * this side ends its half after that time, for bytes that may leave the server waiting for more.
 */
export const raw = (
  port: number,
  bytes: string | Uint8Array,
  endAfterMs?: number,
): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    const timer = endAfterMs === undefined ? undefined : setTimeout(() => socket.end(), endAfterMs);
    let text = '';
    socket.on('data', (chunk: Buffer) => {
      text += chunk.toString('latin1');
    });
    socket.on('close', () => {
      clearTimeout(timer);
      resolve(text);
    });
    socket.on('error', reject);
  });
