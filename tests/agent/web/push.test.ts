import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { PushNotice } from '#agent/web/contract.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { ChannelDesk } from '#agent/wiring/channel-desk.ts';
import { PushDesk } from '#agent/wiring/push-desk.ts';
import { type FarSide, farSide } from '../notify/far-side.ts';
import { aMessage } from '../notify/messages.ts';
import { aPhone } from '../notify/open-push.ts';
import { FakePorts } from './fake-ports.ts';

// The routes over the real list of phones and the real channel; the push service is a local endpoint.

let folder: string;
let far: FarSide;
let ways: ChannelDesk;
let web: Web;
const faults: unknown[] = [];
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'forebond-push-'));
  far = await farSide('none');
  ways = new ChannelDesk({
    folder,
    written: () => ({ push: { hosts: ['localhost'] } }),
    timezone: () => 'UTC',
    page: () => 'https://own.example',
    env: {},
    nowMs: () => Date.now(),
    warn: (error) => faults.push(error),
    authorities: [far.authority],
  });
  const { key: _, ...said } = aMessage();
  const push = new PushDesk({
    ways,
    languageOf: () => 'de',
    say: (at) => ({ ...said, at, title: 'Test' }),
    nowMs: () => Date.now(),
  });
  const onFault = (error: unknown) => faults.push(error);
  const ports = new FakePorts();
  web = await startWeb({ host: '127.0.0.1', port: 0, version: '0', ports, push, onFault });
});
afterEach(async () => {
  await Promise.all([web.close(), far.close()]);
  rmSync(folder, { recursive: true, force: true });
  expect(faults.splice(0)).toEqual([]);
});

async function ask(method: string, path: string, body?: unknown) {
  const answer = await fetch(`${web.url}/api/push/${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: answer.status, json: (await answer.json()) as Record<string, unknown> };
}

const phone = aPhone();
const said = () => ({
  endpoint: far.url,
  expirationTime: null,
  keys: { p256dh: phone.p256dh, auth: phone.auth },
});

test('the key, then on, again the same, then off', async () => {
  const key = ways.keys.publicKey;
  expect(await ask('GET', 'key')).toEqual({ status: 200, json: { key, devices: 0 } });
  for (let n = 0; n < 2; n += 1)
    expect(await ask('POST', 'subscriptions', said())).toEqual({
      status: 201,
      json: { devices: 1 },
    });
  expect((await ask('GET', 'key')).json).toMatchObject({ devices: 1 });
  const { endpoint } = said();
  expect(await ask('DELETE', 'subscriptions', { endpoint })).toEqual({
    status: 200,
    json: { devices: 0 },
  });
  const gone = await ask('DELETE', 'subscriptions', { endpoint });
  expect([gone.status, gone.json.code]).toEqual([404, 'PUSH_DEVICE_UNKNOWN']);
});

test('what is no subscription is refused, without repeating it', async () => {
  const rows = [
    { ...said(), endpoint: 'http://push.example/secret-place' },
    { ...said(), keys: { p256dh: 'AAAA', auth: phone.auth } },
    { ...said(), keys: { p256dh: phone.p256dh, auth: 'AAAA' } },
    { ...said(), more: 1 },
    { endpoint: far.url },
    {},
  ];
  for (const row of rows) {
    const { status, json } = await ask('POST', 'subscriptions', row);
    expect(status, JSON.stringify(row)).toBe(400);
    expect(JSON.stringify(json)).not.toContain('secret-place');
  }
  expect((await ask('GET', 'key')).json).toMatchObject({ devices: 0 });
});

test('a test message goes to the own phones at once, and its outcome is told', async () => {
  expect((await ask('POST', 'test')).json).toMatchObject({ outcome: 'gone' });
  await ask('POST', 'subscriptions', said());
  expect((await ask('POST', 'test')).json).toEqual({ outcome: 'delivered', cause: null });
  const notice = JSON.parse(phone.open(far.taken[0]!.body)) as PushNotice;
  expect(notice).toMatchObject({ kind: 'test', title: 'Test', language: 'de', occurrence: null });
});

test('a push service that does not answer is told as it is', async () => {
  await far.close();
  await ask('POST', 'subscriptions', said());
  const { json } = await ask('POST', 'test');
  expect(json).toEqual({
    outcome: 'later',
    cause: 'The push service was not reached: nobody listens there.',
  });
  far = await farSide('none');
});
