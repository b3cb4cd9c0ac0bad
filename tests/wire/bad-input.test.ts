/**
 * Bad input to a whole agent: each kind is refused or marked, counted under its cause and shown
 * where it is a reading, while a good signal goes on being judged.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import mqtt, { type MqttClient } from 'mqtt';
import { generate } from 'mqtt-packet';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  published,
  siteFile,
  startAgentProcess,
  type TestDevice,
} from '#tests/agent-process.ts';
import { alarms, figure, get, type HealthSeen, metrics, signalOf, until } from './agent-http.ts';
import { chance } from './simulated-agent.ts';

const json = (topic: string, pointers: object) => ({
  topic,
  payload: { kind: 'json', value: '/v', ...pointers },
  unit: 'Cel',
  resolution: 0.1,
});
const site = {
  site: 'works',
  timezone: 'Europe/Dublin',
  lines: {
    a: {
      bench: {
        kind: 'custom',
        signals: {
          good: { topic: 'bench/good', payload: { kind: 'plain' }, unit: 'Cel', resolution: 0.1 },
          plain: { topic: 'bench/plain', payload: { kind: 'plain' }, unit: 'Cel', resolution: 0.1 },
          timed: json('bench/timed', { time: '/t' }),
          units: json('bench/units', { unit: '/u' }),
        },
        rules: {
          warm: {
            kind: 'band',
            signal: 'good',
            high: '25 Cel',
            on_delay: '0 s',
            priority: 'low',
            self_acknowledging: true,
            consequence: 'The bench is warm.',
            actions: ['Look at the bench.'],
          },
        },
      },
    },
  },
};

const folder = mkdtempSync(join(tmpdir(), 'forebond-bad-'));
let agent: AgentProcess;
let device: TestDevice;
let client: MqttClient;
let raises = 0;

beforeAll(async () => {
  const data = join(folder, 'data');
  device = await addDevice(data, 'sensor', { publish: ['bench/#'], read: ['bench/#'] });
  agent = await startAgentProcess({ site: siteFile(join(folder, 'works'), site), folder: data });
  client = await connectDevice(agent.mqtt, device);
});
afterAll(async () => {
  client.end(true);
  const { code, stderr } = await agent.stop();
  rmSync(folder, { recursive: true, force: true });
  expect(code).toBe(0);
  expect(stderr).not.toContain('internal fault');
});

/** The good signal is judged: it raises and returns once more. */
async function stillJudges(): Promise<void> {
  await published(client, 'bench/good', '26.0');
  await published(client, 'bench/good', '20.0');
  raises += 1;
  const seen = await until(
    () => alarms(agent.page, '?since=0'),
    (found) => found.length === raises && found.every(({ state }) => state === 'normal'),
  );
  expect(seen.length).toBe(raises);
}

const marked = async (cause: string): Promise<number> =>
  figure(await metrics(agent.page), 'forebond_readings_marked', `cause="${cause}"`);
const door = async (what: string, cause: string): Promise<number> =>
  figure(await metrics(agent.page), 'forebond_door_events', `what="${what}",cause="${cause}"`);

/** Runs `act`, and the count has gone up by one. */
async function counted(count: () => Promise<number>, act: () => Promise<unknown>): Promise<void> {
  const before = await count();
  await act();
  await until(count, (now) => now === before + 1);
  await stillJudges();
}

const hourMs = 3_600_000;
const unread = 'the message could not be read';
/** What, signal, payload, counted as, shown as: a bad one has no value, a late one changes nothing. */
const readings: readonly [string, string, () => string, string, string | null][] = [
  ['not JSON', 'timed', () => 'warm', 'not-json', unread],
  ['NaN as JSON', 'timed', () => `{"v":NaN,"t":${Date.now()}}`, 'not-json', unread],
  ['a wrong pointer', 'timed', () => `{"x":1,"t":${Date.now()}}`, 'no-value', unread],
  ['no time', 'timed', () => '{"v":1}', 'no-time', unread],
  ['1e400', 'timed', () => `{"v":1e400,"t":${Date.now()}}`, 'not-finite', 'not a finite number'],
  ['NaN', 'plain', () => 'NaN', 'not-finite', 'not a finite number'],
  ['Infinity', 'plain', () => 'Infinity', 'not-finite', 'not a finite number'],
  ['-1e400', 'plain', () => '-1e400', 'not-finite', 'not a finite number'],
  ['text', 'plain', () => 'warm', 'not-a-number', unread],
  [
    'a wrong unit',
    'units',
    () => '{"v":1,"u":"kg"}',
    'wrong-unit',
    'it came in another unit than promised',
  ],
  [
    'ten years ahead',
    'timed',
    () => `{"v":30,"t":${Date.now() + 10 * 365 * 24 * hourMs}}`,
    'future',
    'its time lies in the future',
  ],
  ['an hour ago', 'timed', () => `{"v":31,"t":${Date.now() - hourMs}}`, 'late', null],
  ['1970', 'timed', () => '{"v":32,"t":0}', 'late', null],
];

