/** Beginning to listen, with what is in the way in words; and ending within a bound. */
import type { FastifyInstance } from 'fastify';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';

const addressWords: Readonly<Record<string, string>> = {
  EADDRINUSE: 'another program uses it',
  EADDRNOTAVAIL: 'this machine has no such address',
  EACCES: 'this user may not use that port',
  ENOTFOUND: 'no such host is known',
};

/** Throws WEB_ADDRESS_UNUSABLE; then it is closed. */
export async function listen(app: FastifyInstance, host: string, port: number): Promise<void> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    await app.close();
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    const reason = addressWords[code] ?? code;
    throw new AgentError('WEB_ADDRESS_UNUSABLE', { host, port, reason }, error);
  }
}

/** Lets open requests finish for a while. */
export async function closeSoon(app: FastifyInstance): Promise<void> {
  const impatient = setTimeout(() => app.server.closeAllConnections(), limits.webCloseMs);
  try {
    await app.close();
  } finally {
    clearTimeout(impatient);
  }
}
