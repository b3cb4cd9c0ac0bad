import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { AgentError } from '#agent/errors.ts';
import { limits } from '#agent/limits.ts';
import { secretFile } from '#agent/notify/channels/secret.ts';
import { makeSecret, secretBytes, signatures } from '#agent/notify/channels/signature.ts';
import type { ChannelName, Delivery, Target } from '#agent/notify/contract.ts';
import { ChannelDesk } from '#agent/wiring/channel-desk.ts';
import { type TellingWritten, tellingWritten } from '#rules/site/telling-schema.ts';
import { type FarSide, farSide } from '../notify/far-side.ts';
import { type MailSide, mailSide, mailUser } from '../notify/mail-side.ts';
import { aMessage } from '../notify/messages.ts';
import { aPhone, vapidOf } from '../notify/open-push.ts';

let folder: string;
let far: FarSide;
let mail: MailSide;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'forebond-ways-'));
  mkdirSync(join(folder, 'secrets'));
  [far, mail] = [await farSide('none'), await mailSide('none')];
});
afterEach(async () => {
  await Promise.all([far.close(), mail.close()]);
  rmSync(folder, { recursive: true, force: true });
});

/** A desk over settings that may change, and what it says in the log. */
function desk(first: unknown, env: Readonly<Record<string, string>> = {}) {
  const said: AgentError[] = [];
  const parsed = (written: unknown): TellingWritten => tellingWritten.parse(written);
  let now = parsed(first);
  let later = 0;
  const made = new ChannelDesk({
    folder,
    written: () => now,
    timezone: () => 'Europe/Dublin',
    page: () => 'https://own.example',
    env,
    nowMs: () => Date.now() + later,
    warn: (error) => said.push(error),
    authorities: [far.authority, mail.authority],
  });
  const send = (channel: ChannelName, address: string): Promise<Delivery> => {
    const target: Target = { person: channel === 'webhook' ? null : 'p-1', channel, address };
    const way = made.channels.find(({ name }) => name === channel)!;
    return way.send(aMessage(), target, new AbortController().signal);
  };
  const change = (written: unknown): void => {
    now = parsed(written);
  };
  const wait = (ms: number): void => {
    later += ms;
  };
  return { made, said, send, change, wait, codes: () => said.map(({ code }) => code) };
}

const delivered = { outcome: 'delivered' };
const board = () => ({ webhooks: { 'shift-board': { url: far.url } } });
const email = () => ({
  email: { server: mail.host, port: mail.port, user: mailUser.user, from: 'a@plant.example' },
});

describe('webhooks of the site file', () => {
  test('get a secret made for them, kept and used again', async () => {
    const { send, made, said } = desk(board());
    expect(await send('webhook', 'shift-board')).toEqual(delivered);
    const path = secretFile(folder, 'webhook-shift-board');
    const secret = secretBytes(readFileSync(path, 'utf8').trim())!;
    expect(statSync(path).mode & 0o777).toBe(0o600);
    const signedBy = (): boolean => {
      const { headers, body } = far.taken.at(-1)!;
      const [id, timestampS] = [
        String(headers['webhook-id']),
        Number(headers['webhook-timestamp']),
      ];
      return headers['webhook-signature'] === signatures([secret], { id, timestampS, body });
    };
    expect(signedBy()).toBe(true);
    expect(await desk(board()).send('webhook', 'shift-board')).toEqual(delivered);
    expect(signedBy()).toBe(true);
    expect(made.webhooks()).toEqual(['shift-board']);
    expect(said).toEqual([]);
  });

  test('two secrets of the environment both sign', async () => {
    const both = `${makeSecret()} ${makeSecret()}`;
    const { send } = desk(board(), { FOREBOND_WEBHOOK_SHIFT_BOARD: both });
    await send('webhook', 'shift-board');
    expect(String(far.taken[0]!.headers['webhook-signature']).split(' ')).toHaveLength(2);
  });

  test('a secret changed in its file is used within a minute', async () => {
    const { send, wait } = desk(board());
    await send('webhook', 'shift-board');
    const path = secretFile(folder, 'webhook-shift-board');
    writeFileSync(path, `${makeSecret()} ${readFileSync(path, 'utf8')}`, { mode: 0o600 });
    wait(limits.secretLookMs);
    await send('webhook', 'shift-board');
    const counts = far.taken.map(
      ({ headers }) => String(headers['webhook-signature']).split(' ').length,
    );
    expect(counts).toEqual([1, 2]);
  });

  test('one whose secret is none waits, and the log says why without it', async () => {
    const { send, codes, said } = desk(board(), { FOREBOND_WEBHOOK_SHIFT_BOARD: 'hunter2' });
    expect(await send('webhook', 'shift-board')).toMatchObject({ outcome: 'later' });
    expect(codes()).toEqual(['CHANNEL_WEBHOOK_SECRET_WRONG']);
    expect(`${said[0]!.message} ${said[0]!.fix}`).not.toContain('hunter2');
    expect(far.taken).toEqual([]);
  });

  test('the site file is followed: one that left it is gone', async () => {
    const { send, change, made } = desk(board());
    expect(await send('webhook', 'shift-board')).toEqual(delivered);
    change({});
    expect(made.webhooks()).toEqual([]);
    expect(await send('webhook', 'shift-board')).toMatchObject({ outcome: 'gone' });
  });

  test('links lead to the page’s own address, or to the one the site file names', async () => {
    const { send, change } = desk(board());
    await send('webhook', 'shift-board');
    change({ ...board(), page: 'https://agent.plant.example' });
    await send('webhook', 'shift-board');
    const urls = far.taken.map(({ body }) => new URL(JSON.parse(body.toString()).data.url).origin);
    expect(urls).toEqual(['https://own.example', 'https://agent.plant.example']);
  });
});

