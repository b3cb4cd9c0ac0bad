/**
 * The HTTP interface of a whole agent, fed by MQTT: every route, every command, before and after a
 * restart, each answer as the served description says; and what is refused.
 */

import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { MqttClient } from 'mqtt';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { EventReader } from '../agent/web/event-source.ts';
import { send } from '../agent/web/wire.ts';
import {
  type AlarmSeen,
  alarms,
  commandOf,
  figure,
  get,
  type HealthSeen,
  metrics,
  post,
  signalOf,
  until,
} from './agent-http.ts';
import { worksSite } from './works-site.ts';

type Paths = Record<
  string,
  Record<string, { responses: Record<string, { content?: Record<string, { schema: object }> }> }>
>;
interface Description {
  readonly paths: Paths;
  readonly components: { readonly schemas: object };
}

/** What is wrong with an answer, by the description that the agent itself serves. */
function faults(description: Description, path: string, method: string, body: unknown): string[] {
  const content = description.paths[path]![method]!.responses['200']!.content!;
  const { schema } = content['application/json']!;
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  const text = JSON.stringify({ ...schema, $defs: description.components.schemas });
  const validate = ajv.compile(JSON.parse(text.replaceAll('#/components/schemas/', '#/$defs/')));
  validate(body);
  return (validate.errors ?? []).map((each) => `${path}${each.instancePath} ${each.message}`);
}

/** Every route that reads, held against its own description. */
async function readAll(page: string): Promise<void> {
  const { body: description } = await get<Description>(page, '/api/openapi.json');
  const series = '/api/signals/{id}/series';
  const reading = ['/api/health', '/api/signals', '/api/alarms', '/api/holds', '/api/coverage'];
  for (const path of [...reading, '/api/rules', series]) {
    const { status, body } = await get(page, path.replace('{id}', 'm%2Froom%2Fair'));
    expect([path, status]).toEqual([path, 200]);
    expect(faults(description, path, 'get', body)).toEqual([]);
  }
}

interface Works {
  readonly agent: AgentProcess;
  readonly client: MqttClient;
  readonly again: () => Promise<Works>;
}

async function openWorks(): Promise<Works> {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const site = siteFile(join(folder, 'works'), worksSite);
  const device = await addDevice(data, 'sensors');
  const open = async (): Promise<Works> => {
    const agent = await startAgentProcess({ site, folder: data });
    return { agent, client: await connectDevice(agent.mqtt, device), again: open };
  };
  return open();
}

const alarmOf = async (page: string, rule: string): Promise<AlarmSeen | undefined> =>
  (await alarms(page)).find((alarm) => alarm.rule === rule);
const stateOf = (page: string, rule: string, state: string): Promise<AlarmSeen | undefined> =>
  until(
    () => alarmOf(page, rule),
    (alarm) => alarm?.state === state,
  );

test('signals, series, coverage, rules, metrics, before and after a clean restart', async () => {
  const { agent, client, again } = await openWorks();
  const { page } = agent;
  for (const value of ['40', '45', '50']) await published(client, 'room/humidity', value);
  await published(client, 'room/air', '22.0');
  const nowMs = Date.now();
  const span = `since=${nowMs - 60_000}&until=${nowMs + 60_000}`;
  const path = `/api/signals/m%2Froom%2Fhumidity/series?${span}`;
  const series = async (at: string) =>
    (await get<{ unit: string; points: number[][] }>(at, path)).body;
  const seen = await until(
    () => series(page),
    ({ points }) => points.reduce((sum, point) => sum + point[4]!, 0) === 3,
  );
  expect(seen.unit).toBe('%');
  expect([
    Math.min(...seen.points.map((p) => p[1]!)),
    Math.max(...seen.points.map((p) => p[2]!)),
  ]).toEqual([40, 50]);
  const air = await signalOf(page, 'm/room/air');
  expect(air).toMatchObject({ value: 22, quality: { grade: 'good', cause: null } });
  // 22 °C at 50 %: dew point 11.1 °C (Sonntag 1990, by rules/derive/dew-point.ts).
  await until(
    () => signalOf(page, 'm/room/dew'),
    ({ value }) => value === 11.1,
  );
  await readAll(page);
  const figures = await metrics(page);
  expect(figure(figures, 'forebond_messages')).toBe(4);
  expect(figure(figures, 'forebond_occurrences_open')).toBe(0);
  expect((await agent.stop()).code).toBe(0);

  const after = await again();
  expect(await series(after.agent.page)).toEqual(seen);
  expect(await signalOf(after.agent.page, 'm/room/air')).toEqual(air);
  await readAll(after.agent.page);
  const { body } = await get<HealthSeen>(after.agent.page, '/api/health');
  expect(body.parts).toMatchObject({ engine: 'good', mqtt: 'good', record: 'good', clock: 'good' });
  const { body: none } = await get<{ code: string; fix: string }>(
    after.agent.page,
    '/api/signals/m%2Froom%2Fnone/series',
  );
  expect(none.code).toBe('WEB_SIGNAL_UNKNOWN');
  after.client.end(true);
  await after.agent.stop();
}, 30_000);

