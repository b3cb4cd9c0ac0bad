/**
 * What people and scanners write down, through a whole agent: by HTTP and by MQTT, over a kill, in
 * the ledger with who said it, and the same again in a replay.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
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
import { alarms, get, post, signalOf } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';
import { prepSite } from './prep-site.ts';
import { ledgerLines, replayedLines, sourceOf } from './simulated-agent.ts';

interface Marks {
  readonly marks: readonly {
    readonly mark: string;
    readonly last: { at: number; by: string } | null;
  }[];
  readonly clocks: readonly {
    readonly item: string | null;
    readonly due: number;
    readonly said: boolean;
    readonly severity: number;
  }[];
}
const station = 'm/prep';
const marksOf = async (page: string): Promise<Marks> =>
  (await get<Marks>(page, `/api/marks?station=${encodeURIComponent(station)}`)).body;
const itemsOf = async (page: string): Promise<(string | null)[]> =>
  (await marksOf(page)).clocks.map(({ item }) => item);
const say = (page: string, mark: string, more: object = {}) =>
  post<{ code?: string; detail?: string; at: number }>(page, '/api/marks', {
    station,
    mark,
    ...more,
  });

async function until(what: string, so: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 1_200; tries += 1) {
    if (await so()) return;
    await sleep(50);
  }
  throw new Error(`never: ${what}`);
}

test('a rack too long between blasting and coating: scanner, person, kill, hold, replay', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const written = prepSite(12_000);
  const site = siteFile(join(folder, 'works'), written);
  const device = await addDevice(data, 'scanner');
  let agent: AgentProcess = await startAgentProcess({ site, folder: data });
  let client = await connectDevice(agent.mqtt, device);
  await published(client, 'prep/blasted', 'R-12');
  // Acknowledged: it is on disk, whatever happens now.
  await agent.kill();
  client.end(true);
  agent = await startAgentProcess({ site, folder: data });
  expect(await itemsOf(agent.page)).toEqual(['R-12', null]);
  expect((await marksOf(agent.page)).marks).toMatchObject([
    { mark: 'bin-emptied', last: null },
    { mark: 'blasted', last: { by: 'topic:prep/blasted', item: 'R-12' } },
    { mark: 'coated', last: null },
  ]);

  const began = Date.now();
  expect(await say(agent.page, 'blasted', { item: 'R-13', at: began - 60_000 })).toMatchObject({
    status: 201,
    body: { item: 'R-13', at: began - 60_000, by: 'local' },
  });
  await until('both racks are held', async () => {
    const { body } = await get<{ holds: { item: string }[] }>(agent.page, '/api/holds');
    return body.holds.length === 2;
  });
  const told = (await alarms(agent.page)).filter(({ rule }) => rule === 'm/prep/blast-to-coat');
  expect(told).toHaveLength(1);
  expect(told).toMatchObject([
    {
      signal: 'm/prep/blasted',
      evidence: { item: 'R-13', required_ms: 12_000 },
      label: {
        sentence: expect.stringMatching(/^R-13: \S+ \S+ since .*no more than 12 s is allowed/),
      },
    },
  ]);
  client = await connectDevice(agent.mqtt, device);
  for (const rack of ['R-12', 'R-13'])
    await published(client, 'prep/coated', { rack, t: Date.now() / 1_000 });
  expect(await itemsOf(agent.page)).toEqual([null]);
  expect(await say(agent.page, 'bin-emptied')).toMatchObject({ status: 201 });
  expect((await marksOf(agent.page)).clocks).toMatchObject([{ item: null, said: true }]);
  client.end(true);
  await agent.stop();

  const said = ledgerOf(data).filter(({ type }) => type === 'mark');
  expect(said.map(({ mark, item, by }) => [mark, item, by])).toEqual([
    ['blasted', 'R-12', 'topic:prep/blasted'],
    ['blasted', 'R-13', 'local'],
    ['coated', 'R-12', 'topic:prep/coated'],
    ['coated', 'R-13', 'topic:prep/coated'],
    ['bin-emptied', null, 'local'],
  ]);
  expect(replayedLines(await sourceOf(written), data)).toEqual(ledgerLines(data).effects);
}, 120_000);

test('what a mark or a reading cannot be is refused with what to do', async () => {
  const folder = scratchFolder();
  const agent = await startAgentProcess({ site: prepSite(60_000), folder: join(folder, 'data') });
  const { page } = agent;
  const refused = async (path: string, body: object) => {
    const answer = await post<{ code: string; detail: string }>(page, path, body);
    return { status: answer.status, code: answer.body.code, detail: answer.body.detail };
  };
  const mark = (more: object) => refused('/api/marks', { station, mark: 'blasted', ...more });
  expect(await mark({ mark: 'painted' })).toEqual({
    status: 404,
    code: 'WEB_MARK_UNKNOWN',
    detail: 'There is no mark "painted" at m/prep.',
  });
  expect(await mark({})).toEqual({
    status: 409,
    code: 'WEB_COMMAND_REFUSED',
    detail: 'Nothing was changed: m/prep/blasted happens to a rack; say which.',
  });
  expect(await mark({ item: 'R-1', at: Date.now() + 3_600_000 })).toMatchObject({
    status: 409,
    code: 'WEB_COMMAND_REFUSED',
    detail: expect.stringMatching(
      /it lies (60|59) minutes ahead of this clock.*local time sent as UTC/,
    ),
  });
  const reading = (more: object) =>
    refused('/api/readings', { signal: 'm/prep/ph', value: 9, unit: '[pH]', ...more });
  expect(await reading({ signal: 'm/prep/no' })).toMatchObject({
    status: 404,
    code: 'WEB_SIGNAL_UNKNOWN',
  });
  expect(await reading({ signal: 'm/prep/air' })).toMatchObject({
    status: 409,
    code: 'WEB_READING_NOT_BY_HAND',
  });
  expect(await reading({ unit: 'bar' })).toMatchObject({ status: 400, code: 'WEB_READING_UNIT' });
  expect(await reading({ value: 12 })).toMatchObject({ status: 400, code: 'WEB_READING_RANGE' });
  expect(await reading({ at: Date.now() + 97_829_978_000 })).toMatchObject({
    status: 400,
    code: 'WEB_READING_AHEAD',
    detail: expect.stringMatching(/it lies 1132 days ahead/),
  });
  expect(await mark({ item: 'R-1', at: Math.round(Date.now() / 1_000) })).toMatchObject({
    status: 409,
    detail: expect.stringMatching(/seconds were taken for milliseconds/),
  });
  expect((await signalOf(page, 'm/prep/ph')).value).toBeNull();
  await agent.stop();
});

test('a reading entered by hand is judged, kept over a kill, and the ledger says who entered it', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const written = prepSite(60_000);
  const site = siteFile(join(folder, 'works'), written);
  let agent = await startAgentProcess({ site, folder: data });
  const at = Date.now() - 600_000;
  const enter = (more: object) =>
    post(agent.page, '/api/readings', { signal: 'm/prep/ph', unit: '[pH]', ...more });
  expect(await enter({ value: 6.44, at, note: 'bath 2' })).toMatchObject({
    status: 201,
    body: { value: 6.4, unit: '[pH]', at, quality: { grade: 'good' }, judged: true },
  });
  await agent.kill();
  agent = await startAgentProcess({ site, folder: data });
  expect(await signalOf(agent.page, 'm/prep/ph')).toMatchObject({ value: 6.4, at });
  expect(await alarms(agent.page)).toMatchObject([{ rule: 'm/prep/ph-low' }]);
  // Older than the last: kept, and no longer what is so.
  expect(await enter({ value: 9, at: at - 60_000 })).toMatchObject({ body: { judged: false } });
  expect(await enter({ value: 6.4, at })).toMatchObject({
    status: 409,
    body: { code: 'WEB_READING_KNOWN' },
  });
  expect(await alarms(agent.page)).toMatchObject([{ state: 'unacknowledged' }]);
  expect(await enter({ value: 9 })).toMatchObject({ status: 201, body: { judged: true } });
  await until('the alarm is over', async () =>
    (await alarms(agent.page)).every(({ state }) => state === 'returned-unacknowledged'),
  );
  const path = `/api/signals/${encodeURIComponent('m/prep/ph')}/series?since=${at - 120_000}`;
  const { body } = await get<{ points: number[][] }>(agent.page, path);
  expect(body.points.reduce((sum, point) => sum + point[4]!, 0)).toBe(3);
  await agent.stop();

  expect(ledgerOf(data).filter(({ type }) => type === 'reading')).toMatchObject([
    { signal: 'm/prep/ph', written: '6.44 [pH]', value: 6.4, by: 'local', note: 'bath 2' },
    { value: 9, judged: false },
    { value: 9, judged: true },
  ]);
  expect(replayedLines(await sourceOf(written), data)).toEqual(ledgerLines(data).effects);
});

test('mosquitto_pub says a mark with QoS 1', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const device = await addDevice(data, 'gate');
  const agent = await startAgentProcess({ site: prepSite(60_000), folder: data });
  const { hostname, port } = new URL(agent.mqtt);
  const login = ['-u', device.username, '-P', device.password, '-q', '1'];
  const words = ['-h', hostname, '-p', port, ...login, '-t', 'prep/blasted', '-m', 'R-7'];
  const [code] = await once(spawn('mosquitto_pub', words, { stdio: 'ignore' }), 'close');
  expect(code).toBe(0);
  expect(await itemsOf(agent.page)).toEqual(['R-7', null]);
  await agent.stop();
});