describe('the mail server of the site file', () => {
  test('gets the user’s secret from a file or the environment', async () => {
    const { send, made } = desk(email(), { FOREBOND_EMAIL: mailUser.secret });
    expect(await send('email', 'anna@plant.example')).toEqual(delivered);
    expect(made.hasEmail).toBe(true);
    writeFileSync(secretFile(folder, 'email'), `${mailUser.secret}\n`, { mode: 0o600 });
    expect(await desk(email()).send('email', 'anna@plant.example')).toEqual(delivered);
    expect(mail.taken.map(({ user }) => user)).toEqual([mailUser.user, mailUser.user]);
  });

  test('without the secret mail waits, and the log says once where it belongs', async () => {
    const { send, wait, codes, said } = desk(email());
    expect(await send('email', 'anna@plant.example')).toMatchObject({ outcome: 'later' });
    wait(limits.secretLookMs);
    await send('email', 'anna@plant.example');
    expect(codes()).toEqual(['CHANNEL_SECRET_MISSING']);
    expect(said[0]!.fix).toContain(join('secrets', 'email'));
  });

  test('a secret that others can read is not used', async () => {
    const { send, codes } = desk(email());
    writeFileSync(secretFile(folder, 'email'), mailUser.secret, { mode: 0o644 });
    expect(await send('email', 'anna@plant.example')).toMatchObject({ outcome: 'later' });
    expect(codes()).toEqual(['CHANNEL_SECRET_UNUSABLE']);
  });
});

test('the agent’s key for push is made when it is first needed, and then stays', () => {
  const first = desk({}).made;
  expect(existsSync(secretFile(folder, 'push-keys.json'))).toBe(false);
  const { publicKey } = first.keys;
  expect(desk({}).made.keys.publicKey).toBe(publicKey);
  writeFileSync(secretFile(folder, 'push-keys.json'), '{}');
  expect(() => desk({})).toThrow('no pair of keys');
});

test('phones need no settings but for a push service inside the plant', async () => {
  const { made, send, change } = desk({});
  const { p256dh, auth } = aPhone();
  made.devices.add('p-1', { endpoint: far.url, keys: { p256dh, auth } }, 0);
  expect(await send('push', 'p-1')).toMatchObject({ outcome: 'refused' });
  change({ push: { hosts: ['localhost'] }, ...email() });
  expect(await send('push', 'p-1')).toEqual(delivered);
  change({ push: { hosts: ['localhost'], contact: 'https://plant.example/it' } });
  expect(await send('push', 'p-1')).toEqual(delivered);
  const subjects = far.taken.map(
    ({ headers }) => vapidOf(String(headers.authorization)).claims.sub,
  );
  expect(subjects).toEqual(['mailto:a@plant.example', 'https://plant.example/it']);
});