test('an alarm is heard within a second, and every command on it is answered once it is kept', async () => {
  const { agent, client, again } = await openWorks();
  const { page } = agent;
  const stream = await EventReader.open(Number(new URL(page).port));
  const rule = 'a/bench/warm-cell-1';
  const sentAt = performance.now();
  await published(client, 'bench/cell-1/t', '26.0');
  await stream.until(() => stream.of('alarm').length > 0, 1_000);
  expect(performance.now() - sentAt).toBeLessThan(1_000);
  expect(stream.of('alarm')[0]!.data).toMatchObject({
    change: 'raised',
    alarm: { rule, state: 'unacknowledged', priority: 'low' },
  });
  await stream.until(() => stream.of('sample').length > 0, 1_000);

  const { occurrence } = (await stateOf(page, rule, 'unacknowledged'))!;
  const command = async (verb: string, body?: object): Promise<[number, string | undefined]> => {
    const answer = await post<{ state?: string; code?: string }>(
      page,
      commandOf(occurrence, verb),
      body,
    );
    return [answer.status, answer.body.state ?? answer.body.code];
  };
  expect(await command('shelve', { minutes: 1, reason: 'being mended' })).toEqual([200, 'shelved']);
  expect(await command('shelve', { minutes: 0, reason: 'x' })).toEqual([
    400,
    'WEB_PARAMETER_WRONG',
  ]);
  expect(await command('unshelve')).toEqual([200, 'unacknowledged']);
  expect(await command('acknowledge', { comment: 'seen' })).toEqual([200, 'acknowledged']);
  expect(await command('acknowledge')).toEqual([200, 'acknowledged']);
  expect(await command('reset')).toEqual([409, 'WEB_COMMAND_REFUSED']);
  await published(client, 'bench/cell-1/t', '20.0');
  const over = (await stateOf(page, rule, 'normal'))!;
  expect(over.transitions.map(({ transition }) => transition)).toEqual([
    'raised',
    'shelved',
    'unshelved',
    'acknowledged',
    'returned',
  ]);
  const changes = (): unknown[] =>
    stream.of('alarm').map(({ data }) => (data as { change: string }).change);
  await stream.until(() => changes().includes('returned'), 1_000);
  expect(changes()).toEqual(over.transitions.map(({ transition }) => transition));
  stream.close();
  const unknown = await post<{ code: string }>(page, commandOf('a/bench/none@1', 'acknowledge'));
  expect([unknown.status, unknown.body.code]).toEqual([404, 'WEB_OCCURRENCE_UNKNOWN']);
  client.end(true);
  await agent.stop();

  const after = await again();
  expect(await alarmOf(after.agent.page, rule)).toEqual(over);
  after.client.end(true);
  await after.agent.stop();
}, 30_000);

test('passed on, shelved no longer than allowed, out of service and back, each on the list and on the stream', async () => {
  const { agent, client } = await openWorks();
  const { page } = agent;
  const rule = 'a/bench/warm-cell-1';
  await published(client, 'bench/cell-1/t', '26.0');
  const { occurrence } = (await stateOf(page, rule, 'unacknowledged'))!;
  const stream = await EventReader.open(Number(new URL(page).port));
  const command = async (id: string, verb: string, body?: object) => {
    const answer = await post<{ state?: string; code?: string; detail?: string }>(
      page,
      commandOf(id, verb),
      body,
    );
    return [answer.status, answer.body.state ?? answer.body.code];
  };
  const aside = async () => {
    const answer = await fetch(new URL('/api/put-aside', page));
    return ((await answer.json()) as { aside: { state: string; one_shot: boolean }[] }).aside;
  };
  expect(await command(occurrence, 'pass-on', { comment: 'at the press' })).toEqual([
    200,
    'unacknowledged',
  ]);
  const tooLong = { minutes: 1_441, reason: 'sun on it' };
  expect(await command(occurrence, 'shelve', tooLong)).toEqual([409, 'WEB_COMMAND_REFUSED']);
  const once = { minutes: 1_440, reason: 'sun on it', one_shot: true };
  expect(await command(occurrence, 'shelve', once)).toEqual([200, 'shelved']);
  expect(await aside()).toMatchObject([{ rule, state: 'shelved', one_shot: true, stands: true }]);
  expect(await command(rule, 'out-of-service', {})).toEqual([400, 'WEB_PARAMETER_WRONG']);
  expect(await command(rule, 'out-of-service', { reason: 'new probe' })).toEqual([
    200,
    'out-of-service',
  ]);
  expect(await command(occurrence, 'acknowledge')).toEqual([409, 'WEB_COMMAND_REFUSED']);
  expect(await aside()).toMatchObject([{ state: 'out-of-service', reason: 'new probe' }]);
  expect(await command(rule, 'return-to-service')).toEqual([200, 'unacknowledged']);
  expect(await command(rule, 'return-to-service')).toEqual([409, 'WEB_COMMAND_REFUSED']);
  expect(await aside()).toEqual([]);
  const changes = (): unknown[] =>
    stream.of('aside').map(({ data }) => (data as { change: string }).change);
  await stream.until(() => changes().length === 3, 1_000);
  expect(changes()).toEqual(['shelved', 'removed-from-service', 'returned-to-service']);
  stream.close();
  client.end(true);
  await agent.stop();
}, 30_000);

