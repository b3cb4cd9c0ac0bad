/**
 * An agent in the plant network with a certificate of somebody else's: invitations begin with the
 * certificate's name, whoever asks; it answers under that name.
 */
import { writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forebond, scratchFolder, startAgentProcess } from '#tests/agent-process.ts';
import { makeCertificate } from '../agent/notify/certificate.ts';

const password = 'purple tractor under ninth bridge';
const name = 'box.works.example';
const site = {
  site: 'works',
  timezone: 'Etc/UTC',
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: { air: { topic: 'm/air', payload: { kind: 'plain' }, unit: 'Cel' } },
        rules: {},
      },
    },
  },
};

interface Answer {
  readonly status: number;
  readonly json: Record<string, unknown>;
  readonly cookie: string;
}

/** From this machine, under any name. */
function ask(
  port: number,
  ca: string,
  path: string,
  given: { readonly host: string; readonly cookie?: string; readonly body?: object },
): Promise<Answer> {
  const { host, cookie, body } = given;
  return new Promise((resolve, reject) => {
    const asking = request({
      ...{ host: '127.0.0.1', port, path, ca, servername: name },
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        host: `${host}:${port}`,
        ...(cookie === undefined ? {} : { cookie }),
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
    });
    asking.on('error', reject);
    asking.on('response', (reply) => {
      let text = '';
      reply.on('data', (part) => {
        text += String(part);
      });
      reply.on('end', () =>
        resolve({
          status: reply.statusCode ?? 0,
          json: JSON.parse(text),
          cookie: (reply.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '',
        }),
      );
    });
    asking.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

test('the name of the certificate leads a phone here, whoever made the link', {
  timeout: 120_000,
}, async () => {
  const folder = scratchFolder();
  const { authority, certificate, key } = await makeCertificate(name);
  const [cert, keyFile] = [join(folder, 'cert.pem'), join(folder, 'key.pem')];
  writeFileSync(cert, certificate);
  writeFileSync(keyFile, key);
  const data = join(folder, 'data');
  const tls = ['--tls-cert', cert, '--tls-key', keyFile];
  const words = ['--people', '--http', '0.0.0.0:0', ...tls];
  const agent = await startAgentProcess({ site, folder: data, words });
  const port = Number(new URL(agent.page).port);
  const link = new RegExp(
    `^https://${name.replaceAll('.', '\\.')}:${port}/#/invitation/([\\w-]+)$`,
  );

  const added = await forebond([
    'user',
    'add',
    'Ann Byrne',
    '--role',
    'administrator',
    '--data',
    data,
  ]);
  expect([added.code, added.stderr]).toEqual([0, '']);
  expect(added.stdout).not.toContain('no phone reaches it');
  const printed = /link (\S+)/.exec(added.stdout)?.[1] ?? '';
  expect(printed).toMatch(link);
  const secret = link.exec(printed)![1]!;
  const accept = { host: name, body: { secret, password } };
  const ann = await ask(port, authority, '/api/invitation/accept', accept);
  expect(ann.status).toBe(200);
  // Asked from the machine itself, by its loopback address.
  const { cookie } = ann;
  const bob = await ask(port, authority, '/api/people', {
    ...{ host: '127.0.0.1', cookie, body: { name: 'Bob', role: 'operator' } },
  });
  expect(bob.status).toBe(201);
  expect(bob.json.link).toMatch(link);
  expect(bob.json).toMatchObject({ only_here: false, qr: { size: expect.any(Number) } });
  // Other names are answered as little as before.
  expect((await ask(port, authority, '/api/health', { host: 'evil.example' })).status).toBe(403);
  await agent.stop();
});
