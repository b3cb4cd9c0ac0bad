/**
 * Raw sensors over a real connection: millivolts, ohms and milliamperes in, what they measure out, in
 * the API, in an alarm, in the export; and the same from the folder and from the export again.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MqttClient } from 'mqtt';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  forebond,
  published,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, get, type HealthSeen, signalOf, until } from './agent-http.ts';
import { ledgerLines, replayedLines, sourceOf } from './simulated-agent.ts';

const json = (value: string) => ({ kind: 'json', value });
const site = {
  site: 'works',
  timezone: 'Europe/Dublin',
  lines: {
    a: {
      oven: {
        kind: 'custom',
        signals: {
          metal: {
            topic: 'oven/card',
            payload: json('/uv'),
            unit: 'uV',
            resolution: 0.01,
            sensor: { kind: 'thermocouple', type: 'K', cold_junction: 'terminals', class: 2 },
          },
          terminals: {
            topic: 'oven/card',
            payload: json('/ohm'),
            unit: 'Ohm',
            resolution: 0.01,
            sensor: { kind: 'pt100', class: 'B' },
            calibrated: '2020-01-31',
            calibrate_every: '12 mo',
          },
          pressure: {
            topic: 'oven/loop',
            payload: { kind: 'plain' },
            unit: 'mA',
            resolution: 0.1,
            sensor: { kind: 'current-loop', from: '0 bar', to: '16 bar' },
          },
        },
        rules: {
          hot: {
            kind: 'band',
            signal: 'metal',
            high: '140 Cel',
            on_delay: '0 s',
            priority: 'low',
            consequence: 'It cures too early.',
            actions: ['Turn the burner down.'],
          },
        },
      },
    },
  },
};

interface Replayed {
  readonly transition: string;
  readonly at: number | string;
  readonly value: number;
  readonly limit: number;
}
const replayed = async (file: string, from: string): Promise<Replayed[]> => {
  const { stdout, code } = await forebond(['replay', '--site', file, '--from', from, '--json']);
  expect(code).toBe(0);
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Replayed)
    .filter(({ transition }) => transition !== undefined);
};

let agent: AgentProcess;
let client: MqttClient;
const parent = mkdtempSync(join(tmpdir(), 'forebond-raw-'));
const folder = join(parent, 'data');
const file = siteFile(parent, site);
const signal = (name: string) => signalOf(agent.page, `a/oven/${name}`);

beforeAll(async () => {
  const device = await addDevice(folder, 'card', { publish: ['oven/#'] });
  agent = await startAgentProcess({ site: file, folder });
  client = await connectDevice(agent.mqtt, device);
});
afterAll(async () => {
  client.end(true);
  await agent.stop();
  rmSync(parent, { recursive: true, force: true });
});

test('raw in, measured out, with what is in doubt about it', async () => {
  // 109.7347 Ohm is 25 Cel; 5 mV beside it is 146.574 Cel (NIST), 0.4 K from adding the degrees.
  await published(client, 'oven/card', { uv: 5_000, ohm: 109.7347 });
  await published(client, 'oven/loop', '12');
  const metal = await until(
    () => signal('metal'),
    (seen) => seen.value !== null,
  );
  expect(metal).toMatchObject({
    unit: 'Cel',
    value: 146.57,
    // Its cold junction is past its calibration.
    quality: { grade: 'uncertain', cause: 'computed from an uncertain reading' },
    sensor: { kind: 'thermocouple', sends: 'uV', tolerance: 2.5 },
  });
  expect(await signal('terminals')).toMatchObject({
    value: 25,
    quality: { grade: 'uncertain', cause: 'calibration overdue' },
  });
  expect(await signal('pressure')).toMatchObject({
    unit: 'kPa',
    value: 800,
    quality: { grade: 'good' },
  });
  const raised = await until(
    () => alarms(agent.page),
    (seen) => seen.length > 0,
  );
  expect(raised).toMatchObject([{ rule: 'a/oven/hot', evidence: { value: 146.57, limit: 140 } }]);
});

test('what is broken says so', async () => {
  await published(client, 'oven/loop', '3.5');
  await published(client, 'oven/card', { uv: 80_000, ohm: 109.7347 });
  const metal = await until(
    () => signal('metal'),
    (seen) => seen.quality?.grade === 'bad',
  );
  expect(metal.quality?.cause).toContain('broken');
  expect((await signal('pressure')).quality?.cause).toContain('4 s');
});

test('what cannot be used is kept to be looked at', async () => {
  await published(client, 'oven/loop', 'over\u0007load');
  const { body } = await until(
    () => get<{ topics: object[] }>(agent.page, '/api/refused'),
    (seen) => seen.body.topics.length > 0,
  );
  const begins = 'over·load';
  expect(body.topics).toMatchObject([
    {
      topic: 'oven/loop',
      standing: true,
      messages: [{ signal: 'a/oven/pressure', reason: 'not-a-number', begins }],
    },
  ]);
  const health = await get<HealthSeen>(agent.page, '/api/health');
  expect(health.body.notes.sensors).toContain('oven/loop');
  expect(health.body.notes.sensors).toContain('a/oven/terminals');
  const coverage = await get<object>(agent.page, '/api/coverage');
  expect(coverage.body).toMatchObject({
    refused: [{ topic: 'oven/loop' }],
    stations: [
      { calibrations: [{ signal: 'a/oven/terminals', last_day: '2021-01-31', overdue: true }] },
    ],
  });
});

test('the folder and its export judge the same again', async () => {
  await published(client, 'oven/card', { uv: 4_000, ohm: 109.7347 });
  await until(
    () => signal('metal'),
    (seen) => seen.value !== null && seen.value < 140,
  );
  expect((await agent.stop()).code).toBe(0);
  const { effects } = ledgerLines(folder);
  expect(effects.length).toBeGreaterThan(2);
  expect(replayedLines(await sourceOf(site), folder)).toEqual(effects);

  const own = await replayed(file, folder);
  expect(own.map(({ transition, value }) => [transition, value])).toEqual([
    ['raised', 146.57],
    ['returned', expect.any(Number)],
  ]);
  const ids = ['metal', 'terminals', 'pressure'].flatMap((name) => ['--signal', `a/oven/${name}`]);
  const exported = await forebond(['export', '--data', folder, ...ids]);
  expect(exported.stdout).toContain(',a/oven/metal,146.57,Cel,uncertain,');
  const csv = join(parent, 'out.csv');
  writeFileSync(csv, exported.stdout);
  expect((await replayed(file, csv)).map(({ transition, value }) => [transition, value])).toEqual(
    own.map(({ transition, value }) => [transition, value]),
  );
});
