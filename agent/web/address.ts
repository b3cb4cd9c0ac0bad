/**
 * Where the page may listen, and under which names it answers there.
 *
 * Always true: only addresses that no other machine reaches, until there are people with
 * passwords. Only an exact name and port is answered, so that a page which rebinds its own name
 * to 127.0.0.1 reads nothing.
 */
import { isIP } from 'node:net';
import { AgentError } from '../errors.ts';

/** The address to listen on. Throws WEB_NOT_LOOPBACK for one that other machines reach. */
export function loopbackAddress(host: string): string {
  const bare = host.replace(/^\[(.*)\]$/, '$1').toLowerCase();
  if (bare === 'localhost') return '127.0.0.1';
  if (bare === '::1' || bare === '0:0:0:0:0:0:0:1') return '::1';
  if (isIP(bare) === 4 && bare.startsWith('127.')) return bare;
  throw new AgentError('WEB_NOT_LOOPBACK', { host: host === '' ? 'every address' : host });
}

/** The address as it stands in a URL. */
export const inUrl = (address: string): string =>
  address.includes(':') ? `[${address}]` : address;

/** Values of Host that are answered; port 80 may be left out (RFC 9110 section 7.2). */
export function allowedHosts(address: string, port: number): Set<string> {
  const names = new Set(['127.0.0.1', 'localhost', '[::1]', inUrl(address)]);
  const hosts = new Set<string>();
  for (const name of names) {
    hosts.add(`${name}:${port}`);
    if (port === 80) hosts.add(name);
  }
  return hosts;
}
