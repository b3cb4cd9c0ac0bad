import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { allowedHosts, loopbackAddress } from '#agent/web/address.ts';
import { problemSchema } from '#agent/web/contract.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { FakePorts, hold } from './fake-ports.ts';
import { raw, type Sent, send } from './wire.ts';

// A browser is the way in: any page in it can send to 127.0.0.1, and can rebind its own name there.
// Source of the headers: Fetch Metadata Request Headers (W3C), section 2; RFC 9110 sections 7.2, 10.2.

const ports = new FakePorts();
let web: Web;
beforeAll(async () => {
  web = await startWeb({ host: '127.0.0.1', port: 0, version: '0', ports, onFault: () => {} });
});
afterAll(() => web.close());

const body = JSON.stringify({ what: 'rack', item: '41', reason: 'foam seen' });
const json = { 'content-type': 'application/json' };
const code = (text: string): string => problemSchema.parse(JSON.parse(text)).code;
const here = (text: string): string => text.replaceAll('PORT', String(web.port));

describe('host', () => {
  test.each(['127.0.0.1:PORT', 'localhost:PORT', 'LocalHost:PORT', '[::1]:PORT'])(
    '%s is answered',
    async (host) => {
      const answer = await send(web.port, { path: '/api/health', headers: { host: here(host) } });
      expect(answer.status).toBe(200);
    },
  );

  test.each([
    'evil.example:PORT',
    'evil.example',
    '127.0.0.1',
    'localhost',
    '127.0.0.1:1',
    '127.0.0.1.evil.example:PORT',
    'localhost.evil.example:PORT',
    'user@127.0.0.1:PORT',
    '127.0.0.1:PORT:80',
    '127.1:PORT',
    '2130706433:PORT',
    '0.0.0.0:PORT',
    '[::]:PORT',
    '[::ffff:127.0.0.1]:PORT',
    'localhost.:PORT',
  ])('"%s" is refused, reading and writing, known path or not', async (host) => {
    const headers = { host: here(host) };
    for (const sent of [
      { path: '/api/alarms', headers },
      { path: '/metrics', headers },
      { path: '/api/stream', headers },
      { path: '/nothing', headers },
      { method: 'POST', path: '/api/holds', headers: { ...headers, ...json }, body },
    ]) {
      const answer = await send(web.port, sent);
      expect([answer.status, code(answer.text)]).toEqual([403, 'WEB_HOST_REFUSED']);
    }
    expect(ports.holdCommands).toEqual([]);
  });

  test.each([
    ['two, ours last', 'Host: evil.example\r\nHost: 127.0.0.1:PORT\r\n', 'WEB_REQUEST_MALFORMED'],
    ['two, ours first', 'Host: 127.0.0.1:PORT\r\nHost: evil.example\r\n', 'WEB_REQUEST_MALFORMED'],
    ['none', '', 'WEB_REQUEST_MALFORMED'],
    ['an empty one', 'Host:\r\n', 'WEB_HOST_REFUSED'],
  ])('%s: refused', async (_, lines, refusal) => {
    for (const version of ['1.1', '1.0']) {
      const head = `GET /api/alarms HTTP/${version}\r\n${here(lines)}Connection: close\r\n\r\n`;
      const [status, text] = (await raw(web.port, head)).split('\r\n\r\n');
      expect(status).toMatch(/^HTTP\/1\.1 40[03] /);
      expect(code(text!)).toBe(refusal);
    }
  });

  test('the name in an absolute request line does not stand for the header', async () => {
    const text = await raw(
      web.port,
      `GET http://127.0.0.1:${web.port}/api/alarms HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n`,
    );
    expect(text).toMatch(/^HTTP\/1\.1 40[034] /);
    expect(text).not.toContain('occurrence');
  });
});