test.each(readings)('a reading: %s', async (_, name, payload, cause, words) => {
  const good = name === 'plain' ? '20.0' : `{"v":20,"u":"Cel","t":${Date.now()}}`;
  await published(client, `bench/${name}`, good);
  const id = `a/bench/${name}`;
  const before = await until(
    () => signalOf(agent.page, id),
    ({ quality }) => quality?.grade === 'good',
  );
  await counted(
    () => marked(cause),
    () => published(client, `bench/${name}`, payload()),
  );
  const seen = await signalOf(agent.page, id);
  if (words === null) {
    expect({ ...seen, late_at: null }).toEqual({ ...before, late_at: null });
    expect(seen.late_at).not.toBeNull();
  } else expect(seen).toMatchObject({ value: null, quality: { grade: 'bad', cause: words } });
});

test('a topic nobody bound', () =>
  counted(
    () => marked('unbound-topic'),
    () => published(client, 'bench/nowhere', '1'),
  ));

/** Another connection that does something it may not; ends with it. */
async function trespass(act: (other: MqttClient) => Promise<unknown>): Promise<void> {
  const other = await connectDevice(agent.mqtt, device);
  other.on('error', () => {});
  const closed = new Promise<void>((resolve) => other.once('close', () => resolve()));
  await Promise.race([act(other).catch(() => {}), closed]);
  other.end(true);
}

/** What the list of refused messages says last of a topic. */
async function refusedLast(
  topic: string,
): Promise<{ reason: string; from: string; bytes: number }> {
  const { topics } = (await (await fetch(`${agent.page}/api/refused`)).json()) as {
    topics: { topic: string; messages: { reason: string; from: string; bytes: number }[] }[];
  };
  return topics.find((each) => each.topic === topic)!.messages.at(-1)!;
}

test.each([
  ['a payload just over the limit', 65_537],
  ['a megabyte', 1_048_576],
])('%s', async (_, bytes) => {
  await counted(
    () => door('denied', 'payload-too-large'),
    () => client.publishAsync('bench/plain', Buffer.alloc(bytes, '1'), { qos: 1 }),
  );
  const { value, quality } = await signalOf(agent.page, 'a/bench/plain');
  expect([value, quality?.grade]).toEqual([null, 'bad']);
  expect(await refusedLast('bench/plain')).toMatchObject({
    reason: 'too-large',
    from: device.username,
  });
});
test.each([
  ['a topic of another device', 'oven/air', 'not-listed'],
  ["the agent's own topics", 'forebond/works/heartbeat', 'own'],
])('%s', async (_, topic, cause) => {
  await counted(
    () => door('denied', cause),
    () => client.publishAsync(topic, '1', { qos: 1 }),
  );
  expect(await refusedLast(topic)).toMatchObject({
    reason: cause,
    from: device.username,
    bytes: 1,
  });
});
test('a filter that is none', () =>
  counted(
    () => door('closed', 'malformed'),
    // The client's library would not send it; MQTT 3.1.1 [MQTT-4.7.1-3] has the connection closed.
    () =>
      trespass((other) => {
        const subscriptions = [{ topic: 'bench/a+', qos: 1 as const }];
        other.stream.write(generate({ cmd: 'subscribe', messageId: 9, subscriptions }));
        return sleep(200);
      }),
  ));
test('a wrong secret', () =>
  counted(
    () => door('refused', 'secret'),
    () =>
      expect(
        mqtt.connectAsync(agent.mqtt, { ...device, password: 'no', reconnectPeriod: 0 }, false),
      ).rejects.toThrow(),
  ));

test('100,000 payloads of random bytes over four connections, seed 11', async () => {
  const random = chance(11);
  const each = 25_000;
  const before = figure(await metrics(agent.page), 'forebond_messages');
  const goodBefore = raises;
  const clients = await Promise.all(
    Array.from({ length: 4 }, () => connectDevice(agent.mqtt, device)),
  );
  const began = performance.now();
  await Promise.all(
    clients.map(async (other, c) => {
      const topic = ['bench/plain', 'bench/timed', 'bench/units'][c % 3]!;
      for (let i = 0; i < each; i += 1) {
        const bytes = Buffer.from(Array.from({ length: 1 + random() * 30 }, () => random() * 256));
        other.publish(topic, bytes, { qos: 0 });
        if (i % 500 === 0) await new Promise((resolve) => setImmediate(resolve));
      }
    }),
  );
  await stillJudges();
  const sent = 4 * each + 2 * (raises - goodBefore);
  const found = await until(
    () => metrics(agent.page),
    (now) => figure(now, 'forebond_messages') === before + sent,
    20_000,
  );
  expect(performance.now() - began).toBeLessThan(30_000);
  const causes = found.get('forebond_readings_marked')!.samples;
  expect(causes.reduce((sum, { value }) => sum + value, 0)).toBeGreaterThan(0.95 * 4 * each);
  for (const other of clients) other.end(true);
  const { body } = await get<HealthSeen>(agent.page, '/api/health');
  expect(body.parts).toMatchObject({ engine: 'good', disk: 'good', mqtt: 'good' });
}, 60_000);
