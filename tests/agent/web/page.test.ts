import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get as httpGet, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { startWeb, type Web } from '#agent/web/server.ts';
import { FakePorts } from './fake-ports.ts';
import { send } from './wire.ts';

const shell = '<!doctype html><title>shell</title>';
const script = 'console.log("the page");'.repeat(50);

let folder: string;
let web: Web;
const start = async (pageFolder: string): Promise<void> => {
  const onFault = (error: unknown): void => {
    throw error;
  };
  web = await startWeb({
    host: '127.0.0.1',
    port: 0,
    version: '0.1.0',
    ports: new FakePorts(),
    pageFolder,
    onFault,
  });
};
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'forebond-page-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), shell);
  writeFileSync(join(folder, 'mark.svg'), '<svg/>');
  writeFileSync(join(folder, 'assets', 'main-AbC123.js'), script);
  writeFileSync(join(folder, '..', 'beside.js'), 'secret');
  await start(folder);
});
afterEach(async () => {
  await web.close();
  rmSync(folder, { recursive: true, force: true });
});

const get = (path: string, headers: Record<string, string> = {}) =>
  fetch(`${web.url}${path}`, { headers: { 'accept-encoding': 'identity', ...headers } });
const visit = {
  'sec-fetch-mode': 'navigate',
  'sec-fetch-dest': 'document',
  'sec-fetch-site': 'none',
};

/** The bytes as they were sent, which fetch would unpack. */
const raw = (path: string, accepted: string) =>
  new Promise<{ headers: IncomingHttpHeaders; body: Buffer }>((resolve, reject) => {
    httpGet(
      `${web.url}${path}`,
      { headers: { 'accept-encoding': accepted }, agent: false },
      (incoming) => {
        const chunks: Buffer[] = [];
        incoming.on('data', (chunk: Buffer) => chunks.push(chunk));
        incoming.on('end', () =>
          resolve({ headers: incoming.headers, body: Buffer.concat(chunks) }),
        );
      },
    ).on('error', reject);
  });

describe('the shell', () => {
  test('is asked for anew each time, and runs nothing but files of the agent’s own', async () => {
    const answer = await get('/');
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe(shell);
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    const policy = answer.headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe|\*|https?:|data:/);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  });
  test('is not sent again where it is the same (RFC 9110 section 13.1.2)', async () => {
    const etag = (await get('/')).headers.get('etag') ?? '';
    const again = await get('/', { 'if-none-match': etag });
    expect([again.status, await again.text()]).toEqual([304, '']);
    expect((await get('/', { 'if-none-match': '"other"' })).status).toBe(200);
  });
  test('stands for a page a person opens that is not there; a program is told', async () => {
    // A library's fetch writes headers of its own over these.
    const opened = await send(web.port, { path: '/alarms', headers: visit });
    expect([opened.status, opened.text]).toEqual([404, shell]);
    for (const sent of [{ path: '/alarms' }, { path: '/api/nothing', headers: visit }]) {
      const told = await send(web.port, sent);
      expect([told.status, told.headers['content-type']]).toEqual([
        404,
        expect.stringContaining('application/problem+json'),
      ]);
    }
  });
});

describe('its files', () => {
  test('keep for a year, since another content has another name', async () => {
    const answer = await get('/assets/main-AbC123.js');
    expect(await answer.text()).toBe(script);
    expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(answer.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await get('/mark.svg')).headers.get('cache-control')).toBe('no-cache');
  });
  test.each([
    ['br, gzip', 'br', brotliDecompressSync],
    ['gzip, deflate', 'gzip', gunzipSync],
    ['br;q=0, gzip;q=0.5', 'gzip', gunzipSync],
  ] as const)('compressed as both sides can: %s', async (accepted, encoding, unpack) => {
    const { headers, body } = await raw('/assets/main-AbC123.js', accepted);
    expect(headers['content-encoding']).toBe(encoding);
    expect(headers.vary).toBe('accept-encoding');
    expect(unpack(body).toString()).toBe(script);
    expect(body.length).toBeLessThan(script.length / 4);
  });
  test.each(['/assets/', '/assets/../../beside.js', '/..%2fbeside.js', '/index.html/x', '/assets'])(
    'no way out of the folder: %s',
    async (path) => {
      const answer = await send(web.port, { path });
      expect(answer.status).toBe(404);
      expect(answer.text).not.toContain('secret');
    },
  );
});

test('without a page, it says how to get one', async () => {
  await web.close();
  await start(join(folder, 'empty'));
  const answer = await get('/', visit);
  expect([answer.status, ((await answer.json()) as { code: string }).code]).toEqual([
    404,
    'WEB_PAGE_MISSING',
  ]);
});
