import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { startWeb, type Web } from '#agent/web/server.ts';
import { tellingSchema, waitingSchema } from '#agent/web/telling-contract.ts';
import { FakePorts } from './fake-ports.ts';
import { FakeTelling } from './fake-telling.ts';

let web: Web;
let telling: FakeTelling;
const faults: unknown[] = [];
beforeAll(async () => {
  const ports = new FakePorts();
  const onFault = (error: unknown): void => void faults.push(error);
  const asked: FakeTelling = new FakeTelling();
  telling = asked;
  web = await startWeb({ host: '127.0.0.1', port: 0, version: '1', ports, telling, onFault });
});
beforeEach(() => {
  telling.reachable = ['local'];
  telling.asked.length = 0;
  telling.tested.length = 0;
});
afterAll(() => web.close());

const get = (path: string): Promise<Response> => fetch(`${web.url}${path}`);
const post = (body: unknown): Promise<Response> =>
  fetch(`${web.url}/api/telling/test`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

test('says who would be told now, of what was asked', async () => {
  const answer = await get('/api/telling?station=l/s&hazard=fire&priority=low');
  expect(answer.status).toBe(200);
  expect(tellingSchema.parse(await answer.json()).rungs[0]?.people[0]?.name).toBe('Anna');
  expect(telling.asked).toEqual([{ station: 'l/s', hazard: 'fire', priority: 'low' }]);
});

test('asked of nothing in particular it means the most urgent', async () => {
  await get('/api/telling');
  expect(telling.asked).toEqual([{ station: '', hazard: null, priority: 'high' }]);
});

test('refuses what is no priority, and what it does not know', async () => {
  expect((await get('/api/telling?priority=urgent')).status).toBe(400);
  expect((await get('/api/telling?stations=l/s')).status).toBe(400);
  expect(telling.asked).toEqual([]);
});

test('lists what waits, with the cause', async () => {
  const answer = await get('/api/telling/outbox');
  const { waiting, chases } = waitingSchema.parse(await answer.json());
  expect(waiting[0]).toMatchObject({ cause: 'There is no network.', tries: 1 });
  expect(chases).toHaveLength(1);
});

test('a test goes to whoever asks, or says that there is no way', async () => {
  const sent = await post({});
  expect([sent.status, await sent.json()]).toEqual([200, { channels: ['push'] }]);
  expect(telling.tested).toEqual(['local']);
  telling.reachable = [];
  const refused = await post({});
  expect(refused.status).toBe(409);
  expect(await refused.json()).toMatchObject({ code: 'TELLING_NO_WAY' });
  expect((await post({ person: 'anna' })).status).toBe(400);
  expect(faults).toEqual([]);
});
