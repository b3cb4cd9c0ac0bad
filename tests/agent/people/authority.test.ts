import { execFileSync } from 'node:child_process';
import { createPrivateKey, createPublicKey, X509Certificate } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { Authority, certifiedFrom, fingerprint } from '#agent/people/authority.ts';
import { startWeb } from '#agent/web/server.ts';
import { Staffed } from './staffed.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'forebond-tls-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const names = ['box.works.example', '192.0.2.7', '127.0.0.1', 'localhost', '::1'];

describe('the agent’s own authority', () => {
  test('openssl takes the certificate for each name, from this root alone', async () => {
    const { cert, root } = await new Authority(folder).certified('works', names, Date.now());
    writeFileSync(join(folder, 'root.pem'), root!);
    writeFileSync(join(folder, 'agent.pem'), cert);
    const verify = (...more: string[]): string =>
      execFileSync('openssl', [
        ...['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', join(folder, 'root.pem')],
        ...more,
        join(folder, 'agent.pem'),
      ]).toString();
    expect(verify('-verify_hostname', 'box.works.example')).toContain('OK');
    expect(verify('-verify_ip', '192.0.2.7')).toContain('OK');
    expect(verify('-verify_ip', '::1')).toContain('OK');
    expect(() => verify('-verify_hostname', 'other.example')).toThrow();
    const stranger = await new Authority(mkdtempSync(join(folder, 'x'))).certified(
      'works',
      names,
      1e12,
    );
    writeFileSync(join(folder, 'root.pem'), stranger.root!);
    expect(() => verify()).toThrow();
  });

  test('is kept; made anew for another name or when its time runs out, under the same root', async () => {
    const authority = new Authority(folder);
    const now = Date.now();
    const one = await authority.certified('works', names, now);
    expect(await authority.certified('works', names.slice(1), now)).toEqual(one);
    const more = await authority.certified('works', [...names, 'line.example'], now);
    expect([more.root, more.cert === one.cert]).toEqual([one.root, false]);
    const later = now + limits.certificateMs - limits.certificateRenewMs + 1;
    const renewed = await authority.certified('works', names, later);
    expect([renewed.root, renewed.cert === more.cert]).toEqual([one.root, false]);
    expect(new X509Certificate(one.cert).verify(new X509Certificate(one.root!).publicKey)).toBe(
      true,
    );
  });

  test('the root signs no other authority; nothing of it is for others’ eyes', async () => {
    const { cert, root } = await new Authority(folder).certified('works', names, Date.now());
    expect(new X509Certificate(root!).ca).toBe(true);
    expect(new X509Certificate(cert).ca).toBe(false);
    for (const name of readdirSync(join(folder, 'tls')))
      expect(statSync(join(folder, 'tls', name)).mode & 0o077, name).toBe(0);
    expect(fingerprint(root!)).toBe(new X509Certificate(root!).fingerprint256);
  });

  test('what was damaged is said', async () => {
    const authority = new Authority(folder);
    await authority.certified('works', names, Date.now());
    writeFileSync(join(folder, 'tls', 'agent.pem'), 'no certificate');
    await expect(authority.certified('works', names, Date.now())).rejects.toMatchObject({
      code: 'TLS_AUTHORITY_FAILED',
    });
  });
});

describe('a certificate from files', () => {
  const files = () => ({ cert: join(folder, 'c.pem'), key: join(folder, 'k.pem') });
  beforeEach(async () => {
    const made = await new Authority(folder).certified('works', names, Date.now());
    writeFileSync(files().cert, made.cert);
    writeFileSync(files().key, made.key);
  });

  test('is taken with its key', () => {
    const { cert, key, root } = certifiedFrom(files(), Date.now());
    const own = new X509Certificate(cert);
    expect(createPublicKey(createPrivateKey(key)).equals(own.publicKey)).toBe(true);
    expect(root).toBe(null);
  });

  test.each([
    ['no file', () => rmSync(files().cert), 'ENOENT'],
    ['no PEM', () => writeFileSync(files().cert, 'x'), 'not readable PEM'],
    ['no key', () => writeFileSync(files().key, 'x'), 'not readable PEM'],
  ])('%s', (_, spoil, reason) => {
    spoil();
    expect(() => certifiedFrom(files(), Date.now())).toThrow(reason);
  });

  test('of another key, ended, or not begun', async () => {
    const late = Date.now() + limits.certificateMs + 1;
    expect(() => certifiedFrom(files(), late)).toThrow('it ended on');
    expect(() => certifiedFrom(files(), Date.now() - 7_200_000)).toThrow('it begins on');
    const other = await new Authority(mkdtempSync(join(folder, 'x'))).certified('w', names, 1e12);
    writeFileSync(files().key, other.key);
    expect(() => certifiedFrom(files(), Date.now())).toThrow('belongs to another');
  });
});

describe('on the plant network', () => {
  const staffed = new Staffed();
  const start = (more: object) =>
    startWeb({
      host: '0.0.0.0',
      port: 0,
      version: '0',
      ports: staffed.ports,
      people: staffed.desk,
      onFault: () => {},
      ...more,
    });

  test('no TLS, or nobody asked for: refused', async () => {
    const tls = await new Authority(folder).certified('works', names, Date.now());
    await expect(start({})).rejects.toMatchObject({ code: 'WEB_NOT_LOOPBACK' });
    const nobody = startWeb({
      ...{ host: '0.0.0.0', port: 0, version: '0', ports: staffed.ports, tls },
      onFault: () => {},
    });
    await expect(nobody).rejects.toMatchObject({ code: 'WEB_NOT_LOOPBACK' });
  });

  test('with both it answers under its names and no others, and the cookie is __Host- and Secure', async () => {
    const tls = await new Authority(folder).certified('works', names, Date.now());
    const web = await start({ tls, names: ['box.works.example'] });
    const ask = (host: string, headers: Record<string, string> = {}, body?: string) =>
      new Promise<{ status: number; cookie: string }>((resolve, reject) => {
        const asked = request(
          {
            ...{ host: '127.0.0.1', port: web.port, ca: tls.root!, servername: 'localhost' },
            ...{ path: body === undefined ? '/api/me' : '/api/invitation/accept', agent: false },
            method: body === undefined ? 'GET' : 'POST',
            headers: { host, ...headers },
          },
          (answer) => {
            answer.resume();
            const cookie = String(answer.headers['set-cookie'] ?? '');
            resolve({ status: answer.statusCode!, cookie });
          },
        );
        asked.on('error', reject);
        asked.end(body);
      });
    try {
      expect((await ask(`box.works.example:${web.port}`)).status).toBe(200);
      // A page that rebinds its own name to this address comes under that name.
      for (const host of ['evil.example', `evil.example:${web.port}`, 'box.works.example'])
        expect((await ask(host)).status).toBe(403);
      const here = `box.works.example:${web.port}`;
      expect((await ask(here, { origin: `https://${here}` })).status).toBe(200);
      for (const origin of [`http://${here}`, 'https://evil.example', 'null'])
        expect((await ask(here, { origin })).status).toBe(403);
      const secret = staffed.people.setup.make(false, staffed.nowMs);
      const password = 'purple tractor under ninth bridge';
      const body = JSON.stringify({ secret, name: 'Ann', password });
      const { cookie } = await ask(here, { 'content-type': 'application/json' }, body);
      expect(cookie).toMatch(/^__Host-forebond-\d+=[\w-]{43}; Path=\/; .*; Secure$/);
      expect(cookie).not.toContain('Domain');
    } finally {
      await web.close();
      await staffed.close();
    }
  });
});
