/**
 * Where the page may listen, and under which names it answers there.
 *
 * Always true: an address that other machines reach needs people with passwords and TLS. Only an
 * exact name and port is answered, so that a page which rebinds its own name to this machine reads
 * nothing.
 */
import { isIP } from 'node:net';
import { networkInterfaces } from 'node:os';
import { AgentError } from '../errors.ts';

/** The address as it is listened on, where no other machine reaches it; else null. */
export function loopbackOf(host: string): string | null {
  const bare = bareHost(host);
  if (bare === 'localhost') return '127.0.0.1';
  if (bare === '::1' || bare === '0:0:0:0:0:0:0:1') return '::1';
  return isIP(bare) === 4 && bare.startsWith('127.') ? bare : null;
}

const bareHost = (host: string): string => host.replace(/^\[(.*)\]$/, '$1').toLowerCase();

/** The address to listen on. Throws WEB_NOT_LOOPBACK for one that other machines reach. */
export function loopbackAddress(host: string): string {
  const found = loopbackOf(host);
  if (found !== null) return found;
  throw new AgentError('WEB_NOT_LOOPBACK', { host: host === '' ? 'every address' : host });
}

/** The address as it stands in a URL. */
export const inUrl = (address: string): string =>
  address.includes(':') ? `[${address}]` : address;

/** An address that other machines reach: any of this machine's, or all. Throws WEB_NOT_LOOPBACK. */
export function networkAddress(host: string): string {
  const bare = bareHost(host);
  if (loopbackOf(host) !== null) return loopbackAddress(host);
  if (isIP(bare) !== 0) return bare;
  throw new AgentError('WEB_NOT_LOOPBACK', { host: host === '' ? 'every address' : host });
}

/** Names and addresses that lead to this address: of "every address" all this machine has. */
export function namesOf(address: string, more: readonly string[]): string[] {
  const isEvery = address === '0.0.0.0' || address === '::';
  const own = isEvery
    ? Object.values(networkInterfaces())
        .flatMap((each) => each ?? [])
        .filter(({ address: one }) => !one.startsWith('fe80:'))
        .map(({ address: one }) => one)
    : [address];
  const names = [...more.map((name) => name.toLowerCase()), ...own];
  return [...new Set([...names, '127.0.0.1', 'localhost', '::1'])];
}

/**
 * Values of Host that are answered; the port of the scheme may be left out (RFC 9110 section 7.2).
 * `more`: names under which others reach this machine.
 */
export function allowedHosts(
  address: string,
  port: number,
  more: readonly string[] = [],
  schemePort = 80,
): Set<string> {
  const hosts = new Set<string>();
  for (const name of namesOf(address, more)) {
    hosts.add(`${inUrl(name)}:${port}`);
    if (port === schemePort) hosts.add(inUrl(name));
  }
  return hosts;
}

/** An address to open: of "every address" the one on this machine. */
export const shownAddress = (address: string): string =>
  address === '0.0.0.0' ? '127.0.0.1' : address === '::' ? '::1' : address;
