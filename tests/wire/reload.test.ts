/**
 * A setting changed while the line runs: no sample is lost, what stands goes on standing, the ledger
 * says who changed what; a file with a fault changes nothing.
 */
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { connectAsync, type MqttClient } from 'mqtt';
import { expect, test } from 'vitest';
import { stringify } from 'yaml';
import {
  type AgentProcess,
  forebond,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import {
  type AlarmSeen,
  alarms,
  commandOf,
  get,
  type HealthSeen,
  post,
  until,
} from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';

const rule = (high: string): object => ({
  kind: 'band',
  signal: 't',
  high,
  on_delay: '0 s',
  deadband: '0.5 K',
  priority: 'low',
  consequence: 'It is hot.',
  actions: ['Cool it.'],
});

const site = (rules: object, signal: object = {}): object => ({
  site: 'works',
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
            ...signal,
          },
        },
        rules,
      },
    },
  },
});

interface Loaded {
  readonly revision: string;
  readonly changes: readonly object[];
  readonly problems?: readonly string[];
  readonly code?: string;
}

/** Publishes a rising number of readings until it is stopped; says how many were acknowledged. */
function publishing(client: MqttClient, value: () => number) {
  let going = true;
  let acknowledged = 0;
  const run = async (): Promise<void> => {
    while (going) {
      await client.publishAsync('m/t', JSON.stringify({ v: value() }), { qos: 1 });
      acknowledged += 1;
      await sleep(2);
    }
  };
  const done = run();
  return {
    stop: async (): Promise<number> => {
      going = false;
      await done;
      return acknowledged;
    },
  };
}

const stored = async (page: string): Promise<number> => {
  const path = `/api/signals/${encodeURIComponent('m/bench/t')}/series?since=0&points=1`;
  const { body } = await get<{ points: number[][] }>(page, path);
  return body.points.reduce((sum, point) => sum + point[4]!, 0);
};

const one = async (page: string, name: string): Promise<AlarmSeen | undefined> =>
  (await alarms(page)).find(({ rule: id }) => id === `m/bench/${name}`);

async function scene(
  rules: object,
): Promise<{ agent: AgentProcess; file: string; client: MqttClient }> {
  const folder = scratchFolder();
  const file = siteFile(folder, site(rules));
  const agent = await startAgentProcess({ site: file, folder: join(folder, 'data') });
  const client = await connectAsync(agent.mqtt);
  return { agent, file, client };
}
const load = (agent: AgentProcess) => post<Loaded>(agent.page, '/api/site/reload');

async function saysItDiffers(page: string): Promise<void> {
  await until(
    async () => (await get<HealthSeen>(page, '/api/health')).body,
    ({ parts, notes }) =>
      parts.site === 'maintenance-required' && /differs from what runs/.test(notes.site ?? ''),
    10_000,
  );
}

/** What was judged live is what a replay of the folder judges, across the change. */
async function replaysAsTold(file: string, folder: string): Promise<void> {
  const replayed = await forebond(['replay', '--site', file, '--from', folder, '--json']);
  const seen = replayed.stdout
    .trimEnd()
    .split('\n')
    .map((text) => JSON.parse(text))
    .filter((each) => each.transition !== undefined)
    .map(({ rule: id, transition, judged }) => [id, transition, judged]);
  const told = ledgerOf(folder)
    .filter(({ type }) => type === 'transition')
    .map(({ rule: id, transition, judged }) => [id, transition, judged]);
  expect(seen).toEqual(told);
}

test('a limit changed under load: alarms stand on, no sample is lost, the ledger names it', async () => {
  const { agent, file, client } = await scene({ hot: rule('30 Cel'), gone: rule('32 Cel') });
  let value = 35;
  const line = publishing(client, () => value);
  const raised = await until(
    () => one(agent.page, 'hot'),
    (alarm) => alarm?.state === 'unacknowledged',
  );
  await post(agent.page, commandOf(raised!.occurrence, 'acknowledge'));
  await until(
    () => one(agent.page, 'gone'),
    (alarm) => alarm !== undefined,
  );

  writeFileSync(file, stringify(site({ hot: rule('33 Cel'), fresh: rule('34 Cel') })));
  await saysItDiffers(agent.page);
  // Nothing has changed yet: the file alone changes nothing.
  expect((await one(agent.page, 'fresh')) ?? null).toBeNull();

  const { status, body } = await load(agent);
  expect(status).toBe(200);
  expect(body.changes).toContainEqual({
    path: 'lines.m.bench.rules.hot.high',
    before: '30 Cel',
    after: '33 Cel',
  });
  // The alarm that stood stands, answered as it was; a new rule raises; a rule that went closes its own.
  await until(
    () => one(agent.page, 'fresh'),
    (alarm) => alarm?.state === 'unacknowledged',
  );
  expect(await one(agent.page, 'hot')).toMatchObject({
    occurrence: raised!.occurrence,
    state: 'acknowledged',
  });
  const gone = ledgerOf(agent.folder).filter((record) => record.rule === 'm/bench/gone');
  expect(gone.at(-1)).toMatchObject({ closes: true });
  value = 20;
  await until(
    () => one(agent.page, 'hot'),
    (alarm) => alarm?.state === 'normal',
  );
  expect((await get<HealthSeen>(agent.page, '/api/health')).body.parts.site).toBe('good');
  const acknowledged = await line.stop();
  expect(await stored(agent.page)).toBe(acknowledged);

  const changed = ledgerOf(agent.folder).filter(({ type }) => type === 'site-changed');
  expect(changed).toHaveLength(1);
  expect(changed[0]).toMatchObject({ by: 'local', after: body.revision, more: 0 });
  expect(changed[0]!.changes).toEqual(body.changes);

  await client.endAsync();
  await agent.stop();
  await replaysAsTold(file, agent.folder);
}, 60_000);

