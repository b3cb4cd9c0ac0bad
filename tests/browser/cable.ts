/**
 * A cable between a page and its agent that can be pulled: bytes stop, and nobody is told. The
 * browser's own offline switch leaves open streams alone.
 */
import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

export interface Cable {
  /** Where the page is reached through it. */
  readonly page: string;
  readonly pull: () => void;
  readonly plug: () => void;
  readonly close: () => void;
}

export async function cableTo(page: string): Promise<Cable> {
  const { hostname, port, host } = new URL(page);
  let ownHost = '';
  // The agent answers under its own name alone.
  const renamed = (bytes: Buffer): Buffer =>
    Buffer.from(bytes.toString('latin1').replaceAll(ownHost, host), 'latin1');
  const ends = new Set<Socket>();
  let plugged = true;
  const server = createServer((near) => {
    const far = connect(Number(port), hostname);
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      ends.add(from);
      if (!plugged) from.pause();
      from.on('data', (bytes) => {
        if (plugged) to.write(from === near ? renamed(bytes) : bytes);
      });
      from.on('close', () => {
        ends.delete(from);
        to.destroy();
      });
      from.on('error', () => from.destroy());
    }
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port: here } = server.address() as AddressInfo;
  ownHost = `127.0.0.1:${here}`;
  return {
    page: `http://${ownHost}`,
    pull: () => {
      plugged = false;
    },
    // What was lost in between is lost: connections begin anew, as after a change of network.
    plug: () => {
      plugged = true;
      for (const end of ends) end.destroy();
    },
    close: () => {
      for (const end of ends) end.destroy();
      server.close();
    },
  };
}
