/**
 * What a request brings to be known by: a cookie, a bearer token, whether it comes from this machine.
 * And the cookie that is given.
 *
 * Always true: over TLS the cookie is Secure under a name that no other host and no plain page can
 * set (`__Host-`, RFC 6265bis section 4.1.3); a script never reads it, another site never sends it.
 */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { limits } from '../limits.ts';
import type { Brought } from './people-ports.ts';

/** A name a port: cookies do not tell ports of one host apart. */
export const cookieName = (isTls: boolean, port: number): string =>
  `${isTls ? '__Host-' : ''}forebond-${port}`;

function cookieOf(header: string | undefined, name: string): string | null {
  for (const pair of (header ?? '').split(';')) {
    const at = pair.indexOf('=');
    if (at >= 0 && pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return null;
}

const bearerOf = (header: string | undefined): string | null =>
  /^Bearer +([\w.~+/=-]{1,200})$/i.exec(header ?? '')?.[1] ?? null;

const isLoopback = (address: string): boolean =>
  address === '::1' || /^(::ffff:)?127\./.test(address);

/** From this machine: over loopback, or to one of its addresses from that same one. */
export function isNear({ socket }: FastifyRequest): boolean {
  const { remoteAddress = '', localAddress = '' } = socket;
  return isLoopback(remoteAddress) || (remoteAddress !== '' && remoteAddress === localAddress);
}

/** What wrong passwords are counted by: of IPv6 the network, since a host has many addresses there. */
export function countedAddress({ socket }: FastifyRequest): string {
  const address = (socket.remoteAddress ?? '').replace(/^::ffff:(?=\d+\.)/, '');
  if (!address.includes(':')) return address;
  const [head = '', tail] = address.split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === undefined || tail === '' ? [] : tail.split(':');
  const zeros = tail === undefined ? 0 : Math.max(0, 8 - before.length - after.length);
  return [...before, ...Array<string>(zeros).fill('0'), ...after].slice(0, 4).join(':');
}

export const broughtBy = (request: FastifyRequest, cookie: string): Brought => ({
  cookie: cookieOf(request.headers.cookie, cookie),
  bearer: bearerOf(request.headers.authorization),
  near: isNear(request),
});

export function giveCookie(reply: FastifyReply, name: string, value: string): void {
  const maxAgeS = value === '' ? 0 : Math.floor(limits.sessionAbsoluteMsDefault / 1_000);
  const secure = name.startsWith('__Host-') ? '; Secure' : '';
  reply.header(
    'set-cookie',
    `${name}=${value}; Path=/; Max-Age=${maxAgeS}; HttpOnly; SameSite=Strict${secure}`,
  );
}
