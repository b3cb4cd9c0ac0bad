/**
 * Which addresses a channel may ask.
 *
 * Always true: what is judged is the address that is connected to, so that a name which resolves
 * otherwise the second time gains nothing.
 *
 * Ranges: IANA special-purpose address registries (RFC 6890), from memory of the tables.
 */
import { lookup as resolve } from 'node:dns';
import { BlockList, isIP, type LookupFunction } from 'node:net';

/** `plant`: all but what a machine gives itself (link-local, where clouds keep their secrets). */
export type Reach = 'plant' | 'public';

const list = (...ranges: readonly string[]): BlockList => {
  const made = new BlockList();
  for (const range of ranges) {
    const [address = '', bits = ''] = range.split('/');
    made.addSubnet(address, Number(bits), isIP(address) === 6 ? 'ipv6' : 'ipv4');
  }
  return made;
};

/** Nobody's own web server: link-local, multicast, "this network", reserved. */
const never = list(
  ...['0.0.0.0/8', '169.254.0.0/16', '224.0.0.0/4', '240.0.0.0/4'],
  ...['::/128', 'fe80::/10', 'ff00::/8'],
);
/** Loopback, private, shared, documentation, benchmark; unique local; discard-only. */
const inside = list(
  ...['127.0.0.0/8', '10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', '100.64.0.0/10'],
  ...['192.0.0.0/24', '192.0.2.0/24', '198.18.0.0/15', '198.51.100.0/24', '203.0.113.0/24'],
  ...['::1/128', 'fc00::/7', '100::/64', '2001:db8::/32'],
);

/** An IPv4 address written in IPv6 is judged as what it is (mapped, 64:ff9b::/96, 6to4). */
function plain(address: string): string {
  const bare = address.split('%', 1)[0]!;
  if (isIP(bare) !== 6) return bare;
  const groups = groupsOf(bare);
  const v4 = (high: number, low: number): string =>
    [high >> 8, high & 255, low >> 8, low & 255].join('.');
  const leadsWith = (...lead: readonly number[]) => lead.every((group, i) => groups[i] === group);
  if (leadsWith(0, 0, 0, 0, 0, 0xffff)) return v4(groups[6]!, groups[7]!);
  if (leadsWith(0x64, 0xff9b, 0, 0, 0, 0)) return v4(groups[6]!, groups[7]!);
  if (leadsWith(0x2002)) return v4(groups[1]!, groups[2]!);
  return bare;
}

function groupsOf(address: string): number[] {
  const dotted = /^(.*:)(\d+)\.(\d+)\.(\d+)\.(\d+)$/.exec(address);
  const hex = (a: string, b: string): string => ((Number(a) << 8) | Number(b)).toString(16);
  const text =
    dotted === null
      ? address
      : `${dotted[1]}${hex(dotted[2]!, dotted[3]!)}:${hex(dotted[4]!, dotted[5]!)}`;
  const [head = '', tail] = text.split('::', 2);
  const numbers = (part: string): number[] =>
    part === '' ? [] : part.split(':').map((group) => Number.parseInt(group, 16));
  if (tail === undefined) return numbers(head);
  const [before, after] = [numbers(head), numbers(tail)];
  return [...before, ...new Array<number>(8 - before.length - after.length).fill(0), ...after];
}

/** `address` is an IP address. */
export function isWithin(reach: Reach, address: string): boolean {
  const bare = plain(address);
  const family = isIP(bare) === 6 ? 'ipv6' : 'ipv4';
  if (never.check(bare, family)) return false;
  return reach === 'plant' || !inside.check(bare, family);
}

export const isLoopback = (host: string): boolean => {
  const bare = plain(host.replace(/^\[(.*)\]$/, '$1').toLowerCase());
  return bare === 'localhost' || bare === '::1' || (isIP(bare) === 4 && bare.startsWith('127.'));
};

/** Its address is not one that may be asked. */
export class OutOfReach extends Error {}

/** Resolves a name for a connection; fails with OutOfReach where an address is not within. */
export const lookupWithin =
  (reach: Reach): LookupFunction =>
  (host, options, done) => {
    resolve(host, { ...options, all: true }, (error, found) => {
      if (error !== null) return done(error, '');
      const bad = found.find(({ address }) => !isWithin(reach, address));
      if (bad !== undefined) return done(new OutOfReach('an address that is not asked'), '');
      if (options.all === true) return done(null, found);
      const first = found[0]!;
      return done(null, first.address, first.family);
    });
  };

/** A host written as an address is never looked up, so it is judged before. */
export function checkLiteral(reach: Reach, host: string): void {
  const bare = host.replace(/^\[(.*)\]$/, '$1');
  if (isIP(bare) !== 0 && !isWithin(reach, bare)) throw new OutOfReach('an address not asked');
}