test('a latched alarm is reset once its condition has gone', async () => {
  const { agent, client } = await openWorks();
  const { page } = agent;
  const rule = 'm/room/damp-air';
  await published(client, 'room/air', '30.0');
  await published(client, 'room/humidity', '90');
  const { occurrence } = (await stateOf(page, rule, 'unacknowledged'))!;
  const early = await post<{ code: string }>(page, commandOf(occurrence, 'reset'));
  expect([early.status, early.body.code]).toEqual([409, 'WEB_COMMAND_REFUSED']);
  await published(client, 'room/humidity', '20');
  await stateOf(page, rule, 'latched-unacknowledged');
  await post(page, commandOf(occurrence, 'acknowledge'));
  const { body } = await post<{ state: string }>(page, commandOf(occurrence, 'reset'));
  expect(body.state).toBe('normal');
  client.end(true);
  await agent.stop();
}, 30_000);

test('holds are set by people and by rules, and stay until they are lifted', async () => {
  const { agent, client, again } = await openWorks();
  type Hold = { id: string; what: string; item: string; lifted: unknown };
  const holds = async (page: string, query = ''): Promise<Hold[]> =>
    (await get<{ holds: Hold[] }>(page, `/api/holds${query}`)).body.holds;
  const lot = { what: 'lot', item: 'lot-7', reason: 'doubtful adhesive' };
  const set = await post<Hold>(agent.page, '/api/holds', lot);
  expect([set.status, set.body.item]).toEqual([201, 'lot-7']);
  expect((await post(agent.page, '/api/holds', lot)).status).toBe(409);
  for (let i = 0; i < 8; i += 1) {
    await published(client, 'room/wall', { v: 28, t: Date.now() });
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  const both = await until(
    () => holds(agent.page, '?standing=true'),
    (found) => found.length === 2,
  );
  expect(both.map(({ item }) => item).sort()).toEqual(['drum-1', 'lot-7']);
  client.end(true);
  await agent.stop();

  const { agent: next, client: other } = await again();
  expect(await holds(next.page, '?standing=true')).toEqual(both);
  const lift = `/api/holds/${encodeURIComponent(set.body.id)}/lift`;
  const lifted = await post<Hold>(next.page, lift, { disposition: 'released', reason: 'tested' });
  expect([lifted.status, lifted.body.lifted]).toMatchObject([
    200,
    { by: 'local', disposition: 'released' },
  ]);
  expect((await post(next.page, lift, { disposition: 'released', reason: 'tested' })).status).toBe(
    404,
  );
  expect((await holds(next.page)).length).toBe(2);
  other.end(true);
  await next.stop();
}, 30_000);

test('requests that another site caused are refused', async () => {
  const { agent, client } = await openWorks();
  const port = Number(new URL(agent.page).port);
  const json = { 'content-type': 'application/json' };
  const code = async (headers: Record<string, string>, method = 'GET') => {
    const path = method === 'GET' ? '/api/health' : '/api/holds';
    const body = method === 'GET' ? {} : { body: '{"what":"lot","item":"x","reason":"why not"}' };
    const answer = await send(port, { method, path, headers, ...body });
    return [answer.status, JSON.parse(answer.text).code];
  };
  expect(await code({ host: 'attacker.example' })).toEqual([403, 'WEB_HOST_REFUSED']);
  const foreign = { origin: 'http://attacker.example', ...json };
  expect(await code(foreign, 'POST')).toEqual([403, 'WEB_ORIGIN_REFUSED']);
  expect(await code({ 'sec-fetch-site': 'cross-site' })).toEqual([403, 'WEB_ORIGIN_REFUSED']);
  expect(await code({ 'content-type': 'text/plain' }, 'POST')).toEqual([415, 'WEB_BODY_NOT_JSON']);
  expect((await code(json, 'POST'))[0]).toBe(201);
  client.end(true);
  await agent.stop();
}, 30_000);
