import { isIP } from 'node:net';
import { expect, test } from 'vitest';
import {
  checkLiteral,
  isLoopback,
  isWithin,
  lookupWithin,
  OutOfReach,
} from '#agent/notify/channels/reach.ts';

// Ranges of the IANA special-purpose address registries (RFC 6890), from memory.
const never = [
  ...['0.0.0.0', '169.254.169.254', '169.254.0.1', '224.0.0.1', '255.255.255.255', '240.0.0.1'],
  ...['::', 'fe80::1', 'fe80::1%eth0', 'febf::1', 'ff02::1', '::ffff:169.254.169.254'],
  ...['::ffff:a9fe:a9fe', '64:ff9b::169.254.169.254', '2002:a9fe:a9fe::1'],
];
const inside = [
  ...['127.0.0.1', '10.1.2.3', '172.16.0.1', '172.31.255.255', '192.168.1.1', '100.64.0.1'],
  ...['::1', 'fd00::1', '::ffff:10.0.0.1', '64:ff9b::10.0.0.1', '2002:c0a8:101::1'],
];
const outside = [
  ...['1.1.1.1', '172.15.0.1', '172.32.0.1', '169.253.255.255', '169.255.0.1', '9.255.255.255'],
  ...['2606:4700:4700::1111', '::ffff:1.1.1.1', '64:ff9b::1.1.1.1', 'fec0::1'],
];

test('link-local and the like are never asked; inside the plant only what may be', () => {
  for (const address of [...never, ...inside, ...outside])
    expect(isIP(address), address).toBeGreaterThan(0);
  const row = (address: string) => [isWithin('plant', address), isWithin('public', address)];
  for (const address of never) expect(row(address), address).toEqual([false, false]);
  for (const address of inside) expect(row(address), address).toEqual([true, false]);
  for (const address of outside) expect(row(address), address).toEqual([true, true]);
});

test('a name is judged by what it resolves to, asked for one address or for all', async () => {
  const found = (all: boolean, reach: 'plant' | 'public') =>
    new Promise((done) =>
      lookupWithin(reach)('localhost', { all, family: 4 }, (error, address) =>
        done(error ?? address),
      ),
    );
  expect(await found(false, 'plant')).toBe('127.0.0.1');
  expect(await found(true, 'plant')).toEqual([{ address: '127.0.0.1', family: 4 }]);
  expect(await found(false, 'public')).toBeInstanceOf(OutOfReach);
  expect(await found(true, 'public')).toBeInstanceOf(OutOfReach);
});

test('an address in place of a name is judged as well', () => {
  expect(() => checkLiteral('plant', '169.254.169.254')).toThrow(OutOfReach);
  expect(() => checkLiteral('plant', '[fe80::1]')).toThrow(OutOfReach);
  expect(() => checkLiteral('public', '127.0.0.1')).toThrow(OutOfReach);
  checkLiteral('plant', '127.0.0.1');
  checkLiteral('public', 'push.example.com');
});

test('loopback', () => {
  const hosts = [
    'localhost',
    '127.0.0.1',
    '127.9.9.9',
    '::1',
    '[::1]',
    'LOCALHOST',
    '10.0.0.1',
    '127.example.com',
  ];
  expect(hosts.filter(isLoopback)).toEqual(hosts.slice(0, 6));
});
