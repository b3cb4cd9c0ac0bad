/**
 * Somebody tidies the data folder of a running agent. It is noticed within seconds, nothing is
 * acknowledged that would not be there, alarms go on, and no other agent takes the folder unheard.
 */
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { connectAsync } from 'mqtt';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  forebond,
  published,
  runWords,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, get, type HealthSeen, until } from '../wire/agent-http.ts';
import { smallWorks } from './small-works.ts';

const healthOf = async (agent: AgentProcess) => get<HealthSeen>(agent.page, '/api/health');

async function running() {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  const agent = await startAgentProcess({ site, folder });
  const client = await connectDevice(agent.mqtt, device);
  await published(client, 'hall/2/plain', '10.5');
  return { folder, site, agent, client };
}

test.each([
  ['the database deleted', (folder: string) => rmSync(join(folder, 'forebond.db'))],
  ['its log deleted', (folder: string) => rmSync(join(folder, 'forebond.db-wal'))],
  [
    'the database replaced',
    (folder: string) => {
      renameSync(join(folder, 'forebond.db'), join(folder, 'forebond.old'));
      writeFileSync(join(folder, 'forebond.db'), 'Dear diary');
    },
  ],
  ['the folder deleted', (folder: string) => rmSync(folder, { recursive: true })],
  [
    'the folder emptied',
    (folder: string) => {
      rmSync(folder, { recursive: true });
      mkdirSync(folder);
    },
  ],
])('%s', async (_, take) => {
  const { folder, agent, client } = await running();
  take(folder);
  const told = await until(
    () => healthOf(agent),
    ({ body }) => body.parts.disk === 'failure',
  );
  expect(told.status).toBe(503);
  expect(told.body.notes.disk).toMatch(/forebond\.db(-wal)? (is gone|has been replaced)/);
  expect(told.body.notes.disk).toContain('Put the file back');
  // It judges on, and acknowledges nothing.
  let acknowledged = false;
  void published(client, 'hall/2/plain', '35').then(
    () => {
      acknowledged = true;
    },
    () => undefined,
  );
  await until(
    () => alarms(agent.page),
    (all) => all.some(({ rule }) => rule === 'hall/bench/plain-2-warm'),
  );
  expect(acknowledged).toBe(false);
  expect((await alarms(agent.page)).length).toBeGreaterThan(0);
  client.end(true);
  const { code, stderr } = await agent.stop();
  expect(code).toBe(1);
  expect(stderr).not.toContain('internal fault');
});

test('the database deleted while no agent runs: the next start says that it is gone, what was in it, and how to mend it', async () => {
  const { folder, site, agent, client } = await running();
  client.end(true);
  expect((await agent.stop()).code).toBe(0);
  rmSync(join(folder, 'forebond.db'));
  const next = await startAgentProcess({ site, folder });
  const { parts, notes } = (await healthOf(next)).body;
  expect(parts.record).toBe('out-of-specification');
  expect(notes.record).toContain(`The record is gone: ${join(folder, 'forebond.db')} is missing`);
  expect(notes.record).toMatch(/records 1 to \d+ of the input log and 1 to \d+ of the ledger/);
  expect(notes.record).toContain('with the signals and holds of the backup settings-');
  expect(notes.record).toContain('put it back');
  expect(notes.record).not.toMatch(/damage|Check the disk/);
  const { code, stderr } = await next.stop();
  expect([code, /damage|Check the disk/.test(stderr)]).toEqual([0, false]);
  const verified = await forebond(['ledger', 'verify', '--data', folder]);
  expect(verified.code).toBe(1);
  expect(verified.stdout).toMatch(
    /^the chain holds: \d+ records, head [0-9a-f]{64}; but it says itself/,
  );
  expect(verified.stdout).toMatch(/^record \d+, \S+Z: The record is gone/m);
}, 90_000);

test('the list of devices deleted while no agent runs: those it named come in, nobody else, and it is said', async () => {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  const agent = await startAgentProcess({ site, folder });
  expect((await agent.stop()).code).toBe(0);
  rmSync(join(folder, 'devices.json'));
  const next = await startAgentProcess({ site, folder });
  const { parts, notes } = (await healthOf(next)).body;
  expect(parts.mqtt).toBe('maintenance-required');
  expect(notes.mqtt).toContain(
    `The list of devices ${join(folder, 'devices.json')} is gone. Put it back`,
  );
  await expect(connectAsync(next.mqtt, { reconnectPeriod: 0 })).rejects.toThrow(
    'Bad username or password',
  );
  const client = await connectDevice(next.mqtt, device);
  await published(client, 'hall/2/plain', '10.5');
  client.end(true);
  const listed = await forebond(['device', 'list', '--data', folder]);
  expect([listed.code, listed.stdout]).toEqual([1, '']);
  expect(listed.stderr).toContain('is gone');
  const { code, stderr } = await next.stop();
  expect(code).toBe(0);
  expect(stderr).toContain('nobody else');
}, 90_000);

test('the database moved away and back: all goes on by itself', async () => {
  const { folder, agent, client } = await running();
  const path = join(folder, 'forebond.db');
  renameSync(path, `${path}.away`);
  await until(
    () => healthOf(agent),
    ({ body }) => body.parts.disk === 'failure',
  );
  const waiting = published(client, 'hall/2/plain', '11.5');
  renameSync(`${path}.away`, path);
  await waiting;
  expect((await healthOf(agent)).body.parts.disk).toBe('good');
  client.end(true);
  expect((await agent.stop()).code).toBe(0);
});

test('the lock removed: it is made again, told, and a second agent is refused', async () => {
  const { folder, site, agent, client } = await running();
  rmSync(join(folder, 'agent.lock'));
  // Started at once, before the first has noticed.
  const second = await forebond(runWords({ site, folder }));
  expect(second).toMatchObject({ code: 1, stdout: '' });
  expect(second.stderr).toContain(`Another agent holds the data folder ${folder}.`);
  expect(existsSync(join(folder, 'agent.lock'))).toBe(true);
  const told = await until(
    () => healthOf(agent),
    ({ body }) => body.parts.record !== 'good',
  );
  expect(told.body.notes.record).toContain('agent.lock was removed');
  await published(client, 'hall/2/plain', '11.5');
  client.end(true);
  expect((await agent.stop()).code).toBe(0);
});

test('folder and lock gone and another agent begun there: the first says so', async () => {
  const { folder, site, agent, client } = await running();
  rmSync(folder, { recursive: true });
  const second = await startAgentProcess({ site, folder });
  // Until the other one is there it says only that its files are gone.
  await until(
    () => healthOf(agent),
    ({ body }) => /Another agent has taken the data folder/.test(body.notes.disk ?? ''),
    15_000,
  );
  await wait(50);
  client.end(true);
  await agent.stop();
  expect((await second.stop()).code).toBe(0);
});
