/**
 * A whole agent by the wall clock under traffic of every kind, with commands of people, two clean
 * restarts and a kill in between: a replay of its folder gives what the ledger holds, to the byte.
 */

import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { MqttClient } from 'mqtt';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  scratchFolder,
  siteFile,
  startAgentProcess,
  type TestDevice,
} from '#tests/agent-process.ts';
import { alarms, commandOf, get, post } from './agent-http.ts';
import { prepSite } from './prep-site.ts';
import { chance, ledgerLines, replayedLines, sourceOf } from './simulated-agent.ts';
import { worksSite } from './works-site.ts';

/** The works, with a station where people and scanners write things down. */
const { lines } = worksSite as { lines: Readonly<Record<string, object>> };
const site = { ...worksSite, lines: { ...lines, m: { ...lines.m, ...prepSite(2_000).lines.m } } };

const random = chance(7);
const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!;

/** Some messages of every kind; QoS 0 and 1. */
async function traffic(client: MqttClient, ms: number): Promise<void> {
  const endMs = Date.now() + ms;
  while (Date.now() < endMs) {
    for (let n = Math.floor(random() * 6); n > 0; n -= 1) {
      const v = Number((22 + (random() - 0.3) * 14).toFixed(1));
      const own = JSON.stringify({
        v,
        t: Date.now() - Math.floor(random() * one([1, 400, 3_000])),
      });
      const [topic, payload] = one<readonly [string, string]>([
        ['room/air', random() < 0.1 ? 'warm' : String(v)],
        ['room/humidity', (40 + random() * 50).toFixed(0)],
        ['room/run', random() < 0.3 ? '0' : '1'],
        ['room/wall', random() < 0.1 ? '{"v":1e400}' : own],
        [`bench/cell-${Math.floor(random() ** 2 * 12)}/t`, String(v)],
        [`zone/zone-${Math.floor(random() ** 2 * 12)}/t`, own],
        ['nowhere', String(v)],
        ['prep/blasted', `R-${Math.floor(random() * 9)}`],
        ['prep/coated', JSON.stringify({ rack: one(['R-1', 'R-2']), t: Date.now() / 1_000 })],
      ]);
      client.publish(topic, payload, { qos: one([0, 1] as const) });
    }
    await sleep(Math.floor(random() * 25));
  }
}

const verbs = [
  ['acknowledge', { comment: 'seen' }],
  ['shelve', { minutes: 1, reason: 'being mended' }],
  ['unshelve', undefined],
  ['reset', undefined],
] as const;

/** What people do meanwhile, often enough on any machine; every answer is one the interface promises. */
async function people(page: string, ms: number): Promise<Map<string, number>> {
  const answers = new Map<string, number>();
  const endMs = Date.now() + ms;
  for (let turn = 0; turn < 12 || Date.now() < endMs; turn += 1) {
    await sleep(120);
    const open = await alarms(page);
    const [verb, body] = one(verbs);
    const held = (await get<{ holds: { id: string }[] }>(page, '/api/holds?standing=true')).body
      .holds;
    const { status } =
      random() < 0.2
        ? await written(page)
        : random() < 0.3
          ? await post(page, '/api/holds', {
              what: 'lot',
              item: one(['a', 'b']),
              reason: 'doubtful',
            })
          : random() < 0.2 && held.length > 0
            ? await post(page, `/api/holds/${encodeURIComponent(one(held).id)}/lift`, {
                disposition: 'released',
                reason: 'tested',
              })
            : open.length === 0
              ? { status: 200 }
              : await post(page, commandOf(one(open).occurrence, verb), body);
    answers.set(String(status), (answers.get(String(status)) ?? 0) + 1);
  }
  return answers;
}

/** A mark, or a reading by hand; some of them cannot be taken. */
const written = (page: string) =>
  random() < 0.5
    ? post(page, '/api/marks', {
        station: 'm/prep',
        mark: one(['blasted', 'bin-emptied']),
        ...one([{}, { item: 'R-9' }, { item: 'R-9', at: Date.now() - 5_000 }]),
      })
    : post(page, '/api/readings', {
        signal: 'm/prep/ph',
        value: Number((5 + random() * 5).toFixed(2)),
        unit: '[pH]',
        ...one([{}, { at: Date.now() - Math.floor(random() * 3_000) }]),
      });

async function shift(
  agent: AgentProcess,
  device: TestDevice,
  end: (agent: AgentProcess) => Promise<unknown>,
): Promise<Map<string, number>> {
  const client = await connectDevice(agent.mqtt, device);
  client.on('error', () => {});
  const [answers] = await Promise.all([people(agent.page, 1_500), traffic(client, 1_700)]);
  await end(agent);
  client.end(true);
  return answers;
}

test('four shifts with restarts between: ledger and replay agree, seed 7', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const file = siteFile(join(folder, 'works'), site);
  const device = await addDevice(data, 'sensors');
  const ends = [
    (agent: AgentProcess) => agent.stop(),
    (agent: AgentProcess) => agent.kill(),
    (agent: AgentProcess) => agent.stop(),
    (agent: AgentProcess) => agent.stop(),
  ];
  const statuses = new Set<string>();
  for (const end of ends) {
    const agent = await startAgentProcess({ site: file, folder: data });
    for (const status of (await shift(agent, device, end)).keys()) statuses.add(status);
  }
  expect([...statuses].filter((status) => !['200', '201', '409'].includes(status))).toEqual([]);

  const { effects, others } = ledgerLines(data);
  expect(others.filter((type) => !['started', 'reading', 'comment'].includes(type))).toEqual([]);
  expect(others).toContain('reading');
  const kinds = (word: string): number => effects.filter((line) => line.includes(word)).length;
  expect(kinds('"transition":"raised"')).toBeGreaterThan(3);
  expect(kinds('"by":"local"')).toBeGreaterThan(3);
  expect(kinds('"type":"hold"')).toBeGreaterThan(0);
  expect(kinds('"type":"mark"')).toBeGreaterThan(3);
  expect(replayedLines(await sourceOf(site), data)).toEqual(effects);
}, 180_000);
