/**
 * A site file that was half saved when the agent was killed: it starts again on what was accepted
 * last, watches, says so wherever people look, and takes the file up once it is whole.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { connectAsync, type MqttClient } from 'mqtt';
import { expect, onTestFinished, test } from 'vitest';
import { stringify } from 'yaml';
import {
  type AgentProcess,
  forebond,
  runWords,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, get, type HealthSeen, post, until } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';
import { ownSite, sound, writeOwn } from './own-rules-site.ts';

/** A slow machine looks at the file seldom. */
const patientMs = 60_000;

const site = (high: string, name = 'works'): object => ({
  site: name,
  timezone: 'Etc/UTC',
  lines: {
    m: {
      bench: {
        kind: 'custom',
        signals: {
          t: {
            topic: 'm/t',
            payload: { kind: 'json', value: '/v' },
            unit: 'Cel',
            resolution: 0.1,
          },
        },
        rules: {
          hot: {
            kind: 'band',
            signal: 't',
            high,
            on_delay: '0 s',
            priority: 'low',
            consequence: 'It is hot.',
            actions: ['Cool it.'],
          },
        },
      },
    },
  },
});

/** Cut off in the middle of a line, as a power cut leaves it. */
function halfSave(file: string): void {
  const text = readFileSync(file, 'utf8');
  writeFileSync(file, text.slice(0, text.indexOf('unit: Cel') + 3));
}

const health = async (page: string): Promise<HealthSeen> =>
  (await get<HealthSeen>(page, '/api/health')).body;

async function publisher(agent: Pick<AgentProcess, 'mqtt'>): Promise<MqttClient> {
  const client = await connectAsync(agent.mqtt);
  onTestFinished(() => void client.end(true));
  return client;
}

const say = (client: MqttClient, topic: string, v: number): Promise<unknown> =>
  client.publishAsync(topic, JSON.stringify({ v }), { qos: 1 });

const raised = (page: string, rule: string): Promise<unknown> =>
  until(
    () => alarms(page),
    (all) => all.some((one) => one.rule === rule && one.state === 'unacknowledged'),
    patientMs,
  );

/** A site that ran and was killed; its folder and file stay. */
async function ranAndKilled(
  file: string,
  data: string,
): Promise<{ readonly site: string; readonly folder: string }> {
  const start = { site: file, folder: data };
  const agent = await startAgentProcess(start);
  expect((await health(agent.page)).parts.site).toBe('good');
  await agent.kill();
  return start;
}

test('half saved and killed, it watches on as accepted last, and takes the mended file up', async () => {
  const folder = scratchFolder();
  const file = siteFile(folder, site('30 Cel'));
  const start = await ranAndKilled(file, join(folder, 'data'));
  halfSave(file);
  const agent = await startAgentProcess(start);

  // It watches.
  const client = await publisher(agent);
  await say(client, 'm/t', 31);
  await raised(agent.page, 'm/bench/hot');
  // It says so, and what to mend.
  const { condition, parts, notes } = await health(agent.page);
  expect([condition, parts.site]).toEqual(['out-of-specification', 'out-of-specification']);
  expect(notes.site).toMatch(/accepted last/);
  expect(notes.site).toMatch(/site\.yaml:\d+:\d+ /);
  expect(agent.stderr()).toMatch(/^\S*site\.yaml:\d+:\d+ /m);
  expect(agent.stderr()).toMatch(/accepted last/);
  // Asked to load it as it is, it refuses as ever.
  expect((await post(agent.page, '/api/site/reload')).status).toBeGreaterThanOrEqual(400);
  expect((await health(agent.page)).parts.site).toBe('out-of-specification');

  // Another site's file is whole, and is not this one's.
  writeFileSync(file, stringify(site('40 Cel', 'other-works')));
  await until(
    () => health(agent.page),
    (seen) => /of another site.*other-works/.test(seen.notes.site ?? ''),
    patientMs,
  );
  expect((await health(agent.page)).parts.site).toBe('out-of-specification');

  writeFileSync(file, stringify(site('35 Cel')));
  await until(
    () => health(agent.page),
    (seen) => seen.parts.site === 'good',
    patientMs,
  );
  await client.endAsync();
  await agent.stop();
  const ledger = ledgerOf(start.folder);
  expect(ledger.filter(({ type }) => type === 'site-file-refused')).toMatchObject([
    {
      words: expect.stringMatching(/accepted last/),
      problems: [expect.stringMatching(/:\d+:\d+ /)],
    },
  ]);
  expect(ledger.filter(({ type }) => type === 'site-changed')).toMatchObject([
    { by: 'box', changes: [{ path: 'lines.m.bench.rules.hot.high', after: '35 Cel' }] },
  ]);
  expect(ledger.filter(({ type }) => type === 'site-file-taken-up')).toHaveLength(1);
}, 180_000);

test('an own rule file that was half saved is taken from the record as well', async () => {
  const folder = scratchFolder();
  const start = await ranAndKilled(ownSite(folder, sound), join(folder, 'data'));
  writeOwn(start.site, sound.slice(0, sound.length / 2));
  const agent = await startAgentProcess(start);
  const client = await publisher(agent);
  await say(client, 'm/a', 31);
  await raised(agent.page, 'm/bench/own');
  expect((await health(agent.page)).notes.site).toMatch(/own\.ts:\d+:\d+ /);
  writeOwn(start.site, sound);
  await until(
    () => health(agent.page),
    (seen) => seen.parts.site === 'good',
    patientMs,
  );
  await client.endAsync();
  await agent.stop();
}, 180_000);

test('without a record, or where the file is of another site, it ends as ever', async () => {
  const folder = scratchFolder();
  const file = siteFile(folder, site('30 Cel'));
  halfSave(file);
  const data = join(folder, 'data');
  const fresh = await forebond(runWords({ site: file, folder: data }));
  expect([fresh.code, fresh.stdout]).toEqual([1, '']);
  expect(fresh.stderr).toMatch(/site\.yaml:\d+:\d+ /);

  const start = await ranAndKilled(siteFile(folder, site('30 Cel')), data);
  writeFileSync(file, stringify(site('30 Cel', 'other-works')));
  halfSave(file);
  const other = await forebond(runWords(start));
  expect([other.code, other.stdout]).toEqual([1, '']);
  expect(other.stderr).toMatch(/site\.yaml:\d+:\d+ /);
}, 180_000);