describe('another site', () => {
  const set = (headers: Record<string, string>): Sent => ({
    method: 'POST',
    path: '/api/holds',
    headers: { ...json, ...headers },
    body,
  });
  const ok: Record<string, string>[] = [
    {},
    { origin: 'http://127.0.0.1:PORT' },
    { origin: 'http://127.0.0.1:PORT', 'sec-fetch-site': 'same-origin' },
    { 'sec-fetch-site': 'none' },
    { host: 'localhost:PORT', origin: 'http://localhost:PORT' },
  ];
  const foreign: Record<string, string>[] = [
    { origin: 'https://evil.example' },
    { origin: 'null' },
    { origin: '' },
    { origin: 'https://127.0.0.1:PORT' },
    { origin: 'http://127.0.0.1:1' },
    { origin: 'http://localhost:PORT' },
    { origin: 'http://127.0.0.1:PORT, https://evil.example' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
    { 'sec-fetch-site': 'anything' },
    { origin: 'http://127.0.0.1:PORT', 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' },
  ];
  const filled = (headers: Record<string, string>) =>
    Object.fromEntries(Object.entries(headers).map(([name, text]) => [name, here(text)]));

  test.each(ok)('%j may write', async (headers) => {
    expect((await send(web.port, set(filled(headers)))).status).toBe(201);
  });

  test.each(foreign)('%j may not write', async (headers) => {
    const before = ports.holdCommands.length;
    const answer = await send(web.port, set(filled(headers)));
    expect([answer.status, code(answer.text)]).toEqual([403, 'WEB_ORIGIN_REFUSED']);
    expect(ports.holdCommands.length).toBe(before);
  });

  test('may not hold places on the stream or read by embedding', async () => {
    for (const path of ['/api/stream', '/api/alarms', '/metrics']) {
      const headers = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' };
      expect((await send(web.port, { path, headers })).status).toBe(403);
    }
  });

  test('may link here', async () => {
    const headers = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    };
    expect((await send(web.port, { path: '/api/health', headers })).status).toBe(200);
    const framed = { ...headers, 'sec-fetch-dest': 'iframe' };
    expect((await send(web.port, { path: '/api/health', headers: framed })).status).toBe(403);
  });

  test('gets no CORS: a preflight is refused and no answer allows another origin', async () => {
    const preflight = await send(web.port, {
      method: 'OPTIONS',
      path: '/api/holds',
      headers: { origin: 'https://evil.example', 'access-control-request-method': 'POST' },
    });
    expect(preflight.status).toBe(403);
    const own = await send(web.port, { method: 'OPTIONS', path: '/api/holds' });
    expect(own.status).toBe(405);
    const read = await send(web.port, { path: '/api/health' });
    for (const { headers } of [preflight, own, read]) {
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    }
  });
});

describe('only JSON enters', () => {
  test.each([
    'text/plain',
    'text/plain;charset=utf-8',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/jsonx',
    'application/json-patch+json',
    'text/json',
    'json',
    'application/xml',
    '',
  ])('"%s" is refused', async (type) => {
    const before = ports.holdCommands.length;
    const headers: Record<string, string> = type === '' ? {} : { 'content-type': type };
    const answer = await send(web.port, {
      method: 'POST',
      path: '/api/holds',
      headers: { ...headers, 'content-length': String(body.length) },
      body,
    });
    expect([answer.status, code(answer.text)]).toEqual([415, 'WEB_BODY_NOT_JSON']);
    expect(ports.holdCommands.length).toBe(before);
  });

  test.each(['application/json', 'application/json; charset=utf-8', 'Application/JSON'])(
    '%s is taken',
    async (type) => {
      const headers = { 'content-type': type };
      const answer = await send(web.port, { method: 'POST', path: '/api/holds', headers, body });
      expect(answer.status).toBe(201);
    },
  );

  test('a form cannot carry a command that needs no body either', async () => {
    const answer = await send(web.port, {
      method: 'POST',
      path: `/api/holds/${encodeURIComponent(hold().id)}/lift`,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: 'disposition=released&reason=tested',
    });
    expect(answer.status).toBe(415);
  });
});

test('every answer, refused or not, keeps a browser from reading more into it', async () => {
  for (const path of ['/api/health', '/nothing', '/metrics', '/api/alarms?x=1', '/api/%zz']) {
    const { headers } = await send(web.port, { path });
    expect(headers).toMatchObject({
      'content-security-policy': expect.stringContaining("default-src 'none'"),
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    });
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(headers.server).toBeUndefined();
    expect(headers['x-powered-by']).toBeUndefined();
  }
});

describe('where it listens', () => {
  test.each([
    ['127.0.0.1', '127.0.0.1'],
    ['127.8.9.1', '127.8.9.1'],
    ['localhost', '127.0.0.1'],
    ['::1', '::1'],
    ['[::1]', '::1'],
  ])('%s is loopback', (host, address) => {
    expect(loopbackAddress(host)).toBe(address);
  });

  test.each([
    '0.0.0.0',
    '',
    '::',
    '[::]',
    '192.168.1.5',
    '10.0.0.1',
    '127.evil.example',
    '128.0.0.1',
    '::ffff:127.0.0.1',
    'works.example',
    '127.0.0.1 ',
  ])('"%s" is refused', async (host) => {
    const started = startWeb({ host, port: 0, version: '0', ports, onFault: () => {} });
    await expect(started).rejects.toMatchObject({ code: 'WEB_NOT_LOOPBACK' });
  });

  test('a port in use is said in one line', async () => {
    const started = startWeb({
      host: '127.0.0.1',
      port: web.port,
      version: '0',
      ports,
      onFault: () => {},
    });
    await expect(started).rejects.toMatchObject({
      code: 'WEB_ADDRESS_UNUSABLE',
      message: expect.stringContaining(`127.0.0.1:${web.port}`),
    });
    expect(ports.listening).toBe(1);
  });

  test('port 80 may be left out of the name', () => {
    expect([...allowedHosts('127.0.0.1', 80)]).toContain('localhost');
    expect([...allowedHosts('127.0.0.1', 8080)]).not.toContain('localhost');
  });
});