test('a file with a fault, and a signal that became another, change nothing', async () => {
  const { agent, file, client } = await scene({ hot: rule('30 Cel') });
  await client.publishAsync('m/t', '{"v":35}', { qos: 1 });
  await until(
    () => one(agent.page, 'hot'),
    (alarm) => alarm !== undefined,
  );
  const before = await get(agent.page, '/api/rules');

  writeFileSync(file, stringify(site({ hot: { ...rule('25 Cel'), priority: 'urgent' } })));
  const wrong = await load(agent);
  expect([wrong.status, wrong.body.code]).toEqual([422, 'SITE_FILE_WRONG']);
  expect(wrong.body.problems).toHaveLength(1);
  expect(wrong.body.problems![0]).toMatch(
    /site\.yaml:\d+:\d+ lines\.m\.bench\.rules\.hot\.priority: /,
  );

  writeFileSync(file, stringify(site({ hot: rule('25 Cel') }, { resolution: 0.01 })));
  const other = await load(agent);
  expect([other.status, other.body.code]).toEqual([409, 'STORE_SIGNAL_CHANGED']);

  expect(await get(agent.page, '/api/rules')).toEqual(before);
  expect(ledgerOf(agent.folder).some(({ type }) => type === 'site-changed')).toBe(false);
  await client.endAsync();
  await agent.stop();
  // What was refused is not what the next start takes up from.
  writeFileSync(file, stringify(site({ hot: rule('30 Cel') })));
  const again = await startAgentProcess({ site: file, folder: agent.folder });
  expect(await one(again.page, 'hot')).toMatchObject({ state: 'unacknowledged' });
  await again.stop();
}, 60_000);

test('SIGHUP loads the file too, and the same file changes nothing', async () => {
  const { agent, file, client } = await scene({ hot: rule('30 Cel') });
  await client.publishAsync('m/t', '{"v":28}', { qos: 1 });
  expect((await load(agent)).body).toMatchObject({ changes: [] });
  writeFileSync(join(dirname(file), 'site.yaml'), stringify(site({ hot: rule('25 Cel') })));
  process.kill(agent.pid, 'SIGHUP');
  await until(
    async () => {
      await client.publishAsync('m/t', '{"v":28}', { qos: 1 });
      return one(agent.page, 'hot');
    },
    (alarm) => alarm?.state === 'unacknowledged',
  );
  // What is shown is on disk a moment later.
  const changed = await until(
    async () => ledgerOf(agent.folder).filter(({ type }) => type === 'site-changed'),
    ({ length }) => length > 0,
  );
  expect(changed).toMatchObject([{ by: 'box' }]);
  await client.endAsync();
  await agent.stop();
}, 60_000);

test('other settings end no alarm that stands; a rule taken out says so, and who did it', async () => {
  const stands = { ...rule('112 Cel'), latching: true };
  const { agent, file, client } = await scene({ hot: stands, gone: stands });
  const send = () => client.publishAsync('m/t', '{"v":126}', { qos: 1 });
  await send();
  const raised = await until(
    () => one(agent.page, 'hot'),
    (alarm) => alarm?.state === 'unacknowledged',
  );
  writeFileSync(file, stringify(site({ hot: { ...stands, on_delay: '10 h' } })));
  expect((await load(agent)).status).toBe(200);
  writeFileSync(file, stringify(site({ hot: { ...stands, on_delay: '10 h', latching: false } })));
  expect((await load(agent)).status).toBe(200);
  await post(agent.page, commandOf(raised!.occurrence, 'acknowledge'));
  await send();
  expect(await one(agent.page, 'hot')).toMatchObject({
    occurrence: raised!.occurrence,
    state: 'acknowledged',
  });
  const told = await until(
    async () => ledgerOf(agent.folder).filter(({ type }) => type === 'transition'),
    ({ length }) => length === 4,
  );
  expect(told.map(({ rule: id, transition }) => [id, transition])).toEqual([
    ['m/bench/gone', 'raised'],
    ['m/bench/hot', 'raised'],
    ['m/bench/gone', 'removed'],
    ['m/bench/hot', 'acknowledged'],
  ]);
  expect(told[2]).toMatchObject({
    by: 'local',
    reason: expect.stringMatching(/removed by the site file/),
  });
  await client.endAsync();
  await agent.stop();
  await replaysAsTold(file, agent.folder);
}, 60_000);
